// One test of one engine, assessed: trust, correction, spread, standing of each cylinder, rules, what to test next.

import { type Faults, shippedFaults } from "../diagnosis/index.ts";
import type { EngineRecord, Test } from "../record/index.ts";
import { type Rule, type RuleFinding, judgeRules, shippedRules } from "../rules/index.ts";
import type { ForwardTest, Spread } from "../spread/index.ts";
import { rangeUpperTail } from "../statistics/index.ts";
import { isAtLimit, isLeakAtLimit } from "./at-limit.ts";
import { belowOthers } from "./below-others.ts";
import type { LeakValue } from "./leak/assess-leak-down.ts";
import type { CylinderAssessment, TestAssessment } from "./assessment.ts";
import { unexplainedIn } from "./causes/unexplained.ts";
import { diagnoseTest } from "./causes/diagnose-test.ts";
import { type EngineFigures, figuresOf } from "./figures.ts";
import { isFlagged } from "./flags.ts";
import { buildUp } from "./oil/build-up.ts";
import { gaugeHose } from "./gauges/gauge-hose.ts";
import { comparedGauges } from "./gauges/gauge-comparison.ts";
import { highOrRestLow } from "./high-or-rest-low.ts";
import { levelBelow } from "./level-below.ts";
import { levelSince } from "./years/level-since.ts";
import { leakCautions } from "./leak/leak-caution.ts";
import { withLowWithoutLeak } from "./low-without-leak.ts";
import { ruleReadings } from "./limits.ts";
import { missingOfTest } from "./missing-of-test.ts";
import { nextTests } from "./next-tests.ts";
import { oilCautions } from "./oil/oil-caution.ts";
import { oilTest } from "./oil/oil-test.ts";
import type { HistoryAssessment } from "./years/assess-history.ts";
import { sinceFirst } from "./years/since-first.ts";
import { type Standings, standingsOf } from "./standings.ts";
import { workAfter } from "./run-in.ts";

/** What the assessment of one test may be told beyond the record: other rules, other tables of causes. */
export interface AssessOptions {
  /** The rules to hold it against; absent: the shipped ones. */
  readonly rules?: readonly Rule[];
  /** The tables to tell causes by; absent: the shipped ones. */
  readonly faults?: Faults;
  /** Whether likely causes are asked for; absent: they are. They take most of the time. */
  readonly causes?: "told" | "left-out";
  /** The history of the same record, where it is known already: what it tells of the causes is not worked out anew. */
  readonly history?: HistoryAssessment;
}

/** Assesses one test. In a test that is void no cylinder gets a standing and no rule a verdict.
 *  @throws RangeError when the test is not of the record */
export const assessTest = (
  record: EngineRecord,
  test: Test,
  { rules: sheet = shippedRules, faults = shippedFaults(), causes = "told", history }: AssessOptions = {},
): TestAssessment => {
  if (!record.tests.includes(test))
    throw new RangeError(`assessTest: ${test.id} is no test of ${record.engine.id}`);
  const figures = figuresOf(record);
  const stand = standingsOf(record, test, { figures, sheet });
  const { trust, correction, dry, doubt, speed, uneven, pressures, spread, forward, leak } = stand;
  const rules =
    doubt === undefined
      ? []
      : judgeRules(
          sheet,
          ruleReadings(record, pressures, { doubt, correction, speed, voids: trust.voids }),
          record.engine,
        );
  const found = [...rules, ...leak.rules];
  const cylinders = cylindersSeen(record, test, { stand, figures, rules: found });
  const apart = uneven?.refused === undefined ? apartOf(forward, spread) : {};
  const high = apart.apart === "wider" ? highOrRestLow(record, test, { cylinders, figures }) : [];
  const oil = oilTest(record, test, { cylinders, figures });
  const builds = buildUp(record, test, { cylinders, figures });
  const hose = dry === undefined ? undefined : gaugeHose(record, dry.gauge);
  const level = levelSince(record, test, figures);
  const seen = {
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
  const told = causes === "told" ? diagnoseTest(seen, figures, { faults, history }) : undefined;
  const below =
    told === undefined
      ? undefined
      : levelBelow(cylinders, { expected: told.evidence.expected, correction, faults });
  const diagnosed = {
    ...seen,
    ...told,
    cylinders: withLowWithoutLeak({ ...seen, ...told }, faults),
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
    rules: found,
    nextTests: next,
    ...(after === undefined ? {} : { workAfter: after }),
    missing: missingOfTest(diagnosed),
  };
};

interface Seen {
  readonly stand: Standings;
  readonly figures: EngineFigures;
  readonly rules: readonly RuleFinding[];
}

const cylindersSeen = (
  record: EngineRecord,
  test: Test,
  { stand: { cylinders, pressures, forward, leak: leaks }, figures, rules }: Seen,
): CylinderAssessment[] => {
  const moved = sinceFirst(record, test, { figures, forward });
  return cylinders.map((one, i): CylinderAssessment => {
    const { label, verdict, flaggedBefore, limitsMissed: missed, repeats, belowMedian, dryStanding } = one;
    const [heard, leak] = [test.heard?.[i], leaks.values[i]];
    const others = belowOthers(pressures, i);
    return {
      label,
      pressures: one.pressures,
      flagged: verdict !== undefined && isFlagged(verdict),
      flaggedBefore,
      ...(one.confirmed ? { confirmed: true } : {}),
      belowLimit: missed.length > 0,
      limitsMissed: missed,
      ...(isAtLimit(label, missed, rules) ? { atLimit: true } : {}),
      ...(leak === undefined ? {} : { leakDown: leakDownOf(label, leak, rules) }),
      ...(heard === undefined ? {} : { heard }),
      ...(one.standing === undefined ? {} : { standing: one.standing }),
      ...(dryStanding === undefined ? {} : { dryStanding }),
      ...(repeats === undefined ? {} : { repeats }),
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
