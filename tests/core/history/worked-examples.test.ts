// Expected values: handbook/statistics.md L.11, computed there from invented readings; tolerance 1e-9 unless said.

import { expect, test } from "vitest";
import { analyseHistory } from "../../../packages/core/src/history/index.ts";
import { changeTest } from "../../../packages/core/src/history/change-test.ts";
import { medianPolish } from "../../../packages/core/src/history/median-polish.ts";
import { historyOf, kept, leaking, repaired, testsOf } from "./tables.ts";

const dropped = ["152 149 155 150", "147 146 136 146", "150 148 135 149"];
const gaps = ["151 148 154 150", "146 - 150 147", "155 151 153 155", "149 146 146 150", "153 148 144 -"];
const gapsAt = [0, 1, 2.2, 3.1, 4];
const tableOf = (rows: readonly string[]) => ({
  rows: rows.length,
  columns: 4,
  ln: Float64Array.from(
    rows.flatMap((row) => row.split(" ").map((text) => (text === "-" ? NaN : Math.log(Number(text))))),
  ),
});

test("two tests show a drop against the others, and no more than that", () => {
  const two = analyseHistory(historyOf(testsOf(dropped.slice(0, 2))));
  const t = two.cylinders
    .flatMap(({ change }) => (change?.t === undefined ? [] : [change.t]))
    .sort((a, b) => a - b);
  expect(t[0]).toBeCloseTo(0.330947160897409, 9);
  expect(t[1]).toBeCloseTo(3.911101766539052, 9);
  expect(two.cylinders.map(({ change }) => change?.flagged)).toEqual([false, false, true, false]);
  expect(two.cylinders.map(({ course }) => course)).toEqual(new Array(4).fill("too-short-to-tell"));
  expect(two.cylinders[2]?.alarms).toEqual([]);
});

test("a drop that shows twice running against the same earlier test is an alarm from the third test on", () => {
  const three = analyseHistory(historyOf(testsOf(dropped)));
  expect(three.cylinders[2]).toMatchObject({
    course: "stepped-down",
    alarms: ["early-change"],
    early: { direction: "down", test: 1 },
  });
  // against the mean of tests 1 and 2
  expect(three.cylinders[2]?.change?.t).toBeCloseTo(3.3885267053092374, 9);
  const cleared = { cylinders: 4, values: tableOf(dropped).ln };
  const against1 = changeTest(cleared, { now: 2, earlier: [0] }, { cell: 0.000325, direction: "down" });
  const t = against1.flatMap((change) => (change?.t === undefined ? [] : [change.t])).sort((a, b) => a - b);
  expect(t[0]).toBeCloseTo(0.22193929541913207, 9);
  expect(t[1]).toBeCloseTo(4.895656765456069, 9);
});

test("the polish sweeps tests first and stops where nothing moves any more", () => {
  const polish = medianPolish(tableOf(gaps));
  expect(polish.sweeps).toBe(67);
  const c = [0.006522697359003, -0.013816986876282, -0.006464498167809, 0.006522697359003];
  const a = [5.010893200048, 4.98390988942, 5.03690241956, 4.997423608585, 5.01102926064];
  c.forEach((value, i) => expect(polish.levels[i]).toBeCloseTo(value, 9));
  a.forEach((value, t) => expect(polish.effects[t]).toBeCloseTo(value, 9));
});

test("missing cells change the count, not the method", () => {
  const result = analyseHistory(historyOf(testsOf(gaps, gapsAt)));
  const three = result.cylinders[2];
  const contrasts = [
    0.026195462957708, 0.030138387211722, -0.006464498167809, -0.01381698687812, -0.047658942760914,
  ];
  contrasts.forEach((value, k) => expect(three?.contrasts[k]).toBeCloseTo(value, 9));
  expect(result.scatter.s ** 2).toBeCloseTo(0.000286825357379, 12);
  expect(result.scatter.df).toBeCloseTo(13.5, 12);
  expect(three?.ownScatter?.t).toBeCloseTo(-3.759125548781451, 9);
  expect(three?.ownScatter?.p).toBeCloseTo(0.000817859307623, 9);
  expect(three?.twoBelow?.df).toBe(13);
  expect(three?.twoBelow?.t).toBeCloseTo(2.294911474314823, 9);
  expect(three?.twoBelow?.p).toBeCloseTo(0.019512739609998, 9);
  expect(three?.lossBound).toBeCloseTo(0.028274973519799, 9);
  expect(three).toMatchObject({ alarms: [], course: "too-short-to-tell", leaning: "down" });
  expect(result.cylinders[1]?.contrasts[1]).toBeUndefined();
});

