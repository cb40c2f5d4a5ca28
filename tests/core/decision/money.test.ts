// Expected cost, discount, shares, several cylinders, the renewal of an engine that is kept, layups.

import { decide, type Decision, type DecisionInput } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { farmEngine, healthyOpen, keptForGood, noPrices, rows, valveHeard, workBoat } from "./examples.ts";

const costOf = ({ options }: Decision, code: Decision["verdict"]): number =>
  options.find((option) => option.code === code)?.expectedCost ?? NaN;

test("the hand check of the handbook: leaving a healthy engine", () => {
  // .0852159 [.3 (750 + 37.5) + .7 (1820 + 91 + .2 x 1980)] = .0852159 x 1851.15 (handbook/decision.md 9)
  expect(costOf(decide(healthyOpen), "leave-it")).toBeCloseTo(0.0852159101 * 1851.15, 5);
});

describe("interest", () => {
  test("of a typed chance counts evenly over the years", () => {
    // D = (1 - e^-.15)/.15; E(top end) = 750 + 37.5 + D x .6 x .1 x 2307
    const found = decide({ ...valveHeard, interest: 0.03 });
    const discount = (1 - Math.exp(-0.15)) / 0.15;
    expect(costOf(found, "open-the-top-end")).toBeCloseTo(787.5 + discount * 138.42, 9);
    // what is established counts with the same discount, running it as it is with none
    expect(costOf(found, "leave-it")).toBeCloseTo(discount * (787.5 + 138.42) + 300, 9);
  });

  test("of a line counts by the quarter in which the limit is passed", () => {
    // SciPy, F at 0, 1.25, 2.5, 3.75, 5 years of the first example: D = .8997049
    const found = decide({ ...healthyOpen, interest: 0.03 });
    expect(costOf(found, "leave-it") / costOf(decide(healthyOpen), "leave-it")).toBeCloseTo(0.8997049, 6);
  });

  test("makes a renewal that lasts less urgent", () => {
    const { keep } = decide({ ...keptForGood, interest: 0.02 });
    // u = (e^(-.02 tau) - e^(-.02 Lr))/(1 - e^(-.02 Lr)), tau* = -ln[rho (1 - e) + e]/.02, tau 12.29666, Lr 25.83733
    const end = Math.exp(-0.02 * 25.83733);
    expect(keep?.used).toBeCloseTo((Math.exp(-0.02 * 12.29666) - end) / (1 - end), 5);
    expect(keep?.flipYearsAtThisLife).toBeCloseTo(-Math.log(0.372057 * (1 - end) + end) / 0.02, 4);
  });
});

describe("shares", () => {
  test("without a diagnosis stand by the pattern", () => {
    // handbook/decision.md 3: healthy .3/.7
    const named = decide({ ...healthyOpen, shares: "healthy" });
    expect(named.options).toEqual(decide(healthyOpen).options);
  });
});

test("a day out of use now and later is part of the price", () => {
  // 900 + 200 + 80 x 5, the head being off (handbook/decision.md 9, example 5)
  expect(decide(farmEngine).comparison?.price).toBe(1500);
});

test("work that is needed but cheaper later keeps its word and may wait", () => {
  // thirty days out of use now, none later, nothing for running it as it is
  const found = decide({
    ...valveHeard,
    prices: {
      jobs: {},
      work: { topEnd: 400, reRing: 620, rebuild: 2600 },
      daysNow: { topEnd: 30 },
      day: 50,
    },
  });
  expect(found).toMatchObject({ verdict: "open-the-top-end", basis: "needed", urgency: "not-urgent" });
  // 420 + .06 x (620 x 1.05 + .04 x 1980) for watching; 400 + 1500 + 20 + .06 x (651 + .2 x 1980) for the work
  expect(found.comparison?.difference).toBeCloseTo(420 + 0.06 * 730.2 - (1920 + 0.06 * 1047), 9);
});

describe("a re-ring with the bottom end open and the engine in", () => {
  // 620 and what is still to open of head 350 and bottom 250; later 620 + 600, q = .05; the engine out, 600, is no part of it
  test.each([
    [["headOff", "bottomOpen"], 620],
    [["bottomOpen"], 970],
    // the engine out already, and nobody knows yet whether it must come out
    [["headOff", "bottomOpen", "engineOut"], 620],
    [["headOff"], 1470],
  ] as const)("%s: %s today", (done, price) => {
    const found = decide({ ...healthyOpen, done });
    expect(found.comparison?.price).toBe(price);
    const isIn = done.some((job) => job === "bottomOpen") && !done.some((job) => job === "engineOut");
    const again = isIn ? 1220 : 1820;
    // top end 750 x 1.05, rings again + q again + e (rebuild 3800 - again)
    const later = 0.3 * 787.5 + 0.7 * (1.05 * again + 0.2 * (3800 - again));
    expect(costOf(found, "leave-it")).toBeCloseTo(0.0852159101 * later, 6);
  });
});

