// At once or bit by bit: how a cylinder that failed so or so is called (statistics, section D), and a healthy one if asked.

import { share, shareWithin } from "./simulate-compare.mjs";
import { chance, drawHistory, inputOf, usualDesign } from "./simulate-draws.mjs";

const middle = (k, _x, tests) => k >= Math.floor(tests / 2);
const lastOnly = (k, _x, tests) => k === tests - 1;

/** [truth, loss at test k, then for 5, 8 and 12 tests: none, sudden, gradual, cannot tell], per cent; from the first
 *  test on, sizes in ln units; 4,000 histories. */
const truths = [
  ["healthy", () => 0, [96.1, 2.3, 0.3, 1.4], [95.4, 3.2, 0.2, 1.2], [94.8, 4.1, 0.1, 1.0]],
  ["3 % a year", (k, x) => 0.03 * x[k], [39, 7.7, 26.9, 26.4], [1.9, 7.5, 69.8, 20.8], [0, 1.5, 95.7, 2.8]],
  ["6 % a year", (k, x) => 0.06 * x[k], [3.2, 5.8, 74, 17.1], [0, 1, 97.5, 1.4], [0, 0, 100, 0.1]],
  [
    "step .08",
    (...at) => (middle(...at) ? 0.08 : 0),
    [14.4, 41, 11, 33.6],
    [2.6, 58, 8.2, 31.1],
    [0.4, 78.4, 4.5, 16.7],
  ],
  [
    "step .15",
    (...at) => (middle(...at) ? 0.15 : 0),
    [0, 86.6, 3.5, 9.9],
    [0, 95, 1.1, 3.9],
    [0, 99.1, 0.3, 0.6],
  ],
  [
    "step .15 at the last test",
    (...at) => (lastOnly(...at) ? 0.15 : 0),
    [0.6, 93.6, 1.3, 4.5],
    [0.2, 98.3, 0.3, 1.2],
    [0.1, 99.5, 0, 0.3],
  ],
];

const shapes = ["none", "sudden", "gradual", "cannot-tell"];
const lengths = [5, 8, 12];
const cylinders = 4;

/** What the first of four cylinders is called. */
const shapeOf = (core, history, tests) => {
  const layout = core.layOut(inputOf(history, tests, usualDesign));
  const channel = core.relativeChannel(layout.tests, layout.rows, layout.columns);
  const series = layout.current.map((column) =>
    core.seriesOf(channel, channel.contrasts, { column, x: layout.x }),
  );
  const pooled = core.pooledVariance(series, core.cellVariance(layout.noise, usualDesign.toldRepeats));
  return core.stepOrLine(series[0], core.stepScale(series, pooled).variance).shape;
};

export const callings = (core, runs) =>
  truths.flatMap(([truth, lossAt, ...said], f) =>
    lengths.flatMap((tests, n) => {
      const random = chance(1_100 + 10 * f + n);
      const lossOf = (i, k, x) => (i === 0 ? lossAt(k, x, tests) : 0);
      const called = Array.from({ length: runs }, () =>
        shapeOf(core, drawHistory(random, usualDesign, { cylinders, tests, lossOf }), tests),
      );
      return shapes.map((shape, s) =>
        share(
          `${truth}, ${String(tests)} tests: ${shape}`,
          { percent: said[n][s], digits: 1, runs: 4_000 },
          called.filter((one) => one === shape).length,
          runs,
        ),
      );
    }),
  );

/** [truth, loss at test k, word wanted, tests, least share of it among those with an early alarm, per cent]; the handbook has
 *  `stepped down` for all of them. One test a year. */
const starts = [
  ["5 % a year, of 8 tests", (k, x) => 0.05 * x[k], "falling", 8, 95],
  ["5 % a year, of 12 tests", (k, x) => 0.05 * x[k], "falling", 12, 97],
  ["12 % at test 2, of 5 tests", (k) => (k >= 1 ? 0.128 : 0), "stepped-down", 5, 97],
  ["12 % at test 2, of 8 tests", (k) => (k >= 1 ? 0.128 : 0), "stepped-down", 8, 97],
  ["12 % at test 3, of 8 tests", (k) => (k >= 2 ? 0.128 : 0), "stepped-down", 8, 97],
];

export const startWords = (core, runs) =>
  starts.map(([truth, lossAt, word, tests, least], n) => {
    const random = chance(1_300 + n);
    const design = { ...usualDesign, gaps: [1, 1] };
    const lossOf = (i, k, x) => (i === 0 ? lossAt(k, x) : 0);
    const alarmed = Array.from({ length: runs }, () => {
      const history = drawHistory(random, design, { cylinders, tests, lossOf });
      return core.analyseHistory(inputOf(history, tests, design)).cylinders[0];
    }).filter(({ alarms }) => alarms.includes("early-change"));
    const called = alarmed.filter(({ course }) => course === word).length;
    return shareWithin(
      `${truth}: ${word}`,
      { low: least, high: 100, runs: Infinity },
      called,
      alarmed.length,
    );
  });
