// How many more tests until a loss would show: what the library foretells from the plan alone, against histories drawn with
// the loss in them and judged by the rule of the tool.

import { delay } from "./simulate-compare.mjs";
import { failingAlarms } from "./simulate-alarms.mjs";
import { usualDesign } from "./simulate-draws.mjs";

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
