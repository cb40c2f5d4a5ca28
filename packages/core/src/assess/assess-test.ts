// One test of one engine, assessed: trust, correction, spread, standing of each cylinder, rules, what to test next.

import { type Faults, shippedFaults } from "../diagnosis/index.ts";
import type { EngineRecord, Test } from "../record/index.ts";
import { type Rule, type RuleFinding, judgeRules, shippedRules } from "../rules/index.ts";
import { type ForwardTest, type Spread, spreadOf, standing, worse } from "../spread/index.ts";
import { median, rangeUpperTail } from "../statistics/index.ts";
import { isAtLimit, isLeakAtLimit } from "./at-limit.ts";
import type { LeakValue } from "./leak/assess-leak-down.ts";
import type { CylinderAssessment, LimitMissed, PressureValue, TestAssessment } from "./assessment.ts";
import { unexplainedIn } from "./causes/unexplained.ts";
import { diagnoseTest } from "./causes/diagnose-test.ts";
import { type EngineFigures, figuresOf } from "./figures.ts";
import { correctionOf } from "./values/correction.ts";
import { earlierFlags, forwardOf, isFlagged } from "./flags.ts";
import { type Uneven, unevenOf } from "./speed/even-speed.ts";
import { withEven, withSpeed } from "./speed/full-values.ts";
import { buildUp } from "./oil/build-up.ts";
import { gaugeHose } from "./gauges/gauge-hose.ts";
import { comparedGauges } from "./gauges/gauge-comparison.ts";
import { highOrRestLow } from "./high-or-rest-low.ts";
import { levelBelow } from "./level-below.ts";
import { levelSince } from "./years/level-since.ts";
import { leakCautions } from "./leak/leak-caution.ts";
import { assessLeakTest } from "./leak/leak-test.ts";
import { withLowWithoutLeak } from "./low-without-leak.ts";
import { limitsMissed, ruleReadings } from "./limits.ts";
import { missingOfTest } from "./missing-of-test.ts";
import { nextTests } from "./next-tests.ts";
import { oilCautions } from "./oil/oil-caution.ts";
import { oilTest } from "./oil/oil-test.ts";
import {
  type CylinderPressures,
  comparedPressure,
  gaugeDoubt,
  isCompared,
  pressureValues,
} from "./values/pressure-values.ts";
import { highestOf, repeatsOf } from "./repeats.ts";
import { sinceFirst } from "./years/since-first.ts";
import { speedOf } from "./speed/speed.ts";
import { workAfter } from "./run-in.ts";
import { judgeTrust } from "./trust/trust.ts";
import { valuesOf } from "./values/values.ts";

export interface AssessOptions {
  /** The rules to hold it against; absent: the shipped ones. */
  readonly rules?: readonly Rule[];
  /** The tables to tell causes by; absent: the shipped ones. */
  readonly faults?: Faults;
  /** Whether likely causes are asked for; absent: they are. They take most of the time. */
  readonly causes?: "told" | "left-out";
}

/** Assesses one test. In a test that is void no cylinder gets a standing and no rule a verdict.
 *  @throws RangeError when the test is not of the record */
