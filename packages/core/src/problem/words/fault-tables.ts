// Sentences for faults in the sheets of causes, chances and tests.

import { nearest } from "../nearest.ts";
import { listed, plural, quoted } from "./print.ts";

/** A number with six decimals at most, none of them a nought at the end. */
const shown = (value: number): string => String(Number(value.toFixed(6)));

type WordsFault =
  | { readonly kind: "order"; readonly least: number; readonly above: number }
  | { readonly kind: "last"; readonly least: number };

export const faultTableWords = {
  "sheet-missing": ({ name }: { name: string }) => ({
    found: `there is no sheet ${quoted(name)}`,
    expected: "every sheet of the tables, each under its own name",
    mend: `copy ${name} from the shipped tables`,
  }),
  "sheet-unknown": ({ name, names }: { name: string; names: readonly string[] }) => {
    const [near] = nearest(name, names);
    return {
      found: `the sheet ${quoted(name)} is not read`,
      expected: "the name of a shipped sheet, such as causes.csv or finding-level.csv",
      mend: near === undefined ? "leave it, or give it such a name" : `name it ${near}`,
    };
  },
  "sheet-column": ({ name, names }: { name: string; names: readonly string[] }) => {
    const [near] = nearest(name, names);
    return {
      found: `the column ${quoted(name)} is not read`,
      expected: listed(names),
      mend: near === undefined ? "name it note, or delete it" : `name it ${near}`,
    };
  },
  "sheet-cell-empty": ({ column, wanted }: { column: string; wanted: string }) => ({
    found: `nothing in the column ${quoted(column)}`,
    expected: wanted,
    mend: `write ${wanted}`,
  }),
  "sheet-cell-spare": ({ column, text, where }: { column: string; text: string; where: string }) => ({
    found: `${column} ${quoted(text)} ${where}`,
    expected: `nothing in ${column} there`,
    mend: `empty ${column}`,
  }),
  "sheet-row-missing": ({ column, names }: { column: string; names: readonly string[] }) => ({
    found: `no row for ${listed(names.map(quoted))} in the column ${column}`,
    expected: `a row for each ${column}`,
    mend: `add ${plural(names.length, "row")}, or copy the sheet from the shipped tables again`,
  }),
  "sheet-row-twice": ({ name, line }: { name: string; line: number }) => ({
    found: `${quoted(name)} stands on line ${String(line)} already`,
    expected: "one row for it",
    mend: "delete one of the two rows, or name something else in this one",
  }),
  "chances-sum": ({ sum }: { sum: number }) => ({
    found: `the chances of this row add up to ${shown(sum)}`,
    expected: "1: one of the classes is always met",
    mend: sum < 1 ? `add ${shown(1 - sum)} where it belongs` : `take ${shown(sum - 1)} away`,
  }),
  "priors-sum": ({ sum, most }: { sum: number; most: number }) => ({
    found: `the priors add up to ${shown(sum)}`,
    expected: `at most ${String(most)}; the rest is the chance that nothing is wrong`,
    mend: `make them smaller: multiply each by ${String(Math.floor((100 * most) / sum) / 100)}`,
  }),
  "words-scale": (fault: WordsFault) =>
    fault.kind === "order"
      ? {
          found: `this word begins at ${String(fault.least)}, the one above it at ${String(fault.above)}`,
          expected: "numbers that fall from row to row",
          mend: "put the rows in order, the highest number first",
        }
      : {
          found: `the last word begins at ${String(fault.least)}`,
          expected: "0, so that every chance has a word",
          mend: "write 0",
        },
  "bounds-order": ({ low, above }: { low: number; above: number }) => ({
    found: `${String(above)} is not above ${String(low)}`,
    expected: "bounds that rise, from low to high and from class to class",
    mend: "look for two numbers that changed places",
  }),
} as const;
