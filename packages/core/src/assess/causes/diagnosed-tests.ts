// The tests that would tell most about the causes of what was found: the quickest first, then the most telling, then others
// that would tell something.

import type { Diagnosis, ProposedTest } from "../../diagnosis/index.ts";
import type { NextTest } from "../assessment.ts";
import { type TestFacts, testText } from "./test-texts.ts";

/** Below so much a test would change nothing. @source handbook/diagnosis.md 6, judgement */
const leastBits = 0.05;

/** None where none would change what to do.
 *  @param pointless - codes of tests that this day has answered */
export const diagnosedTests = (
  { tests }: Diagnosis,
  facts: TestFacts,
  pointless: readonly string[],
): readonly NextTest[] => {
  const open = tests.filter(({ test, bits }) => bits >= leastBits && !pointless.includes(test.code));
  const [quickest] = open;
  const telling = open.toSorted((a, b) => b.bits - a.bits)[0];
  const best = quickest === undefined || telling === undefined ? [] : [...new Set([quickest, telling])];
  return [...best, ...open.filter((one) => !best.includes(one))].map((one) => ({
    code: one.test.code,
    text: testText(one.test, facts),
    minutes: one.test.minutes,
    ...worthOf(one, one.test.minutes),
    ...(one === quickest || one === telling
      ? { rank: one !== telling ? "quickest" : one !== quickest ? "most-telling" : "both" }
      : {}),
  }));
};

/** What a test of a plain rule is worth, where the diagnosis knows it. @param minutes - it is said to take */
export const withWorth = (next: NextTest, diagnosis: Diagnosis | undefined): NextTest => {
  const known = diagnosis?.tests.find(({ test }) => test.code === next.code);
  return known === undefined ? next : { ...next, ...worthOf(known, next.minutes) };
};

const worthOf = (
  { test, bits, effort: usual }: ProposedTest,
  minutes: number,
): Pick<NextTest, "bits" | "bitsPerHour" | "effort" | "risk"> => {
  const effort = usual - test.minutes + minutes;
  return { bits, bitsPerHour: (60 * bits) / effort, effort, risk: test.risk };
};