describe("several cylinders", () => {
  const line = healthyOpen.wear.kind === "lines" ? healthyOpen.wear.lines[0] : undefined;
  if (line === undefined) throw new Error("no line");
  const both: DecisionInput["wear"] = {
    kind: "lines",
    lines: [line, { ...line, label: "4", limit: line.limit - 0.01 }],
  };

  test("the worst counts, the sum bounds the chance that any of them needs it", () => {
    const { chance } = decide({ ...healthyOpen, wear: both });
    expect(chance?.label).toBe("3");
    expect(chance?.probability).toBeCloseTo(0.0852159101, 9);
    expect(chance?.atMost).toBeGreaterThan(chance?.probability ?? NaN);
  });

  test("share the risk taken before the next test", () => {
    // .05 each instead of .1: sooner than the 5.32151 years of one line
    expect(decide({ ...healthyOpen, wear: both }).next.riskYears).toBeLessThan(5.32151);
  });

  test("a break-even between worst and sum keeps the margin from being clear", () => {
    const six: DecisionInput["wear"] = {
      kind: "lines",
      lines: [line, ...[1, 2, 3, 4, 5].map((k) => ({ ...line, label: `${k}` }))],
    };
    // 6 x .0852 = .51 lies above p* = .440
    expect(decide({ ...healthyOpen, wear: six }).margin).toBe("holds");
  });
});

describe("kept for good", () => {
  test("without an age the renewal cannot be judged, and nothing is done for money", () => {
    const found = decide({ ...keptForGood, ownership: { kind: "for-good" } });
    expect(found.keep).toBeUndefined();
    expect(found.missing).toEqual(["age"]);
    expect(found.verdict).toBe("leave-it");
    expect(found.years).toBe(5);
  });

  test("typed years left count where no line tells", () => {
    const typed = {
      ...keptForGood,
      wear: { kind: "typed", probability: 0.1 },
      ownership: { kind: "for-good", age: 20, left: 12 },
    } as const;
    // Lr = .8 x 32, u = 1 - 12/25.6
    expect(decide(typed).keep).toMatchObject({ yearsLeft: 12, lifeAfter: 25.6, used: 1 - 12 / 25.6 });
  });

  test("the years left at which it turns do not hang on the years left", () => {
    // rho = 1 - tau/(.8 (20 + tau)) at rho = .372057: tau = .5023544 x 20/(1 - .5023544) = 20.1892
    const left = (years: number, interest: number) =>
      decide({
        ...keptForGood,
        interest,
        wear: { kind: "typed", probability: 0.1 },
        ownership: { kind: "for-good", age: 20, left: years },
      }).keep;
    for (const years of [5, 12, 19, 22, 40]) expect(left(years, 0)?.flipYears).toBeCloseTo(20.1892, 3);
    for (const interest of [0, 0.01, 0.03, 0.08]) {
      const turns = left(9, interest)?.flipYears ?? NaN;
      expect(left(turns - 0.01, interest)?.pays).toBe("yes");
      expect(left(turns + 0.01, interest)?.pays).toBe("no");
      expect(left(turns, interest)?.used).toBeCloseTo(left(turns, interest)?.priceRatio ?? NaN, 9);
    }
  });

  test("where new rings outlast the old ones by enough it pays at any number of years left", () => {
    // f (1 - rho) = 2 x .627943 > 1
    const { keep } = decide({ ...keptForGood, ownership: { kind: "for-good", age: 20, lifeFactor: 2 } });
    expect([keep?.pays, keep?.flipYears]).toEqual(["yes", undefined]);
  });

  test("without prices the user's own ratio decides", () => {
    // rho = (1 + .05 x 5)/(5 x 1.05) = .238 < u = .524
    const { prices: _, ...noMoney } = keptForGood;
    const found = decide({ ...noMoney, accessRatio: 4 });
    expect(found.keep?.priceRatio).toBeCloseTo(1.25 / 5.25, 12);
    expect(found).toMatchObject({ verdict: "re-ring", basis: "opportunity" });
    // 1/(u 1.05 - .05) - 1 with u = .524074
    expect(found.ratio?.flipRatio).toBeCloseTo(1 / (0.524074 * 1.05 - 0.05) - 1, 4);
  });
});

