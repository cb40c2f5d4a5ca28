// The leak-down readings of one test: the part lost, and each cylinder among its fellows.

import { lostUncertainty } from "../../leakdown/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import { type CylinderVerdict, type Standing, type StandingEvidence, standing } from "../../spread/index.ts";
import { type Earlier, earlierFlags, forwardOf, isFlagged } from "../flags.ts";
import type { RepeatsWord } from "../values/repeats-apart.ts";
import type { EngineFigures } from "../figures.ts";
import type { TrustCode } from "../trust/trust-reason.ts";
import { type LeakInstrument, pressuresOf, tellsSize } from "./leak-instrument.ts";
import { type MasterUse, isBeyondMaster, masterUse } from "./leak-master.ts";
import { type LeakRepeats, leakRepeats } from "./leak-repeats.ts";
import { takesLost } from "./leak-takes.ts";
import { type LeakSizing, leakSizing } from "./leak-size.ts";
import { type KindValues, fractionLost, supplyOf, valuesOf } from "../values/values.ts";

/** The leak-down of one cylinder: the part lost, 0 to 1, how large the leak is, and its place among its fellows. */
export interface LeakValue {
  /** Supply [Pa gauge]; absent on a dial in percent. */
  readonly regulated?: number;
  /** Cylinder side, each take [Pa gauge]; absent on a dial in percent. */
  readonly readings?: readonly number[];
  /** Mean of the takes [Pa gauge]; absent on a dial in percent. */
  readonly value?: number;
  /** Fraction lost, 0 … 1. */
  readonly lost: number;
  /** Of each take. */
  readonly takesLost: readonly number[];
  /** Where it was read more than once. */
  readonly repeats?: RepeatsWord;
  /** Standard uncertainty of it by the dials; absent on a tester that tells a percent only. */
  readonly uLost?: number;
  /** How large the leak is, as far as its tester tells; empty in a test that is void. */
  readonly sizing: LeakSizing;
  /** Against the master orifice read that day. */
  readonly master?: MasterUse;
  /** More is lost than the maker, or the master of that day, allows. */
  readonly belowLimit: boolean;
  /** Leaks more than the master orifice of that day: one of the limits. */
  readonly beyondMaster: boolean;
  /** Past its limits by less than its own doubt. */
  readonly atLimit?: true;
  /** Further below its fellows than chance brings once in 20 tests. */
  readonly flagged: boolean;
  readonly flaggedBefore: boolean;
  /** Absent in a test that is void. */
  readonly standing?: Standing;
  /** Distance below the fellows in standard deviations; absent for the core. */
  readonly t?: number;
}

/** In the engine's order; undefined where a cylinder was not read or its supply is not known. */
export const assessLeakDown = (
  record: EngineRecord,
  test: Test,
  {
    figures,
    trust,
    instrument,
  }: {
    readonly figures: EngineFigures;
    readonly trust: TrustCode;
    readonly instrument: LeakInstrument | undefined;
  },
): readonly (LeakValue | undefined)[] => {
  const values = valuesOf(test, "leak-down");
  if (values === undefined || instrument === undefined) return record.engine.cylinders.map(() => undefined);
  const forward = trust === "void" ? undefined : forwardOf(record, test, "leak-down", figures);
  const earlier = earlierFlags(record, test, "leak-down", figures);
  const repeated = leakRepeats(record, test, figures);
  const leaks = { test, values, instrument, trust, limit: record.engine.leakDownLimits.lost };
  return record.engine.cylinders.map((_, i) =>
    leakOf(leaks, i, { verdict: forward?.cylinders[i], repeats: repeated[i], earlier: earlier[i] }),
  );
};

interface Leaks {
  readonly test: Test;
  readonly values: KindValues;
  readonly instrument: LeakInstrument;
  readonly trust: TrustCode;
  /** The maker's, fraction lost. */
  readonly limit: number | undefined;
}

/** What the others, the takes and the tests before say of one cylinder. */
interface Beside {
  readonly verdict: CylinderVerdict | undefined;
  readonly repeats: LeakRepeats | undefined;
  readonly earlier: Earlier | undefined;
}

const leakOf = (leaks: Leaks, cylinder: number, beside: Beside): LeakValue | undefined => {
  const { test, values, instrument, trust } = leaks;
  const { verdict, repeats, earlier = { flaggedBefore: false, sameDayRepeats: 0 } } = beside;
  const cell = values.cells[cylinder];
  const regulated = values.holds === "pressure" ? supplyOf(test, cylinder, values.gauge) : undefined;
  const lost = cell === undefined ? undefined : fractionLost(values.holds, cell.value, regulated);
  if (cell === undefined || lost === undefined) return undefined;
  const { flaggedBefore, sameDayRepeats } = earlier;
  const sizing = trust === "void" ? {} : leakSizing(instrument, cylinder, cell.value);
  const reading = tellsSize(instrument) ? pressuresOf(instrument, cylinder, cell.value) : undefined;
  const master = masterOf(leaks, cylinder, cell.value);
  const beyondMaster = isBeyondMaster(master);
  const belowLimit = isOver(leaks, lost) || beyondMaster;
  const isOverAnyway =
    repeats !== undefined &&
    (isOver(leaks, fractionLost(values.holds, repeats.best, regulated)) ||
      isBeyondMaster(masterOf(leaks, cylinder, repeats.best)));
  const contradicted = repeats?.word === "contradict" && !isOverAnyway;
  const times = cell.readings.length + sameDayRepeats;
  const found =
    verdict === undefined
      ? undefined
      : standingBy(sizing, { verdict, repeats: times, flaggedBefore, belowLimit, contradicted });
  const word = found === "even" && repeats?.isHidden === true ? "suspect" : found;
  return {
    ...(regulated === undefined ? {} : { regulated, readings: cell.readings, value: cell.value }),
    lost,
    takesLost: takesLost(test, { values, cylinder }),
    ...(repeats === undefined ? {} : { repeats: repeats.word }),
    ...(reading === undefined ? {} : { uLost: lostUncertainty(reading) }),
    sizing,
    ...(master === undefined ? {} : { master }),
    belowLimit,
    beyondMaster,
    flagged: isFlagged(verdict),
    flaggedBefore,
    ...(word === undefined ? {} : { standing: word }),
    ...(verdict?.kind === "read" && verdict.t !== undefined ? { t: verdict.t } : {}),
  };
};

const isOver = ({ limit }: Leaks, lost: number | undefined): boolean =>
  limit !== undefined && lost !== undefined && lost > limit;

/** Undefined in a test that is void. */
const masterOf = (
  { test, instrument, trust }: Leaks,
  cylinder: number,
  value: number,
): MasterUse | undefined => {
  if (trust === "void") return undefined;
  const { judgement } = leakSizing(instrument, cylinder, value);
  return masterUse(test, instrument, { cylinder, value, judgement });
};

/** A leak within the doubt of the dials is even, a cylinder that holds nothing lags, whatever the others read. */
const standingBy = (
  { judgement }: LeakSizing,
  evidence: StandingEvidence & { readonly contradicted: boolean },
): Standing | undefined => {
  if (judgement?.kind === "tight" && !evidence.belowLimit) return "even";
  if (judgement?.kind === "no-seal" && !evidence.contradicted) return "lagging";
  return standing(evidence);
};
