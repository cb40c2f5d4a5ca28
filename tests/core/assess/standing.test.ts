// Words of statistics.md L.8 on invented readings; worked values of A.4 there (independent R code).

import { expect, test } from "vitest";
import { type Row, assessed, cylinder, standings } from "./records.ts";

const day = (year: string, cells: string, more: Partial<Row> = {}): Row => ({
  test: `${year}-05-02a`,
  cells,
  ...more,
});
const suspectOnly = "150 148 152 134"; // .88 of the highest: flagged at .05, above three quarters

test("a cylinder flagged once is suspect, the others even", () => {
  expect(standings(assessed({ tests: [day("2026", suspectOnly)] }))).toEqual([
    "even",
    "even",
    "even",
    "suspect",
  ]);
});

test("flagged in two tests running, it lags", () => {
  const result = assessed({ tests: [day("2025", suspectOnly), day("2026", suspectOnly)] });
  expect(cylinder(result, "4")).toMatchObject({ standing: "lagging", flaggedBefore: true });
});

test("an even test in between ends the run", () => {
  const tests = [day("2024", suspectOnly), day("2025", "150 148 152 149"), day("2026", suspectOnly)];
  expect(cylinder(assessed({ tests }), "4").standing).toBe("suspect");
});

test("a void test, a test set aside and a seller's sheet are not the test before", () => {
  for (const spoilt of [{ throttle: "closed" }, { set_aside: "wrong adapter" }, { by: "seller" }])
    expect(
      cylinder(assessed({ tests: [day("2025", suspectOnly, spoilt), day("2026", suspectOnly)] }), "4")
        .standing,
    ).toBe("suspect");
});

test("work on the cylinder between two tests ends the run, work on another does not", () => {
  const tests = [day("2025", suspectOnly), day("2026", suspectOnly)];
  const after = (service: string) => cylinder(assessed({ tests, services: [service] }), "4").standing;
  expect(after("2025-09-01,,valve job,4,4")).toBe("suspect");
  expect(after("2025-09-01,,valve job,1,1")).toBe("lagging");
});

test("low beyond 1 % in two repeats, it lags at the first test", () => {
  const low = "150 148 152 120";
  const once = assessed({ tests: [day("2026", "150 148 152 122")] });
  expect(cylinder(once, "4").standing).toBe("suspect");
  const twice = assessed({ tests: [day("2026", low, { take: "1" }), day("2026", low, { take: "2" })] });
  expect(cylinder(twice, "4").standing).toBe("lagging");
});

test("tests of one day are repeats: they confirm at 1 %, they are not two tests running", () => {
  const far = [day("2026", "150 148 152 122"), { test: "2026-05-02b", cells: "151 149 150 121" }];
  expect(cylinder(assessed({ tests: far }), "4")).toMatchObject({
    standing: "lagging",
    flaggedBefore: false,
  });
  const near = [day("2026", suspectOnly), { test: "2026-05-02b", cells: suspectOnly }];
  expect(cylinder(assessed({ tests: near }), "4").standing).toBe("suspect");
});

test("below three quarters of the highest it lags at once", () => {
  // 113/152 = .743, 115/152 = .757
  expect(cylinder(assessed({ tests: [day("2026", "150 148 152 113")] }), "4")).toMatchObject({
    standing: "lagging",
    belowLimit: true,
  });
  expect(cylinder(assessed({ tests: [day("2026", "150 148 152 115")] }), "4")).toMatchObject({
    standing: "suspect",
    belowLimit: false,
  });
});

test("the maker's own limits take the place of three quarters", () => {
  const limits = (compression: object) => ({ engine: { limits: { compression } } });
  const low = [day("2026", "150 148 152 113")];
  expect(cylinder(assessed({ tests: low, ...limits({ lowestToHighest: 0.7 }) }), "4").standing).toBe(
    "suspect",
  );
  expect(cylinder(assessed({ tests: low, ...limits({ minimum: "115psi" }) }), "4").standing).toBe("lagging");
  const even = [day("2026", "150 148 152 140")];
  expect(cylinder(assessed({ tests: even, ...limits({ difference: "10psi" }) }), "4").standing).toBe(
    "lagging",
  );
});

test("a reading of 0 is no compression: it lags and stands in no statistic", () => {
  const result = assessed({ tests: [day("2026", "150 148 152 0")] });
  expect(cylinder(result, "4")).toMatchObject({ standing: "lagging", belowMedian: 1 });
  expect(cylinder(result, "4").t).toBeUndefined();
  expect(result.spread).toMatchObject({ noCompression: 1 });
  expect(result.spread?.ratio).toBeCloseTo(148 / 152, 12);
});

test("all readings 0: every cylinder is without compression", () => {
  expect(standings(assessed({ tests: [day("2026", "0 0 0 0")] }))).toEqual(new Array(4).fill("lagging"));
});

// statistics.md L.11 1: 118 and 104 psi t 2.976771653270617 flagged; 118 and 107 t 2.3064830896674997, flagged, just
test("of two cylinders the lower one is judged by the higher", () => {
  const two = (cells: string) => cylinder(assessed({ cylinders: 2, tests: [day("2026", cells)] }), "2");
  expect(two("118 104").t).toBeCloseTo(2.976771653270617, 9);
  expect(two("118 107").t).toBeCloseTo(2.3064830896674997, 9);
  expect(two("118 107").standing).toBe("suspect");
  expect(two("118 108").standing).toBe("even");
});