describe("without prices", () => {
  test("the user's own ratio above the tipping point makes a cheap moment", () => {
    // alpha* 3.40812
    expect(decide({ ...noPrices, accessRatio: 8 })).toMatchObject({
      verdict: "re-ring",
      basis: "opportunity",
    });
    expect(decide({ ...noPrices, accessRatio: 3 })).toMatchObject({ verdict: "watch-it", margin: "close" });
    expect(decide({ ...noPrices, accessRatio: 1 }).ratio?.own?.pays).toBe("no");
  });

  test("a test is asked for where it may well turn the choice", () => {
    const test = { what: "measurement", tells: { kind: "as-judged" } } as const;
    const near = decide({ ...noPrices, accessRatio: 3, test });
    expect(near.testWorth).toMatchObject({ share: 0.5, asked: "yes" });
    expect(near.testWorth?.evsi).toBeUndefined();
    expect(near.verdict).toBe("test-again");
    expect(
      decide({ ...noPrices, accessRatio: 3, test: { ...test, what: "cranking" } }).testWorth,
    ).toMatchObject({
      possible: "no",
      asked: "no",
    });
  });
});

describe("in place", () => {
  test("a repair is chosen by money only at once, and on more than cranking", () => {
    // dear days in the season and a limit nearly reached: waiting to the first layup is already dearer
    const soon = {
      ...workBoat,
      wear: { kind: "typed", probability: 0.95 },
      ownership: { kind: "years", years: 2 },
    } as const;
    const found = decide(soon);
    expect(found.plan?.best).toBe(0);
    expect(found).toMatchObject({
      verdict: "re-ring",
      basis: "opportunity",
      saying: "opportunity",
      planBy: 0,
    });
    expect(decide({ ...soon, rows: rows("A4", "A8") }).verdict).toBe("watch-it");
  });

  test("a healthy engine has no layup named", () => {
    const found = decide({ ...workBoat, wear: { kind: "typed", probability: 0.02 }, rows: rows("A1", "B1") });
    expect(found.planBy).toBeUndefined();
    expect(found.verdict).toBe("leave-it");
  });
});

test("with the top end due and the engine open the re-ring is held against the top end alone", () => {
  const found = decide({
    ...healthyOpen,
    rows: rows("A2", "B2", "C3"),
    wear: { kind: "typed", probability: 0.9 },
    shares: { top: 0.3, rings: 0.7, bottom: 0 },
  });
  // top end 400 + 37.5 + .9 x .7 x 2307; both 400 + 620 + 91
  expect(found.beside?.idle).toBe("topEnd");
  expect(found.beside?.difference).toBeCloseTo(437.5 + 0.63 * 2307 - 1111, 9);
  expect(found).toMatchObject({ verdict: "re-ring", basis: "opportunity", need: "topEnd" });
});

test.each([
  ["a chance above 1", { wear: { kind: "typed", probability: 1.1 } }],
  ["shares above 1", { shares: { top: 0.6, rings: 0.6, bottom: 0 } }],
  ["no years", { ownership: { kind: "years", years: 0 } }],
  [
    "a line without points",
    { wear: { kind: "lines", lines: [{ label: "1", x: [], y: [], variance: 1, df: 3, limit: 0 }] } },
  ],
  [
    "a price below nothing",
    { prices: { jobs: { headOff: -1 }, work: { topEnd: 1, reRing: 1, rebuild: 1 } } },
  ],
] as const)("%s is a mistake of the caller", (_, wrong) => {
  expect(() => decide({ ...healthyOpen, ...wrong })).toThrow(RangeError);
});

test("kept for good with the age unknown: the age from which acting pays", () => {
  // rho < u = 1 - tau/Lr, Lr = .8 (a + tau), at rho = .372057, tau = 12.29666: Lr = 12.29666/.627943 = 19.5825, a = 12.1815
  const unknown = { ...keptForGood, ownership: { kind: "for-good" } } as const;
  const from = decide(unknown).keepFromAge ?? NaN;
  expect(from).toBeCloseTo(12.1815, 3);
  expect(decide(unknown).keep).toBeUndefined();
  for (const interest of [0, 0.03]) {
    const at = decide({ ...unknown, interest }).keepFromAge ?? NaN;
    const keep = decide({ ...unknown, interest, ownership: { kind: "for-good", age: at } }).keep;
    expect(keep?.used).toBeCloseTo(keep?.priceRatio ?? NaN, 9);
  }
  expect(decide(keptForGood).keepFromAge).toBeUndefined();
});
