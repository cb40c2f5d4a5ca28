// What must hold for any engine and any findings, whatever the numbers in the tables.

import { diagnose, shippedFaults, type Evidence } from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

type Cylinder = Evidence["cylinders"][number];
const faults = shippedFaults();
const placeOf = (wanted: string): number => faults.causes.findIndex(({ code }) => code === wanted);
const kPa = 1000;
const few = { numRuns: 12 };

const pressures = fc.integer({ min: 0, max: 1400 }).map((value) => value * kPa);
const places = fc.constantFrom("crankcase", "exhaust", "intake", "neighbour", "coolant", "plug", "outside");
const heards = fc.array(fc.record({ place: places, faint: fc.boolean() }), { maxLength: 2 });

/** Only what was found has a key. */
const cylinders: fc.Arbitrary<Cylinder> = fc.record(
  {
    dry: fc.array(pressures, { minLength: 1, maxLength: 3 }),
    wet: pressures,
    leak: fc.record({ alpha: fc.double({ min: 0.05, max: 8, noNaN: true }) }),
    heard: heards,
    oiled: fc.double({ min: 0.2, max: 1.3, noNaN: true }),
    onset: fc.constantFrom("sudden", "gradual", "cannot tell", "steady"),
    running: pressures,
    seen: fc.constantFrom({ lash: "tight" }, { borescope: "valve" }, { warm: "recovers" }),
  },
  { requiredKeys: [] },
);

const presence = fc.constantFrom("present", "absent");
const signs = fc.record({ "oil use": presence, "coolant loss": presence }, { requiredKeys: [] });

const engines: fc.Arbitrary<Evidence> = fc
  .record(
    {
      cylinders: fc.array(cylinders, { minLength: 1, maxLength: 4 }),
      sharedGasket: fc.boolean(),
      expected: fc.record({ level: fc.constant(1000 * kPa), from: fc.constantFrom("baseline", "maker") }),
      signs,
      circumstances: fc.subarray([
        { when: "cold" },
        { when: "event: overheated" },
        { when: "diesel" },
      ] as const),
      obstacles: fc.subarray([
        "diesel",
        "no valves",
        "air-cooled",
        "does not run",
        "crank cannot be held",
      ] as const),
      restrictor: fc.constantFrom("known", "unknown"),
    },
    { requiredKeys: ["cylinders", "sharedGasket", "signs", "circumstances", "obstacles", "restrictor"] },
  )
  .map((one) => ({ ...one, banks: [one.cylinders.map((_, i) => i)], tools: [] }));

const close = (rows: readonly (readonly number[])[], to: readonly (readonly number[])[]): void => {
  expect(rows).toHaveLength(to.length);
  rows.forEach((row, i) => row.forEach((chance, h) => expect(chance).toBeCloseTo(to[i]?.[h] ?? NaN, 8)));
};
const chancesOf = (evidence: Evidence): readonly (readonly number[])[] =>
  diagnose(evidence, faults).cylinders;
const withCylinder = (evidence: Evidence, place: number, change: (one: Cylinder) => Cylinder): Evidence => ({
  ...evidence,
  cylinders: evidence.cylinders.map((one, i) => (i === place ? change(one) : one)),
});