test("one cylinder is judged by the engine-wide channel, with gauges and shared constants weighed", () => {
  const gauges = ["A", "A", "B", "B", "A", "B"];
  const u = [0, 0.01, 0.01, 0.02, 0, 0.01];
  const q = [0, 0.004, 0.004, 0.012, 0, 0.008];
  const bare = testsOf(["160", "158", "149", "148", "151", "143"], [0, 1, 2, 3.5, 4, 5.5]).map((one, k) => ({
    ...one,
    gauge: gauges[k] ?? "",
  }));
  const tests = bare.map((one, k) => ({
    ...one,
    correctionUncertainty: u[k] ?? NaN,
    sharedUncertainty: { exponent: q[k] ?? NaN },
  }));
  const { common, cylinders } = analyseHistory(historyOf(tests));
  expect(common.trend?.slope).toBeCloseTo(-0.015075470243377, 9);
  expect(common.trend?.standardError).toBeCloseTo(0.006911286734226, 9);
  expect(common.trend?.misfit).toBeCloseTo(0.648531520717513, 9);
  expect(common.trend?.phi).toBeCloseTo(0.720710960059793, 9);
  expect(common.trend?.t).toBeCloseTo(-2.569398068158086, 9);
  expect(common.trend?.df).toBe(12);
  expect(common.trend?.p).toBeCloseTo(0.01228639533104, 9);
  expect(common.word).toBe("falling");
  expect(cylinders[0]).toMatchObject({ course: "falling", alarms: ["engine-wide"] });
  const plain = analyseHistory(historyOf(bare)).common.trend;
  expect(plain?.slope).toBeCloseTo(-0.014988823258734, 9);
  expect(plain?.standardError).toBeCloseTo(0.006709808533653, 9);
});

test("a repair shows as a step of the cylinder worked on, against the untouched", () => {
  const services = [{ afterTests: 4, touched: [2], newBaseline: [2], why: "valve job" }];
  const result = analyseHistory(historyOf(testsOf(repaired), { services }));
  const step = result.services[0]?.steps[0];
  expect(step).toMatchObject({ labels: ["3"], verdict: "rose", before: 3, after: 2, df: 12 });
  expect(step?.step).toBeCloseTo(0.080111796278658, 9);
  expect(step?.standardError).toBeCloseTo(0.015114023944731, 9);
  expect(step?.t).toBeCloseTo(5.300494201386242, 8);
  expect(step?.p).toBeCloseTo(0.0000940950612, 12);
  // rose 8.3 %
  expect(Math.exp(step?.step ?? NaN) - 1).toBeCloseTo(0.083, 3);
});

test("leak-down: a leak that opens after the first test is found at the third, where slopes stay silent", () => {
  const until = (count: number) =>
    analyseHistory(
      historyOf(testsOf(leaking.slice(0, count), [0, 1, 2, 3].slice(0, count), kept), { kind: "leak-down" }),
    );
  const t = until(2)
    .cylinders.flatMap(({ change }) => (change?.t === undefined ? [] : [change.t]))
    .sort((a, b) => a - b);
  expect(t[0]).toBeCloseTo(0.270848984519699, 9);
  expect(t[1]).toBeCloseTo(5.871244087085303, 9);
  expect(until(3).cylinders[2]).toMatchObject({ course: "stepped-down", alarms: ["early-change"] });
  const against1 = changeTest(
    {
      cylinders: 4,
      values: Float64Array.from(leaking.flatMap((row) => row.split(" ").map((text) => kept(Number(text))))),
    },
    { now: 2, earlier: [0] },
    { cell: 0.007 ** 2 + 0.01 ** 2, direction: "down" },
  );
  const third = against1
    .flatMap((change) => (change?.t === undefined ? [] : [change.t]))
    .sort((a, b) => a - b);
  expect(third[0]).toBeCloseTo(0.005992976298393, 9);
  expect(third[1]).toBeCloseTo(4.612776187308457, 9);
  const four = until(4).cylinders[2];
  expect(four?.ownScatter?.t).toBeCloseTo(-3.760926956171295, 9);
  expect(four?.twoBelow?.t).toBeCloseTo(0, 9);
  expect(four).toMatchObject({ alarms: ["early-change"], stays: [] });
});
