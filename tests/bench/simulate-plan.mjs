// How many more tests until a loss would show: what the library foretells from the plan alone, against histories drawn with
// the loss in them and judged by the rule of the tool.

import { delay, shareWithin } from "./simulate-compare.mjs";
import { failingAlarms } from "./simulate-alarms.mjs";
import { chance as randomFrom, drawHistory, inputOf, usualDesign } from "./simulate-draws.mjs";

/** [cylinders, tests made, years between, repeats, began, loss a year, repeats of further tests if others]. */
const plans = [
  [4, 4, 0.625, 1, "last-test", 0.03],
  [4, 4, 0.625, 3, "last-test", 0.03],
  [2, 4, 0.625, 1, "last-test", 0.03],
  [8, 4, 0.625, 1, "last-test", 0.03],
  [12, 4, 0.625, 1, "last-test", 0.03],
  [4, 10, 0.5, 1, "last-test", 0.03],
  [4, 4, 2, 1, "last-test", 0.03],
  [4, 4, 0.25, 1, "last-test", 0.03],
  [6, 6, 1, 1, "last-test", 0.015],
  [4, 4, 0.625, 1, "last-test", 0.06],
  [4, 2, 0.625, 1, "first-test", 0.03],
  [4, 1, 1, 1, "first-test", 0.03],
  [4, 2, 1, 3, "first-test", 0.03],
  [4, 4, 0.625, 1, "last-test", 0.03, 3],
  [4, 8, 1, 1, "last-test", 0.03, 3],
  [2, 3, 1, 1, "first-test", 0.03, 3],
  [6, 6, 0.5, 2, "last-test", 0.03, 3],
];

const chance = 0.8;
/** "8 in 10" stands for anything from 75 to 85 in 100. */
const slack = 0.05;

/** Further tests until 8 in 10 of the losing cylinders have raised an alarm. */
export const plannedTests = (core, runs) =>
  plans.map(([cylinders, made, spacing, repeats, began, loss, planned = repeats], n) => {
    const gaps = [spacing, spacing];
    const design = { ...usualDesign, gaps, repeats, toldRepeats: repeats, laterRepeats: [made, planned] };
    const onset = began === "first-test" ? 0 : made - 1;
    const { tests } = core.testsUntilShown({
      kind: "cranking",
      cylinders,
      repeats,
      planned,
      made: Array.from({ length: made }, (_, k) => k * spacing),
      spacing,
      loss,
      began,
    });
    const { l8 } = failingAlarms(core, {
      runs,
      seed: 1_000 + n,
      cylinders,
      fault: (k, x) => loss * Math.max(0, x[k] - x[onset]),
      wanted: ["l8"],
      after: made,
      ends: "right-alarm",
      to: made + tests + 3,
      design,
    });
    const engine = `${String(cylinders)} cyl., ${String(made)} made, ${String(spacing)} y. apart`;
    const sought = `${String(100 * loss)} % since ${began === "first-test" ? "ever" : "now"}`;
    const often =
      planned === repeats ? `${String(repeats)}x` : `${String(repeats)}x, now ${String(planned)}x`;
    const what = `${engine}, ${often}, ${sought}`;
    return delay(what, chance, { delay: tests, runs: Infinity, slack }, l8);
  });

/** [cylinders, all losing alike; tests made, years between, repeats, began, loss a year]; one gauge throughout. */
const wholePlans = [
  [1, 4, 1, 1, "last-test", 0.03],
  [1, 12, 1, 1, "last-test", 0.03],
  [1, 4, 2, 1, "last-test", 0.03],
  [1, 6, 0.5, 3, "last-test", 0.03],
  [1, 5, 0.625, 1, "last-test", 0.03],
  [1, 5, 0.625, 1, "last-test", 0.06],
  [1, 1, 1, 1, "first-test", 0.03],
  [1, 2, 1, 1, "first-test", 0.03],
  [1, 4, 1, 1, "first-test", 0.02],
  [2, 4, 1, 1, "last-test", 0.03],
  [2, 3, 0.625, 1, "first-test", 0.03],
  [4, 6, 1, 1, "last-test", 0.02],
];

/** How many of the losing engines are called falling at the test foretold, which is to be 8 in 10 or more, and at the one
 *  before, which is to be fewer. */
export const plannedWholes = (core, runs) =>
  wholePlans.flatMap(([cylinders, made, spacing, repeats, began, loss], n) => {
    const design = {
      ...usualDesign,
      gaps: [spacing, spacing],
      gaugeChanged: 0,
      wear: 0,
      repeats,
      toldRepeats: repeats,
    };
    const random = randomFrom(2_000 + n);
    const now = inputOf(drawHistory(random, design, { cylinders, tests: made }), made, design);
    const { tests } = core.wholeTestsUntilShown(now, { spacing, loss, began, repeats });
    const onset = began === "first-test" ? 0 : made - 1;
    const lossOf = (_i, k, x) => loss * Math.max(0, x[k] - x[onset]);
    const last = made + tests;
    const histories = Array.from({ length: runs }, () =>
      drawHistory(random, design, { cylinders, tests: last, lossOf }),
    );
    const found = (look) =>
      histories.filter(
        (history) => core.analyseHistory(inputOf(history, look, design)).common.word === "falling",
      ).length;
    const since = began === "first-test" ? "ever" : "now";
    const what = `${String(cylinders)} alike, ${String(made)} made, ${String(spacing)} y., ${String(repeats)}x, ${String(100 * loss)} % since ${since}`;
    const [least, most] = [-1, 1].map((sign) => Math.round(100 * (chance + sign * slack)));
    return [
      shareWithin(
        `${what}: at ${String(last)}`,
        { low: least, high: 100, runs: Infinity },
        found(last),
        runs,
      ),
      ...(last > 4
        ? [
            shareWithin(
              `${what}: at ${String(last - 1)}`,
              { low: 0, high: most, runs: Infinity },
              found(last - 1),
              runs,
            ),
          ]
        : []),
    ];
  });
