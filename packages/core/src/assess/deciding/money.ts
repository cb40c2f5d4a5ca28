// Prices, horizon and age, from engine.json and what was typed over it.

import { type Chances, type Ownership, type Prices, wayInto } from "../../decision/index.ts";
import { yearsBetween } from "../../quantity/index.ts";
import { type EnginePrices, type EngineRecord, withPrices } from "../../record/index.ts";
import { doneOf } from "./access.ts";
import type { DecisionChoices } from "./choices.ts";
import type { Horizon, PricesKnown } from "./decision-assessment.ts";

export interface Money {
  readonly prices?: Prices;
  readonly chances: Chances;
  /** Getting in again over the work of a re-ring, where the prices do not suffice for more. */
  readonly accessRatio?: number;
  readonly known: PricesKnown;
}

const works = ["topEnd", "reRing", "rebuild"] as const;

export const moneyOf = ({ engine }: EngineRecord, choices: DecisionChoices): Money => {
  const { prices: typed = [], opened, engineOut } = choices;
  const stated: EnginePrices = withPrices(engine.prices, typed);
  const { jobs, work, redo, spoil, caught, currency, ...rest } = stated;
  const missing = works.filter((one) => work[one] === undefined).map((one) => `work.${one}`);
  const hasJobs = Object.keys(jobs).length > 0;
  const all = missing.length === 0 && hasJobs;
  const needed = hasJobs ? missing : ["jobs.headOff", "jobs.bottomOpen", ...missing];
  const isAny = engine.prices !== undefined || typed.length > 0;
  const { topEnd, reRing, rebuild } = work;
  const prices =
    topEnd === undefined || reRing === undefined || rebuild === undefined || !hasJobs
      ? undefined
      : { ...rest, jobs, work: { topEnd, reRing, rebuild } };
  const done = doneOf(opened, engineOut === true ? "out" : "in");
  const wayIn = wayInto("reRing", done).reduce((sum, job) => sum + (jobs[job] ?? 0), 0);
  return {
    chances: {
      redo,
      ...(spoil === undefined ? {} : { spoil }),
      ...(caught === undefined ? {} : { caught }),
    },
    ...(prices === undefined ? {} : { prices }),
    ...(prices === undefined && reRing !== undefined && reRing > 0 && hasJobs
      ? { accessRatio: wayIn / reRing }
      : {}),
    known: {
      ...(currency === undefined ? {} : { currency }),
      known: all ? "all" : isAny ? "some" : "none",
      missing: needed,
    },
  };
};

/** Where nobody said. @source handbook/decision.md 3 (default, printed) */
const usualYears = 5;

export const horizonOf = ({ engine }: EngineRecord, { ownership }: DecisionChoices): Horizon => {
  const owned = ownership ?? engine.ownedFor;
  const from = ownership !== undefined ? "typed" : engine.ownedFor !== undefined ? "engine.json" : "usual";
  return owned?.kind === "for-good"
    ? { kind: "for-good", years: usualYears, from }
    : { kind: "years", years: owned?.years ?? usualYears, from };
};

/** With the age since the day typed, else since rings or bores were last done to all cylinders, else since `renewed` of
 *  engine.json. */
export const ownershipOf = (
  record: EngineRecord,
  { kind, years }: Horizon,
  choices: Pick<DecisionChoices, "today" | "renewed" | "yearsLeft">,
): Ownership => {
  if (kind === "years") return { kind, years };
  const age = ageOf(record, choices);
  const left = choices.yearsLeft ?? record.engine.yearsLeft;
  return {
    kind,
    years,
    ...(age === undefined ? {} : { age }),
    ...(left === undefined ? {} : { left }),
  };
};

const ageOf = (
  { engine, services }: EngineRecord,
  { today, renewed }: Pick<DecisionChoices, "today" | "renewed">,
): number | undefined => {
  const work = services.findLast(
    ({ what, date, newBaseline }) =>
      ["re-ring", "rebore", "rebuild"].includes(what) &&
      date <= today &&
      newBaseline.length === engine.cylinders.length,
  );
  const since = dayOf(renewed) ?? work?.date ?? dayOf(engine.renewed);
  return since === undefined ? undefined : Math.max(0, yearsBetween(since, today));
};

/** A year alone is taken at its middle. */
const dayOf = (stated: string | undefined): string | undefined =>
  stated?.length === 4 ? `${stated}-07-01` : stated;
