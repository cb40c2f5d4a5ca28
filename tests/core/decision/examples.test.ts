// Every figure printed in handbook/decision.md 9, to its last digit: computed in the handbook, no published value.

import { decide, type Decision, type DecisionInput, type Swing } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import {
  aircraft,
  fallingOpen,
  farmEngine,
  healthyOpen,
  keptForGood,
  lowOilPressure,
  noPrices,
  shortHistory,
  valveHeard,
  workBoat,
} from "./examples.ts";

// The years at which a comparison flips are not those printed: the handbook varied the chance with the years and kept the
// tests of the years first asked for, though its own section 3 has them for every year. With them, solved in SciPy from
// the equations of section 3: 11.1272 for 11.433, 5.2416 for 5.1916, 7.2033 for 7.3622, 4.8411 for 4.8031.

/** `12.30` = within half a unit of the last digit that is printed. */
const toPrint = (value: number | undefined, printed: string): void => {
  const digits = (printed.split(".")[1] ?? "").length;
  expect(value, printed).toBeDefined();
  expect(Math.abs((value ?? NaN) - Number(printed)), printed).toBeLessThanOrEqual(0.5000001 * 10 ** -digits);
};
const scored = ({ scores: { top, rings, bore, bottom } }: Decision): string =>
  [top, rings, bore, bottom]
    .map(({ score, state }) => `${score}${state === "established" ? "!" : state === "developing" ? "~" : ""}`)
    .join("/");
const costs = ({ options }: Decision, printed: readonly string[]): void =>
  options.forEach(({ expectedCost }, k) => toPrint(expectedCost, printed[k] ?? ""));
/** The handbook's lists end where nobody would look on: prices twenty times theirs, a sale that pays for more than a third of the
 *  job. What is found beyond stands in the law of tests/laws/decision-flips.test.ts. */
const isNear = ({ input, value, flip }: Swing): boolean => {
  if (flip === undefined) return false;
  const factor = Math.max(flip.at / value, value / flip.at);
  const isPrice = /^(jobs|work|day|runningPerYear)/.test(input);
  return input.startsWith("resale.") ? flip.where !== "outside" : !isPrice || factor <= 20;
};
const flips = ({ comparison }: Decision, printed: Readonly<Record<string, string>>): void => {
  const found = (comparison?.swings ?? []).filter(isNear);
  expect(found.map(({ input }) => input).toSorted()).toEqual(Object.keys(printed).toSorted());
  for (const { input, flip } of found) toPrint(flip?.at, printed[input] ?? "");
};
const inRange = ({ comparison }: Decision): readonly string[] =>
  (comparison?.swings ?? [])
    .filter(({ flip }) => flip !== undefined && flip.where !== "outside")
    .map(({ input }) => input)
    .toSorted();
const after = (input: DecisionInput): Decision => decide(input);

describe("1: open for another reason, healthy, five years", () => {
  const decision = after(healthyOpen);

  test("is closed up as it is, clearly", () => {
    expect(decision).toMatchObject({
      verdict: "leave-it",
      basis: "nothing-shown",
      margin: "clear",
      saying: "open-leave",
      access: "fully-open",
    });
    expect(scored(decision)).toBe("-3/-4/-2/-1");
  });

  test("the chance, the cost of each act and the break-even are those printed", () => {
    toPrint(decision.chance?.probability, "0.0852159101");
    costs(decision, ["157.75", "213.85", "575.12", "731.13", "2790.00"]);
    expect(decision.comparison?.idle).toBe("leave");
    toPrint(decision.comparison?.breakEven?.K, "1614.900");
    toPrint(decision.comparison?.breakEven?.G, "711.000");
    toPrint(decision.comparison?.breakEven?.probability, "0.440275");
    toPrint(decision.comparison?.difference, "-573.38");
  });

  test("it would flip at the prices, limit and years printed", () => {
    flips(decision, { "work.reRing": "46.212", limit: "0.043485", years: "11.1272" });
    expect(inRange(decision)).toEqual([]);
  });

  test("a measurement is not worth what it costs", () => {
    toPrint(decision.testWorth?.share, "0.500000");
    toPrint(decision.testWorth?.evsi, "8.8833");
    toPrint(decision.testWorth?.evpi, "77.0267");
    toPrint(decision.testWorth?.net, "-31.12");
    toPrint(decision.testWorth?.change, "0.0369");
    expect(decision.testWorth).toMatchObject({ asked: "no", possible: "yes" });
  });

  test("the next test is due in a year", () => {
    toPrint(decision.next.riskYears, "5.32151");
    expect(decision.next).toMatchObject({ cap: 1, years: 1, why: "interval", step: "usual-test" });
  });
});

