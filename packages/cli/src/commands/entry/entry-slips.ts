// Readings that look mistyped: found before they are saved. They are never changed without a person's word.

import {
  type Engine,
  type PressureUnit,
  type ReadingSlip,
  type Test,
  type UnitSlip,
  cylinderColumn,
  fromSi,
  gaugeUnits,
  isUsualCranking,
  readNumber,
  readingSlip,
  unitSlip,
} from "@sealtrend/core/parts";
import type { RowValues } from "./entry-context.ts";

export interface Slipped {
  /** Index of its row. */
  readonly row: number;
  /** Its cylinder; undefined where every reading of the row stands so far from the last ones, as a wrong unit makes it. */
  readonly label: string | undefined;
  /** The reading as typed, or the unit of the row. */
  readonly text: string;
  /** `about ten times the others`. */
  readonly found: string;
  /** What was meant, where the digits tell; of a row, its unit. */
  readonly meant: string | undefined;
  /** Of a row: it holds one reading alone. */
  readonly isLone?: true;
}

const times: Readonly<Record<ReadingSlip["kind"], string>> = {
  tenfold: "about ten times",
  tenth: "about a tenth of",
  swapped: "far above",
};

/** The readings of pressure rows that look mistyped. @param earlier - tests of the engine, by date */
export const slipsIn = (
  rows: readonly RowValues[],
  engine: Engine,
  earlier: readonly Test[],
): readonly Slipped[] =>
  rows.flatMap((row, at) => {
    const unit = gaugeUnits.find((name) => name === row.unit);
    if (unit === undefined || row.what === "regulated") return [];
    const taken = engine.cylinders.flatMap((label, i) => {
      const text = (row[cylinderColumn(label)] ?? "").replace(/\?$/, "");
      const reading = readNumber(text);
      const last = lastOf(earlier, { what: row.what, unit, at: i });
      return reading.ok ? [{ label, text, value: reading.value, last }] : [];
    });
    const isCranking = row.what === "dry" || row.what === "wet";
    const own = likelyOf(
      taken.flatMap(({ label, text, value, last }) => {
        const fellows = taken.flatMap((other) => (other.label === label ? [] : [other.value]));
        const slip = readingSlip(text, fellows, last);
        if (slip === undefined) return [];
        const sound = fellows.filter((other) => other > 0).length;
        const others = sound === 0 ? "its last reading" : sound === 1 ? "the other" : "the others";
        const found = `${times[slip.kind]} ${others}`;
        return [{ slipped: { row: at, label, text, found, meant: slip.meant }, value, fellows: sound }];
      }),
      isCranking ? unit : undefined,
    );
    const whole = isCranking ? unitSlip(taken, unit) : undefined;
    // of one reading alone the last one tells: what it was in another unit is no slip of the digits
    const isUnit =
      whole !== undefined && (own.length === 0 || (taken.length === 1 && whole.meant.length > 0));
    if (!isUnit) return own;
    const isLone = taken.length === 1;
    const found = unitFound(whole, isLone ? "the last one" : "the last ones");
    const lone = isLone ? { isLone } : {};
    return [{ row: at, label: undefined, text: unit, found, meant: whole.meant[0], ...lone }];
  });

interface Doubted {
  readonly slipped: Slipped;
  readonly value: number;
  /** Readings above nothing beside it. */
  readonly fellows: number;
}

/** Of two that stand against each other alone, the one that no engine in order cranks to. */
const likelyOf = (doubted: readonly Doubted[], unit: PressureUnit | undefined): readonly Slipped[] => {
  const isPair = doubted.length === 2 && doubted.every(({ fellows }) => fellows === 1);
  const odd =
    !isPair || unit === undefined ? [] : doubted.filter(({ value }) => !isUsualCranking(value, unit));
  return (odd.length === 1 ? odd : doubted).map(({ slipped }) => slipped);
};

const unitFound = ({ kind, times: share = 1 }: UnitSlip, last: string): string => {
  switch (kind) {
    case "impossible":
      return "more than any engine cranks";
    case "too-low":
      return "less than any engine starts with";
    case "unlike-last":
      return share > 1
        ? `about ${String(Math.round(share))} times ${last}`
        : `about one ${String(Math.round(1 / share))}th of ${last}`;
  }
};

interface Wanted {
  readonly what: string | undefined;
  readonly unit: PressureUnit;
  /** Index of the cylinder. */
  readonly at: number;
}

/** The cylinder's latest reading of the same kind, in this unit. */
const lastOf = (earlier: readonly Test[], { what, unit, at }: Wanted): number | undefined => {
  for (const { rows } of [...earlier].reverse())
    for (const row of rows) {
      const cell = row.what === what && row.holds === "pressure" ? row.cells[at] : undefined;
      if (cell?.kind === "reading" && cell.value > 0) return fromSi(cell.value, unit);
    }
  return undefined;
};
