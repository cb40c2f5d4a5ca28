// Two gauges on one warm engine. Readings invented; what is expected of them is worked by hand beside each.

import { type GaugePair, assessHistory, compareGauges, gaugeLink, readGauges } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { type Row, assessed, recordOf } from "./records.ts";

const gauges = `gauge,kind,unit,full_scale,reads_high,dial,regulated,link_to,link_factor,link_u,link_date
red,compression,psi,300,,,,,,,
black,compression,psi,300,,,,,,,
high,compression,psi,300,5,,,,,,
one,leak-down,psi,100,,pressure,80,,,,
two,leak-down,psi,100,,pressure,80,,,,
percent,leak-down,psi,,,percent-lost,,,,,
`;

const pairOf = (...rows: readonly Omit<Row, "test">[]): GaugePair => {
  const record = recordOf({ gauges, tests: rows.map((row) => ({ test: "2026-05-03a", ...row }) as Row) });
  const [test] = record.tests;
  const [pair, more] = test === undefined ? [] : compareGauges(record, test);
  if (pair === undefined || more !== undefined) throw new Error("not one pair");
  return pair;
};

test("a gauge that reads 5 % higher on every cylinder has the factor 1.05, as sure as single readings let it be", () => {
  const { gauge, to, standing, cylinders } = pairOf(
    { gauge: "black", cells: "150 140 160 130" },
    { gauge: "red", cells: "157.5 147 168 136.5" },
  );
  expect([gauge, to, cylinders.map(({ label }) => label)]).toEqual(["red", "black", ["1", "2", "3", "4"]]);
  // all ln ratios are ln 1.05; of one ln ratio 2 x 0.015^2 = 0.00045 is expected, six degrees of freedom beside three of
  // none: 6 x 0.00045 / 9 = 0.0003; the median of four varies by 0.298200: u = sqrt(0.0003 x 0.298200) = 0.009458
  // t(0.975; 9) = 2.262157 (table): 1.05 x/÷ exp(2.262157 x 0.009458) = 1.0278 to 1.0727
  expect(standing).toMatchObject({ kind: "measured", df: 9 });
  if (standing.kind !== "measured") return;
  expect(standing.factor).toBeCloseTo(1.05, 12);
  expect(standing.uncertainty).toBeCloseTo(0.009458, 6);
  expect(standing.low).toBeCloseTo(1.0278, 4);
  expect(standing.high).toBeCloseTo(1.0727, 4);
});

test("a reading somewhat off does not move the factor, but widens it", () => {
  const good = pairOf(
    { gauge: "black", cells: "150 140 160 130" },
    { gauge: "red", cells: "156 147 168 137" },
  );
  const off = pairOf(
    { gauge: "black", cells: "150 140 160 130" },
    { gauge: "red", cells: "156 147 168 131" },
  );
  if (good.standing.kind !== "measured" || off.standing.kind !== "measured") throw new Error("not measured");
  // ln ratios 0.0392 0.0488 0.0488 0.0524, and with 131 of 130 0.0077: the middle falls from 0.0488 to 0.0440
  expect(Math.log(good.standing.factor)).toBeCloseTo(0.0488, 4);
  expect(Math.log(off.standing.factor)).toBeCloseTo(0.044, 4);
  expect(off.standing.uncertainty).toBeGreaterThan(1.1 * good.standing.uncertainty);
});

test("a cylinder that lies further out than repeats explain is named, and there is no factor", () => {
  // single readings of 1.5 %, and 1 % from gauge to gauge and time to time: three times sqrt(2 x 0.015^2 + 2 x 0.01^2)
  // = 7.65 % from the middle; 110 of 130 is ln -0.1671 beside 0.0440
  const standing = (red: string) =>
    pairOf({ gauge: "black", cells: "150 140 160 130" }, { gauge: "red", cells: red }).standing;
  expect(standing("156 147 168 110")).toEqual({ kind: "refused", code: "cylinders-disagree", labels: ["4"] });
  // middle at ln 1.05; exp(0.075) and exp(0.078) above it
  expect(standing(`157.5 147 168 ${(130 * 1.05 * Math.exp(0.075)).toFixed(2)}`)).toMatchObject({
    kind: "measured",
  });
  expect(standing(`157.5 147 168 ${(130 * 1.05 * Math.exp(0.078)).toFixed(2)}`)).toMatchObject({
    labels: ["4"],
  });
});

