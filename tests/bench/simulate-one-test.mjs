// One test, and the first two of a history: the forward test among four and more cylinders (statistics, section A.5), and
// the test for a change since an earlier test (L.2).

import { share, shareWithin } from "./simulate-compare.mjs";
import { chance, drawHistory, inputOf, usualDesign } from "./simulate-draws.mjs";

const sigma = 0.03;
const prior = { sigma, df: 8 };

/** Which cylinders of one drawn test are flagged, the first `low` of them being lower by `drop`. */
const flagsOf = (core, { normal }, { cylinders, low, drop }) => {
  const readings = Array.from({ length: cylinders }, (_, i) => ({
    kind: "read",
    ln: sigma * normal() + (i < low ? Math.log(1 - drop) : 0),
    repeats: 1,
  }));
  return core.forwardTest(readings, { prior }).cylinders.map(({ flagged }) => flagged);
};

const count = (runs, one) => {
  let times = 0;
  for (let run = 0; run < runs; run += 1) if (one()) times += 1;
  return times;
};

/** A.5, forward nu0 = 8: [cylinders, false alarms, 15 % found alone, two low by 15 %: both, any]. */
const forward = [
  [2, 2.1],
  [3, 2.0, 96.9],
  [4, 1.7, 96.3, 91, 95],
  [5, 1.8, 96.2, 94, 97],
  [6, 1.9, 96.2, 95, 98],
  [8, 2.1, 96.0, 95, 99],
  [12, 2.7, 95.5, 96, 99],
];

/** Healthy cylinders flagged, one low cylinder found and nothing else, two low ones found; 40,000 and 20,000 runs. */
export const forwardTests = (core, runs) =>
  forward.flatMap(([cylinders, healthy, one, both, any], n) => {
    const random = chance(600 + n);
    const flags = (low) => flagsOf(core, random, { cylinders, low, drop: 0.15 });
    const engine = `${String(cylinders)} cyl.`;
    const lines = [
      share(
        `${engine} healthy, one flagged`,
        { percent: healthy, digits: 1, runs: 40_000 },
        count(runs, () => flags(0).includes(true)),
        runs,
      ),
    ];
    if (one !== undefined) {
      const found = count(runs, () => flags(1).every((flag, i) => flag === (i === 0)));
      lines.push(
        share(`${engine} one low by 15 %, it alone`, { percent: one, digits: 1, runs: 20_000 }, found, runs),
      );
    }
    if (both !== undefined) {
      const draws = Array.from({ length: runs }, () => flags(2).slice(0, 2));
      const said = (percent) => ({ percent, digits: 0, runs: 20_000 });
      lines.push(
        share(`${engine} two low by 15 %, both`, said(both), draws.filter(([a, b]) => a && b).length, runs),
        share(`${engine} two low by 15 %, any`, said(any), draws.filter(([a, b]) => a || b).length, runs),
      );
    }
    return lines;
  });

/** L.2: ranges over engines; 1,500 runs is the least its section names. */
const changes = [
  ["healthy, one flagged", 0, [4.6, 7]],
  ["a fall of 5 % at test 2, seen", 0.05, [17, 21]],
  ["a fall of 8 % at test 2, seen", 0.08, [50, 55]],
  ["a fall of 12 % at test 2, seen", 0.12, [88, 93]],
];

/** The test for a change, at the second test of a history. */
export const changeTests = (core, runs) =>
  [2, 4, 8].flatMap((cylinders, n) =>
    changes.map(([what, drop, [low, high]], f) => {
      const random = chance(700 + 10 * n + f);
      const seen = count(runs, () => {
        const lossOf = (i, k) => (i === 0 && k > 0 ? -Math.log(1 - drop) : 0);
        const history = drawHistory(random, usualDesign, { cylinders, tests: 2, lossOf });
        const result = core.analyseHistory(inputOf(history, 2, usualDesign));
        const flags = result.cylinders.map(({ change }) => change?.flagged === true);
        return drop > 0 ? flags[0] : flags.includes(true);
      });
      return shareWithin(`${String(cylinders)} cyl. ${what}`, { low, high, runs: 1_500 }, seen, runs);
    }),
  );
