// Two instruments that contradict each other (guard G7): both are told, neither is averaged away.

import type { Decision } from "../../decision/index.ts";
import { mean } from "../../statistics/index.ts";
import { baselineOf } from "./baseline.ts";
import type { Conflict } from "./decision-assessment.ts";
import type { Deciding } from "./deciding.ts";
import { percent } from "./row.ts";

/** From here on an engine that reads level with itself is said to have fallen; judgement, about what a gauge is wrong by. */
const telling = 0.03;

/** @source handbook/decision.md 2, G7 */
export const conflictsOf = ({ guards }: Pick<Decision, "guards">, deciding: Deciding): readonly Conflict[] =>
  guards.flatMap((guard): Conflict[] => {
    if (guard.code !== "instruments-disagree") return [];
    if (guard.leakDown === "healthy")
      return [{ code: "leak-down-healthy", text: "cranking reads low, the leak-down is healthy" }];
    const fall = fallOf(deciding);
    const level =
      fall === undefined
        ? "the cranking readings are level"
        : `the cranking readings are level with each other, but ${percent(-fall.change)} below ${fall.since}`;
    return [
      {
        code: "leak-down-leaks",
        text: `the leak-down finds a leak, ${level}`,
        ...(fall === undefined ? {} : { fall }),
      },
    ];
  });

/** The engine as a whole against its first tests. */
const fallOf = (deciding: Deciding): Conflict["fall"] => {
  const { dry } = deciding;
  const found = (dry?.cylinders ?? []).flatMap(
    ({ label }) => baselineOf(deciding, label, dry?.test.id ?? "") ?? [],
  );
  const [first] = found;
  if (first === undefined) return undefined;
  const change = mean(found.map(({ share }) => share)) - 1;
  return change > -telling ? undefined : { change, since: first.since };
};
