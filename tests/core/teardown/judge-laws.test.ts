// What holds of any teardown: whatever rows a file holds, judging them ends, and nothing but an outside asks for work.

import fc from "fast-check";
import { type Measurement, length, measuredParts, partNames } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { judgedAs, saw } from "./judge-samples.ts";

const labels = ["1", "2", "3", "4", "5", "9"];
const sizes: Readonly<Record<string, number>> = {
  bore: 86.5,
  piston: 86.45,
  main: 58,
  pin: 48,
  guide: 8,
  stem: 8,
};

const rows: fc.Arbitrary<Measurement> = fc
  .record({
    part: fc.constantFrom(...partNames),
    pick: fc.nat(20),
    label: fc.constantFrom(...labels),
    end: fc.constantFrom("top", "middle", "bottom", "front", "rear", "unworn", "diagonal1", "long1", "1"),
    way: fc.constantFrom("thrust", "axial", "0", "90", "150"),
    off: fc.double({ min: -0.3, max: 0.6, noNaN: true }),
    slip: fc.constantFrom(1, 1, 1, 1, 1, 0.1, 25.4),
    state: fc.constantFrom("as found", "cleaned", "new part", "after machining" as const),
    feeler: fc.boolean(),
    instrument: fc.constantFrom("micrometer", "bore-gauge", "caliper", "feeler", "my own", undefined),
  })
  .map(({ part, pick, label, end, way, off, slip, state, feeler, instrument }) => {
    const known = measuredParts[part];
    const quantity = known[pick % known.length] ?? known[0];
    const size = sizes[part] ?? 0;
    const value = length(((size + (size === 0 ? Math.abs(off) : off)) * slip) / 1000);
    return {
      teardown: 1,
      date: "2026-03-02",
      part,
      label: quantity?.label === "valve" ? `${label}ex` : label,
      at: `${end}/${way}`,
      quantity: quantity?.name ?? "diameter",
      value:
        quantity?.kind === "word"
          ? ({ kind: "word", word: quantity.words[0] ?? "" } as const)
          : feeler
            ? ({ kind: "between", low: value, high: length(value + 5e-5) } as const)
            : ({ kind: "length", value } as const),
      ...(quantity?.kind === "word" ? {} : { unit: "mm" as const }),
      ...(instrument === undefined ? {} : { instrument }),
      state,
      line: 2,
    };
  });
const teardowns = fc.array(rows, { minLength: 1, maxLength: 40 });

const numbersIn = (value: unknown): readonly number[] => {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersIn) : [];
};

test("any rows are judged, every number is one, every chance between 0 and 1", () => {
  fc.assert(
    fc.property(teardowns, (measurements) => {
      const assessment = judgedAs(measurements);
      expect(numbersIn(assessment).every(Number.isFinite)).toBe(true);
      for (const { verdicts } of [...assessment.items, ...assessment.derived])
        for (const { probability } of verdicts) {
          expect(probability).toBeGreaterThanOrEqual(0);
          expect(probability).toBeLessThanOrEqual(1);
        }
      for (const { atLeast, atMost } of assessment.parts) expect(atLeast).toBeLessThanOrEqual(atMost);
    }),
    { numRuns: 300 },
  );
});

test("work follows from a figure outside its limit or from a finding, never from a doubt", () => {
  fc.assert(
    fc.property(teardowns, (measurements) => {
      const { items, derived, findings, work } = judgedAs(measurements);
      const outside = [...items, ...derived].some(
        ({ verdicts, superseded, waits }) =>
          superseded === undefined &&
          waits === undefined &&
          verdicts.some(({ verdict }) => verdict === "outside"),
      );
      const cut = work.filter(
        ({ code }) => !["use-again", "measure-better", "measure-missing"].includes(code),
      );
      const isCrack = items.some(({ part }) => part === "crack");
      if (cut.length > 0) expect(outside || findings.length > 0 || isCrack).toBe(true);
      expect(work.some(({ code }) => code === "use-again") && cut.length > 0).toBe(false);
    }),
    { numRuns: 300 },
  );
});

test("nothing is corrected: every figure stands as it was written", () => {
  fc.assert(
    fc.property(teardowns, (measurements) => {
      const { items } = judgedAs(measurements);
      const written = measurements.filter(({ value }) => value.kind === "length").map(({ value }) => value);
      for (const { value, readings, between } of items)
        if (readings === 1 && between === undefined)
          expect(written.some((one) => one.kind === "length" && one.value === value)).toBe(true);
    }),
    { numRuns: 200 },
  );
});

test("an engine without limits has no verdicts and no work but what was seen", () => {
  fc.assert(
    fc.property(teardowns, (measurements) => {
      const { items, derived } = judgedAs(measurements, { ...saw, clearances: [] });
      expect([...items, ...derived].flatMap(({ verdicts }) => verdicts)).toEqual([]);
    }),
    { numRuns: 100 },
  );
});
