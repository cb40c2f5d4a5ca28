// One test of one engine, assessed: trust, correction, spread, standing of each cylinder, rules, what to test next.

import { pressureCorrection } from "../cranking/index.ts";
import type { EngineRecord, Test } from "../record/index.ts";
import { type Rule, judgeRules, shippedRules } from "../rules/index.ts";
import { type ForwardTest, type Spread, spreadOf, standing, worse } from "../spread/index.ts";
import { median, rangeUpperTail } from "../statistics/index.ts";
import { assessLeakDown } from "./assess-leak-down.ts";
import type { CylinderAssessment, TestAssessment } from "./assessment.ts";
import { type EngineFigures, figuresOf } from "./figures.ts";
import { earlierFlags, forwardOf, isFlagged } from "./flags.ts";
import { comparedGauges } from "./gauge-comparison.ts";
import { highOrRestLow } from "./high-or-rest-low.ts";
import { levelSince } from "./level-since.ts";
import { limitsMissed, ruleReadings } from "./limits.ts";
import { nextTests } from "./next-tests.ts";
import { oilTest } from "./oil-test.ts";
import { type CylinderPressures, gaugeDoubt, isCompared, pressureValues } from "./pressure-values.ts";
import { sinceFirst } from "./since-first.ts";
import { judgeTrust } from "./trust.ts";
import type { TrustCode } from "./trust-reason.ts";
import { valuesOf } from "./values.ts";

/** Assesses one test. In a test that is void no cylinder gets a standing and no rule a verdict.
 *  @param sheet - the rules to hold it against
 *  @throws RangeError when the test is not of the record */
export const assessTest = (
  record: EngineRecord,
  test: Test,
  sheet: readonly Rule[] = shippedRules,
): TestAssessment => {
  if (!record.tests.includes(test))
    throw new RangeError(`assessTest: ${test.id} is no test of ${record.engine.id}`);
  const figures = figuresOf(record);
  const trust = judgeTrust(record, test, figures);
  const correction = pressureCorrection(test.conditions);
  const pressures = pressureValues(record, test, { correction, figures });
  const comparable = pressures.map(({ dry }) => (isCompared(dry) ? dry.corrected : undefined));
  const spread = spreadOf(comparable);
  const forward = trust.code === "void" ? undefined : forwardOf(record, test, "dry", figures);
  const cylinders = cylindersSeen(record, test, { pressures, figures, spread, forward, trust: trust.code });
  const dry = valuesOf(test, "dry");
  const doubt = dry === undefined ? undefined : gaugeDoubt(record, dry, figures);
  const rules =
    doubt === undefined
      ? []
      : judgeRules(
          sheet,
          ruleReadings(record, pressures, { doubt, correction, trust: trust.code }),
          record.engine,
        );
  const apart = apartOf(forward, spread);
  const high = apart.apart === "wider" ? highOrRestLow(record, test, { cylinders, figures }) : [];
  const oil = oilTest(cylinders);
  const level = levelSince(record, test, figures);
  const compared = { ...apart, ...(high.length === 0 ? {} : { high }) };
  return {
    record,
    test,
    trust,
    correction,
    cylinders,
    ...(spread === undefined ? {} : { spread }),
    ...compared,
    comparisons: comparedGauges(test),
    ...(oil === undefined ? {} : { oil }),
    ...(level === undefined ? {} : { levelSince: level }),
    rules,
    nextTests: nextTests(record, test, { trust, cylinders, ...compared }),
    missing: trust.missing,
  };
};

interface Seen {
  readonly pressures: readonly CylinderPressures[];
  readonly figures: EngineFigures;
  readonly spread: Spread | undefined;
  readonly forward: ForwardTest | undefined;
  readonly trust: TrustCode;
}

const cylindersSeen = (
  record: EngineRecord,
  test: Test,
  { pressures, figures, spread, forward, trust }: Seen,
): CylinderAssessment[] => {
  const earlier = earlierFlags(record, test, "dry", figures);
  const leak = assessLeakDown(record, test, { figures, trust });
  const moved = sinceFirst(record, test, figures);
  return record.engine.cylinders.map((label, i): CylinderAssessment => {
    const own = pressures[i] ?? {};
    const verdict = forward?.cylinders[i];
    const { flaggedBefore = false, sameDayRepeats = 0 } = earlier[i] ?? {};
    const missed = limitsMissed(record, own.dry, spread);
    const belowLimit = missed.length > 0;
    const read = (own.dry?.readings.length ?? 0) + sameDayRepeats;
    const dryStanding =
      verdict === undefined ? undefined : standing({ verdict, repeats: read, flaggedBefore, belowLimit });
    const both = worse([dryStanding, leak[i]?.standing]);
    const [heard, belowMedian] = [test.heard?.[i], spread?.belowMedian[i]];
    const others = belowOthers(pressures, i);
    return {
      label,
      pressures: own,
      flagged: verdict !== undefined && isFlagged(verdict),
      flaggedBefore,
      belowLimit,
      limitsMissed: missed,
      ...(leak[i] === undefined ? {} : { leakDown: leak[i] }),
      ...(heard === undefined ? {} : { heard }),
      ...(both === undefined ? {} : { standing: both }),
      ...(dryStanding === undefined ? {} : { dryStanding }),
      ...(verdict?.kind === "read" && verdict.t !== undefined ? { t: verdict.t } : {}),
      ...(belowMedian === undefined ? {} : { belowMedian }),
      ...(others === undefined ? {} : { belowOthers: others }),
      ...(moved[i] === undefined ? {} : { sinceFirst: moved[i] }),
    };
  });
};

/** The range of n healthy readings against their scatter. @source handbook/statistics.md A.1, G */
const apartOf = (
  forward: ForwardTest | undefined,
  spread: Spread | undefined,
): Pick<TestAssessment, "apart"> => {
  if (forward === undefined || spread === undefined || forward.compared < 2) return {};
  const range = Math.log(spread.highest / spread.lowest) / forward.prior.sigma;
  return { apart: rangeUpperTail(range, forward.compared) < 0.05 ? "wider" : "as-healthy" };
};

/** 1 - reading / median of the other cylinders that hold something. */
const belowOthers = (pressures: readonly CylinderPressures[], cylinder: number): number | undefined => {
  const own = pressures[cylinder]?.dry;
  const others = pressures.flatMap(({ dry }, i) =>
    i !== cylinder && isCompared(dry) && dry.value > 0 ? [dry.corrected] : [],
  );
  return isCompared(own) && others.length > 0 ? 1 - own.corrected / median(others) : undefined;
};
