// How each cylinder of one test stands among its fellows: all that a standing needs, and nothing that only explains it.

import type { PressureCorrection } from "../cranking/index.ts";
import type { EngineRecord, Test } from "../record/index.ts";
import type { Rule } from "../rules/index.ts";
import {
  type CylinderVerdict,
  type ForwardTest,
  type Spread,
  type Standing,
  isConfirmed,
  spreadOf,
  standing,
  worse,
} from "../spread/index.ts";
import type { LimitMissed, PressureValue } from "./assessment.ts";
import type { EngineFigures } from "./figures.ts";
import { earlierFlags, forwardOf, isFlagged } from "./flags.ts";
import { type AssessedLeak, assessLeakTest } from "./leak/leak-test.ts";
import { limitsMissed } from "./limits.ts";
import { highestOf, repeatsOf } from "./repeats.ts";
import { type Uneven, unevenOf } from "./speed/even-speed.ts";
import { withEven, withSpeed } from "./speed/full-values.ts";
import type { SpeedAssessment } from "./speed/speed-assessment.ts";
import { speedOf } from "./speed/speed.ts";
import type { Trust } from "./trust/trust-reason.ts";
import { judgeTrust } from "./trust/trust.ts";
import { correctionOf } from "./values/correction.ts";
import {
  type CylinderPressures,
  type GaugeDoubt,
  comparedPressure,
  gaugeDoubt,
  isCompared,
  pressureValues,
} from "./values/pressure-values.ts";
import type { RepeatsWord } from "./values/repeats-apart.ts";
import { type KindValues, valuesOf } from "./values/values.ts";

/** One cylinder, in the engine's order. */
export interface CylinderStanding {
  readonly label: string;
  readonly pressures: CylinderPressures;
  readonly verdict: CylinderVerdict | undefined;
  readonly flaggedBefore: boolean;
  readonly confirmed: boolean;
  readonly limitsMissed: readonly LimitMissed[];
  readonly repeats: RepeatsWord | undefined;
  readonly standing: Standing | undefined;
  readonly dryStanding: Standing | undefined;
  readonly belowMedian: number | undefined;
}

export interface Standings {
  readonly trust: Trust;
  readonly correction: PressureCorrection;
  readonly dry: KindValues | undefined;
  readonly doubt: GaugeDoubt | undefined;
  readonly speed: SpeedAssessment | undefined;
  readonly uneven: Uneven | undefined;
  readonly pressures: readonly CylinderPressures[];
  readonly spread: Spread | undefined;
  readonly forward: ForwardTest | undefined;
  readonly leak: AssessedLeak;
  readonly cylinders: readonly CylinderStanding[];
}

/** The standing of each cylinder in one test; none in a test that is void.
 *  @param sheet - the rules that a leak-down is held against */
export const standingsOf = (
  record: EngineRecord,
  test: Test,
  { figures, sheet }: { readonly figures: EngineFigures; readonly sheet: readonly Rule[] },
): Standings => {
  const trust = judgeTrust(record, test, figures);
  const correction = correctionOf(record, test);
  const dry = valuesOf(test, "dry");
  const doubt = dry === undefined ? undefined : gaugeDoubt(record, dry, figures);
  const speed = speedOf(record, test, { correction, figures });
  const uneven = unevenOf(record, test);
  const inAir = withEven(pressureValues(record, test, { correction, figures }), uneven);
  const pressures = doubt === undefined ? inAir : withSpeed(inAir, speed, { correction, doubt });
  const comparable = pressures.map(({ dry }) => (isCompared(dry) ? comparedPressure(dry) : undefined));
  const seen = {
    figures,
    uneven,
    pressures,
    spread: spreadOf(comparable),
    forward: trust.voids === "all" ? undefined : forwardOf(record, test, "dry", figures),
    leak: assessLeakTest(record, test, { figures, trust: trust.code, sheet }),
  };
  const { spread, forward, leak } = seen;
  const cylinders = cylindersOf(record, test, seen);
  return { trust, correction, dry, doubt, speed, uneven, pressures, spread, forward, leak, cylinders };
};

interface Seen {
  readonly figures: EngineFigures;
  readonly uneven: Uneven | undefined;
  readonly pressures: readonly CylinderPressures[];
  readonly spread: Spread | undefined;
  readonly forward: ForwardTest | undefined;
  readonly leak: AssessedLeak;
}

const cylindersOf = (
  record: EngineRecord,
  test: Test,
  { figures, uneven, pressures, spread, forward, leak }: Seen,
): CylinderStanding[] => {
  const earlier = earlierFlags(record, test, "dry", figures);
  const repeated = repeatsOf(record, test, figures);
  return record.engine.cylinders.map((label, i): CylinderStanding => {
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
    const repeats = (own.dry?.readings.length ?? 0) + sameDayRepeats;
    const isLowAnyway = own.dry !== undefined && missedBy(highestOf(own.dry)).length > 0;
    const contradicted = repeated[i] === "contradict" && !isLowAnyway;
    const evidence = { repeats, flaggedBefore, belowLimit: missed.length > 0, contradicted };
    const dryStanding = verdict === undefined ? undefined : standing({ verdict, ...evidence });
    return {
      label,
      pressures: own,
      verdict,
      flaggedBefore,
      confirmed: verdict !== undefined && isConfirmed({ verdict, ...evidence }),
      limitsMissed: missed,
      repeats: repeated[i],
      standing: worse([dryStanding, leak.values[i]?.standing]),
      dryStanding,
      belowMedian: spread?.belowMedian[i],
    };
  });
};
