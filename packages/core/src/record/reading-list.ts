// A line of readings as a person types it, in the order of the cylinder numbers.
// What can be read two ways is refused, with both readings shown.

import { lettersAsDigits } from "../quantity/index.ts";

/** A typed line of readings as cells in the order of the cylinders, or why it cannot be read. */
export type ListReading = { readonly ok: true; readonly cells: readonly string[] } | Refusal;

/** What was found, and what to write instead. */
interface Refusal {
  readonly ok: false;
  readonly found: string;
  readonly mend: string;
}

const notTaken = /^[xX?-]$/;
const reading = /^>?[+]?(?:\d{1,5}(?:[.,]\d{1,3})?|\.\d{1,3})\??$/;
const pair = /^>?(?:\d{1,5}(?:[.,]\d{1,3})?|\.\d{1,3})\??\/(?:\d{1,5}(?:[.,]\d{1,3})?|\.\d{1,3})$/;
/** `1,234` is 1.234 to one person and 1234 to another; a point is always decimal. */
const thousands = /^>?[1-9]\d{0,2},\d{3}\??$/;

const isReading = (cell: string): boolean => notTaken.test(cell) || reading.test(cell);

/** Splits `150 148 147 120`, `150/148/147/120`, `10,5 10,4`, `150,148,147,120`, `10.5;10.4`.
 *  @param count - how many cylinders there are */
export const splitReadings = (line: string, count: number): ListReading => {
  const cells = cellsOf(line.trim(), count);
  const wrong = cells.find((cell) => !isReading(cell));
  if (wrong !== undefined) return notAReading(wrong);
  const open = cells.find((cell) => thousands.test(cell));
  if (open !== undefined) return twoWays(open);
  return cells.length === count ? { ok: true, cells } : wrongCount(line, cells.length, count);
};

/** Commas stand between readings only where all are whole numbers of two digits or more and as many as cylinders. */
const cellsOf = (typed: string, count: number): readonly string[] => {
  const line = strokesClosed(typed);
  if (/[\s;]/.test(line)) return apart(line);
  if (line.includes("/")) return line.split("/");
  const parts = line.split(",");
  const whole = parts.every((part) => /^>?\d{2,5}\??$|^[xX-]$/.test(part));
  return whole && (parts.length === count || parts.length > 2) ? parts : [line];
};

/** The cells between separators; a separator at the very end parts nothing. A place left empty stays, to be refused: closed
 *  up, the readings behind it would go to the wrong cylinders. */
const apart = (line: string): readonly string[] => {
  const cells = line.split(/\s*;\s*|\s*,\s+|\s+/);
  return cells.at(-1) === "" ? cells.slice(0, -1) : cells;
};

/** `74 / 80` is `74/80`. */
const strokesClosed = (line: string): string => line.replace(/\s*\/\s*/g, "/");

const blanks = "put a blank between the readings, x for one that was not taken";

const notAReading = (cell: string): Refusal => ({
  ok: false,
  found: cell === "" ? "nothing stands where a reading belongs" : `"${cell}" is no reading`,
  mend: readingMend(cell),
});

const readingMend = (cell: string): string => {
  if (/\d/.test(cell) && /^[\dOolI|.,]+$/.test(cell) && /[OolI|]/.test(cell))
    return `write ${lettersAsDigits(cell)}; ${blanks}`;
  if (pair.test(cell)) return "a pair belongs to --leak-down; here one reading a cylinder";
  return /^>?[\d.,]+[A-Za-z]/.test(cell) ? "write the number alone, and the unit once: --unit psi" : blanks;
};

const twoWays = (cell: string): Refusal => {
  const small = cell.replace(",", ".");
  const large = cell.replace(",", "");
  return {
    ok: false,
    found: `"${cell}" can be read as ${small} or as ${large}`,
    mend: `write ${small} or ${large}; ${blanks}`,
  };
};

const wrongCount = (line: string, found: number, count: number): Refusal => ({
  ok: false,
  found: `${plural(found, "reading")} in "${line}", ${found > count ? "more" : "fewer"} than the ${plural(count, "cylinder")}`,
  mend: `give ${String(count)}, in the order of the cylinder numbers; ${blanks}`,
});

const plural = (n: number, one: string): string => `${String(n)} ${one}${n === 1 ? "" : "s"}`;

/** One cylinder of a typed line of leak-down readings: the cylinder side and the supply, as typed. */
export interface LeakPair {
  /** What is stored: the cylinder side, as typed. */
  readonly held: string;
  readonly supply?: string;
}

/** Splits a leak-down line: `74/80 72/80`, cylinder side first, or plain readings. A comma in a pair is decimal. */
export const splitLeakReadings = (
  line: string,
  count: number,
): { readonly ok: true; readonly cells: readonly LeakPair[] } | Refusal => {
  const cells = apart(strokesClosed(line).trim());
  if (!cells.some((cell) => cell.includes("/"))) {
    const plain = splitReadings(line, count);
    return plain.ok ? { ok: true, cells: plain.cells.map((held) => ({ held })) } : plain;
  }
  const wrong = cells.find((cell) => !pair.test(cell) && !notTaken.test(cell));
  if (wrong === "") return notAReading(wrong);
  if (wrong !== undefined)
    return {
      ok: false,
      found: `"${wrong}" is no pair of readings`,
      mend: /^[^/]+\/[^/]+\?$/.test(wrong)
        ? `the mark of doubt goes to the cylinder side: ${wrong.slice(0, -1).replace("/", "?/")}`
        : "write cylinder side and supply with a stroke between, and a blank between the pairs: 74/80 72/80",
    };
  const open = cells.flatMap((cell) => cell.split("/")).find((side) => thousands.test(side));
  if (open !== undefined) return twoWays(open);
  if (cells.length !== count)
    return {
      ok: false,
      found: `${plural(cells.length, "pair")} for ${plural(count, "cylinder")}`,
      mend: "give one pair a cylinder, x for one that was not taken",
    };
  return {
    ok: true,
    cells: cells.map((cell) => {
      const [held = "x", supply] = cell.split("/");
      return supply === undefined ? { held } : { held, supply };
    }),
  };
};