test("where no cylinder is far out and all together scatter too much, the lowest and the highest are named", () => {
  // ln ratios 0.06 0.06 -0.06 -0.06 and a variance of 0.00065 expected: 4 x 0.0036/0.00065 = 22.2, above 11.34 (table, 1 %)
  const { standing } = pairOf(
    { gauge: "black", cells: "150 140 160 130" },
    {
      gauge: "red",
      cells: [150 * Math.exp(0.06), 140 * Math.exp(0.059), 160 * Math.exp(-0.059), 130 * Math.exp(-0.06)]
        .map((value) => value.toFixed(2))
        .join(" "),
    },
  );
  expect(standing).toEqual({ kind: "refused", code: "cylinders-disagree", labels: ["1", "4"] });
});

test("of testers a dial that is off may shift small leaks against large ones; a leak twice as large may not", () => {
  const by = (two: string) =>
    pairOf(
      { what: "leak-down", gauge: "one", cells: "70 60 65 72" },
      { what: "leak-down", gauge: "two", cells: two },
    ).standing;
  // two reads 1 psi higher on all
  expect(by("71 61 66 73")).toMatchObject({ kind: "measured" });
  expect(by("70 60 65 60")).toEqual({ kind: "refused", code: "cylinders-disagree", labels: ["4"] });
});

test("what a gauge is known to read too high is taken out first", () => {
  const { standing } = pairOf(
    { gauge: "black", cells: "150 140 160" },
    { gauge: "high", cells: "155 145 165" },
  );
  expect(standing).toMatchObject({ kind: "measured", factor: expect.closeTo(1, 12) as number });
});

test.each([
  [
    "too few cylinders",
    [
      { gauge: "black", cells: "150 140" },
      { gauge: "red", cells: "157 147" },
    ],
    "too-few",
  ],
  [
    "a pegged and a doubtful reading do not count",
    [
      { gauge: "black", cells: "150 140 160 >300" },
      { gauge: "red", cells: "157 147? 168 136" },
    ],
    "too-few",
  ],
  [
    "cold against warm",
    [
      { gauge: "black", cells: "150 140 160", engine_temp: "warm" },
      { gauge: "red", cells: "157 147 168", engine_temp: "cold" },
    ],
    "day-differs",
  ],
  [
    "another cranking speed",
    [
      { gauge: "black", cells: "150 140 160", crank_rpm: "180" },
      { gauge: "red", cells: "157 147 168", crank_rpm: "250" },
    ],
    "day-differs",
  ],
  [
    "a test that was set aside",
    [
      { gauge: "black", cells: "150 140 160", set_aside: "wrong adapter" },
      { gauge: "red", cells: "157 147 168" },
    ],
    "set-aside",
  ],
  [
    "a gauge without a name",
    [{ cells: "150 140 160" }, { gauge: "red", cells: "157 147 168" }],
    "gauge-not-named",
  ],
  [
    "a dial in percent whose supply nobody knows",
    [
      { what: "leak-down", gauge: "percent", unit: "%", cells: "10 12 14" },
      { what: "leak-down", gauge: "other", unit: "%", cells: "20 22 24" },
    ],
    "supply-unknown",
  ],
])("%s: no factor", (_, rows, code) => {
  expect(pairOf(...rows).standing).toMatchObject({ kind: "refused", code });
});

test("of two leak-down testers the leaks are compared, not the percents", () => {
  // the same leaks on restrictors of 0.040 and 0.060 in at 80 psi, by the handbook's table (computed): areas 1 to 2.25,
  // so the leak beside the larger restrictor is 1/2.25 = 0.444 of that beside the smaller
  const { gauge, standing } = pairOf(
    { what: "leak-down", gauge: "one", cells: "70 60 65 72" },
    { what: "leak-down", gauge: "two", cells: "77.86 75.31 76.64 78.31" },
  );
  expect(gauge).toBe("two");
  expect(standing).toMatchObject({ kind: "measured", factor: expect.closeTo(0.4444, 3) as number });
});

test("each tester is held against its own supply", () => {
  // alpha 1 reads 61.767 of 80 psi and 77.916 of 100 psi on the same restrictor, 0.7 and 0.5 likewise (computed)
  const { standing } = pairOf(
    { what: "leak-down", gauge: "one", cells: "61.767 70.170 74.737", regulated_psi: "80" },
    { what: "leak-down", gauge: "two", cells: "77.916 88.094 93.625", regulated_psi: "100" },
  );
  expect(standing).toMatchObject({ kind: "measured", factor: expect.closeTo(1, 3) as number });
});

