// The tests that are left, by what they tell for the time and risk they take.

import type { ProposedTest } from "../diagnosis.ts";
import type { Evidence } from "../evidence.ts";
import type { Faults, FindingName, FurtherTest } from "../faults/faults.ts";
import { expectedInformation, outcomesOf, together } from "./information.ts";
import { openTests } from "./open-tests.ts";

/** Minutes that a step of risk and a tool not owned count for; tests this near the best rate are a tie; below this many
 *  bits no test would change the decision. @source handbook/diagnosis.md 6, judgement */
const counted = { risk: 10, tool: 20, tie: 0.9, leastBits: 0.05 } as const;

/** @param chances - of the target, aligned with the causes
 *  @param told - findings on the target that tell something: a reading with oil beside no dry one tells nothing, and a new
 *  finding does not lean on it @source handbook/diagnosis.md 6 */
export const proposedTests = (
  target: number,
  chances: readonly number[],
  {
    evidence,
    faults,
    told,
  }: {
    readonly evidence: Evidence;
    readonly faults: Faults;
    readonly told: readonly FindingName[];
  },
): readonly ProposedTest[] => {
  const tests = openTests(target, evidence, faults).map(({ test, fresh }): ProposedTest => {
    const outcomes = fresh.map((finding) => outcomesOf(finding, told, faults)).reduce(together);
    const bits = expectedInformation(chances, outcomes, faults);
    const effort = effortOf(test, evidence.tools);
    return { test, bits, effort, bitsPerHour: (60 * bits) / effort };
  });
  return quickestFirst(tests);
};

/** Reading the target again, though its findings are taken: other repeats of its dry readings, else of its leak-down, which
 *  the first ones say nothing of once the cause is known. Undefined without either, and in tables without such a test. */
export const readAgainTest = (
  chances: readonly number[],
  { evidence, faults, told }: Parameters<typeof proposedTests>[2],
): ProposedTest | undefined => {
  const test = faults.tests.find(({ findings }) => findings.includes("repeats"));
  const finding = (["level", "leak"] as const).find((name) => told.includes(name));
  if (test === undefined || finding === undefined) return undefined;
  const outcomes = outcomesOf(finding === "level" ? "repeats" : finding, told, faults);
  const bits = expectedInformation(chances, outcomes, faults);
  const effort = effortOf(test, evidence.tools);
  return { test, bits, effort, bitsPerHour: (60 * bits) / effort };
};

/** Minutes + 10·risk + 20 if a tool is needed and not owned. */
export const effortOf = ({ minutes, risk, tool }: FurtherTest, owned: readonly string[]): number =>
  minutes + counted.risk * risk + (tool === "" || owned.includes(tool) ? 0 : counted.tool);

/** By rate; those within a tenth of the best are a tie, and go by risk, minutes, order of the table; equal rates likewise. */
export const quickestFirst = (tests: readonly ProposedTest[]): readonly ProposedTest[] => {
  const best = Math.max(0, ...tests.map(({ bitsPerHour }) => bitsPerHour));
  const inTie = (one: ProposedTest): boolean => one.bitsPerHour >= counted.tie * best;
  return tests.toSorted((a, b) => {
    if (inTie(a) && inTie(b)) return easier(a, b);
    return b.bitsPerHour - a.bitsPerHour || easier(a, b);
  });
};

/** Sorting keeps the order of the table where this is 0. */
const easier = ({ test: a }: ProposedTest, { test: b }: ProposedTest): number =>
  a.risk - b.risk || a.minutes - b.minutes;

/** Nothing left would change the decision. */
export const isEnough = (tests: readonly ProposedTest[]): boolean =>
  tests.every(({ bits }) => bits < counted.leastBits);
