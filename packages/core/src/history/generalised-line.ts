// A straight line through values that depend on each other.

export interface GeneralisedLine {
  readonly slope: number;
  /** Standard error as the covariance has it. */
  readonly standardError: number;
  /** Q = residual' V^-1 residual. */
  readonly misfit: number;
  /** The place B/A at which level and slope do not depend on each other, the level there, and its standard error. */
  readonly meanX: number;
  readonly level: number;
  readonly levelError: number;
}

/** Places with their covariance. Places are added one by one, and lines drawn through values at all of them: what the
 *  places alone decide is worked out once, whatever the values and however many follow. */
export interface DependentPlaces {
  /** @param covariance - row of V, positive definite, up to and with the place itself */
  readonly add: (place: number, covariance: ArrayLike<number>) => void;
  /** @param y - a value for each place  @returns undefined where all places are equal */
  readonly lineThrough: (y: readonly number[]) => GeneralisedLine | undefined;
}

/** Generalised least squares: with A = 1'V^-1 1, B = 1'V^-1 x, C = x'V^-1 x, D = A C - B^2,
 *  b = (A x'V^-1 y - B 1'V^-1 y) / D, se(b) = sqrt(A/D); V = L L', of which a further place adds a row.
 *  @source handbook/statistics.md B, L.7 */
export const dependentPlaces = (): DependentPlaces => {
  const root: Float64Array[] = [];
  const x: number[] = [];
  const [u, v]: [number[], number[]] = [[], []];
  let [a, b, c] = [0, 0, 0];
  return {
    add: (place, covariance) => {
      const row = nextRow(root, covariance);
      root.push(row);
      x.push(place);
      const [one, run] = [solved(row, u, 1), solved(row, v, place)];
      u.push(one);
      v.push(run);
      a += one * one;
      b += one * run;
      c += run * run;
    },
    lineThrough: (y) => {
      if (x.every((place) => place === x[0])) return undefined;
      const w: number[] = [];
      root.forEach((row, i) => w.push(solved(row, w, y[i] ?? NaN)));
      const [rise, sum] = [dot(v, w), dot(u, w)];
      const d = a * c - b * b;
      const slope = (a * rise - b * sum) / d;
      const level = (sum - slope * b) / a;
      return {
        slope,
        standardError: Math.sqrt(a / d),
        misfit: restOf(w, { u, v, level, slope }),
        meanX: b / a,
        level: sum / a,
        levelError: Math.sqrt(1 / a),
      };
    },
  };
};

/** The same for places that are all known.  @param rows - of V, one a place */
export const generalisedLine = (
  x: readonly number[],
  y: readonly number[],
  rows: readonly ArrayLike<number>[],
): GeneralisedLine | undefined => {
  const places = dependentPlaces();
  x.forEach((place, i) => {
    places.add(place, rows[i] ?? []);
  });
  return places.lineThrough(y);
};

// The loops below run some thousand times a cylinder: places are known to exist, so none is checked.

/** The next row of the lower triangle L. */
const nextRow = (root: readonly Float64Array[], covariance: ArrayLike<number>): Float64Array => {
  const i = root.length;
  const row = new Float64Array(i + 1);
  for (let j = 0; j < i; j += 1) {
    const other = root[j] ?? row;
    let rest = covariance[j] ?? NaN;
    for (let k = 0; k < j; k += 1) rest -= (row[k] ?? NaN) * (other[k] ?? NaN);
    row[j] = rest / (other[j] ?? NaN);
  }
  let rest = covariance[i] ?? NaN;
  for (let k = 0; k < i; k += 1) rest -= (row[k] ?? NaN) * (row[k] ?? NaN);
  row[i] = Math.sqrt(rest);
  return row;
};

/** The next entry of L^-1 y.  @param before - the entries so far */
const solved = (row: Float64Array, before: readonly number[], y: number): number => {
  const i = row.length - 1;
  let rest = y;
  for (let k = 0; k < i; k += 1) rest -= (row[k] ?? NaN) * (before[k] ?? NaN);
  return rest / (row[i] ?? NaN);
};

const dot = (a: readonly number[], b: readonly number[]): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i += 1) sum += (a[i] ?? NaN) * (b[i] ?? NaN);
  return sum;
};

/** Sum of the squares of w - level u - slope v. */
const restOf = (
  w: readonly number[],
  {
    u,
    v,
    level,
    slope,
  }: {
    readonly u: readonly number[];
    readonly v: readonly number[];
    readonly level: number;
    readonly slope: number;
  },
): number => {
  let sum = 0;
  for (let i = 0; i < w.length; i += 1) {
    const rest = (w[i] ?? NaN) - level * (u[i] ?? NaN) - slope * (v[i] ?? NaN);
    sum += rest * rest;
  }
  return sum;
};
