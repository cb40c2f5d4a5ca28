// What would change the word where no price is known. Inputs are examples of handbook/decision.md 9.

import { type DecisionInput, decide } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { healthyOpen, noPrices } from "./examples.ts";

test("without prices: the user's own ratio breaks even at a horizon and at a limit", () => {
  const own: DecisionInput = { ...noPrices, accessRatio: 2, considered: "reRing" };
  const found = decide(own);
  const [years, limit] = found.unpricedFlips;
  expect([years?.input, years?.turns, limit?.input]).toEqual(["years", "acting", "limit"]);
  const at = (horizon: number) => decide({ ...own, ownership: { kind: "years", years: horizon } }).ratio;
  expect(at(years?.at ?? 0)?.chance).toBeCloseTo(found.ratio?.own?.breakEven ?? NaN, 6);
  expect(at((years?.at ?? 0) - 0.1)?.own?.pays).not.toBe(at((years?.at ?? 0) + 0.1)?.own?.pays);
});

test("without prices or a ratio: watching turns where the chance reaches the risk that is taken", () => {
  // handbook/decision.md 9, example 9: p .3767 in 10 years, risk .10, watch it
  const found = decide(noPrices);
  const years = found.unpricedFlips.find((flip) => flip.input === "years");
  expect([found.verdict, years?.turns]).toEqual(["watch-it", "watching"]);
  const at = (horizon: number) => decide({ ...noPrices, ownership: { kind: "years", years: horizon } });
  expect(at(years?.at ?? 0).chance?.probability).toBeCloseTo(0.1, 6);
  expect(at((years?.at ?? 0) - 0.1).verdict).toBe("leave-it");
  // priced, the comparison has flips of its own
  expect(decide(healthyOpen).unpricedFlips).toEqual([]);
});
