// What the models cost, as ratios to loops that do the same arithmetic and nothing else, in one run. The library and the loop
// must agree on the numbers, else it stops.

import { bareAlpha, bareCycle } from "./bare-models.mjs";
import { coreFromSource } from "./core-bundle.mjs";
import { against, interleaved } from "./rounds.mjs";
import { leakDownTexts } from "./sample-leak-down.mjs";
import { evenly } from "../random.mjs";

const rounds = 15;
const seed = 20_261;
const air = 101_325;
const core = await coreFromSource();

// The engine of the worked examples, and 1,000 draws around it as for somebody who knows it roughly.
const engine = {
  bore: 0.086,
  stroke: 0.086,
  rod: 0.143,
  ratio: 10,
  closes: 60,
  speed: 250,
  leak: 1e-6,
  wall: 360,
  start: 320,
  hose: 0,
};

const drawn = (count) => {
  const random = evenly(seed);
  const normal = () => Array.from({ length: 12 }, random).reduce((sum, x) => sum + x, -6);
  return Array.from({ length: count }, () => ({
    ...engine,
    rod: engine.rod + 0.01 * normal(),
    ratio: engine.ratio + 0.2 * normal(),
    closes: engine.closes + 5 * normal(),
    speed: engine.speed * Math.exp(0.1 * normal()),
    leak: engine.leak * Math.exp(0.47 * normal()),
    wall: engine.wall + 15 * normal(),
    start: engine.start + 8 * normal(),
  }));
};

const peakByCore = (e) =>
  core.crankingCycle({
    cylinder: {
      bore: core.length(e.bore),
      stroke: core.length(e.stroke),
      rod: core.length(e.rod),
      compressionRatio: e.ratio,
    },
    intakeCloses: core.angle(e.closes),
    speed: core.speed(e.speed),
    air: core.absolutePressure(air),
    start: core.temperature(e.start),
    wall: core.temperature(e.wall),
    leak: core.area(e.leak),
    heat: "hohenberg",
    heatFactor: 1,
    gamma: "variable",
    hose: core.volume(e.hose),
  }).peak;

// 10,000 leak-down readings of 1 to 79 of 80 psi, at sea level.
const psi = 6_894.757;
const supply = 80 * psi;
const readings = (() => {
  const random = evenly(seed);
  return Array.from({ length: 10_000 }, () => (1 + 78 * random()) * psi);
})();
const restrictor = { bore: core.length(1.016e-3) };

const leakReading = (pascals) => ({
  supply: core.gaugePressure(supply),
  cylinder: core.gaugePressure(pascals),
  ambient: core.absolutePressure(air),
});
const alphaByCore = (pascals) => core.alphaOf(leakReading(pascals));
const areaByCore = (pascals) => core.leakFigures(leakReading(pascals), restrictor).size.area;

// 60 leak-down tests of 28 cylinders, read from text once.
const { record } = core.readEngineRecord(leakDownTexts(28, 60), [], { demo: false });

const draws = drawn(1_000);
const over = (list, of) => () => list.reduce((total, item) => total + of(item), 0);
const milliseconds = ({ name, run }) => {
  const start = process.hrtime.bigint();
  if (!Number.isFinite(run())) throw new Error(`${name} gave no number`);
  return Number(process.hrtime.bigint() - start) / 1e6;
};
const firstUse = milliseconds({ name: "first use", run: over(draws, peakByCore) });

const agree = (what, list, ours, bare, within) => {
  const furthest = Math.max(...list.map((item) => Math.abs(ours(item) / bare(item) - 1)));
  if (!(furthest <= within)) throw new Error(`${what}: library and bare loop differ by ${String(furthest)}`);
};
agree("peak pressure", draws, peakByCore, bareCycle, 1e-4);
const bareLeak = (pascals) => bareAlpha(supply + air, pascals + air, air);
agree("leak", readings, alphaByCore, bareLeak, 1e-9);

const assessed = (test) => core.assessTest(record, test).cylinders.length;
const variants = [
  { name: "1,000 draws, bare loop", run: over(draws, bareCycle) },
  { name: "1,000 draws, library", run: over(draws, peakByCore), base: "1,000 draws, bare loop" },
  { name: "10,000 leaks, bare formula", run: over(readings, bareLeak) },
  { name: "10,000 leaks, library", run: over(readings, alphaByCore), base: "10,000 leaks, bare formula" },
  { name: "10,000 leaks, hole, area and doubt", run: over(readings, areaByCore) },
  { name: "28 cylinders x 60, newest test", run: () => assessed(record.tests.at(-1)) },
  { name: "28 cylinders x 60, every test", run: over(record.tests, assessed) },
];

export const measure = () => {
  const all = interleaved(variants, rounds, milliseconds);
  return {
    title: `Models, warm; medians of ${String(rounds)} interleaved rounds`,
    head: ["", "ms", "ratio"],
    rows: variants.map(({ name, base }) => {
      const { milliseconds: ms, ratio } = against(all, name, base ?? name);
      return [name, ms.toFixed(1), base === undefined ? "" : ratio.toFixed(2)];
    }),
    notes: [`1,000 draws on first use in the process: ${firstUse.toFixed(0)} ms.`],
  };
};
