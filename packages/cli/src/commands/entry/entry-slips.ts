// Readings that look mistyped: asked about before they are saved, said aloud where nobody can be asked. They are never changed
// without a person's word.

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
  plainNumber,
  readNumber,
  readingSlip,
  splitReadings,
  unitSlip,
} from "@sealtrend/core/parts";
import type { Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import { typedLine } from "../../options/quote.ts";
import { clean } from "../../render/clean.ts";
import { prose } from "../../render/prose.ts";
import { askPerson } from "../kept/ask-person.ts";
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
    const lone = taken.length === 1 ? { isLone: true as const } : {};
    return [
      { row: at, label: undefined, text: unit, found: unitFound(whole), meant: whole.meant[0], ...lone },
    ];
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

const unitFound = ({ kind, times: share = 1 }: UnitSlip): string => {
  switch (kind) {
    case "impossible":
      return "more than any engine cranks";
    case "too-low":
      return "less than any engine starts with";
    case "unlike-last":
      return share > 1
        ? `about ${String(Math.round(share))} times the last ones`
        : `about one ${String(Math.round(1 / share))}th of the last ones`;
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

interface Questioned {
  readonly slips: readonly Slipped[];
  readonly say: (lines: readonly string[]) => void;
  readonly leave: (expected: string) => Stop;
}

/** Asks about each: typed again, a reading is taken as it is; Enter alone is no answer, but the unit of a row stands with it.
 *  @returns the rows as they were meant  @throws Stop 2 when the person leaves */
export const askSlips = async (
  io: Io,
  rows: readonly RowValues[],
  questioned: Questioned,
): Promise<readonly RowValues[]> => {
  const meant = [...rows];
  for (const slip of questioned.slips) {
    const { row, label } = slip;
    const answer = await askSlip(io, slip, questioned);
    meant[row] = { ...meant[row], [label === undefined ? "unit" : cylinderColumn(label)]: answer };
  }
  return meant;
};

/** `cylinder 3, 1310: about ten times the others; did you mean 131? Type 131, or 1310 again`. */
export const slipDoubt = ({ label = "", text, found, meant }: Slipped): string => {
  const typed = clean(text);
  return meant === undefined
    ? `cylinder ${clean(label)}, ${typed}: ${found}; is a digit missing? Type it whole, or ${typed}\u00a0again`
    : `cylinder ${clean(label)}, ${typed}: ${found}; did you mean ${meant}? Type\u00a0${meant}, or ${typed}\u00a0again`;
};

/** `all are less than any engine starts with: is psi right, or is it bar?` */
export const unitDoubt = ({ text, found, meant, isLone }: Slipped): string =>
  `${isLone === true ? `it is ${found.replace("the last ones", "the last one")}` : `all are ${found}`}: is ${text} right${meant === undefined ? "" : `, or is it ${meant}`}?`;

const question = (slip: Slipped): string =>
  slip.label === undefined
    ? `${unitDoubt(slip)} (Enter = ${slip.text}, or the unit): `
    : `${slipDoubt(slip)}: `;

const askSlip = async (io: Io, slip: Slipped, { say, leave }: Questioned): Promise<string> => {
  for (;;) {
    const answer = await askPerson(io, question(slip), { takes: "typed now" });
    if (answer === undefined || answer === "q") throw leave("an answer to the question");
    const taken = slip.label === undefined ? unitAnswer(answer, slip) : readingAnswer(answer, slip);
    if (taken.ok) return taken.text;
    say(prose(taken.fault, io.width, "  "));
  }
};

type Answered = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly fault: string };

const unitAnswer = (answer: string, { text }: Slipped): Answered => {
  const unit = gaugeUnits.find((name) => name.toLowerCase() === answer.toLowerCase());
  if (answer === "" || unit !== undefined) return { ok: true, text: unit ?? text };
  return { ok: false, fault: `one of ${gaugeUnits.join(", ")}` };
};

const readingAnswer = (answer: string, { text, meant }: Slipped): Answered => {
  if (/^y(es)?$/i.test(answer) && meant !== undefined) return { ok: true, text: meant };
  if (answer === "")
    return { ok: false, fault: `type the reading: ${meant ?? "whole"}, or ${clean(text)} again` };
  const split = splitReadings(answer, 1);
  return split.ok
    ? { ok: true, text: plainNumber(split.cells[0] ?? "x") }
    : { ok: false, fault: `${clean(split.found)}: ${split.mend}` };
};

/** `cylinder 3, dry 1310: about ten times the others; did you mean 131?` */
export const slipSaid = ({ label, text, found, meant }: Slipped, what: string): string => {
  if (label === undefined) return `all readings of ${what} are ${found}: is ${text} right?`;
  return `cylinder ${label}, ${what} ${text}: ${found}; ${meant === undefined ? "is a digit missing?" : `did you mean ${meant}?`}`;
};

/** The command that mends it. @param row - as it was saved  @param test - its name */
export const slipMend = (
  { label, meant = "…" }: Slipped,
  { what = "", take = "1" }: RowValues,
  { id, test }: { readonly id: string; readonly test: string },
): string => {
  const pick = ["--what", what, ...(take === "1" || take === "" ? [] : ["--take", take])];
  const line = typedLine(["amend", id, "--test", test, ...pick]);
  const to = label === undefined ? `--unit ${meant}` : `--cylinder ${label} --to ${meant}`;
  return `${line} ${to} --because mistyped`;
};

/** A line for each, with the command that mends it. @param rows - as they were saved  @param test - its name */
export const slipAsides = (
  slips: readonly Slipped[],
  rows: readonly RowValues[],
  saved: { readonly id: string; readonly test: string },
): readonly string[] =>
  slips.map((slip) => {
    const row = rows[slip.row] ?? {};
    const lead = slip.label === undefined ? "If not" : "If so";
    return `${slipSaid(slip, row.what ?? "")} ${lead}: ${slipMend(slip, row, saved)}`;
  });
