// What tips a decision: just beyond each tipping point the two ways have changed places, and none is missed that a grid of
// whole decisions finds. The grid knows nothing of levers, spans and walks.

import {
  decide,
  turnsOf,
  type Decision,
  type DecisionInput,
  type Prices,
  type WearLine,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

const price = fc.integer({ min: 20, max: 4000 });
const line = fc
  .record({
    steps: fc.array(fc.integer({ min: -60, max: 30 }), { minLength: 3, maxLength: 8 }),
    limit: fc.integer({ min: -400, max: 0 }),
  })
  .map(({ steps, limit }): WearLine => {
    const y = steps.map((_, k) => steps.slice(0, k + 1).reduce((sum, step) => sum + step / 1000, 0));
    return { label: "1", x: y.map((_, k) => k), y, variance: 0.0006, df: 12, limit: limit / 1000 };
  });
const priced = fc
  .record({
    lines: fc.array(line, { minLength: 1, maxLength: 2 }),
    top: fc.integer({ min: 0, max: 9 }),
    done: fc.subarray(["headOff", "bottomOpen", "engineOut"] as const),
    act: fc.constantFrom("topEnd", "reRing" as const),
    years: fc.integer({ min: 1, max: 12 }),
    jobs: fc.record({ headOff: price, bottomOpen: price, engineOut: price }),
    work: fc.record({ topEnd: price, reRing: price, rebuild: price }),
    test: fc.integer({ min: 0, max: 60 }),
    runningPerYear: fc.integer({ min: 0, max: 300 }),
  })
  .map(
    ({ lines: [first, ...rest], top, years, done, act, ...prices }): DecisionInput & { prices: Prices } => {
      if (first === undefined) throw new Error("no line");
      return {
        rows: [],
        trust: "trusted",
        use: "ordinary",
        wear: { kind: "lines", lines: [first, ...rest] },
        shares: { top: top / 10, rings: (9 - top) / 10, bottom: 0 },
        done,
        considered: act,
        ownership: { kind: "years", years },
        prices,
      };
    },
  );
type Priced = DecisionInput & { readonly prices: Prices };

/** The same question with one input changed, written out by hand. */
const changed = (one: Priced, input: string, at: number): DecisionInput => {
  const { prices, wear } = one;
  const [kind, name = ""] = input.split(".");
  if (input === "years") return { ...one, ownership: { kind: "years", years: at } };
  if (input === "limit") {
    if (wear.kind !== "lines") throw new Error("no line");
    const by = at - limitOf(one);
    const move = (line: WearLine): WearLine =>
      line.limit === limitOf(one) ? { ...line, limit: line.limit + by } : line;
    const [first, ...rest] = wear.lines;
    return { ...one, wear: { kind: "lines", lines: [move(first), ...rest.map(move)] } };
  }
  if (input === "spoil") return { ...one, chances: { spoil: at } };
  if (kind === "redo") return { ...one, chances: { redo: { [name]: at } } };
  if (kind === "jobs") return { ...one, prices: { ...prices, jobs: { ...prices.jobs, [name]: at } } };
  if (kind === "work") return { ...one, prices: { ...prices, work: { ...prices.work, [name]: at } } };
  if (kind === "resale") return { ...one, prices: { ...prices, resale: { ...prices.resale, [name]: at } } };
  return { ...one, prices: { ...prices, [input]: at } };
};
/** Of the line that is likeliest to pass. */
const limitOf = (one: Priced): number => {
  const swing = decide(one).comparison?.swings.find(({ input }) => input === "limit");
  if (swing !== undefined) return swing.value;
  return one.wear.kind === "lines" ? one.wear.lines[0].limit : NaN;
};

const differenceOf = ({ comparison }: Decision): number => comparison?.difference ?? NaN;
const pays = (one: DecisionInput): boolean => differenceOf(decide(one)) > 0;

test("just beyond each tipping point the two ways have changed places, and just before it not yet", () => {
  fc.assert(
    fc.property(priced, (one) => {
      const now = pays(one);
      for (const { input, value, flip } of decide(one).comparison?.swings ?? []) {
        if (flip === undefined) continue;
        const step = 1e-6 * (Math.abs(flip.at - value) + 1e-9);
        const outward = flip.at > value ? step : -step;
        expect([input, pays(changed(one, input, flip.at + outward))]).toEqual([input, !now]);
        expect([input, pays(changed(one, input, flip.at - outward))]).toEqual([input, now]);
      }
    }),
    { numRuns: 25 },
  );
});

/** How far is looked: prices a thousandfold either way, a hundred years, a sale that pays for the whole job. */
const grid = (one: Priced): readonly { readonly input: string; readonly values: readonly number[] }[] => {
  const { prices, considered = "reRing" } = one;
  const factors = [-3, -2.5, -2, -1.5, -1, -0.6, -0.3, -0.1, 0.1, 0.3, 0.6, 1, 1.5, 2, 2.5, 3].map(
    (k) => 10 ** k,
  );
  const by = (input: string, value: number) => ({ input, values: factors.map((factor) => value * factor) });
  const job = decide(one).comparison?.price ?? NaN;
  return [
    ...Object.entries(prices.jobs).map(([name, value]) => by(`jobs.${name}`, value)),
    ...Object.entries(prices.work).map(([name, value]) => by(`work.${name}`, value)),
    { input: "years", values: [0.2, 0.5, 1, 2, 3, 5, 8, 12, 18, 25, 35, 50, 70, 100] },
    { input: `resale.${considered}`, values: [0.1, 0.2, 0.4, 0.6, 0.8, 1].map((share) => share * job) },
    { input: "limit", values: [-0.15, -0.1, -0.05, 0.02, 0.05, 0.1, 0.15].map((by) => limitOf(one) + by) },
  ];
};

test("no tipping point is missed that a grid of whole decisions finds, and none lies nearer than the one told", () => {
  fc.assert(
    fc.property(priced, (one) => {
      const found = decide(one).comparison?.swings ?? [];
      const now = pays(one);
      for (const { input, values } of grid(one)) {
        const swing = found.find((each) => each.input === input);
        const value = swing?.value ?? NaN;
        for (const at of values.filter((each) => pays(changed(one, input, each)) !== now)) {
          expect([input, at, swing?.flip]).toEqual([input, at, expect.anything()]);
          const told = swing?.flip?.at ?? NaN;
          // on the same side it lies no farther out
          if (Math.sign(told - value) === Math.sign(at - value))
            expect(Math.abs(told - value)).toBeLessThanOrEqual(Math.abs(at - value) * (1 + 1e-9));
        }
      }
    }),
    { numRuns: 6 },
  );
});

const word = (one: DecisionInput): string => {
  const { verdict, reasons } = decide(one);
  return reasons.includes("level") ? "level" : verdict;
};

test("where the word itself turns, the decision of the changed input says the word that was told", () => {
  const offered = { what: "measurement", cost: 15, tells: { kind: "as-judged" } } as const;
  fc.assert(
    fc.property(priced, (given) => {
      const one = { ...given, test: offered };
      for (const turn of turnsOf(one)) {
        const there = word(changed(one, turn.input, turn.at));
        expect([turn.input, there]).toEqual([turn.input, turn.level === "yes" ? "level" : turn.verdict]);
        expect([turn.input, there]).not.toEqual([turn.input, word(one)]);
      }
    }),
    { numRuns: 6 },
  );
});
