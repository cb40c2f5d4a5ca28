// Invented histories to try the rules on: how an engine and its gauges are supposed to scatter. Same seed, same histories.

/** Even numbers in 0 ... 1 (sfc32, a small generator in the public domain). */
const evenlyFrom = (seed) => {
  let [a, b, c, d] = [seed, 0x9e3779b9, 0x243f6a88, 0xb7e15162];
  const next = () => {
    const sum = (a + b + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return (sum >>> 0) / 2 ** 32;
  };
  for (let k = 0; k < 20; k += 1) next();
  return next;
};

/** Chance: `even()` in 0 ... 1, `normal()` of mean 0 and standard deviation 1 (Box and Muller, both halves used). */
export const chance = (seed) => {
  const even = evenlyFrom(seed);
  let kept;
  const normal = () => {
    if (kept !== undefined) {
      const value = kept;
      kept = undefined;
      return value;
    }
    const size = Math.sqrt(-2 * Math.log(1 - even()));
    const turn = 2 * Math.PI * even();
    kept = size * Math.sin(turn);
    return size * Math.cos(turn);
  };
  return { even, normal };
};

/** Standard deviations in ln units, pressures in psi; all of them choices of the handbook (statistics, section I). */
export const usualDesign = {
  middle: 165,
  /** Years from test to test, evenly between. */
  gaps: [0.25, 1],
  /** Cylinder to cylinder when new. */
  spread: 0.025,
  /** Common to a test; from gauge to gauge, and how often the gauge is another one. */
  common: 0.02,
  gauge: 0.03,
  gaugeChanged: 0.3,
  /** All cylinders, a year. */
  wear: 0.005,
  /** Cylinder by test. */
  interaction: 0.01,
  reading: 0.015,
  /** A bad seal or short cranking: how often, and how far down. */
  badShare: 0.03,
  bad: 0.06,
  division: 1,
  repeats: 1,
  /** What the analysis is told of the repeats. */
  toldRepeats: 1,
  /** From that test on (from 0) so many repeats instead, and told so. */
  laterRepeats: [Infinity, 1],
};

/** One history. @param lossOf - ln units that cylinder i has lost at test k (from 0), given the dates
 *  @returns dates [years], the true levels of the cylinders, gauges by number, and y = ln(mean reading) by test */
export const drawHistory = ({ even, normal }, design, { cylinders, tests, lossOf = () => 0 }) => {
  const x = [0];
  const [least, most] = design.gaps;
  while (x.length < tests) x.push(x.at(-1) + least + (most - least) * even());
  const levels = Array.from({ length: cylinders }, () => design.spread * normal());
  const gauges = [];
  let gauge = design.gauge * normal();
  const [from, later] = design.laterRepeats;
  const rows = x.map((years, k) => {
    const repeats = k >= from ? later : design.repeats;
    const isChanged = k > 0 && even() < design.gaugeChanged;
    if (isChanged) gauge = design.gauge * normal();
    gauges.push((gauges.at(-1) ?? 0) + (isChanged ? 1 : 0));
    const shared = Math.log(design.middle) + gauge + design.common * normal() - design.wear * years;
    return levels.map((level, i) => {
      const cell = shared + level - lossOf(i, k, x) + design.interaction * normal();
      let sum = 0;
      for (let m = 0; m < repeats; m += 1) {
        const bad = even() < design.badShare ? Math.abs(design.bad * normal()) : 0;
        const read = Math.exp(cell + design.reading * normal() - bad);
        sum += Math.max(design.division, Math.round(read / design.division) * design.division);
      }
      return Math.log(sum / repeats);
    });
  });
  return { x, levels, gauges, rows };
};

/** The first `count` tests of a history as the analysis takes them. */
export const inputOf = (
  { x, gauges, rows },
  count,
  { toldRepeats, laterRepeats: [from, later] },
  more = {},
) => ({
  kind: "cranking",
  labels: rows[0].map((_, i) => String(i + 1)),
  axis: { kind: "dates", unit: "year" },
  services: [],
  tests: rows.slice(0, count).map((row, k) => ({
    id: `t${String(k + 1)}`,
    x: x[k],
    years: x[k],
    use: "full",
    gauge: `g${String(gauges[k])}`,
    correctionUncertainty: 0,
    cells: row.map((ln) => ({ kind: "read", ln, repeats: k >= from ? later : toldRepeats })),
  })),
  ...more,
});
