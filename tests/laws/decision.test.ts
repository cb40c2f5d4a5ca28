// What may never happen to a decision: money does not make need, evidence does not soften, units and order do not matter.

import {
  decide,
  type Decision,
  type DecisionInput,
  type EvidenceId,
  type EvidenceRow,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

const ids: readonly EvidenceId[] = [
  ...([
    "A1",
    "A2",
    "A3",
    "A4",
    "A5",
    "A6",
    "A7",
    "A8",
    "B1",
    "B2",
    "B3",
    "B4",
    "B5",
    "B6",
    "B7",
    "B8",
  ] as const),
  ...(["C0", "C1", "C2", "C3", "C4", "D1", "D2", "E1", "E2", "F1", "F2", "F3", "F4", "G1", "G2"] as const),
  ...(["H1", "H2", "H3", "I1", "I2", "I3", "I4", "J1", "J2", "J3", "J4", "J5", "J6", "J7"] as const),
];
/** Points for wear and none against, anywhere. */
const speakForWear: readonly EvidenceId[] = [
  ...(["A2", "A7", "A8", "C0", "C1", "C2", "C4", "D1", "E1", "F1", "F2", "F3", "G1", "G2"] as const),
  ...(["H1", "H2", "I1", "I2", "I3", "J1", "J3", "J5", "J7", "B7"] as const),
];
const row = (id: EvidenceId): EvidenceRow => ({
  id,
  text: "",
  restsOn: id.startsWith("A") || id.startsWith("B") ? "this-test" : "other-records",
});
const price = fc.integer({ min: 20, max: 4000 });
const prices = fc.record({
  jobs: fc.record({ headOff: price, bottomOpen: price, engineOut: price }),
  work: fc.record({ topEnd: price, reRing: price, rebuild: price }),
  daysNow: fc.record({ reRing: fc.integer({ min: 0, max: 20 }) }),
  daysLater: fc.record({ reRing: fc.integer({ min: 0, max: 20 }) }),
  day: fc.integer({ min: 0, max: 200 }),
  test: fc.integer({ min: 0, max: 60 }),
  runningPerYear: fc.integer({ min: 0, max: 300 }),
});
const shares = fc
  .tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 1 }))
  .map(([top, rings, bottom]) => ({ top: top / 10, rings: rings / 10, bottom: bottom / 10 }));
const chance = fc.integer({ min: 1, max: 99 }).map((hundredths) => hundredths / 100);
const line = fc.record({
  steps: fc.array(fc.integer({ min: -60, max: 30 }), { minLength: 1, maxLength: 8 }),
  limit: fc.integer({ min: -300, max: 0 }),
});
const wear = fc.oneof(
  chance.map((probability): DecisionInput["wear"] => ({ kind: "typed", probability })),
  line.map(({ steps, limit }): DecisionInput["wear"] => {
    const y = steps.map((_, k) => steps.slice(0, k + 1).reduce((sum, step) => sum + step / 1000, 0));
    return {
      kind: "lines",
      lines: [{ label: "1", x: y.map((_, k) => k), y, variance: 0.0006, df: 12, limit: limit / 1000 }],
    };
  }),
);
const evidence = fc.uniqueArray(fc.constantFrom(...ids), { maxLength: 7 }).map((found) => found.map(row));
const done = fc.subarray(["headOff", "bottomOpen", "engineOut"] as const);
const use = fc.constantFrom("ordinary", "remote", "safety" as const);
const input: fc.Arbitrary<DecisionInput> = fc.record(
  {
    rows: evidence,
    trust: fc.constantFrom("trusted", "trusted", "doubtful", "void"),
    wear,
    shares,
    done,
    prices,
    use,
    ownership: fc.oneof(
      fc.integer({ min: 1, max: 12 }).map((years) => ({ kind: "years", years }) as const),
      fc.integer({ min: 1, max: 40 }).map((age) => ({ kind: "for-good", age, left: 9 }) as const),
    ),
    considered: fc.constantFrom("topEnd", "reRing", "rebuild"),
    ringsDue: fc.constant("yes"),
    doubts: fc.subarray(["one-method-only"]),
    test: fc.record({
      what: fc.constantFrom("leak-down", "measurement"),
      cost: fc.integer({ min: 0, max: 80 }),
      tells: chance.map((share) => ({ kind: "share", share }) as const),
    }),
  },
  { requiredKeys: ["rows", "trust", "wear", "shares", "done", "ownership", "use"] },
);
const law = (property: fc.IProperty<unknown>): void => fc.assert(property, { numRuns: 60 });
const repairs = ["open-the-top-end", "re-ring", "rebuild"];
/** How far from leaving it. */
const rank = ({ verdict }: Decision): number =>
  repairs.includes(verdict) ? 3 : ["leave-it", "watch-it", "test-again"].indexOf(verdict);
