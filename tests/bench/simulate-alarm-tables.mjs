// The handbook's figures about alarms (statistics, sections I.3, I.4, L.8), each with the histories it was computed from.

import { delay, share, shareWithin } from "./simulate-compare.mjs";
import { failingAlarms, healthyAlarms, stepping, wearing, within } from "./simulate-alarms.mjs";
import { usualDesign } from "./simulate-draws.mjs";

const delays = 8;
const faults = {
  "1.5 % a year": wearing(0.015),
  "3 % a year": wearing(0.03),
  "6 % a year": wearing(0.06),
  "step .08": stepping(0.08),
  "step .15": stepping(0.15),
};

/** I.3: false alarms in 12 tests, then found / median / nine in ten, for the faults above. 4,000 histories each. */
const recommended = {
  2: [0.9, [41, "never", "never"], [95, 6, 8], [100, 4, 5], [67, 5, "never"], [99, 2, 4]],
  4: [1.8, [55, 8, "never"], [99, 5, 7], [100, 3, 5], [85, 4, "never"], [100, 2, 2]],
  6: [3.0, [60, 8, "never"], [99, 5, 7], [100, 3, 4], [91, 3, 8], [100, 2, 2]],
  8: [4.5, [63, 8, "never"], [98, 5, 7], [99, 3, 4], [93, 3, 7], [100, 2, 2]],
};

/** Rule C.4 alone, as I.3 has it. */
export const ruleAlone = (core, runs) =>
  Object.entries(recommended).flatMap(([count, [falseAlarms, ...found]], n) => {
    const cylinders = Number(count);
    const engine = `${count} cyl.`;
    const healthy = healthyAlarms(core, { runs, seed: 100 + n, cylinders, wanted: ["c4"] });
    const said = { percent: falseAlarms, digits: 1, runs: 4_000 };
    return [
      share(`${engine} healthy, alarm in 12 tests`, said, within(healthy.c4, 12), runs),
      ...Object.entries(faults).flatMap(([name, fault], f) => {
        const [percent, middle, nine] = found[f];
        const { c4 } = failingAlarms(core, {
          runs,
          seed: 200 + 10 * n + f,
          cylinders,
          fault,
          wanted: ["c4"],
        });
        const what = `${engine} ${name}`;
        const quantile = (tests) => ({ delay: tests, last: delays, runs: 4_000 });
        return [
          share(`${what}, found`, { percent, digits: 0, runs: 4_000 }, within(c4, delays), runs),
          delay(`${what}, half found after`, 0.5, quantile(middle), c4),
          delay(`${what}, nine in ten after`, 0.9, quantile(nine), c4),
        ];
      }),
    ];
  });

/** L.8: [cylinders, own scatter in the slope, scatter of the engine only]; 1,500 runs is the least its section names. */
const manyCylinders = [
  [2, 1.8, 1.2],
  [4, 1.6, 1.7],
  [8, 3.1, 5.2],
  [12, 3.5, 8.4],
  [28, 3.4, 16.4],
];

/** L.8, four cylinders: faults in true per cent, so a step of 8 % is -ln .92. [found with L.8, with C.4]. */
const fourCylinders = [
  ["1.5 % a year", wearing(-Math.log(1 - 0.015)), 54, 55],
  ["3 % a year", wearing(-Math.log(1 - 0.03)), 99, 99],
  ["step of 8 %", stepping(-Math.log(1 - 0.08)), 87, 88],
];

const leastRuns = 1_500;

/** The rule of the tool, and what the own scatter changes. */
export const ruleInFull = (core, runs) => [
  ...manyCylinders.flatMap(([cylinders, own, engine], n) => {
    const wanted = ["l8", "c4"];
    const looks = healthyAlarms(core, { runs, seed: 300 + n, cylinders, wanted });
    const said = (percent) => ({ percent, digits: 1, runs: leastRuns });
    const what = `${String(cylinders)} cyl. healthy, alarm in 12 tests`;
    return [
      share(`${what}, L.8`, said(own), within(looks.l8, 12), runs),
      share(`${what}, C.4`, said(engine), within(looks.c4, 12), runs),
    ];
  }),
  ...fourCylinders.flatMap(([name, fault, own, engine], n) => {
    const wanted = ["l8", "c4"];
    const found = failingAlarms(core, { runs, seed: 320 + n, cylinders: 4, fault, wanted });
    const said = (percent) => ({ percent, digits: 0, runs: leastRuns });
    return [
      share(`4 cyl. ${name}, found, L.8`, said(own), within(found.l8, delays), runs),
      share(`4 cyl. ${name}, found, C.4`, said(engine), within(found.c4, delays), runs),
    ];
  }),
];