describe("2: open, one cylinder falling, eight years", () => {
  const decision = after(fallingOpen);

  test("is re-ringed because it is cheaper now, subject to measuring", () => {
    expect(decision).toMatchObject({ verdict: "re-ring", basis: "opportunity", margin: "clear" });
    expect(decision.saying).toBe("open-opportunity");
    expect(decision.guards).toContainEqual({
      code: "subject-to-measuring",
      open: ["bore", "ring-gap", "bearings"],
    });
    expect(scored(decision)).toBe("0/2~/-2/-1");
  });

  test("the figures are those printed", () => {
    toPrint(decision.chance?.probability, "0.7984094975");
    costs(decision, ["1720.61", "1612.97", "2095.24", "773.87", "2790.00"]);
    expect(decision.comparison?.idle).toBe("watch");
    toPrint(decision.comparison?.breakEven?.K, "1791.180");
    toPrint(decision.comparison?.breakEven?.G, "591.000");
    toPrint(decision.comparison?.breakEven?.probability, "0.329950");
    toPrint(decision.comparison?.difference, "839.10");
    flips(decision, { "work.reRing": "2860.9", limit: "-0.20046", years: "5.2416" });
    toPrint(decision.next.riskYears, "3.86546");
    expect(decision.next).toMatchObject({ cap: 0.5, years: 0.5 });
  });
});

describe("3: as the first, kept for good", () => {
  const decision = after(keptForGood);

  test("is re-ringed at this opening, which holds", () => {
    expect(decision).toMatchObject({ verdict: "re-ring", basis: "opportunity", margin: "holds" });
    toPrint(decision.keep?.yearsLeft, "12.29666");
    toPrint(decision.keep?.lifeAfter, "25.83733");
    toPrint(decision.keep?.priceRatio, "0.372057");
    toPrint(decision.keep?.used, "0.524074");
    // tau*, with the life after a re-ring held; where it turns that life has moved too: money.test.ts
    toPrint(decision.keep?.flipYearsAtThisLife, "16.22438");
  });

  test("the figures of five years are shown beside it", () => {
    expect(decision.years).toBe(5);
    costs(decision, ["157.75", "213.85", "575.12", "731.13", "2790.00"]);
    toPrint(decision.comparison?.difference, "-573.38");
    expect(decision.comparison?.margin).toBe("clear");
    toPrint(decision.next.riskYears, "5.32151");
  });
});

describe("4: in place, air heard at the exhaust", () => {
  const decision = after(valveHeard);

  test("needs the top end", () => {
    expect(decision).toMatchObject({ verdict: "open-the-top-end", basis: "needed", margin: "clear" });
    expect(decision).toMatchObject({ saying: "needed", urgency: "planned", need: "topEnd" });
    expect(scored(decision)).toBe("4!/-2/0/-1");
  });

  test("waiting costs what is printed, all of it for running it as it is", () => {
    costs(decision, ["1225.92", "1206.91", "925.92", "2311.00", "3990.00"]);
    toPrint(decision.comparison?.difference, "280.99");
    // the price of a rebuild, which the handbook does not vary in this act, tips as well: of its later cost the top end
    // leaves e = .2 and watching .2 x .2 to come, so 280.99 / (.06 x .16) more than 2600
    flips(decision, { runningPerYear: "3.8016", "work.rebuild": "31870" });
    expect(decision.next).toMatchObject({ cap: 0.5, years: 0.5 });
    expect(decision.next.riskYears).toBeUndefined();
  });
});

