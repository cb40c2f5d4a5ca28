// Readings that stand a decimal place away from their fellows: asked about before they are saved, said aloud where
// nobody can be asked. They are never changed without a person's word.

import {
  type Engine,
  type PressureUnit,
  type Slip,
  type Test,
  cylinderColumn,
  fromSi,
  gaugeUnits,
  plainNumber,
  readNumber,
  slipOf,
  slippedTo,
  splitReadings,
} from "@sealtrend/core";
import { Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import { typedLine } from "../../options/quote.ts";
import { clean } from "../../render/clean.ts";
import type { RowValues } from "./entry-context.ts";
import { usageFault } from "../usage.ts";

export interface Slipped {
  /** Index of its row. */
  readonly row: number;
  /** Its cylinder; undefined where every reading of the row stands so far from the last ones, as a wrong unit makes it. */
  readonly label: string | undefined;
  /** The reading as typed, or the unit of the row. */
  readonly text: string;
  /** `about ten times the others`. */
  readonly found: string;
  /** What was meant, where the digits tell. */
  readonly meant: string | undefined;
}

const times: Readonly<Record<Slip, string>> = { tenfold: "about ten times", tenth: "about a tenth of" };

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
    const own = taken.flatMap(({ label, text, value, last }): Slipped[] => {
      const fellows = taken.flatMap((other) => (other.label === label ? [] : [other.value]));
      const slip = slipOf(value, fellows, last);
      if (slip === undefined) return [];
      const found = `${times[slip]} ${fellows.length > 0 ? "the others" : "its last reading"}`;
      return [{ row: at, label, text, found, meant: slippedTo(text, slip) }];
    });
    const before = taken.map(({ value, last }) => slipOf(value, [], last));
    const [slip] = before;
    if (own.length > 0 || slip === undefined || before.some((one) => one !== slip)) return own;
    return [
      { row: at, label: undefined, text: unit, found: `${times[slip]} the last ones`, meant: undefined },
    ];
  });

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

/** Asks about each; Enter leaves it as typed. @returns the rows as they were meant  @throws Stop 2 when the person leaves */
export const askSlips = async (
  io: Io,
  rows: readonly RowValues[],
  slips: readonly Slipped[],
): Promise<readonly RowValues[]> => {
  const meant = [...rows];
  for (const slip of slips) {
    const { row, label } = slip;
    const answer = await askSlip(io, slip);
    if (answer !== undefined && label !== undefined)
      meant[row] = { ...meant[row], [cylinderColumn(label)]: answer };
  }
  return meant;
};

const question = ({ label, text, found, meant }: Slipped): string => {
  if (label === undefined) return `all are ${found}: is ${text} right? (Enter = yes, q = leave): `;
  const did = meant === undefined ? "is a digit missing?" : `did you mean ${meant}?`;
  return `cylinder ${label}, ${clean(text)}: ${did} (Enter = as typed${meant === undefined ? "" : ", y = yes"}, or the reading): `;
};

const askSlip = async (io: Io, slip: Slipped): Promise<string | undefined> => {
  for (;;) {
    const answer = (await io.ask(question(slip)))?.trim();
    if (answer === undefined || answer === "q")
      throw new Stop(2, [
        usageFault(
          "left",
          "nothing was saved",
          "an answer, or Enter",
          "run the command again when you have it",
        ),
      ]);
    if (answer === "" || slip.label === undefined) return undefined;
    if (/^y(es)?$/i.test(answer) && slip.meant !== undefined) return slip.meant;
    const split = splitReadings(answer, 1);
    if (split.ok) return plainNumber(split.cells[0] ?? "x");
    io.out(`  ${clean(split.found)}: ${split.mend}\n`);
  }
};

/** A line for each, with the command that mends it. @param rows - as they were saved  @param test - its name */
export const slipAsides = (
  slips: readonly Slipped[],
  rows: readonly RowValues[],
  { id, test }: { readonly id: string; readonly test: string },
): readonly string[] =>
  slips.map(({ row, label, text, found, meant }) => {
    const { what = "", take = "1" } = rows[row] ?? {};
    const pick = ["--what", what, ...(take === "1" || take === "" ? [] : ["--take", take])];
    const line = typedLine(["amend", id, "--test", test, ...pick]);
    if (label === undefined)
      return `all readings of ${what} are ${found}: is ${text} right? If not: ${line} --unit … --because mistyped`;
    const did = meant === undefined ? "is a digit missing?" : `did you mean ${meant}?`;
    return `cylinder ${label}, ${what} ${text}: ${found}; ${did} If so: ${line} --cylinder ${label} --to ${meant ?? "…"} --because mistyped`;
  });