/** L.8, repeated looks. [alarmed by test, per cent]. */
export const manyLooks = (core, runs) => {
  const { l8 } = healthyAlarms(core, { runs, seed: 400, cylinders: 4, to: 30, wanted: ["l8"] });
  const said = [
    [12, 1.6],
    [20, 3.4],
    [30, 4.9],
  ];
  return said.map(([look, percent]) =>
    share(
      `4 cyl. healthy, alarm in ${String(look)} tests, L.8`,
      { percent, digits: 1, runs: leastRuns },
      within(l8, look),
      runs,
    ),
  );
};

/** I.4: what else the noise could be; [false alarms, 3 % a year found, step .08 found], C.4 alone, 4,000 histories. */
const otherNoise = [
  ["3 repeats", { repeats: 3 }, 0.3, 100, 99],
  ["no bad readings", { badShare: 0 }, 1.1, 100, 90],
  ["readings scatter 3 %", { reading: 0.03 }, 4.3, 79, 45],
  ["gauges and battery twice", { gauge: 0.06, common: 0.04 }, 2.0, 99, 85],
  ["read to 5 psi", { division: 5 }, 3.4, 98, 76],
];

export const sensitivity = (core, runs) =>
  otherNoise.flatMap(([name, change, falseAlarms, wear, step], n) => {
    const design = { ...usualDesign, ...change };
    const shared = { runs, cylinders: 4, wanted: ["c4"], design };
    const found = (seed, fault) => within(failingAlarms(core, { ...shared, seed, fault }).c4, delays);
    const said = (percent, digits) => ({ percent, digits, runs: 4_000 });
    const healthy = healthyAlarms(core, { ...shared, seed: 500 + n });
    return [
      share(`${name}: healthy, alarm`, said(falseAlarms, 1), within(healthy.c4, 12), runs),
      share(`${name}: 3 % a year, found`, said(wear, 0), found(520 + n, wearing(0.03)), runs),
      share(`${name}: step .08, found`, said(step, 0), found(540 + n, stepping(0.08)), runs),
    ];
  });

/** L.2: healthy histories that the early change alarms, and a step of 12 % at test 2 as it and as C.4 alone find it.
 *  Ranges over engines; that of C.4 can only be meant from four cylinders on: two give about 7 per cent. */
export const startAlarms = (core, runs) =>
  [2, 4, 8].flatMap((cylinders, n) => {
    const engine = `${String(cylinders)} cyl.`;
    const healthy = healthyAlarms(core, {
      runs,
      seed: 440 + n,
      cylinders,
      from: 3,
      to: 4,
      wanted: ["early"],
    });
    const fault = (k) => (k >= 1 ? -Math.log(1 - 0.12) : 0);
    const wanted = ["early", "c4"];
    const found = failingAlarms(core, { runs, seed: 450 + n, cylinders, fault, wanted, after: 2 });
    const said = { percent: cylinders === 2 ? 1.7 : 0.5, digits: 1, runs: leastRuns };
    const range = (low, high) => ({ low, high, runs: leastRuns });
    const step = `${engine} step of 12 % at test 2, found`;
    const alone = shareWithin(`${step}, C.4`, range(24, 42), within(found.c4, 12), runs);
    return [
      share(`${engine} healthy, early change`, said, within(healthy.early, 12), runs),
      shareWithin(`${step}, early change`, range(83, 90), within(found.early, 12), runs),
      ...(cylinders > 2 ? [alone] : []),
    ];
  });

/** I.1: [cylinders, each cylinder's own line, both last readings below the baseline]; 3,000 histories. */
const ownLines = [
  [4, 28.2, 1.0],
  [6, 30.1, 1.7],
  [8, 29.5, 1.6],
];

export const withoutComparing = (core, runs) =>
  ownLines.flatMap(([cylinders, raw, below], n) => {
    const looks = healthyAlarms(core, { runs, seed: 480 + n, cylinders, wanted: ["raw", "twoBelow"] });
    const said = (percent) => ({ percent, digits: 1, runs: 3_000 });
    const engine = `${String(cylinders)} cyl.`;
    return [
      share(`${engine} each by its own line`, said(raw), within(looks.raw, 12), runs),
      share(`${engine} two last readings, contrasts`, said(below), within(looks.twoBelow, 12), runs),
    ];
  });