const near = (a: number, b: number, size: number): void =>
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-9 * Math.max(1, size));

test("money never brings a rebuild: it is needed, or it is not the word", () => {
  law(
    fc.property(input, (one) => {
      const found = decide(one);
      if (found.verdict === "rebuild") expect(found).toMatchObject({ basis: "needed", need: "rebuild" });
    }),
  );
});

test("need hangs on rows and trust alone, never on money or years, nor on access unless a void test cannot be made again", () => {
  law(
    fc.property(input, input, ({ rows, trust }, other) => {
      const found = decide({ ...other, rows, trust });
      const bare = decide({
        rows,
        trust,
        wear: { kind: "unknown" },
        shares: "healthy",
        done: trust === "void" ? other.done : [],
        use: "ordinary",
        ownership: { kind: "years", years: 5 },
      });
      expect(found.need).toBe(bare.need);
      expect(found.scores).toEqual(bare.scores);
      expect(found.basis === "needed").toBe(
        bare.basis === "needed" && !(found.basis === "opportunity" && found.need === "topEnd"),
      );
    }),
  );
});

test("one more sign of wear never moves the verdict towards leaving it, but for a guard that names itself", () => {
  law(
    fc.property(input, fc.constantFrom(...speakForWear), (one, id) => {
      const [before, after] = [decide(one), decide({ ...one, rows: [...one.rows, row(id)] })];
      const holding: readonly string[] = ["one-line-only", "source-unknown", "scored-bore"];
      const guarded = after.guards.some(({ code }) => holding.includes(code));
      if (!guarded) expect(rank(after)).toBeGreaterThanOrEqual(rank(before));
    }),
  );
});

test("what holds without a test is told wherever one is asked for, and is never a further test nor a rebuild", () => {
  law(
    fc.property(input, (one) => {
      const { verdict, ifNotTested } = decide(one);
      expect(ifNotTested !== undefined).toBe(verdict === "test-again");
      expect(["test-again", "rebuild"]).not.toContain(ifNotTested?.verdict);
      if (verdict === "test-again" && one.use === "safety") expect(ifNotTested?.use).toBe("not-used");
    }),
  );
});

test("rings that are due are never left in, but for what is to be tested or found first", () => {
  law(
    fc.property(input, (one) => {
      const { verdict, comparison, need } = decide({ ...one, ringsDue: "yes" });
      if (verdict !== "test-again") expect(["re-ring", "rebuild"]).toContain(verdict);
      if (need === undefined || need === "topEnd") expect(comparison).toBeUndefined();
    }),
  );
});

test("the order of the rows does not matter", () => {
  law(
    fc.property(input, (one) => {
      const [found, turned] = [decide(one), decide({ ...one, rows: one.rows.toReversed() })];
      expect([turned.verdict, turned.basis, turned.reasons, turned.margin]).toEqual([
        found.verdict,
        found.basis,
        found.reasons,
        found.margin,
      ]);
      expect(turned.scores.rings.score).toBe(found.scores.rings.score);
      expect(turned.guards.map(({ code }) => code)).toEqual(found.guards.map(({ code }) => code));
    }),
  );
});

/** What the verdict is told with: the difference, or the price of what is due. */
const inMoney = ({ comparison, due }: Decision): number => comparison?.difference ?? due?.price ?? NaN;