test("one cylinder has no fellows: no t, no share below, and never low", () => {
  const result = assessed({ cylinders: 1, tests: [day("2026", "90")] });
  expect(cylinder(result, "1")).toMatchObject({ standing: "even" });
  expect(cylinder(result, "1").t).toBeUndefined();
  expect(cylinder(result, "1").belowOthers).toBeUndefined();
});

test("a cylinder that was not read has no standing", () => {
  expect(standings(assessed({ tests: [day("2026", "150 x 152 149")] }))).toEqual([
    "even",
    undefined,
    "even",
    "even",
  ]);
});

test("a pegged cylinder stands in no comparison", () => {
  const result = assessed({ tests: [day("2026", "150 >300 152 149")] });
  expect(cylinder(result, "2").standing).toBeUndefined();
  expect(result.spread?.highest).toBeCloseTo(152 * 6894.757293168, 3);
});

// The forward test takes its core from the upper half (A.4), so three low of four hide each other there. The range of
// four healthy readings passes 3.633160 sigma once in 20 tests (qtukey, A.1): exp(-3.633160 x .03) = .8968.
test("where more than half have lost no single one stands out, but the range shows it", () => {
  const low = assessed({ tests: [day("2026", "150 120 119 118")] });
  expect(standings(low)).toEqual(["even", "even", "even", "even"]);
  expect(low.apart).toBe("wider");
  expect(low.high).toEqual(["1"]);
  expect(low.nextTests).toMatchObject([
    { code: "repeat", text: "read 1 again, twice, before you believe it" },
  ]);
  const within = (lowest: string) => assessed({ tests: [day("2026", `1000 1000 1000 ${lowest}`)] }).apart;
  expect(within("898")).toBe("as-healthy");
  expect(within("895")).toBe("wider");
});

// The forward test turned upside down: 150 against the core 118 119 stands out, 150 145 138 133 goes down by steps.
test("one far above three alike is named as high, a row of steps is not", () => {
  const high = (cells: string) => assessed({ tests: [day("2026", cells)] }).high;
  expect(high("150 151 152 190")).toEqual(["4"]);
  expect(high("150 145 138 133")).toBeUndefined();
  expect(high("150 148 152 131")).toBeUndefined();
  expect(high("150 148 152 149")).toBeUndefined();
});

test("the limits that a cylinder misses are named, and whether it stands out is told apart from them", () => {
  const compression = { minimum: "105psi", difference: "5psi", lowestToHighest: 0.8 };
  const result = assessed({ engine: { limits: { compression } }, tests: [day("2026", "103 108 110 80")] });
  expect(cylinder(result, "1")).toMatchObject({
    standing: "lagging",
    flagged: false,
    limitsMissed: ["maker-minimum", "maker-difference"],
  });
  expect(cylinder(result, "4")).toMatchObject({
    flagged: true,
    limitsMissed: ["maker-minimum", "maker-difference", "maker-ratio"],
  });
  expect(cylinder(assessed({ tests: [day("2026", "150 148 152 100")] }), "4").limitsMissed).toEqual([
    "usual-ratio",
  ]);
});

test("cylinders below the maker's minimum lag, however alike they are", () => {
  const limits = { engine: { limits: { compression: { minimum: "125psi" } } } };
  expect(standings(assessed({ tests: [day("2026", "150 120 119 118")], ...limits }))).toEqual([
    "even",
    "lagging",
    "lagging",
    "lagging",
  ]);
});

// A.4, worked values: sigma0 .03, nu0 8; t in order of descending pressure after the core.
test.each([
  [
    "150 148 152 120",
    [
      [1, 0.575174515580553],
      [3, 7.02853883317121],
    ],
    ["even", "even", "even", "suspect"],
  ],
  [
    "150 152 120 118",
    [
      [2, 6.59273956626162],
      [3, undefined],
    ],
    ["even", "even", "suspect", "suspect"],
  ],
  [
    "172 168 147 173",
    [
      [1, 0.762052420212444],
      [2, 4.72270301018618],
    ],
    ["even", "even", "suspect", "even"],
  ],
] as const)("readings %s give the t of the worked example", (cells, ts, words) => {
  const result = assessed({ tests: [day("2026", cells)] });
  for (const [place, t] of ts) if (t !== undefined) expect(result.cylinders[place]?.t).toBeCloseTo(t, 9);
  expect(standings(result)).toEqual(words.map((word) => word));
});

test("leak-down and dry readings are judged apart, and the worse word stands", () => {
  const tests: Row[] = [
    day("2026", "150 148 152 149"),
    day("2026", "74 73 74 50", { what: "leak-down", regulated_psi: "80" }),
  ];
  const four = cylinder(assessed({ tests }), "4");
  expect(four).toMatchObject({ dryStanding: "even", leakDown: { standing: "suspect" }, standing: "suspect" });
});

test("a leak beyond the maker's limit lags", () => {
  const tests = [day("2026", "92 93 94 60", { what: "leak-down", regulated_psi: "100" })];
  const engine = { limits: { leakDown: { lost: 0.25 } } };
  expect(cylinder(assessed({ tests, engine }), "4").leakDown).toMatchObject({
    belowLimit: true,
    standing: "lagging",
  });
});
