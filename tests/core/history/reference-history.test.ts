// Expected values: handbook/statistics.md C.10 and L.8, computed there by independent R code from invented readings.

import { expect, test } from "vitest";
import { analyseHistory } from "../../../packages/core/src/history/index.ts";
import {
  believing,
  chanceAbove,
  crossingOf,
  knownLine,
} from "../../../packages/core/src/history/forecast.ts";
import { layOut } from "../../../packages/core/src/history/layout.ts";
import { cellVariance } from "../../../packages/core/src/history/noise.ts";
import { pooledVariance } from "../../../packages/core/src/history/pooled-variance.ts";
import {
  plainContrasts,
  relativeChannel,
  seriesOf,
} from "../../../packages/core/src/history/relative-channel.ts";
import { lineThrough } from "../../../packages/core/src/history/series.ts";
import { kendall } from "../../../packages/core/src/statistics/index.ts";
import { h1Until } from "./tables.ts";

const h1 = analyseHistory({ ...h1Until(8), limitRatio: 0.8 });
const cylinder = (n: number) => {
  const found = h1.cylinders[n - 1];
  if (found === undefined) throw new Error(`no cylinder ${String(n)}`);
  return found;
};
const layout = layOut(h1Until(8));
const channel = relativeChannel(layout.tests, layout.rows, layout.columns);
const plain = [0, 1, 2, 3].map((column) =>
  seriesOf(channel, plainContrasts(channel.table), { column, x: layout.x }),
);

test("the polished levels of the reference history agree with R", () => {
  const [c1 = NaN, ...others] = channel.polish.levels;
  expect(c1).toBeCloseTo(0.00819091866501154, 9);
  [-0.018094276, -0.06578621, 0.011266447].forEach((expected, k) => {
    expect((others[k] ?? NaN) - c1).toBeCloseTo(expected, 8);
  });
});

test("the contrasts of the falling cylinder of the reference history agree with R", () => {
  const expected = [
    0.002065622956, -0.009903357677, -0.02062951987, -0.0422906414, -0.070527979493, -0.099167599655,
    -0.124453555941, -0.143434750301,
  ];
  expected.forEach((value, k) => expect(cylinder(3).contrasts[k]).toBeCloseTo(value, 9));
});

test("robust slopes and orders of the reference history agree with R", () => {
  const { theilSen } = cylinder(3);
  expect(theilSen?.slope).toBeCloseTo(-0.0330654027825063, 8);
  expect(theilSen?.low).toBeCloseTo(-0.0364533854040436, 8);
  expect(theilSen?.high).toBeCloseTo(-0.0290374409798975, 8);
  expect(theilSen?.coverage).toBeCloseTo(0.9688, 4);
  expect(cylinder(1).theilSen?.slope).toBeCloseTo(0.00144915626221846, 8);
  expect(cylinder(2).theilSen?.slope).toBeCloseTo(-0.0000585446399591226, 8);
  expect(cylinder(4).theilSen?.slope).toBeCloseTo(0.000203643207506099, 8);
  const orders = [1, 2, 3, 4].map((n) =>
    kendall(
      layout.x,
      cylinder(n).contrasts.map((r) => Number((r ?? NaN).toFixed(9))),
    ),
  );
  expect(orders.map(({ s }) => s)).toEqual([16, -2, -28, 6]);
  expect(orders[2]?.lowerTail).toBeCloseTo(2.48016e-5, 9);
});

test("the pooled scatter and slope tests of the reference history agree with R", () => {
  expect(h1.scatter.s ** 2).toBeCloseTo(0.00012688104888967388, 12);
  expect(h1.scatter.df).toBe(24);
  expect(cylinder(3).pooled?.slope).toBeCloseTo(-0.0331594290433041, 9);
  expect(cylinder(3).pooled?.t).toBeCloseTo(-12.789458118886577, 6);
  expect((cylinder(3).pooled?.p ?? NaN) / 1.65256831419111e-12).toBeCloseTo(1, 5);
  expect(cylinder(1).pooled?.t).toBeCloseTo(0.6472044602560517, 7);
});

test("both last readings below the baseline: the reference history agrees with R", () => {
  expect(cylinder(3).twoBelow?.df).toBe(20);
  expect(cylinder(3).twoBelow?.t).toBeCloseTo(8.521157677833553, 7);
  expect((cylinder(3).twoBelow?.p ?? NaN) / 2.16881630181262e-8).toBeCloseTo(1, 6);
  expect(cylinder(1).twoBelow?.t).toBeCloseTo(-0.44393583368286277, 7);
});

