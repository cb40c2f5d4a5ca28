// What is cheaper than taking the head off, and may spare it.

import type { NextTest, TestAssessment } from "./assessment.ts";

/** What a valve may leak by without being burnt. @source handbook/trade.md C5 (lash; debris on the seat) */
const spared: readonly string[] = ["exhaust-valve", "intake-valve", "sticking-valve", "tight-lash"];

/** Where a valve is the likeliest cause and no test is left that would change what to do; minutes are common practice, no
 *  source. */
export const beforeOpening = ({
  diagnosis,
  cylinders,
}: Pick<TestAssessment, "diagnosis" | "cylinders">): Omit<NextTest, "by"> | undefined => {
  if (diagnosis?.enough !== true || diagnosis.capped || !spared.includes(diagnosis.causes[0]?.code ?? ""))
    return undefined;
  const { label = "", leakDown } = cylinders[diagnosis.target] ?? {};
  const of = cylinders.length === 1 || label === "" ? "" : ` of ${label}`;
  return {
    code: "lash",
    text: `before the head comes off: lash, and a tap on the valves${of}, then the ${leakDown === undefined ? "reading" : "leak-down"} again`,
    minutes: 30,
  };
};
