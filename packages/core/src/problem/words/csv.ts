// Sentences for faults in the shape of a CSV file.

import { plural, quoted } from "./print.ts";

/** Whether a column was named nearly as wanted: in capitals, or a cylinder by its bare label. */
const means = (typed: string, name: string): boolean =>
  typed.toLowerCase() === name.toLowerCase() || (/^c[A-Z0-9]+$/.test(name) && typed === name.slice(1));

export const csvWords = {
  "file-empty": ({ columns }: { columns: string }) => ({
    found: "the file is empty",
    expected: "a first line with the column names",
    mend: `put this line first: ${columns}`,
  }),
  "quote-stray": ({ cell }: { cell: string }) => ({
    found: `a quote mark inside the cell ${cell}`,
    expected: "quote marks around a whole cell, or none",
    mend: 'take the quote mark out, or write the whole cell in quotes with each inner one doubled: "5"" bore"',
  }),
  "quote-open": (_: object) => ({
    found: "a quote mark opens here and is never closed",
    expected: "a closing quote mark before the end of the line",
    mend: 'put a " at the end of this cell, or take the opening one out',
  }),
  "cell-huge": ({ most }: { most: number }) => ({
    found: `a cell longer than ${String(most)} characters`,
    expected: "a number, a word, or a note of a page at most",
    mend: "put the long text into a file of its own, and the name of that file here",
  }),
  "header-blank": ({ position }: { position: number }) => ({
    found: `column ${String(position)} has no name but holds text`,
    expected: "a name above every column that holds something",
    mend: "name the column in the first line, or empty it",
  }),
  "header-twice": ({ name }: { name: string }) => ({
    found: `the column "${name}" stands twice in the first line`,
    expected: "each column name once",
    mend: `rename or delete one of the two "${name}" columns`,
  }),
  "column-missing": ({
    names,
    header,
    delimiter,
  }: {
    names: readonly string[];
    header: readonly string[];
    delimiter: string;
  }) => {
    const pairs = names.flatMap((name) => {
      const near = header.find((other) => !names.includes(other) && means(other, name));
      return near === undefined ? [] : [{ name, near }];
    });
    const renamed = header.map((other) => pairs.find(({ near }) => near === other)?.name ?? other);
    const added = names.filter((name) => !pairs.some((pair) => pair.name === name));
    // only a file of many engines has it: its rows hold no cell for it yet
    const isYard = added.includes("engine");
    const inFront = isYard ? ["engine", ...added.filter((name) => name !== "engine")] : [];
    const first = isYard ? [...inFront, ...renamed] : [...renamed, ...added];
    const cells = inFront.map((name) => (name === "engine" ? "the name of its engine" : `its ${name}`));
    const rows = isYard
      ? ` and begin every row with ${cells.map((cell) => `${cell} and "${delimiter}"`).join(", ")}`
      : "";
    // a sheet that somebody made for himself is better read by the command that is made for that
    const foreign =
      isYard && added.length > 2
        ? "let sealtrend import FILE read it, if it is a sheet of your own; else "
        : "";
    const swaps = pairs.map(({ name, near }) => `${name} in place of ${near}`);
    return {
      found: `there ${names.length === 1 ? "is no column" : "are no columns"} ${names.map(quoted).join(", ")}`,
      expected: `${names.map(quoted).join(", ")} among the column names`,
      mend:
        pairs.length === 1 && added.length === 0
          ? `write ${swaps.join("")}`
          : `${foreign}${swaps.length === 0 ? "" : `write ${swaps.join(", ")}; `}make this the first line: ${first.join(delimiter)}${rows}`,
    };
  },
  "row-long": ({ extra, columns }: { extra: number; columns: number }) => ({
    found: `${plural(extra, "cell")} more than the first line has columns (${String(columns)})`,
    expected: `${plural(columns, "cell")} in the row`,
    mend: "take the extra cells out, or name their columns in the first line",
  }),
  "row-short": ({ missing }: { missing: number }) => ({
    found: `the row ends ${plural(missing, "cell")} early; what is missing is taken as empty`,
    expected: "a cell for every column",
    mend: `end the row with ${plural(missing, "more separator")}`,
  }),
  "row-cut": ({ missing }: { missing: number }) => ({
    found: `the last line looks cut off: ${plural(missing, "cell")} missing and no line end`,
    expected: "a whole row",
    mend: "complete the row from the paper sheet and end it with Enter, or delete it",
  }),
  "row-huge": ({ most }: { most: number }) => ({
    found: `a row longer than ${String(most)} characters`,
    expected: "one test row",
    mend: "look for a missing line end or a quote mark that was never closed",
  }),
  "file-huge": ({ what, most }: { what: string; most: number }) => ({
    found: `more than ${String(most)} ${what}`,
    expected: `at most ${String(most)} ${what} in one file`,
    mend: what === "columns" ? "delete the columns that hold nothing" : "split the file: one engine a folder",
  }),
} as const;
