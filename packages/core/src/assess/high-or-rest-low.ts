// A few cylinders far above all the rest: they read high, or the rest have lost alike. The forward test takes its core from
// the upper half, so it is blind to this; turned upside down it sees it.

import { forwardTest } from "../spread/index.ts";
import type { EngineRecord, Test } from "../record/index.ts";
import type { CylinderAssessment } from "./assessment.ts";
import type { EngineFigures } from "./figures.ts";
import { forwardOf } from "./flags.ts";
import { comparedPressure } from "./values/pressure-values.ts";

/** Labels of the cylinders that stand out high at 5 %, where they are less than half and none stands out low. The test is
 *  one-sided and its scatter symmetrical, so the same critical values hold for readings with their sign turned. */
export const highOrRestLow = (
  record: EngineRecord,
  test: Test,
  {
    cylinders,
    figures,
  }: { readonly cylinders: readonly CylinderAssessment[]; readonly figures: EngineFigures },
): readonly string[] => {
  const prior = forwardOf(record, test, "dry", figures)?.prior;
  if (prior === undefined || cylinders.some(({ flagged }) => flagged)) return [];
  const turned = cylinders.map(({ dryStanding, pressures: { dry } }) =>
    dryStanding === undefined || dry === undefined
      ? ({ kind: "not-read" } as const)
      : ({ kind: "read", ln: -Math.log(comparedPressure(dry)), repeats: dry.readings.length } as const),
  );
  const { cylinders: verdicts, compared } = forwardTest(turned, { prior });
  const high = cylinders.filter((_, i) => {
    const verdict = verdicts[i];
    return verdict?.kind === "read" && verdict.flagged;
  });
  return high.length * 2 < compared ? high.map(({ label }) => label) : [];
};
