// How a cylinder reads against its own first tests.

import { dateOfDay, dayNumber, daysInYear } from "../../quantity/index.ts";
import { mean } from "../../statistics/index.ts";
import type { Deciding } from "./deciding.ts";

/** So many first tests make a baseline: one alone may have been a bad day; judgement. */
const first = 3;

/** Places of earlier tests that count, in order. */
export const tellingTests = ({ history }: Deciding, before: number): readonly number[] =>
  (history.cranking?.result.tests ?? []).flatMap(({ use }, at) =>
    use === "full" && at < before ? [at] : [],
  );

export interface WholeFall {
  /** Of the engine as a whole, ln units: against its first tests, at most three, and against the one before. */
  readonly whole: number;
  readonly last: number;
  /** What the first tests are: `its first tests`, `its first test since the head gasket 2019-03-02`. */
  readonly reference: string;
}

/** Since the last work on all cylinders, which began anew there; undefined in the first test after it. */
export const wholeFallOf = (deciding: Deciding, place: number): WholeFall | undefined => {
  const { common, services } = deciding.history.cranking?.result ?? {};
  const before = tellingTests(deciding, place).flatMap((at) => {
    const effect = common?.effects[at];
    return effect === undefined ? [] : [{ at, effect }];
  });
  const [now, earliest, last] = [common?.effects[place], before[0], before.at(-1)];
  if (now === undefined || earliest === undefined || last === undefined) return undefined;
  const { length } = deciding.record.engine.cylinders;
  const work = services?.findLast(
    (one) => one.before <= earliest.at && one.steps.flatMap(({ labels }) => labels).length === length,
  );
  const firsts = before.slice(0, first).map(({ effect }) => effect);
  const since = work === undefined ? "" : ` since the ${work.why}`;
  return {
    whole: now - mean(firsts),
    last: now - last.effect,
    reference: `its first test${firsts.length === 1 ? "" : "s"}${since}`,
  };
};

export interface Baseline {
  /** Reading of the test over the mean of the first ones. */
  readonly share: number;
  /** Year of the first of them. */
  readonly since: string;
}

/** Against the first tests since the last work on the cylinder, at most three; undefined where the test is among them itself
 *  and alone. */
export const baselineOf = (deciding: Deciding, label: string, test: string): Baseline | undefined => {
  const { result, start = "" } = deciding.history.cranking ?? {};
  const own = result?.cylinders.find((one) => one.label === label);
  const place = result?.tests.findIndex(({ ids }) => ids.includes(test)) ?? -1;
  const now = own?.levels[place];
  if (own === undefined || now === undefined) return undefined;
  const before = tellingTests(deciding, place)
    .filter((at) => at >= (own.since ?? 0) && own.levels[at] !== undefined)
    .slice(0, first);
  const [earliest] = before;
  if (earliest === undefined) return undefined;
  const day = dateOfDay(dayNumber(start) + (result?.tests[earliest]?.years ?? 0) * daysInYear);
  return {
    share: Math.exp(now - mean(before.flatMap((at) => own.levels[at] ?? []))),
    since: day.slice(0, 4),
  };
};