test("the unit of money cancels", () => {
  // a power of two, so that nothing is rounded
  const by = 1024;
  const scaled = <T extends object>(part: T): T =>
    Object.assign(
      {},
      part,
      Object.fromEntries(Object.entries(part).map(([key, value]) => [key, Number(value) * by])),
    );
  law(
    fc.property(input, prices, (one, priced) => {
      const cost = one.test?.cost ?? 0;
      const offered = { what: "measurement", tells: { kind: "share", share: 0.4 }, cost } as const;
      const first = decide({ ...one, prices: priced, test: offered });
      const second = decide({
        ...one,
        test: { ...offered, cost: cost * by },
        prices: {
          jobs: scaled(priced.jobs),
          work: scaled(priced.work),
          daysNow: priced.daysNow,
          daysLater: priced.daysLater,
          day: priced.day * by,
          test: priced.test * by,
          runningPerYear: priced.runningPerYear * by,
        },
      });
      expect([second.verdict, second.basis, second.margin, second.planBy]).toEqual([
        first.verdict,
        first.basis,
        first.margin,
        first.planBy,
      ]);
      expect(second.testWorth?.change).toBe(first.testWorth?.change);
      expect(second.comparison?.breakEven?.probability).toBe(first.comparison?.breakEven?.probability);
      expect(inMoney(second)).toBe(inMoney(first) * by);
    }),
  );
});

const typed = fc.record({
  prices,
  shares,
  done,
  probability: chance,
  years: fc.integer({ min: 1, max: 10 }),
});
const bare = { rows: [], trust: "trusted", use: "ordinary", considered: "reRing" } as const;

test("at the break-even chance acting and waiting cost the same", () => {
  law(
    fc.property(typed, ({ probability, years, ...one }) => {
      const at = (p: number): Decision =>
        decide({
          ...bare,
          ...one,
          wear: { kind: "typed", probability: p },
          ownership: { kind: "years", years },
        });
      const { comparison } = at(probability);
      const turn = comparison?.breakEven?.probability;
      if (comparison === undefined || turn === undefined || turn <= 0 || turn >= 1) return;
      const costs = at(turn).options.map(({ expectedCost }) => expectedCost ?? NaN);
      const [leave = NaN, watch = NaN, , act = NaN] = costs;
      near(comparison.idle === "leave" ? leave : watch, act, act);
    }),
  );
});

test("a test is worth nothing at least, and at most what knowing for certain is worth", () => {
  law(
    fc.property(input, (one) => {
      const worth = decide(one).testWorth;
      if (worth === undefined) return;
      expect(worth.change).toBeGreaterThanOrEqual(0);
      expect(worth.change).toBeLessThanOrEqual(1);
      if (worth.evsi === undefined) return;
      expect(worth.evsi).toBeGreaterThanOrEqual(0);
      expect(worth.evsi).toBeLessThanOrEqual(worth.evpi ?? NaN);
    }),
  );
});

test("the dearer money is, the less a re-ring before its time pays", () => {
  const rate = fc.integer({ min: 0, max: 20 }).map((percent) => percent / 100);
  law(
    fc.property(typed, rate, rate, ({ probability, years, ...one }, a, b) => {
      const at = (interest: number): number =>
        decide({
          ...bare,
          ...one,
          interest,
          wear: { kind: "typed", probability },
          ownership: { kind: "years", years },
        }).comparison?.difference ?? NaN;
      expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)) + 1e-6);
    }),
  );
});

test("the dearer money is, the more of a life must be used up before its renewal pays", () => {
  const rate = fc.integer({ min: 0, max: 20 }).map((percent) => percent / 100);
  law(
    fc.property(typed, rate, rate, fc.integer({ min: 1, max: 30 }), (one, a, b, age) => {
      const at = (interest: number): number =>
        decide({
          ...bare,
          shares: one.shares,
          done: one.done,
          interest,
          wear: { kind: "unknown" },
          ownership: { kind: "for-good", age, left: Math.min(one.years, age) },
        }).keep?.used ?? NaN;
      expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)) + 1e-12);
    }),
  );
});

test("at a price that tips the comparison the two ways cost the same", () => {
  law(
    fc.property(typed, ({ probability, years, ...one }) => {
      const at = (work: typeof one.prices.work): Decision =>
        decide({
          ...bare,
          ...one,
          prices: { ...one.prices, work },
          wear: { kind: "typed", probability },
          ownership: { kind: "years", years },
        });
      const found = at(one.prices.work).comparison?.swings.find(({ input }) => input === "work.reRing");
      if (found?.flip === undefined) return;
      const { comparison } = at({ ...one.prices.work, reRing: found.flip.at });
      near(comparison?.difference ?? NaN, 0, 1e3 * (comparison?.price ?? NaN));
    }),
  );
});