describe("5: farm engine, three signs together, measured inside limits", () => {
  const decision = after(farmEngine);

  test("needs rings, without an urgent stop", () => {
    expect(decision).toMatchObject({ verdict: "re-ring", basis: "needed", margin: "clear" });
    expect(decision.urgency).toBe("planned");
    expect(decision.guards).toEqual([{ code: "subject-to-measuring", open: [] }]);
    expect(scored(decision)).toBe("-1/12!/-3/-5");
  });

  test("the figures are those printed", () => {
    costs(decision, ["3882.68", "3364.28", "3621.50", "1714.67", "5008.00"]);
    toPrint(decision.comparison?.difference, "1649.60");
    flips(decision, {});
    expect(decision.next).toMatchObject({ cap: 0.5, years: 0.5 });
  });
});

describe("6: low hot oil pressure, bearing metal, knock, ring leak", () => {
  const decision = after(lowOilPressure);

  test("needs a rebuild, and the knock says stop", () => {
    expect(decision).toMatchObject({ verdict: "rebuild", basis: "needed", margin: "clear", urgency: "stop" });
    expect(scored(decision)).toBe("-1/5!/0/6!");
  });

  test("the figures are those printed", () => {
    costs(decision, ["6743.86", "6399.86", "7497.00", "6273.86", "4202.50"]);
    toPrint(decision.comparison?.difference, "2197.36");
    flips(decision, {});
    expect(decision.next).toMatchObject({ cap: 0.5, years: 0.5 });
  });
});

describe("7: engine out, short history", () => {
  const decision = after(shortHistory);

  test("is tested once more, as that is worth more than it costs", () => {
    expect(decision).toMatchObject({ verdict: "test-again", basis: "nothing-shown", margin: "holds" });
    expect(decision.reasons[0]).toBe("test-worth-making");
    expect(decision.next.step).toBe("offered-test");
    toPrint(decision.testWorth?.share, "0.429092");
    toPrint(decision.testWorth?.evsi, "74.4184");
    toPrint(decision.testWorth?.evpi, "238.5806");
    toPrint(decision.testWorth?.net, "49.42");
    toPrint(decision.testWorth?.change, "0.3827");
    expect(scored(decision)).toBe("1/0/0/-1");
  });

  test("the figures are those printed", () => {
    toPrint(decision.chance?.probability, "0.6304317193");
    costs(decision, ["1244.46", "1174.68", "1932.67", "1373.89", "3390.00"]);
    expect(decision.comparison?.idle).toBe("watch");
    toPrint(decision.comparison?.breakEven?.K, "1563.040");
    toPrint(decision.comparison?.breakEven?.G, "1184.600");
    toPrint(decision.comparison?.breakEven?.probability, "0.757882");
    toPrint(decision.comparison?.difference, "-199.21");
    expect(inRange(decision)).toEqual(["resale.reRing", "years"]);
    toPrint(decision.next.riskYears, "2.91015");
    expect(decision.next).toMatchObject({ cap: 0.5, years: 0.5 });
  });

  test("it would flip where printed", () =>
    flips(decision, {
      "jobs.engineOut": "1007",
      "work.reRing": "244.63",
      // not in the handbook's list: 199.21 / (.63043 x .8 x .04) more than 2600
      "work.rebuild": "12475",
      "resale.reRing": "199.21",
      limit: "-0.19791",
      years: "7.2033",
    }));
});

