// Statistics stripped to what they must compute: typed arrays, buffers made once, nothing checked. They stand on their own,
// so that the library is measured against, and held to, other code than its own.

/** The value at `place` in ascending order among the first `count`, which are reordered. */
export const select = (values, count, place) => {
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const pivot = values[(low + high) >> 1];
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i] < pivot) i++;
      while (values[j] > pivot) j--;
      if (i > j) break;
      const swapped = values[i];
      values[i++] = values[j];
      values[j--] = swapped;
    }
    if (place <= j) high = j;
    else if (place >= i) low = i;
    else break;
  }
  return values[place];
};

export const medianOf = (values, count) => {
  const half = count >> 1;
  const upper = select(values, count, half);
  if (count % 2 === 1) return upper;
  let lower = -Infinity;
  for (let i = 0; i < half; i++) if (values[i] > lower) lower = values[i];
  return (lower + upper) / 2;
};

/** ln Gamma, by Stirling's series from 10 on. */
const gammaln = (a) => {
  let product = 1;
  let b = a;
  for (; b < 10; b++) product *= b;
  const r = 1 / (b * b);
  const series = (1 / 12 + r * (-1 / 360 + r * (1 / 1260 + r * (-1 / 1680 + r / 1188)))) / b;
  return (b - 0.5) * Math.log(b) - b + 0.5 * Math.log(2 * Math.PI) + series - Math.log(product);
};

/** The continued fraction of the incomplete beta function (modified Lentz). */
const fraction = (a, b, x) => {
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d);
    c = 1 + even / c;
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d);
    c = 1 + odd / c;
    value *= d * c;
    if (Math.abs(d * c - 1) < 1e-15) break;
  }
  return value;
};

/** P(T <= t) of Student's t. */
export const tCdf = (t, df) => {
  const a = df / 2;
  const x = df / (df + t * t);
  const front = Math.exp(
    gammaln(a + 0.5) - gammaln(a) - gammaln(0.5) + a * Math.log(x) + 0.5 * Math.log1p(-x),
  );
  const both =
    t === 0
      ? 1
      : x < (a + 1) / (a + 2.5)
        ? (front * fraction(a, 0.5, x)) / a
        : 1 - 2 * front * fraction(0.5, a, 1 - x);
  return t <= 0 ? both / 2 : 1 - both / 2;
};

/** t with P(T <= t) = p for p above 1/2, by bisection to the last digit. */
export const tQuantile = (p, df) => {
  let [low, high] = [0, 64];
  for (let round = 0; round < 60; round++) {
    const middle = (low + high) / 2;
    if (tCdf(middle, df) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

/** Chances of 0, 1, 2 ... inversions or fewer among the orderings of n different values. */
export const inversionChances = (n) => {
  let chances = Float64Array.of(1);
  for (let m = 2; m <= n; m++) {
    const longer = new Float64Array(chances.length + m - 1);
    for (let k = 0; k < chances.length; k++) for (let j = 0; j < m; j++) longer[k + j] += chances[k] / m;
    chances = longer;
  }
  for (let k = 1; k < chances.length; k++) chances[k] += chances[k - 1];
  return chances;
};

/** Variance of the median of k normal values, computed by numerical integration; pi/(2k) beyond the table. */
const ofMedian = [
  NaN,
  1,
  0.5,
  0.448671,
  0.2982,
  0.286834,
  0.214743,
  0.210447,
  0.168181,
  0.166101,
  0.138326,
  0.137162,
];
export const varianceOfMedian = (k) => ofMedian[k] ?? Math.PI / (2 * k);

/** P(Z >= z), for the order of more than 40 tests: Abramowitz & Stegun 26.2.17 (from memory), good to 1e-7. */
export const normalUpper = (z) => {
  if (z < 0) return 1 - normalUpper(-z);
  const t = 1 / (1 + 0.2316419 * z);
  const sum =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)) * sum;
};
