// Whether the offered test should be made before deciding.

import type { DecisionInput, OfferedTest } from "../input.ts";
import { worthAsking } from "../judgements.ts";
import type { BreakEven } from "../money/break-even.ts";
import type { RatioView } from "../money/without-prices.ts";
import type { Outlook } from "../wear/outlook.ts";
import { informationOf } from "./information.ts";
import { accessOf, possibleTests } from "./possible-tests.ts";
import { shareTold } from "./share-told.ts";

export interface TestWorth {
  readonly what: OfferedTest["what"];
  /** Whether it can be made as the engine stands. */
  readonly possible: "yes" | "no";
  /** rho^2: the share of the doubt about the level at the horizon that it takes away. */
  readonly share: number;
  /** Chance that it changes the verdict. */
  readonly change: number;
  /** In money; absent without prices. EVSI less cost, and what knowing for certain would be worth. */
  readonly evsi?: number;
  readonly evpi?: number;
  readonly net?: number;
  readonly asked: "yes" | "no";
}

/** With prices: worth more than it costs, and a tenth or more that the verdict changes. Without: that tenth, and the chance
 *  of need within a factor 2 of break-even at the user's own ratio.
 *  @returns undefined where no test is offered or nothing breaks even  @source handbook/decision.md 5 */
export const testWorth = (
  input: DecisionInput,
  outlook: Outlook | undefined,
  {
    breakEven,
    ratio,
    years,
  }: {
    readonly breakEven: BreakEven | undefined;
    readonly ratio: RatioView | undefined;
    readonly years: number;
  },
): TestWorth | undefined => {
  const { test, done } = input;
  if (test === undefined || outlook === undefined) return undefined;
  const share = shareTold(test.tells, outlook.wear, years);
  if (share === undefined) return undefined;
  const possible = possibleTests[accessOf(done)].includes(test.what) ? "yes" : "no";
  const offered = { what: test.what, possible, share } as const;
  if (breakEven?.probability !== undefined) {
    const { change, evsi, evpi } = informationOf(outlook.probability, breakEven.probability, share);
    const net = breakEven.K * evsi - (test.cost ?? 0);
    const asked = possible === "yes" && net > 0 && change >= worthAsking.change ? "yes" : "no";
    return { ...offered, change, evsi: breakEven.K * evsi, evpi: breakEven.K * evpi, net, asked };
  }
  if (ratio?.own === undefined) return undefined;
  const { chance, own } = ratio;
  const { change } = informationOf(chance, own.breakEven, share);
  const near =
    Math.max(chance, own.breakEven) <= worthAsking.factor * Math.min(chance, own.breakEven) ? "yes" : "no";
  const asked = possible === "yes" && near === "yes" && change >= worthAsking.change ? "yes" : "no";
  return { ...offered, change, asked };
};