describe("8: work boat in place", () => {
  const decision = after(workBoat);

  test("is watched, with the layup named by which the work should be done", () => {
    expect(decision).toMatchObject({
      verdict: "watch-it",
      basis: "nothing-shown",
      margin: "holds",
      planBy: 2,
    });
    expect(decision.reasons).toContain("work-in-sight");
    expect(scored(decision)).toBe("0/3~/0/-1");
    const printed = ["4303.0", "4304.6", "4354.8", "4773.6", "5880.5", "7174.0", "6588.0"];
    decision.plan?.costs.forEach(({ cost }, k) => toPrint(cost, printed[k] ?? ""));
    expect(decision.plan?.costs.map(({ years }) => years)).toEqual([0, 1, 2, 3, 4, 5, 6]);
    expect(decision.plan?.best).toBe(0);
  });

  test("the figures are those printed", () => {
    toPrint(decision.chance?.probability, "0.7605299854");
    costs(decision, ["6949.72", "6416.07", "7938.98", "4664.75", "11035.00"]);
    toPrint(decision.comparison?.breakEven?.K, "7487.310");
    toPrint(decision.comparison?.breakEven?.G, "3943.000");
    toPrint(decision.comparison?.breakEven?.probability, "0.526624");
    toPrint(decision.comparison?.difference, "1751.32");
    expect(inRange(decision)).toEqual(["years"]);
    toPrint(decision.next.riskYears, "2.65383");
    expect(decision.next).toMatchObject({ cap: 0.5, years: 0.5, risk: 0.05 });
  });

  test("it would flip where printed", () =>
    flips(decision, {
      "jobs.headOff": "5217.7",
      "jobs.bottomOpen": "5117.7",
      "jobs.engineOut": "6217.7",
      "work.reRing": "5910.5",
      "redo.reRing": "0.66458",
      day: "94.024",
      limit: "-0.027868",
      years: "4.8411",
    }));
});

test.each([
  // SciPy, from the equations of section 3 at the years printed: not 0
  [healthyOpen, 11.433, "26.262"],
  [fallingOpen, 5.1916, "-19.780"],
  [shortHistory, 7.3622, "20.432"],
  [workBoat, 4.8031, "-71.888"],
] as const)(
  "at the years printed in the handbook acting and waiting do not cost the same",
  (input, years, rest) => {
    toPrint(decide({ ...input, ownership: { kind: "years", years } }).comparison?.difference, rest);
  },
);

describe("9: no prices, engine open, ten years", () => {
  const decision = after(noPrices);

  test("is watched, and getting in again would have to cost more than 3.4 times the work", () => {
    expect(decision).toMatchObject({ verdict: "watch-it", saying: "no-prices", missing: ["prices"] });
    expect(scored(decision)).toBe("-3/-4/-2/0");
    toPrint(decision.chance?.probability, "0.3766722467");
    toPrint(decision.ratio?.flipRatio, "3.40812");
    toPrint(decision.next.riskYears, "5.32151");
    expect(decision.next).toMatchObject({ cap: 1, years: 1 });
    expect(decision.options.every(({ expectedCost }) => expectedCost === undefined)).toBe(true);
  });
});

describe("10: light aircraft, low on the static test, cranking level", () => {
  const decision = after(aircraft);

  test("is watched under a licensed person, and the two instruments disagree", () => {
    expect(decision).toMatchObject({ verdict: "watch-it", licensed: true });
    expect(scored(decision)).toBe("-2/0/-2/-1");
    expect(decision.guards).toEqual([
      { code: "instruments-disagree", leakDown: "leaks" },
      { code: "safety" },
    ]);
    expect(decision.next.step).toBe("look-inside-and-retest");
    toPrint(decision.chance?.probability, "0.0405138082");
    expect(decision.ratio?.flipRatio).toBeUndefined();
    toPrint(decision.next.riskYears, "1.62362");
    expect(decision.next).toMatchObject({ cap: 0.5, years: 0.5, risk: 0.02 });
  });
});
