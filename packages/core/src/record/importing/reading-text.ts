// One reading cell of a stranger's sheet as tests.csv has it. Digits stay as they were typed; only the decimal mark is
// put right, as the map says.

import { type Facts, type Problem, type ProblemCode, problem } from "../../problem/index.ts";
import { type PressureUnit, digitsValue, fromSi, gaugeUnitNamed } from "../../quantity/index.ts";
import { readReadingCell } from "../reading-cell.ts";
import type { DecimalMark } from "./import-map.ts";
import { remembered } from "./remembered.ts";
import { looksTogether } from "./together.ts";

/** `% held` is what a dial shows that reads what stays in. */
export type SheetUnit = PressureUnit | "%" | "% held";

export interface ReadingRules {
  readonly unit: SheetUnit;
  readonly decimal: DecimalMark | undefined;
  /** Whether `74/80` is a reading with its supply. */
  readonly pairs: boolean;
  /** How the cell is called in a message. */
  readonly column: string;
}

export type ReadingText =
  | { readonly kind: "reading"; readonly text: string; readonly supply?: string }
  | { readonly kind: "fault"; readonly problem: Problem };

/** The unit that a text names, with the usual spellings. */
export const sheetUnitNamed = (text: string): SheetUnit | undefined => {
  if (/^(?:%|percent|pct)(?: (?:lost|loss|leak|leakage))?$/i.test(text.trim())) return "%";
  if (/^(?:%|percent|pct) (?:held|retained|left)$/i.test(text.trim())) return "% held";
  return gaugeUnitNamed(text);
};

/** The largest reading that is believed, as in tests.csv. */
const mostReading_Pa = 20_000_000;
const mostOf = remembered((unit: SheetUnit): number =>
  unit === "%" || unit === "% held" ? 100 : Number(fromSi(mostReading_Pa, unit).toPrecision(3)),
);
const mark = /[.,]/;
const withUnit = /^(>?\s*[+]?[\d.,]+(?:\s*\/\s*[\d.,]+)?\s*\??)\s*([A-Za-z%][A-Za-z0-9%/²]*)\s*(\??)$/;

/** The unit that a reading cell names itself, as `150 psi` does. */
export const unitOfCell = (cell: string): SheetUnit | undefined =>
  endsInFigure.test(cell) ? undefined : sheetUnitNamed(withUnit.exec(cell)?.[2] ?? "");
/** A figure, not the 2 of kgf/cm2. */
const endsInFigure = /(?<!m)[\d.,]$/i;

/** Whether the second unit is what the first says, held or lost left open. */
export const goesWithUnit = (own: SheetUnit, unit: SheetUnit): boolean =>
  own === unit || (own === "%" && unit === "% held");

/** Reads a cell that holds something. */
export const readingText = (cell: string, rules: ReadingRules): ReadingText => {
  const { unit, column, pairs } = rules;
  if (digitsValue(cell) <= mostOf(unit) && unit !== "% held") return { kind: "reading", text: cell };
  if (/^[=＝]/.test(cell)) return fault("import-formula", { text: cell });
  if (looksTogether(cell) || (!pairs && two.test(cell))) return fault("import-together", { text: cell });
  const about = aboutSo(cell);
  if (about !== undefined) return fault("import-doubtful", { text: cell, figure: about });
  const [, figure, named = "", doubt = ""] = withUnit.exec(cell) ?? [];
  const own = sheetUnitNamed(named);
  if (own !== undefined && !goesWithUnit(own, unit)) return fault("import-unit", { text: cell, own, unit });
  const bare = own === undefined || figure === undefined ? cell : `${figure.trim()}${doubt}`;
  const figures = pairs ? bare.split("/").map((part) => part.trim()) : [bare];
  if (figures.length > 2) return fault("number-bad", { column, text: cell, fault: "not-a-number" });
  const [held, supply] = figures.map((part) => plainFigure(part, cell, rules));
  if (held === undefined || held.kind === "fault")
    return held ?? fault("number-bad", { column, text: cell, fault: "empty" });
  if (supply === undefined) return unit === "% held" ? asLost(held.text, cell, column) : held;
  if (supply.kind === "fault" || !/^[\d.]+$/.test(supply.text))
    return fault("number-bad", { column, text: cell, fault: "not-a-number" });
  return Number(held.text.replace("?", "")) > Number(supply.text)
    ? fault("import-together", { text: cell })
    : { kind: "reading", text: held.text, supply: supply.text };
};

const two = /^\d{1,4}(?:[.,]\d{1,3})?\s*[/;|]\s*\d{1,4}(?:[.,]\d{1,3})?$/;

/** The figure of a cell that says about how much was read: `ca. 120`, `<150`, `9,8*`, `9,2 (cold)`. */
const aboutSo = (cell: string): string | undefined => {
  if (cell.length > 60) return undefined;
  const [, after] =
    /^(?:<|≤|~|≈|±|ca\.?|circa|c\.|about|around|approx\.?|etwa|rund|env\.?)\s*(\d{1,4}(?:[.,]\d{1,3})?)$/i.exec(
      cell,
    ) ?? [];
  const [, before] = /^(\d{1,4}(?:[.,]\d{1,3})?)\s*(?:[*!†]+|\(.*\)?)$/.exec(cell) ?? [];
  return after ?? before;
};

/** A figure with a decimal point, held against the number grammar and what is believed. */
const plainFigure = (typed: string, cell: string, { unit, decimal, column }: ReadingRules): ReadingText => {
  const text = typed.replace(/\s+(?=\?$)/, "").replace(/^>\s+/, ">");
  const marks = text.match(/[.,]/g) ?? [];
  if (marks.length === 1 && marks[0] !== decimal && /\d/.test(text))
    return fault("import-decimal", { text: cell, mark: decimal });
  const pointed = marks.length === 1 ? text.replace(mark, ".") : text;
  const isPercent = unit === "%" || unit === "% held";
  const bounds = { of: isPercent ? "percent" : `a reading in ${unit}`, least: 0, most: mostOf(unit) };
  const faults: Problem[] = [];
  const read = readReadingCell(
    pointed,
    bounds,
    ",",
    column,
    (value) => value,
    (code, facts) => {
      faults.push(problem(code, code === "number-bad" ? { ...facts, text: cell } : facts));
      return undefined;
    },
  );
  const [first] = faults;
  if (first !== undefined) return { kind: "fault", problem: first };
  return read?.kind === "reading" ? { kind: "reading", text: pointed } : { kind: "reading", text: "x" };
};

/** What a dial of percent held shows, as percent lost with as many decimals. */
const asLost = (text: string, cell: string, column: string): ReadingText => {
  const [, whole, decimals = "", doubt = ""] = /^\+?(\d+)(?:\.(\d+))?(\??)$/.exec(text) ?? [];
  if (whole === undefined) return fault("number-bad", { column, text: cell, fault: "not-a-number" });
  return {
    kind: "reading",
    text: `${(100 - Number(text.replace("?", ""))).toFixed(decimals.length)}${doubt}`,
  };
};

const fault = <C extends ProblemCode>(code: C, facts: Facts<C>): ReadingText => ({
  kind: "fault",
  problem: problem(code, facts),
});