test("repeats with both gauges tell how each repeats, and what of the scatter is gauge and what cylinder", () => {
  const { repeats, study } = pairOf(
    { gauge: "black", cells: "150 140 160" },
    { gauge: "black", take: "2", cells: "153 140 160" },
    { gauge: "red", cells: "157 147 168" },
    { gauge: "red", take: "2", cells: "157 147 168" },
  );
  // one pair of black differs: ln(153/150) = 0.019803, s^2 = 0.019803^2/2 over 3 degrees of freedom: s = 0.008084
  expect(repeats).toEqual([
    { gauge: "black", s: expect.closeTo(0.008084, 6) as number, df: 3 },
    { gauge: "red", s: 0, df: 3 },
  ]);
  expect(study?.steps).toBeGreaterThan(1);
});

test("a test of one gauge has nothing to compare", () => {
  const record = recordOf({
    gauges,
    tests: [{ test: "2026-05-03a", gauge: "red", cells: "150 140 160 130" }],
  });
  expect(record.tests.flatMap((one) => compareGauges(record, one))).toEqual([]);
});

test("the gauge that counts less is linked to the other; where that one counts as it already, the other way round", () => {
  const pair = pairOf({ gauge: "black", cells: "150 140 160" }, { gauge: "red", cells: "157.5 147 168" });
  const known = (text: string) => readGauges(text, "gauges.csv").gauges;
  expect(gaugeLink(known(gauges), pair)).toMatchObject({
    gauge: "red",
    to: "black",
    factor: expect.closeTo(1.05, 9) as number,
  });
  const linked = known(
    gauges.replace(
      "black,compression,psi,300,,,,,,,",
      "black,compression,psi,300,,,,red,0.9,0.01,2020-01-01",
    ),
  );
  expect(gaugeLink(linked, pair)).toMatchObject({
    gauge: "black",
    to: "red",
    factor: expect.closeTo(1 / 1.05, 9) as number,
  });
});

const years = (text: string) =>
  assessHistory(
    recordOf({
      gauges: text,
      tests: [
        { test: "2025-05-03a", gauge: "black", cells: "150 140 160 130" },
        { test: "2026-05-03a", gauge: "red", cells: "157.5 147 168 136.5" },
      ],
    }),
  ).cranking?.result;

test("in the history a linked gauge counts as the other: its factor out, its doubt shared, its own name kept", () => {
  const apart = years(gauges);
  const linked = years(
    gauges.replace(
      "red,compression,psi,300,,,,,,,",
      "red,compression,psi,300,,,,black,1.05,0.006,2026-05-03",
    ),
  );
  expect(linked?.tests.map(({ gauge, countsAs }) => [gauge, countsAs])).toEqual([
    ["black", undefined],
    ["red", "black"],
  ]);
  const [before, after] = linked?.common.effects ?? [];
  expect(after).toBeCloseTo(before ?? NaN, 12);
  // Two tests 365/365.25 years apart. What is common to both gauges drops out of the difference; the doubt of two gauges,
  // 2 x 0.03^2, gives way to that of the link, 0.006^2: the variance of the change is smaller by 0.001764.
  const variance = (result: typeof apart): number =>
    ((result?.common.trend?.standardError ?? NaN) * (365 / 365.25)) ** 2;
  expect(variance(apart) - variance(linked)).toBeCloseTo(0.001764, 9);
  expect(linked?.cylinders.map(({ contrasts }) => contrasts)).toEqual(
    apart?.cylinders.map(({ contrasts }) =>
      contrasts.map((value) => expect.closeTo(value ?? NaN, 9) as number),
    ),
  );
});

test("the level of the whole engine is followed across linked gauges, never across two that are not", () => {
  const drop = (text: string) =>
    assessed({
      gauges: text,
      tests: [
        { test: "2020-05-03a", gauge: "black", cells: "150 140 160 130", altitude_m: "0" },
        // 20 % less than red would have read then: 150 x 1.05 x 0.8 = 126 ...
        { test: "2026-05-03a", gauge: "red", cells: "126 117.6 134.4 109.2", altitude_m: "0" },
      ],
    }).levelSince;
  expect(drop(gauges)).toBeUndefined();
  const linked = drop(
    gauges.replace(
      "red,compression,psi,300,,,,,,,",
      "red,compression,psi,300,,,,black,1.05,0.006,2026-05-03",
    ),
  );
  expect(linked).toMatchObject({ gauge: "red", before: "black", change: expect.closeTo(-0.2, 9) as number });
});
