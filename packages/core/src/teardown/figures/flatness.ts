// A face under a straightedge: the gap along each line, over all and under any short chord.

import { type Length, length } from "../../quantity/index.ts";

export interface FlatLine {
  /** `long1`, `centre`, `diagonal1` … */
  readonly name: string;
  readonly points: readonly FlatPoint[];
}
export interface FlatPoint {
  /** Along the edge. [m] */
  readonly at: Length;
  /** Of the face below the straightedge, which rests on the two highest points. [m] */
  readonly gap: Length;
}

/** Where the gap is largest. */
export interface OverallGap extends FlatPoint {
  readonly line: string;
}

/** The largest departure from a chord between two points of a line. */
export interface LocalGap extends OverallGap {
  readonly from: Length;
  readonly to: Length;
  /** Standard uncertainty of it as a multiple of that of one gap: √(1 + w² + (1 − w)²). */
  readonly factor: number;
}

/** Chord of the local flatness that makers state: 6 in or 150 mm. [m] */
const usualChord = length(0.15);
/** Off the face beyond its deepest gap: 0.02 mm, judgement. [m] */
const beyondDeepest = 0.02e-3;
/** 150 mm in steps of 75 mm is a chord of 150 mm in binary too. */
const slack = 1e-9;

const diagonals = ["diagonal1", "diagonal2"];

const inOrder = ({ points }: FlatLine): readonly FlatPoint[] => [...points].sort((a, b) => a.at - b.at);

/** The deepest point of all lines: what makers hold against their limit. The true flatness is never less. */
const overallGap = (lines: readonly FlatLine[]): OverallGap | undefined =>
  lines
    .flatMap(({ name, points }) => points.map((point) => ({ ...point, line: name })))
    .sort((a, b) => b.gap - a.gap)[0];

/** The largest gap under any chord up to `chord`: |g(m) − g on the straight line from a to b|, a < m < b. A hollow counts
 *  and so does a crown, whose straightedge is balanced so that both its end gaps are equal. Undefined where the grid has
 *  no point inside any chord so short: it cannot tell, which is not 0. The first of equals.
 *  @source geometry @checked data/reference/teardown-cases.json (computed) */
const localGap = (lines: readonly FlatLine[], chord: Length = usualChord): LocalGap | undefined => {
  const all = lines.flatMap((line) => {
    const points = inOrder(line);
    return points.flatMap((a, first) =>
      points
        .slice(first + 2)
        .filter((b) => b.at - a.at <= chord + slack)
        .flatMap((b, more) =>
          points
            .slice(first + 1, first + 2 + more)
            .filter((m) => m.at > a.at && m.at < b.at)
            .map((m) => underChord(line.name, [a, m, b])),
        ),
    );
  });
  return all.reduce<LocalGap | undefined>(
    (worst, one) => (worst === undefined || one.gap > worst.gap + slack ? one : worst),
    undefined,
  );
};

const underChord = (line: string, [a, m, b]: readonly [FlatPoint, FlatPoint, FlatPoint]): LocalGap => {
  const share = (m.at - a.at) / (b.at - a.at);
  const chord = a.gap + share * (b.gap - a.gap);
  return {
    line,
    at: m.at,
    from: a.at,
    to: b.at,
    gap: length(Math.abs(m.gap - chord)),
    factor: Math.hypot(1, share, 1 - share),
  };
};

export interface FaceFlatness {
  readonly overall?: OverallGap;
  readonly local?: LocalGap;
  /** A twist has straight long and cross lines and shows on the diagonals alone: `inside` needs both. An `outside` stands
   *  without them. */
  readonly missingDiagonals: readonly string[];
  /** Lines whose largest gap is at an end: the straightedge rocks on a crown. Balanced so that both end gaps are equal it
   *  shows what counts; fully tipped it reads double. */
  readonly crowned: readonly string[];
  /** Least to skim: the deepest gap + 0.02 mm. [m] */
  readonly skim?: Length;
}

/** Flatness of a deck or a head. */
export const faceFlatness = (lines: readonly FlatLine[]): FaceFlatness => {
  const [overall, local] = [overallGap(lines), localGap(lines)];
  return {
    ...(overall === undefined ? {} : { overall }),
    ...(local === undefined ? {} : { local }),
    missingDiagonals: diagonals.filter((name) => !lines.some((line) => line.name === name)),
    crowned: lines.filter(isCrowned).map(({ name }) => name),
    ...(overall === undefined ? {} : { skim: length(overall.gap + beyondDeepest) }),
  };
};

/** The edge stands off at an end by more than anywhere between. */
const isCrowned = (line: FlatLine): boolean => {
  const gaps = inOrder(line).map(({ gap }) => gap);
  const ends = [gaps.at(0) ?? 0, gaps.at(-1) ?? 0];
  return gaps.length >= 3 && Math.max(...ends) > Math.max(...gaps.slice(1, -1));
};
