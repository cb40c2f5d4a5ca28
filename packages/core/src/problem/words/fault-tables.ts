// Sentences for faults in the sheets of causes, chances and tests.

import { nearest } from "../nearest.ts";
import { cutShort, listed, plural, quoted } from "./print.ts";

/** The sheets by name; where all of the findings are among them, those in one word. */
const sheetsListed = (sheets: readonly string[]): string => {
  const ofFindings = sheets.filter((name) => name.startsWith("finding-"));
  const others = sheets.filter((name) => !ofFindings.includes(name));
  return listed(
    ofFindings.length < 4 ? sheets : [...others, `${String(ofFindings.length)} finding-NAME.csv`],
  );
};

/** The first few of many. */
const few = (names: readonly string[]): string =>
  names.length <= 4
    ? listed(names.map(quoted))
    : `${listed(names.slice(0, 3).map(quoted))} and ${String(names.length - 3)} more`;

/** A number with six decimals at most, none of them a nought at the end. */
const shown = (value: number): string => String(Number(value.toFixed(6)));

type WordsFault =
  | { readonly kind: "order"; readonly least: number; readonly above: number }
  | { readonly kind: "last"; readonly least: number };

type BoundsFault =
  | { readonly kind: "class"; readonly low: number; readonly before: string; readonly end: number }
  | { readonly kind: "within"; readonly low: number; readonly high: number };

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
  "sheet-column-missing": (facts: {
    readonly name: string;
    readonly columns: readonly string[];
    readonly sheet: string;
    /** The column that seems to be meant, perhaps without a name. */
    readonly found?: string;
  }) => {
    const { name, columns, sheet, found } = facts;
    const beside = found === "" ? ", and this one has no name" : `, and ${quoted(found ?? "")} is not read`;
    return {
      found: `there is no column ${quoted(name)}${found === undefined ? "" : beside}`,
      expected: `the columns ${listed(columns)}`,
      mend:
        found === undefined
          ? `copy the column ${name} from the shipped ${sheet}`
          : `write ${name} ${found === "" ? "above it" : `in place of ${cutShort(found)}`}`,
    };
  },
  "sheet-cell-empty": ({ column, wanted }: { column: string; wanted: string }) => ({
    found: `nothing in the column ${quoted(column)}`,
    expected: wanted,
    mend: `write ${wanted}`,
  }),
  "sheet-cell-spare": (facts: {
    readonly column: string;
    readonly text: string;
    readonly where: string;
    /** What can be emptied in its place. */
    readonly or?: string;
  }) => ({
    found: `${facts.column} ${quoted(facts.text)} ${facts.where}`,
    expected: `nothing in ${facts.column} there`,
    mend: `empty ${facts.column}${facts.or === undefined ? "" : `, or ${facts.or} if that is the slip`}`,
  }),
  "sheet-text": (facts: {
    readonly column: string;
    readonly most: number;
    readonly why: "hidden" | "long";
    readonly length?: number;
  }) => {
    const { column, most, why, length = 0 } = facts;
    return {
      found:
        why === "hidden"
          ? `${column} holds characters that cannot be seen`
          : `${column} is ${String(length)} characters long`,
      expected: `text on one line, at most ${String(most)} characters`,
      mend: why === "hidden" ? "delete the text and type it again" : `shorten it by ${String(length - most)}`,
    };
  },
  "sheet-code": ({ column, text, example }: { column: string; text: string; example: string }) => {
    const plain = text
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-|-$/g, "");
    return {
      found: `${column} ${quoted(text)} is not one plain word`,
      expected: `letters a to z, digits and hyphens between them, such as ${example}`,
      mend: `write ${plain === "" ? `a word such as ${example}` : plain}`,
    };
  },
  "sheet-row-missing": (facts: {
    readonly column: string;
    readonly names: readonly string[];
    readonly sheet: string;
    /** What its absence does, where the tables can be used all the same. */
    readonly without?: string;
  }) => {
    const { column, names, sheet, without } = facts;
    const rows = names.length === 1 ? "the row" : "these rows";
    return {
      found: `no row for ${few(names)} in the column ${column}`,
      expected:
        without === undefined ? `a row for each ${column}` : `every row of the shipped sheet: ${without}`,
      mend: `${without === undefined ? "copy" : "leave it so if that is meant, else copy"} ${rows} from the shipped ${sheet}`,
    };
  },
  "cause-rows-missing": (facts: {
    readonly code: string;
    readonly sheets: readonly string[];
    readonly example: { readonly sheet: string; readonly row: string };
    /** The shipped cause that seems to be meant. */
    readonly meant?: string;
  }) => {
    const { code, sheets, example, meant } = facts;
    const [only] = sheets.length === 1 ? sheets : [];
    const many = `${plural(sheets.length, "sheet")}: ${sheetsListed(sheets)}`;
    const where = only === undefined ? "in each of these sheets" : `in ${only}`;
    const row = `${only === undefined ? `; in ${example.sheet}` : ""}: ${example.row}`;
    return {
      found: `the cause ${quoted(code)} has no row in ${only ?? many}`,
      expected: "a row for each cause of causes.csv in signs-by-cause.csv and every finding-NAME.csv",
      mend: `${meant === undefined ? "" : `write ${meant}, or `}${where} copy the row none-of-these, name it ${code} and change its numbers${row}`,
    };
  },
  "cause-unlisted": (facts: {
    readonly code: string;
    readonly sheets: readonly string[];
    readonly row: string;
  }) => ({
    found: `${quoted(facts.code)} has rows in ${plural(facts.sheets.length, "sheet")} and none here: ${sheetsListed(facts.sheets)}`,
    expected: "a row in causes.csv for each cause that other sheets have",
    mend: `delete those rows, or type one here, with words and numbers of your own: ${facts.row}`,
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
          mend: "put the rows in order, the highest number first, no two the same",
        }
      : {
          found: `the last word begins at ${String(fault.least)}`,
          expected: "0, so that every chance has a word",
          mend: "write 0",
        },
  "bounds-order": (fault: BoundsFault) =>
    fault.kind === "class"
      ? {
          found: `this class begins at ${String(fault.low)}, and ${quoted(fault.before)} ends at ${String(fault.end)}`,
          expected: "classes that follow one another, none into the next",
          mend: `write ${String(fault.end)} here, or at most ${String(fault.low)} in the column high of ${quoted(fault.before)}`,
        }
      : {
          found: `high ${String(fault.high)} is not above low ${String(fault.low)}`,
          expected: "a class that ends above where it begins",
          mend: `write more than ${String(fault.low)} here, or less than ${String(fault.high)} in the column low`,
        },
} as const;
