// Readings past a limit by less than their own doubt: at the limit, too close to call.

import type { RuleFinding } from "../rules/index.ts";
import type { LimitMissed } from "./assessment.ts";
import type { LeakValue } from "./leak/assess-leak-down.ts";

const isRuleOf = (limit: LimitMissed, { id, formula }: RuleFinding): boolean =>
  limit === "usual-ratio" ? formula === "p / max" : id === limit;

const isNear = (rule: RuleFinding | undefined, label: string): boolean =>
  rule?.byCylinder?.some((one) => one.label === label && one.verdict === "near") === true;

/** Whether all limits that a cylinder misses lie within the doubt of its reading; false where it misses none. */
export const isAtLimit = (
  label: string,
  missed: readonly LimitMissed[],
  rules: readonly RuleFinding[],
): boolean =>
  missed.length > 0 &&
  missed.every((limit) =>
    isNear(
      rules.find((rule) => isRuleOf(limit, rule)),
      label,
    ),
  );

/** The same of a leak-down against the maker's limit, or the master of that day. */
export const isLeakAtLimit = (
  label: string,
  { belowLimit, beyondMaster }: LeakValue,
  rules: readonly RuleFinding[],
): boolean => {
  const held = rules.filter(({ id }) => id === "maker-leak-down" || id === "master");
  const verdicts = held.flatMap(
    ({ byCylinder = [] }) => byCylinder.find((one) => one.label === label)?.verdict ?? [],
  );
  return (
    belowLimit &&
    verdicts.includes("near") &&
    !verdicts.includes("not-met") &&
    (!beyondMaster ||
      isNear(
        held.find(({ id }) => id === "master"),
        label,
      ))
  );
};
