// What the proposed tests are worth by the diagnosis, those of plain rules among them, and which of all is best.

import { type Diagnosis, type ProposedTest, quickestFirst } from "../diagnosis/index.ts";
import type { NextTest } from "./assessment.ts";

type Asked = Pick<NextTest, "code" | "text" | "minutes">;

/** In the order they are asked for, plain rules first. A rule may ask for a test in fewer minutes or more; its rate is that of
 *  the minutes said. Two of one code tell what one tells.
 *  @param forCauses - what the diagnosis asks for, given what plain rules do */
export const rankedTests = (
  plain: readonly Asked[],
  forCauses: (plain: readonly Asked[]) => readonly Asked[],
  diagnosis: Diagnosis | undefined,
): readonly NextTest[] => {
  const asked = [
    ...plain.map((one) => ({ ...one, by: "rule" as const })),
    ...forCauses(plain).map((one) => ({ ...one, by: "diagnosis" as const })),
  ];
  const worths = asked.map((one, i) =>
    asked.findIndex(({ code }) => code === one.code) === i ? worthOf(one, diagnosis) : undefined,
  );
  const known = worths.filter((worth) => worth !== undefined);
  const [quickest] = quickestFirst(known);
  const most = Math.max(...known.map(({ bits }) => bits));
  return asked.map((one, i): NextTest => {
    const worth = worths[i];
    if (worth === undefined) return one;
    const { bits, bitsPerHour, effort, test } = worth;
    const ranks: readonly NextTest["rank"][] =
      bits === most ? ["most-telling", "both"] : [undefined, "quickest"];
    const rank = ranks[worth === quickest ? 1 : 0];
    return { ...one, bits, bitsPerHour, effort, risk: test.risk, ...(rank === undefined ? {} : { rank }) };
  });
};

/** Undefined where the tables have no finding for it. */
const worthOf = ({ code, minutes }: Asked, diagnosis: Diagnosis | undefined): ProposedTest | undefined => {
  const all = [...(diagnosis?.tests ?? []), ...(diagnosis?.again === undefined ? [] : [diagnosis.again])];
  const known = all.find(({ test }) => test.code === code);
  if (known === undefined) return undefined;
  const effort = known.effort - known.test.minutes + minutes;
  return { ...known, test: { ...known.test, minutes }, effort, bitsPerHour: (60 * known.bits) / effort };
};
