// The tests that would tell most about the causes of what was found: the quickest first, then the most telling, then others
// that would tell something.

import type { Diagnosis } from "../../diagnosis/index.ts";
import type { NextTest } from "../assessment.ts";
import { type TestFacts, testText } from "./test-texts.ts";

/** Below so much a test would change nothing. @source handbook/diagnosis.md 6, judgement */
const leastBits = { telling: 0.05, any: 0 } as const;

const byOtherInstrument: readonly string[] = ["leak-down-and-listen", "borescope"];

/** None where none would change what to do.
 *  @param pointless - codes of tests that this day has answered
 *  @param worth - `any`: those too that would hardly change it, but by another instrument than a cranking gauge */
export const diagnosedTests = (
  { tests }: Diagnosis,
  facts: TestFacts,
  pointless: readonly string[],
  worth: "telling" | "any" = "telling",
): readonly Pick<NextTest, "code" | "text" | "minutes">[] => {
  const open = tests.filter(
    ({ test, bits }) =>
      bits >= leastBits[worth] &&
      !pointless.includes(test.code) &&
      (worth === "telling" || byOtherInstrument.includes(test.code)),
  );
  const [quickest] = open;
  const telling = open.toSorted((a, b) => b.bits - a.bits)[0];
  const best = quickest === undefined || telling === undefined ? [] : [...new Set([quickest, telling])];
  return [...best, ...open.filter((one) => !best.includes(one))].map(({ test }) => ({
    code: test.code,
    text: testText(test, facts),
    minutes: test.minutes,
  }));
};
