// The leak-down of one test as a whole: each cylinder, the rules, what oil did, and whether it explains the cranking reading.

import { warmthOf } from "../../leakdown/index.ts";
import { type EngineRecord, type Test, dayOf } from "../../record/index.ts";
import type { Rule, RuleFinding } from "../../rules/index.ts";
import { type LeakValue, assessLeakDown } from "./assess-leak-down.ts";
import type { EngineFigures } from "../figures.ts";
import { type LeakAndCranking, leakAndCranking } from "./leak-and-cranking.ts";
import { type LeakInstrument, leakInstrument } from "./leak-instrument.ts";
import { type LeakAlone, type LeakPart, leakAlone, leakParts } from "./leak-parts.ts";
import { leakRules } from "./leak-rules.ts";
import type { TrustCode } from "../trust/trust-reason.ts";
import { valuesOf } from "../values/values.ts";

/** The leak-down of one test as a whole: the instrument, each cylinder, the rules, and what oil did. */
export interface LeakTest {
  /** Absent where only another test holds the leak-down that explains this test's cranking readings. */
  readonly instrument?: LeakInstrument;
  /** Fraction lost by the master orifice that day. */
  readonly masterLost?: number;
  /** What every leak is larger by than it is said to be if the air in the cylinder was as warm as the engine and the supply
   *  as the air: sqrt(T2/T1). It is left out of all figures, so that tests made the same way compare. */
  readonly warmthFactor?: number;
  readonly parts: readonly LeakPart[];
  /** Readings with oil, or with the piston lower, in a test without the plain leak-down they would be held against. */
  readonly alone: readonly LeakAlone[];
  readonly cranking?: LeakAndCranking;
}

export interface AssessedLeak {
  /** In the engine's order. */
  readonly values: readonly (LeakValue | undefined)[];
  readonly rules: readonly RuleFinding[];
  /** Absent where there is nothing to say of a leak. */
  readonly test?: LeakTest;
}

export const assessLeakTest = (
  record: EngineRecord,
  test: Test,
  {
    figures,
    trust,
    sheet,
  }: { readonly figures: EngineFigures; readonly trust: TrustCode; readonly sheet: readonly Rule[] },
): AssessedLeak => {
  const read = valuesOf(test, "leak-down");
  const instrument = read === undefined ? undefined : leakInstrument(record, test, read);
  const values = assessLeakDown(record, test, { figures, trust, instrument });
  const cranking = leakAndCranking(record, test, figures);
  const alone = leakAlone(record, test);
  if (instrument === undefined)
    return {
      values,
      rules: [],
      ...(cranking === undefined && alone.length === 0
        ? {}
        : { test: { parts: [], alone, ...(cranking === undefined ? {} : { cranking }) } }),
    };
  const masterLost = masterLostOf(test, instrument);
  const warmthFactor = warmthFactorOf(test, instrument);
  return {
    values,
    rules: leakRules(record, test, { sheet, judged: { instrument, leak: values, trust } }),
    test: {
      instrument,
      ...(masterLost === undefined ? {} : { masterLost }),
      ...(warmthFactor === undefined ? {} : { warmthFactor }),
      parts: trust === "void" ? [] : leakParts(record, test),
      alone,
      ...(cranking === undefined ? {} : { cranking }),
    },
  };
};

const masterLostOf = (test: Test, { gauge, supplies }: LeakInstrument): number | undefined => {
  const { master, masterLost } = dayOf(test, gauge);
  const supply = supplies.find((one) => one !== undefined);
  if (master === undefined || supply === undefined) return masterLost;
  return 1 - master / supply;
};

const warmthFactorOf = (test: Test, { gauge }: LeakInstrument): number | undefined => {
  const { engineTemperature, airTemperature } = dayOf(test, gauge);
  return engineTemperature === undefined || airTemperature === undefined
    ? undefined
    : warmthOf(engineTemperature, airTemperature).factor;
};