test("the chances of every cylinder are none below 0 and add up to 1, and so do the groups", () => {
  fc.assert(
    fc.property(engines, (evidence) => {
      const { cylinders: rows, groups } = diagnose(evidence);
      for (const row of [...rows, Object.values(groups)]) {
        expect(Math.min(...row)).toBeGreaterThan(-1e-9);
        expect(row.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
      }
    }),
    few,
  );
});

test("the order in which cylinders are listed, and from which end a bank is counted, changes nothing", () => {
  fc.assert(
    fc.property(engines, (evidence) => {
      const last = evidence.cylinders.length - 1;
      const turned: Evidence = {
        ...evidence,
        cylinders: evidence.cylinders.toReversed(),
        banks: evidence.banks.map((bank) => bank.map((place) => last - place)),
      };
      const here = chancesOf(evidence);
      close(chancesOf(turned).toReversed(), here);
      close(chancesOf({ ...evidence, banks: evidence.banks.map((bank) => bank.toReversed()) }), here);
    }),
    few,
  );
});

test("the order of takes, of places where air was heard, and of circumstances changes nothing", () => {
  fc.assert(
    fc.property(engines, (evidence) => {
      const turned: Evidence = {
        ...evidence,
        circumstances: evidence.circumstances.toReversed(),
        cylinders: evidence.cylinders.map(({ dry, heard, ...one }) => ({
          ...one,
          ...(dry === undefined ? {} : { dry: dry.toReversed() }),
          ...(heard === undefined ? {} : { heard: heard.toReversed() }),
        })),
      };
      close(chancesOf(turned), chancesOf(evidence));
    }),
    few,
  );
});

test("what was not looked at says nothing", () => {
  fc.assert(
    fc.property(engines, (evidence) => {
      const more = evidence.cylinders.map((one) => ({ dry: [], seen: {}, ...one }));
      close(chancesOf({ ...evidence, cylinders: more }), chancesOf(evidence));
    }),
    few,
  );
});

test("another unit of pressure for all readings and the expectation changes nothing", () => {
  fc.assert(
    fc.property(engines, fc.constantFrom(0.001, 0.145, 7), (evidence, factor) => {
      const of = (value: number): number => value * factor;
      const scaled: Evidence = {
        ...evidence,
        ...(evidence.expected === undefined
          ? {}
          : { expected: { ...evidence.expected, level: of(evidence.expected.level) } }),
        cylinders: evidence.cylinders.map(({ dry, wet, running, ...one }) => ({
          ...one,
          ...(dry === undefined ? {} : { dry: dry.map(of) }),
          ...(wet === undefined ? {} : { wet: of(wet) }),
          ...(running === undefined ? {} : { running: of(running) }),
        })),
      };
      close(chancesOf(scaled), chancesOf(evidence));
    }),
    few,
  );
});

test("air heard at the exhaust never makes a leaking exhaust valve there less likely", () => {
  fc.assert(
    fc.property(engines, fc.nat(), (engine, pick) => {
      const place = pick % engine.cylinders.length;
      const evidence = { ...engine, restrictor: "known" } as const;
      const deaf = withCylinder(evidence, place, ({ heard: _, ...one }) => one);
      const heard = withCylinder(evidence, place, (one) => ({
        ...one,
        heard: [{ place: "exhaust", faint: false }],
      }));
      const valve = placeOf("exhaust-valve");
      const chance = (of: Evidence): number => chancesOf(of)[place]?.[valve] ?? NaN;
      expect(chance(heard)).toBeGreaterThanOrEqual(chance(deaf) - 1e-12);
    }),
    few,
  );
});

test("that a sign is absent never makes the cause that brings it most often more likely in a single", () => {
  fc.assert(
    fc.property(cylinders, fc.constantFrom("oil use", "coolant loss", "miss", "blow-by"), (one, sign) => {
      const single: Evidence = {
        ...{ cylinders: [one], banks: [[0]], sharedGasket: false, circumstances: [] },
        ...{ restrictor: "known", signs: {}, tools: [], obstacles: [] },
      };
      const { brings } = faults.signs[sign];
      const [before] = chancesOf(single);
      const [after] = chancesOf({ ...single, signs: { [sign]: "absent" } });
      for (const [h, chance] of brings.entries())
        if (chance === Math.max(...brings))
          expect(after?.[h] ?? NaN).toBeLessThanOrEqual((before?.[h] ?? NaN) + 1e-12);
    }),
    { numRuns: 40 },
  );
});

test("what is capped is never shown above the cap, and what is shown never above the chance", () => {
  fc.assert(
    fc.property(engines, (evidence) => {
      const { causes, capped } = diagnose(evidence);
      for (const { code, shown, probability, low, high } of causes) {
        if (capped && code !== "no-fault") expect(shown).toBeLessThanOrEqual(faults.settings.crankingCap);
        expect(shown).toBeLessThanOrEqual(probability);
        expect(low).toBeLessThanOrEqual(shown + 1e-9);
        expect(high).toBeGreaterThanOrEqual(shown - 1e-9);
      }
    }),
    few,
  );
});

test("causes stand from the likeliest down, and each is about the target", () => {
  fc.assert(
    fc.property(engines, (evidence) => {
      const { causes, target } = diagnose(evidence);
      const chances = causes.map(({ probability }) => probability);
      expect(chances).toEqual(chances.toSorted((a, b) => b - a));
      for (const { cylinders: about } of causes) expect(about).toContain(target);
    }),
    few,
  );
});

test("no blocked test is proposed, none that was made, and none tells more than there is to know", () => {
  fc.assert(
    fc.property(engines, (evidence) => {
      const { tests, target, groups, enough } = diagnose(evidence);
      const unknown = Object.values(groups).reduce((sum, p) => sum - (p > 0 ? p * Math.log2(p) : 0), 0);
      for (const { test: proposed, bits, bitsPerHour } of tests) {
        expect(proposed.blocked.filter((one) => evidence.obstacles.includes(one))).toEqual([]);
        expect(bits).toBeGreaterThanOrEqual(0);
        expect(bits).toBeLessThanOrEqual(unknown + 1e-9);
        expect(Number.isFinite(bitsPerHour)).toBe(true);
      }
      const codes = tests.map(({ test: { code } }) => code);
      if (evidence.cylinders[target]?.dry !== undefined) expect(codes).not.toContain("cranking");
      if (evidence.cylinders[target]?.wet !== undefined) expect(codes).not.toContain("wet");
      if (enough) for (const { bits } of tests) expect(bits).toBeLessThan(0.05);
    }),
    few,
  );
});

test("reasons speak for with a ratio of two and more, against with a half and less, and are numbers", () => {
  fc.assert(
    fc.property(engines, (evidence) => {
      const { causes, misfits } = diagnose(evidence);
      for (const { for: told, against } of causes) {
        for (const { ratio } of told) expect(ratio >= 2 && Number.isFinite(ratio)).toBe(true);
        for (const { ratio } of against) expect(ratio >= 0 && ratio <= 0.5).toBe(true);
      }
      for (const { ratio } of misfits) expect(ratio).toBeLessThan(0.15);
    }),
    few,
  );
});

test.each([1, 2, 8, 28])(
  "%i cylinders that hold nothing, or of which one was read, give numbers",
  (count) => {
    const nothing = Array.from({ length: count }, () => ({ dry: [0] }));
    const one = Array.from({ length: count }, (_, i) => (i === 0 ? { dry: [900 * kPa] } : {}));
    const takes = Array.from({ length: count }, () => ({ dry: [900 * kPa, 0, 0, 0] }));
    const unread = Array.from({ length: count }, () => ({}));
    for (const all of [nothing, one, takes, unread]) {
      const found = diagnose({
        ...{ cylinders: all, banks: [all.map((_, i) => i)], sharedGasket: true, circumstances: [] },
        ...{ restrictor: "known", signs: {}, tools: [], obstacles: [] },
      });
      expect(found.cylinders.flat().every((chance) => Number.isFinite(chance))).toBe(true);
      for (const row of found.cylinders) expect(row.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 9);
    }
  },
);
