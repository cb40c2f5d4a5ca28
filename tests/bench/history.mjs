// What a history costs, against the same numbers made by plain loops over typed arrays, in one run. The two must agree on
// every number they share, else it stops.

import { bareHistory, figures } from "./bare-history.mjs";
import { coreFromSource } from "./core-bundle.mjs";
import { against, interleaved } from "./rounds.mjs";
import { evenly } from "../random.mjs";

/** Cylinders, tests, and the most times the bare loop that the library may take. */
const sizes = [
  [4, 12],
  [8, 40],
  [28, 60, 3],
];
const rounds = 15;
const seed = 20_263;
const limitRatio = 0.8;
const minimum = Math.log(100);

/** The reference history of the handbook: invented readings, psi. */
const reference = {
  x: [0, 0.5, 1, 1.5, 2.5, 3, 4, 4.5],
  pressures: [
    [172, 169, 171, 174],
    [168, 166, 166, 171],
    [176, 172, 171, 178],
    [165, 163, 157, 167],
    [174, 170, 160, 175],
    [167, 164, 150, 169],
    [161, 158, 141, 163],
    [172, 168, 147, 173],
  ],
};

/** Invented readings: one cylinder wears, all scatter. */
const drawn = (cylinders, tests) => {
  const random = evenly(seed);
  const scatter = () => (random() + random() + random() - 1.5) * 0.03;
  return {
    x: Array.from({ length: tests }, (_, k) => k * 0.5),
    pressures: Array.from({ length: tests }, (_, k) => {
      const common = scatter();
      return Array.from(
        { length: cylinders },
        (__, i) => 170 * Math.exp(common + scatter() - (i === 2 ? 0.01 * k : 0)),
      );
    }),
  };
};

const inputOf = ({ x, pressures }, more = {}) => ({
  kind: "cranking",
  labels: pressures[0].map((_, i) => String(i + 1)),
  axis: { kind: "dates", unit: "year" },
  tests: pressures.map((row, k) => ({
    id: `t${String(k + 1)}`,
    x: x[k],
    years: x[k],
    gauge: "red",
    use: "full",
    correctionUncertainty: 0,
    cells: row.map((value) => ({ kind: "read", ln: Math.log(value), repeats: 1 })),
  })),
  services: [],
  limitRatio,
  ...more,
});

const bareOf = ({ x, pressures }) => {
  const bare = bareHistory(pressures.length, pressures[0].length);
  const [places, flat] = [Float64Array.from(x), Float64Array.from(pressures.flat())];
  return () => bare(places, flat, limitRatio);
};

/** What the library says, by the names of the bare figures; what it leaves out is absent. */
const saidOf = (core, readings) => {
  const { cylinders } = core.analyseHistory(inputOf(readings));
  return cylinders.map(({ theilSen, pooled, twoBelow, contrasts, limit, stays }) => {
    const rounded = contrasts.map(core.roundForTies);
    const order = core.kendall(readings.x, rounded);
    const { intercept } = core.theilSen(readings.x, rounded, 0.95);
    const crossing =
      limit.crossing === undefined ? {} : { crossing: limit.crossing, from: limit.low, until: limit.high };
    return {
      slope: theilSen.slope,
      low: theilSen.low,
      high: theilSen.high,
      intercept,
      s: order.s,
      orderP: order.lowerTail,
      pooledP: pooled.p,
      twoBelowT: twoBelow.t,
      twoBelowP: twoBelow.p,
      ...crossing,
      ...Object.fromEntries(
        stays
          .filter(({ ahead }) => ahead <= 3)
          .map(({ ahead, probability }) => [`stay${String(ahead)}`, probability]),
      ),
    };
  });
};

const agree = (core, name, readings) => {
  const bare = bareOf(readings)();
  saidOf(core, readings).forEach((said, i) => {
    for (const [figure, value] of Object.entries(said)) {
      const other = bare[i * figures.length + figures.indexOf(figure)];
      // past 40 tests the bare order goes by a normal tail of seven digits
      const within = figure === "orderP" && readings.x.length > 40 ? 1e-6 : 1e-9;
      if (value === undefined || Math.abs(value - other) <= within * Math.max(1, Math.abs(value))) continue;
      throw new Error(
        `${name}, cylinder ${String(i + 1)}, ${figure}: the library says ${String(value)}, the bare loop ${String(other)}`,
      );
    }
  });
};

export const measure = async () => {
  const core = await coreFromSource("statistics/index.ts", "history/index.ts", "history/contrasts.ts");
  agree(core, "reference history", reference);
  const variants = sizes.flatMap(([cylinders, tests, target]) => {
    const readings = drawn(cylinders, tests);
    const name = `${String(cylinders)} cylinders x ${String(tests)} tests`;
    agree(core, name, readings);
    const base = `${name}, bare loop`;
    const [plain, whole] = [inputOf(readings), inputOf(readings, { minimum })];
    return [
      { name: base, run: bareOf(readings) },
      { name: `${name}, library`, run: () => core.analyseHistory(plain), base, target },
      { name: `${name}, with a maker's minimum`, run: () => core.analyseHistory(whole), base },
    ];
  });
  const milliseconds = ({ run }) => {
    const start = process.hrtime.bigint();
    let runs = 0;
    while (runs < 3 || process.hrtime.bigint() - start < 20_000_000n) {
      run();
      runs += 1;
    }
    return Number(process.hrtime.bigint() - start) / 1e6 / runs;
  };
  const all = interleaved(variants, rounds, milliseconds);
  return {
    title: `History, warm; medians of ${String(rounds)} interleaved rounds`,
    head: ["", "ms", "ratio", "target"],
    rows: variants.map(({ name, base, target }) => {
      const { milliseconds: ms, ratio } = against(all, name, base ?? name);
      return [name, ms.toFixed(2), base === undefined ? "1" : ratio.toFixed(2), target?.toFixed(1) ?? ""];
    }),
    notes: [
      "The bare loop adds Kendall's test, which the library makes only where it is asked for, and leaves out the engine-wide line, the change tests, plans and words.",
    ],
  };
};
