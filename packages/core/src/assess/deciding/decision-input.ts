// What was found, put as the decision asks it.

import type { DecisionInput, Job } from "../../decision/index.ts";
import type { EngineRecord } from "../../record/index.ts";
import { offeredTest } from "./access.ts";
import type { DecisionChoices } from "./choices.ts";
import type { Damage } from "./damage.ts";
import type { Deciding } from "./deciding.ts";
import type { DecisionAssessment, Horizon } from "./decision-assessment.ts";
import type { DoubtsFound } from "./doubts.ts";
import { type Money, ownershipOf } from "./money.ts";
import { hoursPerYear } from "./next-test.ts";
import type { RingsDue } from "./rings-due.ts";
import type { Row } from "./row.ts";
import type { SharesFound } from "./shares.ts";
import { trustOf } from "./speaks.ts";
import type { Unsettled } from "./unsettled.ts";
import type { WearFound } from "./wear.ts";

export interface InputFound {
  readonly deciding: Deciding;
  readonly choices: DecisionChoices;
  readonly rows: readonly Row[];
  readonly speaks: DecisionAssessment["speaks"];
  readonly doubts: DoubtsFound["doubts"];
  readonly wear: WearFound;
  readonly shares: SharesFound;
  readonly done: readonly Job[];
  readonly money: Money;
  readonly horizon: Horizon;
  readonly rings: RingsDue | undefined;
  readonly damage: readonly Damage[];
  readonly unsettled: Unsettled;
}

export const inputOf = (found: InputFound): DecisionInput => {
  const { deciding, rows, speaks, done, money, unsettled } = found;
  const { record, main, measured } = deciding;
  const hours = hoursPerYear(record);
  return {
    rows: rows.map(({ row, text, restsOn, cylinder, times }) => ({
      id: row,
      text,
      restsOn,
      ...(cylinder === undefined ? {} : { cylinder }),
      ...(times === undefined ? {} : { times }),
    })),
    trust: trustOf(deciding, speaks, done),
    doubts: found.doubts,
    wear: found.wear.wear,
    shares: found.shares.shares,
    done,
    ...(money.prices === undefined ? {} : { prices: money.prices }),
    ...(money.accessRatio === undefined ? {} : { accessRatio: money.accessRatio }),
    chances: money.chances,
    ownership: ownershipOf(record, found.horizon, found.choices),
    use: useOf(record),
    // open to the rings, they are the question; else the cheaper of top end and re-ring
    ...(done.includes("bottomOpen") ? { considered: "reRing" as const } : {}),
    ...(found.rings === undefined ? {} : { ringsDue: "yes" as const }),
    ...pastLimitOf(rows, done),
    ...(found.damage.length === 0 ? {} : { damage: "unsettled" as const }),
    ...(speaks === "today" ? unsettledIn(unsettled) : {}),
    ...(measured?.found.some(({ open }) => open.length > 0) === true ? { tooClose: "yes" as const } : {}),
    test: offeredTest(done, main, money.prices?.test),
    ...(hours === undefined ? {} : { hoursPerYear: hours }),
  };
};

const unsettledIn = ({ unsettled, farPast }: Unsettled): Pick<DecisionInput, "unsettled" | "farPast"> => ({
  ...(unsettled === undefined ? {} : { unsettled }),
  ...(farPast === "some" ? { farPast: "yes" } : {}),
});

/** Rings, or parts of the top end, measured past what may stay in while they can be got at. */
const pastLimitOf = (rows: readonly Row[], done: readonly Job[]): Pick<DecisionInput, "pastLimit"> => {
  const has = (id: Row["row"]): boolean => rows.some(({ row }) => row === id);
  if (has("J3") && done.includes("headOff") && done.includes("bottomOpen")) return { pastLimit: "reRing" };
  return has("J7") && done.includes("headOff") ? { pastLimit: "topEnd" } : {};
};

/** A boat that is hard to reach has no other engine to come home with. */
const useOf = ({ engine: { use, remote } }: EngineRecord): DecisionInput["use"] => {
  if (use === "aircraft" || (use === "boat" && remote)) return "safety";
  return remote ? "remote" : "ordinary";
};
