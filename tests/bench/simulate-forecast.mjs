// Forecasts: how often the interval for the place where a limit is met holds the true place (statistics, section C.7), and
// how good the chances of staying above it are (section E). One cylinder of four loses from the first test on.

import { average, share } from "./simulate-compare.mjs";
import { chance, drawHistory, inputOf, usualDesign } from "./simulate-draws.mjs";

const limitRatio = 0.8;
const cylinders = 4;
/** Years that an interval is followed. */
const furthest = 90;

const median = (values) => {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
};

/** ln of the true ratio of the first cylinder to the median of the others, when both are new. */
const startOf = ({ levels }) => levels[0] - median(levels.slice(1));

/** [loss a year, tests, pooled: covered, without end; believed .04: covered, without end], per cent, 4,000 runs. */
const coverage = [
  [0.02, 4, 77.7, 60.2, 80.4, 65.3],
  [0.02, 6, 78.8, 27.2, 79.8, 28.8],
  [0.02, 8, 79.7, 6.6, 79.7, 6.8],
  [0.02, 12, 80.5, 0.1, 80.4, 0.1],
  [0.03, 4, 77.9, 39.1, 79.3, 44.4],
  [0.03, 6, 78.7, 6.9, 80.0, 7.8],
  [0.03, 8, 79.9, 0.7, 80.2, 0.7],
  [0.05, 4, 78.0, 11.5, 75.5, 15.1],
  [0.05, 6, 79.2, 0.3, 78.7, 0.4],
];

/** The line of the first cylinder, its slope believed beforehand to be N(0, believed^2) or, without that, as it falls. */
const lineOf = (core, history, { tests, believed }) => {
  const layout = core.layOut(inputOf(history, tests, usualDesign));
  const channel = core.relativeChannel(layout.tests, layout.rows, layout.columns);
  const plain = core.plainContrasts(channel.table);
  const series = layout.current.map((column) => core.seriesOf(channel, plain, { column, x: layout.x }));
  const pooled = core.pooledVariance(series, core.cellVariance(layout.noise, usualDesign.toldRepeats));
  return core.believing(core.knownLine(core.lineThrough(series[0]), pooled), believed);
};

/** The interval of the first cylinder, followed over all those years: what a screen shows ends earlier. */
const intervalOf = (core, history, { tests, believed }) => {
  const last = history.x[tests - 1];
  const found = core.crossingOn(lineOf(core, history, { tests, believed }), {
    limit: Math.log(limitRatio),
    x: { first: last - furthest / 2, last },
    decline: "shown",
    leastLossShown: 0,
  });
  return { low: found.low ?? found.notBefore ?? last + furthest, high: found.high ?? Infinity };
};

export const crossings = (core, runs) =>
  coverage.flatMap(([rate, tests, ...figures], n) => {
    const random = chance(800 + n);
    const lossOf = (i, k, x) => (i === 0 ? rate * x[k] : 0);
    const tally = [Infinity, 0.04].map((believed) => ({ believed, covered: 0, open: 0 }));
    for (let run = 0; run < runs; run += 1) {
      const history = drawHistory(random, usualDesign, { cylinders, tests, lossOf });
      // a limit met already is met at the last test, for the interval begins there
      const met = Math.max(history.x[tests - 1], (startOf(history) - Math.log(limitRatio)) / rate);
      for (const one of tally) {
        const { low, high } = intervalOf(core, history, { tests, believed: one.believed });
        if (low <= met && met <= high) one.covered += 1;
        if (high === Infinity) one.open += 1;
      }
    }
    const said = (percent) => ({ percent, digits: 1, runs: 4_000 });
    return tally.flatMap(({ believed, covered, open }, b) => {
      const what = `${String(100 * rate)} % a year, ${String(tests)} tests, ${b === 0 ? "pooled" : "believed .04"}`;
      return [
        share(`${what}, covered`, said(figures[2 * b]), covered, runs),
        share(`${what}, no end`, said(figures[2 * b + 1]), open, runs),
      ];
    });
  });

/** Brier scores with a slope believed to be N(0, .04): [tests, years ahead, score, runs]. */
const scores = [
  [4, 1, 0.0024, 4_000],
  [4, 3, 0.0278, 4_000],
  [6, 1, 0.0086, 4_000],
  [6, 3, 0.0187, 40_000],
  [8, 1, 0.0093, 4_000],
  [8, 3, 0.0114, 4_000],
  [12, 3, 0.0064, 4_000],
];

/** Four of five cylinders healthy, the fifth losing 1 to 6 % a year; only those still above the limit at the last test. */
export const chances = (core, runs) =>
  scores.map(([tests, ahead, value, saidRuns], n) => {
    const random = chance(900 + n);
    let [sum, squares, counted] = [0, 0, 0];
    while (counted < runs) {
      const rate = random.even() < 0.8 ? 0 : 0.01 + 0.05 * random.even();
      const lossOf = (i, k, x) => (i === 0 ? rate * x[k] : 0);
      const history = drawHistory(random, usualDesign, { cylinders, tests, lossOf });
      const heightAt = (years) => startOf(history) - rate * years - Math.log(limitRatio);
      const last = history.x[tests - 1];
      if (heightAt(last) < 0) continue;
      // a history that is short may not say so much of the years to come: what a screen shows ends earlier
      const line = lineOf(core, history, { tests, believed: 0.04 });
      const probability = core.chanceAbove(line, Math.log(limitRatio), last + ahead);
      const score = (probability - (heightAt(last + ahead) >= 0 ? 1 : 0)) ** 2;
      sum += score;
      squares += score * score;
      counted += 1;
    }
    const ours = sum / runs;
    const error = Math.sqrt((squares / runs - ours * ours) / runs);
    const said = { value, digits: 4, runs: saidRuns };
    const what = `score of chances, ${String(tests)} tests, ${String(ahead)} y. ahead`;
    return average(what, said, ours, { error, runs });
  });
