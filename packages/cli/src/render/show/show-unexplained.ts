// Findings that no sound cylinder gives, where the likeliest cause is none: told for themselves and not waved away.

import type { TestAssessment } from "@sealtrend/core";
import { percent, theOthers } from "../words.ts";

type Unexplained = TestAssessment["unexplained"][number];

/** A paragraph; empty where there is none. A large leak stands with the causes. */
export const unexplainedText = ({ unexplained, record: { engine } }: TestAssessment): string =>
  unexplained.flatMap((one) => sentenceOf(one, engine) ?? []).join(" ");

const sentenceOf = (
  { label, finding, own = 0, others = 0 }: Unexplained,
  { porting }: TestAssessment["record"]["engine"],
): string | undefined => {
  switch (finding) {
    case "air-in-coolant":
      return `Air in the coolant at ${label} is never right, however well it reads: the head gasket or a crack, until a test for combustion gas says otherwise.`;
    case "running-low":
      return `${label} cranks well and running reads ${percent(1 - own)} under the others: it does not fill, as with ${porting === "valves" ? "a worn lobe or lifter, a lazy valve" : "a worn reed"} or a blocked intake.`;
    case "oil-rise":
      return `Oil raised ${label} by ${percent(own)}, the others by ${percent(others)}, though it reads well without: more oil went in, or a slip, for worn rings would read low.`;
    case "leak-heard":
    case "leak-heard-nowhere":
      return undefined;
  }
};

/** Of a large leak on one cylinder; undefined where its size says nothing by itself.
 *  @param first - what would be the likeliest causes of it */
export const largeLeakText = (
  {
    unexplained,
    cylinders,
    record: {
      engine: { porting },
    },
  }: TestAssessment,
  label: string,
  first: readonly string[],
): string | undefined => {
  const open = unexplained.find((one) => one.label === label && one.finding.startsWith("leak-"));
  if (open === undefined) return undefined;
  const beside = open.others === undefined ? "" : `, ${theOthers(cylinders.length)} ${percent(open.others)}`;
  const lost = `${label} lost ${percent(open.own ?? 0)}${beside}`;
  if (open.finding === "leak-heard")
    return `${lost}: more than sound ones differ by, so first ${first.join(", or ")}.`;
  const cranks = cylinders.some((one) => one.label === label && one.dryStanding === "even")
    ? ", and it cranks like a sound one: the tests contradict each other"
    : "";
  const other = porting === "ports" ? "the adapter leaked" : "a valve had not seated";
  return `${lost}, yet no air was heard${cranks}. So large a leak is heard somewhere: the piston stood off the top, or ${other}.`;
};