export const assessTest = (
  record: EngineRecord,
  test: Test,
  { rules: sheet = shippedRules, faults = shippedFaults(), causes = "told" }: AssessOptions = {},
): TestAssessment => {
  if (!record.tests.includes(test))
    throw new RangeError(`assessTest: ${test.id} is no test of ${record.engine.id}`);
  const figures = figuresOf(record);
  const trust = judgeTrust(record, test, figures);
  const correction = correctionOf(record, test);
  const dry = valuesOf(test, "dry");
  const doubt = dry === undefined ? undefined : gaugeDoubt(record, dry, figures);
  const speed = speedOf(record, test, { correction, figures });
  const uneven = unevenOf(record, test);
  const inAir = withEven(pressureValues(record, test, { correction, figures }), uneven);
  const pressures = doubt === undefined ? inAir : withSpeed(inAir, speed, { correction, doubt });
  const comparable = pressures.map(({ dry }) => (isCompared(dry) ? comparedPressure(dry) : undefined));
  const spread = spreadOf(comparable);
  const forward = trust.voids === "all" ? undefined : forwardOf(record, test, "dry", figures);
  const leak = assessLeakTest(record, test, { figures, trust: trust.code, sheet });
  const rules =
    doubt === undefined
      ? []
      : judgeRules(
          sheet,
          ruleReadings(record, pressures, { doubt, correction, speed, voids: trust.voids }),
          record.engine,
        );
  const seen = {
    pressures,
    uneven,
    figures,
    spread,
    forward,
    leak: leak.values,
    rules: [...rules, ...leak.rules],
  };
  const cylinders = cylindersSeen(record, test, seen);
  const apart = uneven?.refused === undefined ? apartOf(forward, spread) : {};
  const high = apart.apart === "wider" ? highOrRestLow(record, test, { cylinders, figures }) : [];
  const oil = oilTest(record, test, { cylinders, figures });
  const builds = buildUp(record, test, { cylinders, figures });
  const hose = dry === undefined ? undefined : gaugeHose(record, dry.gauge);
  const level = levelSince(record, test, figures);
  const found = {
    record,
    test,
    trust,
    correction,
    ...(speed === undefined ? {} : { speed }),
    ...(dry?.readsHigh === undefined ? {} : { readsHigh: dry.readsHigh }),
    cylinders,
    ...(spread === undefined ? {} : { spread }),
    ...apart,
    ...(high.length === 0 ? {} : { high }),
    comparisons: comparedGauges(test),
    ...(oil === undefined ? {} : { oil }),
    ...(builds === undefined ? {} : { buildUp: builds }),
    ...(hose === undefined ? {} : { gaugeHose: hose }),
    ...(leak.test === undefined ? {} : { leak: leak.test }),
  };
  const told = causes === "told" ? diagnoseTest(found, figures, faults) : undefined;
  const below =
    told === undefined
      ? undefined
      : levelBelow(cylinders, { expected: told.evidence.expected, correction, faults });
  const diagnosed = {
    ...found,
    ...told,
    cylinders: withLowWithoutLeak({ ...found, ...told }, faults),
    ...(level === undefined ? {} : { levelSince: level }),
    ...(below === undefined ? {} : { levelBelow: below }),
  };
  const unexplained = unexplainedIn(diagnosed);
  const next = nextTests(record, test, { ...diagnosed, unexplained });
  const after = workAfter(record, test);
  return {
    ...diagnosed,
    unexplained,
    faults,
    cautions: [...oilCautions(record, test), ...leakCautions(record, test, next)],
    rules: seen.rules,
    nextTests: next,
    ...(after === undefined ? {} : { workAfter: after }),
    missing: missingOfTest(diagnosed),
  };
};

interface Seen {
  readonly pressures: readonly CylinderPressures[];
  readonly uneven: Uneven | undefined;
  readonly figures: EngineFigures;
  readonly spread: Spread | undefined;
  readonly forward: ForwardTest | undefined;
  readonly leak: readonly (LeakValue | undefined)[];
  readonly rules: readonly RuleFinding[];
}

const cylindersSeen = (
  record: EngineRecord,
  test: Test,
  { pressures, uneven, figures, spread, forward, leak, rules }: Seen,
): CylinderAssessment[] => {
  const earlier = earlierFlags(record, test, "dry", figures);
  const moved = sinceFirst(record, test, { figures, forward });
  const repeated = repeatsOf(record, test, figures);
  return record.engine.cylinders.map((label, i): CylinderAssessment => {
    const own = pressures[i] ?? {};
    const verdict = forward?.cylinders[i];
    const { flaggedBefore = false, sameDayRepeats = 0 } = earlier[i] ?? {};
    // a share of the highest says nothing of a cylinder whose cranking speed may explain it
    const excused = uneven?.refused !== undefined && !isFlagged(verdict);
    const missedBy = (value: PressureValue | undefined): readonly LimitMissed[] =>
      limitsMissed(record, value, { spread, pressures }).filter(
        (limit) => !excused || limit === "maker-minimum",
      );
    const missed = missedBy(own.dry);
    const belowLimit = missed.length > 0;
    const repeats = (own.dry?.readings.length ?? 0) + sameDayRepeats;
    const isLowAnyway = own.dry !== undefined && missedBy(highestOf(own.dry)).length > 0;
    const contradicted = repeated[i] === "contradict" && !isLowAnyway;
    const evidence = { repeats, flaggedBefore, belowLimit, contradicted };
    const dryStanding = verdict === undefined ? undefined : standing({ verdict, ...evidence });
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
      ...(isAtLimit(label, missed, rules) ? { atLimit: true } : {}),
      ...(leak[i] === undefined ? {} : { leakDown: leakDownOf(label, leak[i], rules) }),
      ...(heard === undefined ? {} : { heard }),
      ...(both === undefined ? {} : { standing: both }),
      ...(dryStanding === undefined ? {} : { dryStanding }),
      ...(repeated[i] === undefined ? {} : { repeats: repeated[i] }),
      ...(verdict?.kind === "read" && verdict.t !== undefined ? { t: verdict.t } : {}),
      ...(belowMedian === undefined ? {} : { belowMedian }),
      ...(others === undefined ? {} : { belowOthers: others }),
      ...(moved[i] === undefined ? {} : { sinceFirst: moved[i] }),
    };
  });
};

const leakDownOf = (label: string, leak: LeakValue, rules: readonly RuleFinding[]): LeakValue =>
  isLeakAtLimit(label, leak, rules) ? { ...leak, atLimit: true } : leak;

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
    i !== cylinder && isCompared(dry) && dry.value > 0 ? [comparedPressure(dry)] : [],
  );
  return isCompared(own) && others.length > 0 ? 1 - comparedPressure(own) / median(others) : undefined;
};
