// The words of trust are those of the design contract, section 5; the readings are invented.

import { expect, test } from "vitest";
import { type Row, assessed } from "./records.ts";

const even: Row = { test: "2026-05-02a", cells: "150 148 152 149" };
const before: Row = { test: "2025-05-02a", cells: "151 149 151 150" };

const trustOf = (row: Partial<Row>, more: Parameters<typeof assessed>[0] | object = {}) =>
  assessed({ tests: [{ ...even, ...row }], ...more }).trust;
const codes = (trust: ReturnType<typeof trustOf>) => trust.reasons.map(({ code }) => code);

test("a test with nothing against it is trusted, however little was recorded", () => {
  const trust = trustOf({});
  expect(trust.code).toBe("trusted");
  expect(trust.reasons).toEqual([]);
  expect(trust.missing.length).toBeGreaterThan(3);
});

test("what was not recorded is listed with what it would settle, and what was recorded is not", () => {
  const bare = trustOf({}).missing.join("\n");
  for (const word of ["cranking speed", "altitude", "engine temperature", "throttle", "strokes", "gauge"])
    expect(bare).toContain(word);
  const full = trustOf({
    crank_rpm: "240",
    altitude_m: "350",
    engine_temp: "warm",
    throttle: "open",
    strokes: "6",
    gauge: "red",
  }).missing.join("\n");
  expect(full).toMatch(/^plugs out.*\nthe maker's minimum/);
  expect(full.split("\n")).toHaveLength(2);
});

test("what a leak-down lacks is its own: supply, tester, warmth in its own words", () => {
  const gauges = "gauge,kind,unit,restrictor_mm\ntester,leak-down,psi,1\nplain,leak-down,psi,unknown\n";
  const leak = (row: Partial<Row>) =>
    assessed({ gauges, tests: [{ ...even, what: "leak-down", cells: "8 9 7 8", unit: "%", ...row }] }).trust
      .missing;
  const bare = leak({});
  expect(bare.map((text) => text.split(" (")[0])).toEqual([
    "supply pressure of the leak-down",
    "tester",
    "the maker's leak-down limit, or a master orifice read that day",
    "engine temperature",
  ]);
  expect(bare.join("\n")).not.toMatch(/reads some|cranking/);
  expect(leak({ gauge: "tester", regulated_psi: "80", engine_temp: "warm" })).toEqual([
    expect.stringMatching(/^the maker's leak-down limit, or a master orifice/),
  ]);
  expect(leak({ gauge: "plain", regulated_psi: "80", engine_temp: "warm" })[0]).toContain("restrictor");
});

test("of running and snap-throttle readings nothing is said about cranking cold", () => {
  for (const what of ["running", "snap-throttle"])
    expect(trustOf({ what }).missing).toEqual(["engine temperature (only warm compares with warm)"]);
});

test("a closed throttle makes the test of a spark engine void", () => {
  const trust = trustOf({ throttle: "closed" });
  expect(trust.code).toBe("void");
  expect(trust.reasons).toMatchObject([
    { code: "throttle-closed", text: "the throttle was closed", mend: "block it wide open and test again" },
  ]);
});

test("a diesel has no throttle to leave closed", () => {
  expect(trustOf({ throttle: "closed" }, { engine: { ignition: "compression" } }).code).toBe("trusted");
});

test("a working release makes the test void where the figures beside it were taken without", () => {
  const engine = { compressionRelease: "manual" };
  const tests = [
    { ...before, release: "defeated" },
    { ...even, release: "active" },
  ];
  const { trust } = assessed({ engine, tests });
  expect(trust.code).toBe("void");
  expect(trust.reasons).toMatchObject([
    { code: "release-active", mend: "defeat the release and test again, or do a leak-down" },
  ]);
});

test("tests that all had the release working are held against each other", () => {
  const tests = [
    { ...before, release: "active" },
    { ...even, release: "active" },
  ];
  expect(assessed({ engine: { compressionRelease: "manual" }, tests }).trust.code).toBe("trusted");
});

test("air at intake and exhaust at once means the wrong stroke, and the test is void", () => {
  const tests: Row[] = [
    { test: "2026-05-02a", what: "leak-down", cells: "74 73 40 74", regulated_psi: "80" },
    { test: "2026-05-02a", what: "heard", cells: "none none intake+exhaust crankcase", unit: "" },
  ];
  const { trust } = assessed({ tests });
  expect(trust.code).toBe("void");
  expect(trust.reasons[0]?.text).toContain("cylinder 3");
  expect(trust.reasons[0]?.mend).toContain("compression");
});

test("a needle pegged on every cylinder read makes the test void", () => {
  const trust = trustOf({ cells: ">300 >300 x x" });
  expect(trust.code).toBe("void");
  expect(trust.reasons).toMatchObject([
    { code: "all-pegged", text: "the needle was pegged on cylinders 1 and 2, all that were read" },
  ]);
  expect(trustOf({ cells: ">300 >300 >300 >300" }).reasons[0]?.text).toBe(
    "the needle was pegged on every cylinder",
  );
});

test("a test that is set aside is doubtful for the owner's reason", () => {
  expect(trustOf({ set_aside: "wrong adapter" })).toMatchObject({
    code: "doubtful",
    reasons: [{ code: "set-aside", text: "it is set aside: wrong adapter", mend: "make the test again" }],
  });
});

test("a needle pegged on some cylinders makes it doubtful, and they are named", () => {
  const trust = trustOf({ cells: "150 >300 >300 149" });
  expect(trust.code).toBe("doubtful");
  expect(trust.reasons).toMatchObject([
    {
      code: "pegged",
      text: "the needle was pegged on cylinders 2 and 3",
      mend: "read them again with a gauge of higher range",
    },
  ]);
});

test("cranking below 100 rpm is void, 100 rpm is only slow", () => {
  expect(codes(trustOf({ crank_rpm: "99" }))).toEqual(["too-slow"]);
  expect(trustOf({ crank_rpm: "99" }).code).toBe("void");
  const maker = { engine: { limits: { compression: { speed: "250rpm" } } } };
  const slow = trustOf({ crank_rpm: "100" }, maker);
  expect(slow.code).toBe("doubtful");
  expect(slow.reasons[0]?.text).toContain("100 rpm, slow against 250");
});

// trade.md A1: 140 rpm (GM Duramax) is the lowest that any source read allows
test("where the maker states no speed, below the least that any maker allows is slow, and it says so", () => {
  const slow = trustOf({ crank_rpm: "120" });
  expect(codes(slow)).toEqual(["slow"]);
  expect(slow.reasons[0]?.text).toContain("cranked at 120 rpm, below 140, the least that any maker");
  expect(codes(trustOf({ crank_rpm: "140" }))).toEqual([]);
  const maker = { engine: { limits: { compression: { speed: "150rpm" } } } };
  expect(codes(trustOf({ crank_rpm: "125" }, maker))).toEqual([]);
});

test("0.8 of the reference speed is enough, less is doubtful", () => {
  const maker = { engine: { limits: { compression: { speed: "250rpm" } } } };
  expect(trustOf({ crank_rpm: "200" }, maker).code).toBe("trusted");
  expect(trustOf({ crank_rpm: "199" }, maker).code).toBe("doubtful");
});

test("without the maker's speed the engine's own tests give the reference", () => {
  const tests = ["2022", "2023", "2024"].map((year) => ({
    ...before,
    test: `${year}-05-02a`,
    crank_rpm: "240",
  }));
  expect(codes(assessed({ tests: [...tests, { ...even, crank_rpm: "180" }] }).trust)).toEqual(["slow"]);
});

test("one cylinder cranked slowly is enough", () => {
  const tests: Row[] = [
    { ...even, crank_rpm: "240" },
    { test: "2026-05-02a", what: "speed", cells: "240 240 95 240", unit: "" },
  ];
  expect(assessed({ tests }).trust.code).toBe("void");
});

test("a cold test is doubtful beside warm ones, and not by itself", () => {
  const cold = { ...even, engine_temp: "cold" };
  expect(assessed({ tests: [cold] }).trust.code).toBe("trusted");
  const { trust } = assessed({ tests: [{ ...before, engine_temp: "warm" }, cold] });
  expect(trust.code).toBe("doubtful");
  expect(trust.reasons).toMatchObject([{ code: "cold", mend: "run it warm and test again" }]);
});

test("a cold test is doubtful against the maker's figures, which are for a warm engine", () => {
  const engine = { limits: { compression: { minimum: "100psi" } } };
  const trust = trustOf({ engine_temp_C: "12" }, { engine });
  expect(codes(trust)).toEqual(["cold"]);
  expect(trust.reasons[0]?.text).toContain("unless the manual says cold");
});

test("strokes that differ between cylinders are doubtful", () => {
  const tests: Row[] = [even, { test: "2026-05-02a", what: "strokes", cells: "6 6 4 6", unit: "" }];
  expect(assessed({ tests }).trust.reasons).toMatchObject([
    { code: "strokes-differ", text: "strokes differ between cylinders (4 to 6)" },
  ]);
});

test("a doubtful cell makes the test doubtful, of dry readings and of a leak-down", () => {
  expect(trustOf({ cells: "150 148? 152 149" }).reasons).toMatchObject([
    { code: "doubtful-cell", text: "the reading of cylinder 2 is marked doubtful", mend: "take it again" },
  ]);
  const leak = { what: "leak-down", cells: "74 73? 74 72", regulated_psi: "80" };
  expect(codes(trustOf(leak))).toEqual(["doubtful-cell"]);
});

test("a seller's sheet is doubtful", () => {
  expect(codes(trustOf({ by: "Seller" }))).toEqual(["seller"]);
});

// Limit for two repeats: 1.96 sqrt(2) s, statistics.md F, with the usual s = .015 alone: ln ratio .0416, about 4.2 %.
test("repeats of one cylinder further apart than 4.2 % are doubtful where the owner has no other repeats", () => {
  const twice = (second: string) => [
    { ...even, take: "1", cells: "150 150 150 150" },
    { ...even, take: "2", cells: second },
  ];
  expect(assessed({ tests: twice("150 150 150 156") }).trust.code).toBe("trusted");
  const { trust } = assessed({ tests: twice("150 150 150 157") });
  expect(trust.code).toBe("doubtful");
  expect(trust.reasons[0]?.text).toContain("cylinder 4");
});

test("repeats that lie far apart on every cylinder do not excuse one another", () => {
  const tests = [
    { ...even, take: "1", cells: "150 150 150 150" },
    { ...even, take: "2", cells: "100 100 100 100" },
  ];
  expect(codes(assessed({ tests }).trust)).toEqual(["repeats-apart"]);
});

test("void outweighs doubtful, and every reason is kept", () => {
  const trust = trustOf({ throttle: "closed", by: "seller", cells: "150 148? 152 149" });
  expect(trust.code).toBe("void");
  expect(codes(trust)).toEqual(["throttle-closed", "doubtful-cell", "seller"]);
});

test("a test that is void gives no cylinder a standing and no rule a verdict", () => {
  const result = assessed({ tests: [{ ...even, cells: "150 148 152 90", throttle: "closed" }] });
  expect(result.cylinders.map(({ standing, t }) => standing ?? t)).toEqual(new Array(4).fill(undefined));
  expect(result.rules.length).toBeGreaterThan(0);
  expect(new Set(result.rules.map(({ verdict }) => verdict))).toEqual(new Set(["cannot-tell"]));
});
