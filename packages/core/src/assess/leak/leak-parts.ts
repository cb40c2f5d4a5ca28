// What oil, or the piston lower in its bore, did to a leak: dry less wet, as areas. Percents do not add, leaks do.

import { type LeakFigures, judgeLeak, leakFigures, partClosed } from "../../leakdown/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import {
  type LeakInstrument,
  leakInstrument,
  pressuresOf,
  tellsSize,
  withUsualSupply,
} from "./leak-instrument.ts";
import { fractionLost, valuesOf } from "../values/values.ts";

/** What oil, or the piston lower in its bore, did to the leak of one cylinder. Leaks as areas: percents do not add. */
export interface LeakPart {
  readonly label: string;
  readonly what: "oiled" | "lower";
  /** Fraction lost at the top of the bore as it stood, and with oil or lower down. */
  readonly lost: number;
  readonly then: number;
  /** Part of the leak that the oil closed, or that is gone lower down: 1 - leak then / leak first; below 0 where it leaks
   *  more. Absent where the dials or the tester do not tell. */
  readonly share?: number;
  /** Standard uncertainty of share. */
  readonly uShare?: number;
  /** What was closed and what is left, beside the restrictor; where the tester tells a size. */
  readonly closedAlpha?: number;
  readonly leftAlpha?: number;
  /** Whether a change is shown: more than twice its uncertainty. */
  readonly shown: "yes" | "no" | "cannot-tell";
  /** Whether less than half of the leak was closed, or is gone lower down: one half lies above share + 2 uShare. */
  readonly isLessThanHalf: boolean;
}

const kinds = [
  ["leak-down-oiled", "oiled"],
  ["leak-down-lower", "lower"],
] as const;

/** Every cylinder read both ways by one tester, in the engine's order. */
export const leakParts = (record: EngineRecord, test: Test): readonly LeakPart[] => {
  const first = valuesOf(test, "leak-down");
  if (first === undefined) return [];
  return kinds.flatMap(([kind, what]) => {
    const then = valuesOf(test, kind);
    if (then === undefined || then.gauge !== first.gauge || then.holds !== first.holds) return [];
    const instrument = leakInstrument(record, test, first);
    return record.engine.cylinders.flatMap((label, i): LeakPart[] => {
      const [a, b] = [first.cells[i]?.value, then.cells[i]?.value];
      const supply = instrument.supplies[i];
      const [lost, lostThen] = [a, b].map((value) =>
        value === undefined ? undefined : fractionLost(first.holds, value, supply),
      );
      if (a === undefined || b === undefined || lost === undefined || lostThen === undefined) return [];
      return [{ label, what, lost, then: lostThen, ...changeOf(instrument, i, { first: a, then: b }) }];
    });
  });
};

export interface LeakAlone {
  readonly what: LeakPart["what"];
  /** Fraction lost, in the engine's order; undefined where it was not read or its supply is not known. */
  readonly lost: readonly (number | undefined)[];
}

/** Those of a test that holds no plain leak-down. */
export const leakAlone = (record: EngineRecord, test: Test): readonly LeakAlone[] =>
  valuesOf(test, "leak-down") !== undefined
    ? []
    : kinds.flatMap(([kind, what]): LeakAlone[] => {
        const values = valuesOf(test, kind);
        if (values === undefined) return [];
        const { supplies } = leakInstrument(record, test, values);
        const lost = values.cells.map((cell, i) =>
          cell === undefined ? undefined : fractionLost(values.holds, cell.value, supplies[i]),
        );
        return [{ what, lost }];
      });

type Change = Pick<LeakPart, "share" | "uShare" | "closedAlpha" | "leftAlpha" | "shown" | "isLessThanHalf">;

const changeOf = (
  instrument: LeakInstrument,
  cylinder: number,
  { first, then }: { readonly first: number; readonly then: number },
): Change => {
  const usual = withUsualSupply(instrument);
  const [open, closed] = [first, then].map((value) => figuresOf(usual, cylinder, value));
  if (open === undefined || closed === undefined || open.isTight)
    return { shown: "cannot-tell", isLessThanHalf: false };
  const part = partClosed(open, closed);
  const share = part.alpha / open.alpha;
  // share = 1 - closed/open
  const ratio = closed.alpha / open.alpha;
  const uShare = Math.hypot(closed.uAlpha / open.alpha, (ratio * open.uAlpha) / open.alpha);
  const shown = Math.abs(part.alpha) > 2 * part.uAlpha ? "yes" : "no";
  const isSized = tellsSize(instrument) && instrument.supplies[cylinder] !== undefined;
  return {
    share,
    uShare,
    ...(isSized ? { closedAlpha: part.alpha, leftAlpha: closed.alpha } : {}),
    shown,
    isLessThanHalf: share + 2 * uShare < 0.5,
  };
};

interface Sized extends Pick<LeakFigures, "alpha" | "uAlpha"> {
  readonly isTight: boolean;
}

/** A leak tighter than the dials can show is anything up to its limit. Undefined where the reading is no leak. */
const figuresOf = (instrument: LeakInstrument, cylinder: number, value: number): Sized | undefined => {
  const reading = pressuresOf(instrument, cylinder, value);
  if (reading === undefined || reading.cylinder > reading.supply) return undefined;
  const judgement = judgeLeak(reading, {});
  if (judgement.kind === "measured") return { ...judgement.figures, isTight: false };
  if (judgement.kind !== "tight") return undefined;
  return { alpha: leakFigures(reading, {}).alpha, uAlpha: judgement.limit.alpha / 2, isTight: true };
};
