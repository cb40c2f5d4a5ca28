// Leak-down beside cranking, and leak-down with oil or with the piston lower. Expected values: handbook/leakdown.md H.4 and
// C.6, computed there; none is published.

import { describe, expect, test } from "vitest";
import { type Row, assessed } from "./records.ts";

const gauges = [
  "gauge,kind,unit,full_scale,class_percent,division,restrictor_mm,restrictor_tol_mm,dial",
  "leaky,leak-down,psi,100,2,1,1.016,0.0254,pressure",
  "blind,leak-down,%,,,,unknown,,percent-lost",
  "",
].join("\n");
const day = (cells: string, more: Partial<Row> = {}): Row => ({ test: "2026-05-02a", cells, ...more });
const leak = (cells: string, more: Partial<Row> = {}): Row =>
  day(cells, { what: "leak-down", gauge: "leaky", regulated_psi: "80", altitude_m: "0", ...more });
const close = (value: number, digits = 3): unknown => expect.closeTo(value, digits);

describe("does the leak explain the low cranking reading?", () => {
  // 0.5 L: bore 86 mm, stroke 86.08 mm (pi/4 x .086^2 x .08608 = 0.0005 m3)
  const petrol = { geometry: { bore: "86mm", stroke: "86.08mm", compressionRatio: 9.5 } };
  const explained = (dry: string, lost: string, more: Partial<Row> = {}) =>
    assessed({
      engine: petrol,
      gauges,
      tests: [day(dry, { altitude_m: "0", ...more }), leak(lost)],
    }).leak?.cranking;

  test("a leak too small for so low a reading does not explain it (H.4 #9)", () => {
    const found = explained("118 150 150 150", "56 72 72 72");
    expect(found).toMatchObject({ speedFrom: "assumed", speed: 250 });
    expect(found?.cylinders[0]).toMatchObject({
      label: "1",
      kind: "does-not-explain",
      expected: close(0.907),
      uExpected: close(0.032),
      observed: close(0.787),
      z: close(-2.5, 1),
    });
  });

  test("a large one does (H.4 #10), and even cylinders have nothing to explain", () => {
    const found = explained("122 152 152 152", "40 74 74 74");
    expect(found?.cylinders.map(({ kind }) => kind)).toEqual(["explains", "nothing", "nothing", "nothing"]);
    expect(found?.cylinders[0]).toMatchObject({ expected: close(0.82), uExpected: close(0.054) });
  });

  test("a diesel's may be part of it (H.4 #11)", () => {
    // 0.98 L: bore 102 mm, stroke 119.93 mm
    const engine = {
      ignition: "compression",
      geometry: { bore: "102mm", stroke: "119.93mm", compressionRatio: 17.3 },
    };
    const tests = [day("261 300 300 300", { altitude_m: "0" }), leak("60 68 68 68")];
    expect(assessed({ engine, gauges, tests }).leak?.cranking?.cylinders[0]).toMatchObject({
      kind: "perhaps-part",
      expected: close(0.937),
      uExpected: close(0.033),
      z: close(-1.4, 1),
    });
  });

  test("a leak-down of another day counts where it is near and nothing was done between", () => {
    const tests = [day("118 150 150 150", { altitude_m: "0" }), leak("56 72 72 72", { test: "2026-05-20a" })];
    const near = { engine: petrol, gauges, tests };
    expect(assessed(near, "2026-05-02a").leak?.cranking).toMatchObject({
      crankingTest: "2026-05-02a",
      leakTest: "2026-05-20a",
    });
    expect(assessed(near, "2026-05-20a").leak?.cranking?.cylinders[0]?.kind).toBe("does-not-explain");
    const services = ["2026-05-10,,valve job,1,"];
    expect(assessed({ ...near, services }, "2026-05-02a").leak).toBeUndefined();
    const late = [day("118 150 150 150"), leak("56 72 72 72", { test: "2026-06-20a" })];
    expect(assessed({ ...near, tests: late }).leak?.cranking).toBeUndefined();
  });

  test("without the geometry, or on a tester that tells no size, nothing is said", () => {
    const tests = [day("118 150 150 150"), leak("56 72 72 72")];
    expect(assessed({ gauges, tests }).leak?.cranking).toBeUndefined();
    const blind = leak("30 10 10 10", { gauge: "blind", unit: "%" });
    expect(
      assessed({ engine: petrol, gauges, tests: [day("118 150 150 150"), blind] }).leak?.cranking,
    ).toBeUndefined();
  });
});

describe("leaks side by side add as areas, not as percents", () => {
  test("oil that turns 64/80 into 74/80 closed 42 % of the leak: alpha 0.389 of 0.9245", () => {
    const tests = [leak("64 74 74 74"), leak("74 x x x", { what: "leak-down-oiled" })];
    expect(assessed({ gauges, tests }).leak?.parts).toEqual([
      {
        label: "1",
        what: "oiled",
        lost: close(0.2, 9),
        then: close(0.075, 9),
        share: close(0.4203),
        uShare: expect.any(Number) as number,
        closedAlpha: close(0.3886),
        leftAlpha: close(0.5359, 4),
        shown: "yes",
        isLessThanHalf: false,
      },
    ]);
  });

  test("half of a leak is denied only where one half lies outside the share and its doubt", () => {
    const parts = (dry: string, oiled: string) =>
      assessed({ gauges, tests: [leak(dry), leak(oiled, { what: "leak-down-oiled" })] }).leak?.parts;
    // C.5: 60/80 is alpha 1.0586 ± 0.05, 61/80 about 1.02: 4 % closed, no half of it
    expect(parts("60 74 74 74", "61 x x x")).toMatchObject([{ shown: "no", isLessThanHalf: true }]);
    // 74/80 and 76/80: 18 % of the area, give or take 30 %: a half may have gone
    expect(parts("74 74 74 74", "76 x x x")).toMatchObject([{ shown: "no", isLessThanHalf: false }]);
  });

  test("a change within the dials is not shown, and a tight cylinder cannot tell", () => {
    const tests = [leak("64 79 74 74"), leak("65 80 x x", { what: "leak-down-oiled" })];
    expect(assessed({ gauges, tests }).leak?.parts.map(({ shown }) => shown)).toEqual(["no", "cannot-tell"]);
  });

  test("a percent dial tells the share alone", () => {
    const more = { gauge: "blind", unit: "%", regulated_psi: "" };
    const tests = [leak("20 8 8 8", more), leak("7.5 x x x", { ...more, what: "leak-down-lower" })];
    const [part] = assessed({ gauges, tests }).leak?.parts ?? [];
    expect(part).toMatchObject({ what: "lower", share: close(0.42, 2), shown: "yes" });
    expect(part).not.toHaveProperty("closedAlpha");
  });
});
