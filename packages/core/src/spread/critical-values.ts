// The table of the forward test: how far below its fellows a healthy cylinder may read.

/** Degrees of freedom put behind the scatter believed beforehand; "known" = known exactly (simulations only). */
export type PriorDegrees = 4 | 8 | 20 | "known";
export type Level = 0.05 | 0.01;

type Pair = readonly [at5: number, at1: number];
type Row = Readonly<Record<PriorDegrees, Pair>> & { readonly n: number };

/** c_n at .05 and .01, computed by simulation for this tool: 400,000 runs a cell, sigma^2 drawn as
 *  df sigma0^2 / chi2(df). The third decimal is noise: about .01 at .05, .02 at .01 (.05 at .01 with 4 degrees). */
const table: readonly Row[] = [
  { n: 2, 4: [2.765, 4.61], 8: [2.301, 3.342], 20: [2.087, 2.842], known: [1.96, 2.578] },
  { n: 3, 4: [2.92, 4.495], 8: [2.511, 3.5], 20: [2.278, 3.009], known: [2.129, 2.718] },
  { n: 4, 4: [3.181, 4.601], 8: [2.729, 3.69], 20: [2.45, 3.156], known: [2.269, 2.819] },
  { n: 5, 4: [3.165, 4.421], 8: [2.801, 3.709], 20: [2.541, 3.233], known: [2.342, 2.886] },
  { n: 6, 4: [3.223, 4.353], 8: [2.877, 3.731], 20: [2.61, 3.278], known: [2.41, 2.946] },
  { n: 7, 4: [3.209, 4.238], 8: [2.918, 3.744], 20: [2.668, 3.323], known: [2.459, 2.989] },
  { n: 8, 4: [3.213, 4.187], 8: [2.945, 3.733], 20: [2.723, 3.368], known: [2.505, 3.025] },
  { n: 9, 4: [3.202, 4.094], 8: [2.97, 3.744], 20: [2.76, 3.404], known: [2.546, 3.059] },
  { n: 10, 4: [3.195, 4.058], 8: [2.998, 3.739], 20: [2.791, 3.423], known: [2.576, 3.096] },
  { n: 12, 4: [3.183, 3.966], 8: [3.034, 3.745], 20: [2.848, 3.459], known: [2.635, 3.141] },
  { n: 16, 4: [3.162, 3.861], 8: [3.066, 3.718], 20: [2.931, 3.522], known: [2.734, 3.224] },
  { n: 20, 4: [3.174, 3.836], 8: [3.099, 3.729], 20: [2.993, 3.565], known: [2.801, 3.29] },
  { n: 28, 4: [3.192, 3.784], 8: [3.153, 3.729], 20: [3.086, 3.65], known: [2.91, 3.386] },
];

/** c_n(level): a healthy set of `n` cylinders passes it once in 20 (.05) or once in 100 (.01) tests.
 *  Linear between the rows of the table; beyond 28 the line through 20 and 28 goes on (our choice).
 *  @throws RangeError below two cylinders */
export const criticalValue = (n: number, trust: PriorDegrees, level: Level): number => {
  if (!Number.isInteger(n) || n < 2)
    throw new RangeError(`criticalValue: count must be a whole number of at least 2, got ${String(n)}`);
  const column = level === 0.05 ? 0 : 1;
  const exact = table.find((row) => row.n === n);
  if (exact !== undefined) return exact[trust][column];
  const above = table.findIndex((row) => row.n > n);
  const [lower, upper] = above === -1 ? table.slice(-2) : table.slice(above - 1, above + 1);
  if (lower === undefined || upper === undefined) throw new RangeError("criticalValue: the table has a gap");
  const [from, to] = [lower[trust][column], upper[trust][column]];
  return from + ((to - from) * (n - lower.n)) / (upper.n - lower.n);
};
