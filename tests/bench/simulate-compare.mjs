// What the handbook says beside what came out, and how far apart the two are in standard errors of their difference. A
// printed figure stands for everything that rounds to it, so its rounding is taken off the difference first.

/** Outside this many standard errors a figure counts as not reproduced. */
const widest = 3;

const beyond = (difference, half) => Math.sign(difference) * Math.max(0, Math.abs(difference) - half);

const line = (what, said, ours, error, z) => ({
  what,
  said,
  ours,
  error,
  z,
  isWithin: Math.abs(z) <= widest,
});

/** A share in per cent. @param said - { percent, digits, runs } as printed @param count - how often, out of `runs` */
export const share = (what, said, count, runs) => {
  const pooled = (count + (said.percent / 100) * said.runs + 1) / (runs + said.runs + 2);
  const error = 100 * Math.sqrt(pooled * (1 - pooled) * (1 / runs + 1 / said.runs));
  const ours = (100 * count) / runs;
  const half = 0.5 * 10 ** -said.digits;
  const z = beyond(ours - said.percent, half) / error;
  return line(what, said.percent.toFixed(said.digits), ours.toFixed(1), error.toFixed(2), z);
};

/** A share for which only a range is given, over several engines: [low, high] in per cent. */
export const shareWithin = (what, { low, high, runs: saidRuns }, count, runs) => {
  const ours = (100 * count) / runs;
  const pooled = (count + 1) / (runs + 2);
  const error = 100 * Math.sqrt(pooled * (1 - pooled) * (1 / runs + 1 / saidRuns));
  const z = (ours - Math.min(high, Math.max(low, ours))) / error;
  return line(what, `${String(low)}-${String(high)}`, ours.toFixed(1), error.toFixed(2), z);
};

/** A mean. @param error - standard error of ours alone; the handbook's is taken to scale with its runs */
export const average = (what, said, ours, { error, runs }) => {
  const both = error * Math.sqrt(1 + runs / said.runs);
  const z = beyond(ours - said.value, 0.5 * 10 ** -said.digits) / both;
  return line(what, said.value.toFixed(said.digits), ours.toFixed(said.digits), both.toFixed(5), z);
};

/** A quantile of the delay in tests. @param said - { delay: number or "never", runs, slack: what the level is rounded by }
 *  @param delays - of every history, infinite where nothing was found
 *  The share found within `delay` tests may not fall short of `level`, that within one test less may not exceed it. */
export const delay = (what, level, said, delays) => {
  const found = (within) => delays.filter((tests) => tests <= within).length / delays.length;
  const error = Math.sqrt(level * (1 - level) * (1 / delays.length + 1 / said.runs));
  const { slack = 0 } = said;
  const isNever = said.delay === "never";
  const short = isNever ? 0 : Math.max(0, level - slack - found(said.delay));
  const early = Math.max(0, found(isNever ? said.last : said.delay - 1) - level - slack);
  const sorted = [...delays].sort((a, b) => a - b);
  const ours = sorted[Math.ceil(level * delays.length) - 1];
  const text = (tests) => (Number.isFinite(tests) ? `${String(tests)} tests` : "not found");
  const z = (short > early ? short : -early) / error;
  return line(what, text(isNever ? Infinity : said.delay), text(ours), (100 * error).toFixed(2), z);
};

const widths = [52, 11, 11, 8, 8];
const row = (cells) =>
  cells
    .map((cell, i) => (i === 0 ? cell.padEnd(widths[0]) : cell.padStart(widths[i])))
    .join("")
    .trimEnd();

/** Writes one table. @returns how many of its figures lie outside */
export const printTable = (title, lines, write) => {
  write(`\n${title}\n${row(["", "said", "here", "error", "apart"])}\n`);
  for (const { what, said, ours, error, z, isWithin } of lines)
    write(`${row([what, said, ours, error, z.toFixed(1)])}${isWithin ? "" : "   outside"}\n`);
  return lines.filter(({ isWithin }) => !isWithin).length;
};