test("the reference history alarms after test 5 by its slope, and by its two last readings after test 6", () => {
  const looks = [4, 5, 6, 7, 8].map((count) => analyseHistory(h1Until(count)).cylinders[2]);
  const slopes = [
    -2.18217051486363, -4.45443605398818, -7.20063515893057, -10.574236221532, -13.999611284277,
  ];
  const drops = [0.619863488748747, 2.04317156909449, 4.07031905123878, 6.38532199798134, 8.52115767783355];
  slopes.forEach((t, k) => expect(looks[k]?.ownScatter?.t).toBeCloseTo(t, 7));
  drops.forEach((t, k) => expect(looks[k]?.twoBelow?.t).toBeCloseTo(t, 7));
  expect(looks.map((look) => look?.alarms)).toEqual([
    [],
    ["slope"],
    ["two-below-baseline", "slope"],
    ["two-below-baseline", "slope"],
    ["two-below-baseline", "slope"],
  ]);
});

test("the reference history falls gradually in cylinder 3 and nowhere else", () => {
  expect(cylinder(3).course).toBe("falling");
  expect(cylinder(3).shape?.shape).toBe("gradual");
  expect(cylinder(3).shape?.before).toBe(4);
  expect([1, 2, 4].map((n) => cylinder(n).course)).toEqual(["steady", "steady", "steady"]);
});

test("line and step through the falling cylinder leave what R leaves", () => {
  const contrasts = cylinder(3).contrasts.flatMap((r) => r ?? []);
  const line = lineThrough({ tests: layout.rows, x: layout.x, contrasts, others: contrasts.map(() => 3) });
  const centre = contrasts.reduce((sum, r) => sum + r, 0) / 8;
  const flat = contrasts.reduce((sum, r) => sum + (r - centre) ** 2, 0);
  expect(flat).toBeCloseTo(0.0208856217874919, 10);
  expect(line?.sse).toBeCloseTo(0.000131658299221104, 10);
  // k (n - k)/n fall^2 = 2 fall^2 at k = 4 of 8
  expect(flat - 2 * (cylinder(3).shape?.fall ?? NaN) ** 2).toBeCloseTo(0.00406545847504415, 9);
});

test("a ratio limit is forecast as by Fieller's interval in R", () => {
  const three = plain[2];
  const line = three === undefined ? undefined : lineThrough(three);
  const pooled = pooledVariance(plain, cellVariance(layout.noise, 1));
  expect(three?.contrasts[0]).toBeCloseTo(-0.005830920311, 9);
  expect(three?.contrasts[7]).toBeCloseTo(-0.157061890035, 9);
  expect(line?.slope).toBeCloseTo(-0.034531779413696, 9);
  expect((line?.meanY ?? NaN) - (line?.slope ?? NaN) * (line?.meanX ?? NaN)).toBeCloseTo(
    0.00122083308066832,
    9,
  );
  expect(pooled.variance).toBeCloseTo(0.00013542281566458804, 12);
  const { limit } = cylinder(3);
  expect(limit?.crossing).toBeCloseTo(6.49733052290641, 7);
  expect(limit?.low).toBeCloseTo(6.065046521441301, 7);
  expect(limit?.high).toBeCloseTo(7.021955532062138, 7);
  expect(limit?.decline).toBe("shown");
});

test("chances of staying above a limit agree with R", () => {
  const three = plain[2];
  const line = three === undefined ? undefined : lineThrough(three);
  if (line === undefined) throw new Error("no line");
  const known = believing(knownLine(line, pooledVariance(plain, cellVariance(layout.noise, 1))), 0.04);
  expect(known.slope).toBeCloseTo(-0.03437762330298253, 9);
  expect(Math.sqrt(known.slopeVariance)).toBeCloseTo(0.0026725810499119242, 9);
  expect(chanceAbove(known, Math.log(0.8), 5.5)).toBeCloseTo(0.9991369058148675, 8);
  expect(chanceAbove(known, Math.log(0.8), 6.5)).toBeCloseTo(0.518538499289754, 7);
  expect(chanceAbove(known, Math.log(0.8), 8)).toBeCloseTo(0.0022140626667478606, 8);
});

test("a cylinder without a shown decline gets no date but the earliest place it could be", () => {
  const { limit } = cylinder(1);
  expect(limit?.decline).toBe("not-shown");
  expect(limit?.crossing).toBeUndefined();
  // 3 times the observed span of 4.5 years is the furthest that is ever said
  expect(limit?.notBefore).toBeLessThanOrEqual(13.5);
});

test("a crossing further away than three spans is not given", () => {
  const slow = { count: 8, slope: -0.01, meanX: 2, meanY: 0, sxx: 18, sse: 0 };
  const pooled = { variance: 1e-6, df: 24, reference: 0.45, assumed: 1e-6 };
  // the line meets ln .8 at 2 + .2231/.01 = 24.3, three spans end at 12
  const far = crossingOf(slow, pooled, {
    limit: Math.log(0.8),
    believed: Infinity,
    x: { first: 0, last: 4 },
  });
  expect(far).toMatchObject({ decline: "shown", notBefore: 12 });
  expect(far.crossing).toBeUndefined();
});
