// How far a tipping point is looked for, which line counts at other years, the edge, and where the word itself turns.

import { decide, turnsOf, type DecisionInput, type WearLine } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { healthyOpen, keptForGood, lowOilPressure, noPrices, valveHeard } from "./examples.ts";

const flipOf = (input: DecisionInput, name: string) =>
  decide(input).comparison?.swings.find((swing) => swing.input === name)?.flip;
const [healthy] = healthyOpen.wear.kind === "lines" ? healthyOpen.wear.lines : [];
if (healthy === undefined) throw new Error("no line");

describe("how far is looked", () => {
  test("a sale up to the whole price of the job", () => {
    // the difference itself, -573.38 (handbook/decision.md 9, example 1), of a job of 620; its range ends at .3 x 620
    expect(flipOf(healthyOpen, "resale.reRing")).toMatchObject({ where: "outside" });
    expect(flipOf(healthyOpen, "resale.reRing")?.at).toBeCloseTo(573.38, 2);
    expect(flipOf(healthyOpen, "resale.reRing")?.away).toBeCloseTo(573.38 / 186, 4);
  });

  test("a price a thousandfold", () => {
    // E(watch) - E(re-ring) = p .7 (.04 (R - 1820) + 1911) + 75 - 711 = 0 at p = .0852159101; e (1 - det) = .04
    const { at, where } = flipOf(healthyOpen, "work.rebuild") ?? { at: NaN, where: undefined };
    const rebuild = ((711 - 75) / (0.0852159101 * 0.7) - 1911) / 0.04 + 1820 - 1200;
    expect(at).toBeCloseTo(rebuild, 0);
    expect([at / 2600 > 20, where]).toEqual([true, "outside"]);
  });

  test("years to a hundred, and a limit to the level of today and beyond", () => {
    // .27 above its limit, a third of a per cent a year
    const level: WearLine = { ...healthy, y: healthy.x.map((x) => 0.31 - 0.0033 * x), variance: 0.0001 };
    const sound: DecisionInput = { ...healthyOpen, wear: { kind: "lines", lines: [level] } };
    expect(flipOf(sound, "years")?.at).toBeGreaterThan(60);
    expect(flipOf(sound, "limit")?.at).toBeGreaterThan(0.2);
  });
});

test("at other years another line may be the worst, and one that hardly counts today takes part", () => {
  // today the first is likelier; the second falls twice as fast and is the one that tips it
  const falls: WearLine = {
    ...healthy,
    label: "4",
    variance: 0.0001,
    y: healthy.x.map((x) => 0.45 - 0.02 * x),
  };
  const both = decide({ ...healthyOpen, wear: { kind: "lines", lines: [healthy, falls] } });
  const beside: DecisionInput = {
    ...healthyOpen,
    wear: { kind: "lines", lines: [healthy], beside: [falls] },
  };
  expect(both.chance?.label).toBe("3");
  const alone = flipOf(healthyOpen, "years")?.at ?? NaN;
  const told = flipOf(beside, "years")?.at ?? NaN;
  expect(told).toBeLessThan(alone - 0.1);
  expect(both.comparison?.swings.find(({ input }) => input === "years")?.flip?.at).toBeCloseTo(told, 9);
});

test("within a hundredth of the job any input tips it", () => {
  // example 1 is level where a re-ring costs 46.212
  const priced = (reRing: number): DecisionInput => ({
    ...healthyOpen,
    prices: { jobs: {}, ...healthyOpen.prices, work: { topEnd: 400, reRing, rebuild: 2600 } },
  });
  expect(decide(priced(46.3)).comparison).toMatchObject({ edge: "on", margin: "close" });
  expect(decide(priced(49)).comparison?.edge).toBeUndefined();
  expect(decide(healthyOpen).comparison?.edge).toBeUndefined();
});

describe("where the word turns", () => {
  const word = (input: DecisionInput): string => {
    const { verdict, reasons } = decide(input);
    return reasons.includes("level") ? "level" : verdict;
  };

  test("to a test or to level long before the balance tips", () => {
    const years = turnsOf(healthyOpen).find(({ input }) => input === "years");
    expect(years).toMatchObject({ value: 5, verdict: "test-again" });
    expect(years?.at).toBeLessThan(flipOf(healthyOpen, "years")?.at ?? NaN);
    const owned = (at: number): string => word({ ...healthyOpen, ownership: { kind: "years", years: at } });
    expect([owned((years?.at ?? NaN) - 0.01), owned(years?.at ?? NaN)]).toEqual(["leave-it", "test-again"]);
    // without a test on offer nothing comes before level
    const { test: _, ...untested } = healthyOpen;
    const level = turnsOf(untested).find(({ input }) => input === "work.reRing");
    expect(level?.level).toBe("yes");
    const cheap = (reRing: number): DecisionInput => ({
      ...untested,
      prices: { jobs: {}, ...untested.prices, work: { topEnd: 400, reRing, rebuild: 2600 } },
    });
    const at = level?.at ?? NaN;
    expect([word(cheap(at + 1)), word(cheap(at))]).toEqual(["leave-it", "level"]);
  });

  test("nowhere where work is needed, no price is known, or a year has no end", () => {
    expect([valveHeard, lowOilPressure, noPrices, keptForGood].map((one) => turnsOf(one))).toEqual([
      [],
      [],
      [],
      [],
    ]);
  });
});
