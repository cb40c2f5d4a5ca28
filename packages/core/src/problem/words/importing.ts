// Sentences for what keeps a stranger's sheet, or part of it, out of the logbook.

import { nearest } from "../nearest.ts";
import { cutShort, listed, quoted } from "./print.ts";

const list = (labels: readonly string[]): string =>
  `[${labels.map((label) => JSON.stringify(label)).join(", ")}]`;

/** A label is short: a longer word goes with the one that it begins with. */
const cylinderMend = ({
  text,
  engine,
  grown,
}: {
  text: string;
  engine: string;
  grown?: readonly string[];
}): string => {
  const letter =
    /^[A-Za-z][^0-9]*$/.test(text) && !/^[A-Za-z0-9]{1,3}$/.test(text) ? text.slice(0, 1).toUpperCase() : "";
  const added = letter === "" ? "it" : `"${letter}", which ${quoted(text)} then goes with,`;
  const named = `name the right one, or add ${added} to the cylinders of ${engine} in the map`;
  return grown === undefined
    ? named
    : `${named}; of an engine that is recorded: sealtrend engine set ${engine} cylinders "${grown.join(" ")}"`;
};

export const importWords = {
  "import-sheet-empty": (_: object) => ({
    found: "the sheet holds nothing",
    expected: "rows of readings, as a spreadsheet saves them with save as, CSV",
    mend: "open the spreadsheet, choose the page with the readings, and save that page as CSV",
  }),
  "import-map-key": ({ key, keys }: { key: string; keys: readonly string[] }) => {
    const [near] = nearest(key.slice(key.lastIndexOf(".") + 1), keys);
    return {
      found: `${quoted(key)} is no entry of a map`,
      expected: `one of: ${listed(keys)}`,
      mend: near === undefined ? "take it out" : `rename it ${near}`,
    };
  },
  "import-column-gone": ({ column, last }: { column: string; last: string }) => ({
    found: `the sheet has no column ${quoted(column)}, or more than one with that text above it`,
    expected: `a column from A to ${last}, a range such as C-F, or a text that stands once above the readings`,
    mend: "write the letters that the spreadsheet shows above the column",
  }),
  "import-column-twice": ({ column, first }: { column: string; first: string }) => ({
    found: `column ${column} stands in ${first} already`,
    expected: "each column with readings once, and none that holds something else",
    mend: "take it out of one of the two",
  }),
  "import-header-below": ({ row, firstRow }: { row: number; firstRow: number }) => ({
    found: `headerRow ${String(row)} does not stand above firstRow ${String(firstRow)}`,
    expected: "a row above the first one with readings, as the spreadsheet counts rows",
    mend:
      firstRow === 1
        ? "write a firstRow below it"
        : `write ${firstRow > 2 ? "a row from 1 to " : ""}${String(firstRow - 1)}`,
  }),
  "import-engine": ({ text, id, labels }: { text: string; id: string; labels: readonly string[] }) =>
    text === ""
      ? {
          found: "no engine stands here",
          expected: "the name of an engine in every row, or the map entry that fills it down",
          mend: 'write the name, or put "fill": true behind the column in the map if it is written once for several rows',
        }
      : {
          found: `the engine ${quoted(text)} is not in the map`,
          expected: "each name of an engine in the list engines of the map",
          mend: `add { "sheet": ${JSON.stringify(cutShort(text))}, "engine": "${id}", "cylinders": ${list(labels)} } there; "engine": "" leaves it out`,
        },
  "import-date": ({ text, order, ways }: { text: string; order?: string; ways: readonly string[] }) => {
    const under = order === undefined ? "" : ` under ${order}`;
    if (text === "")
      return {
        found: "no date stands here",
        expected: "a day in every row, or the map entry that fills it down",
        mend: 'write the day as 2026-05-03, or put "fill": true behind the column in the map',
      };
    return ways.length > 1
      ? {
          found: `the date ${quoted(text)} can be read two ways`,
          expected: "the order of day, month and year in the map",
          mend: `put "dates": "dmy" or "dates": "mdy" in the map: ${ways.join(" or ")}`,
        }
      : {
          found: `${quoted(text)} is no day${under}`,
          expected: "a day such as 2026-05-03, 3.5.2026 or 3 May 2026",
          mend:
            ways[0] === undefined
              ? "write the day that is meant in the sheet, as 2026-05-03"
              : `write ${ways[0]} in the sheet if that is meant`,
        };
  },
  "import-serial": ({ text, in1900, in1904 }: { text: string; in1900: string; in1904: string }) => ({
    found: `the date ${quoted(text)} is a spreadsheet's day number`,
    expected: `a day; counted from 1900 it is ${in1900}, from 1904 ${in1904}`,
    mend: "give the column the cell format date, year-month-day, and save the CSV again",
  }),
  "import-cylinder": (facts: {
    readonly text: string;
    readonly engine: string;
    readonly labels: readonly string[];
    /** Of a recorded engine: its cylinders with this one. */
    readonly grown?: readonly string[];
  }) => ({
    found:
      facts.text === ""
        ? "no cylinder is named for this reading"
        : `${quoted(facts.text)} is no cylinder of ${facts.engine}`,
    expected: `one of its cylinders: ${listed(facts.labels)}`,
    mend: cylinderMend(facts),
  }),
  "import-unit": ({ text, own, unit }: { text: string; own: string; unit: string }) => ({
    found: `${quoted(text)} is in ${own}, and the unit beside it is ${unit}`,
    expected: "one unit for a reading",
    mend: `write it in ${unit}, or write ${own} as its unit`,
  }),
  "import-decimal": ({ text, mark }: { text: string; mark: "." | "," | undefined }) => {
    const other = text.includes(",") ? "comma" : "point";
    const large = /^>?\s*([1-9]\d{0,2})[.,](\d{3})(?!\d)/.exec(text);
    return {
      found: `${quoted(text)} has a ${other}${mark === undefined ? "" : `, the map's decimal mark is ${quoted(mark)}`}`,
      expected: "numbers with one decimal mark and no thousands mark",
      mend:
        mark === undefined
          ? `put "decimal": "${other === "comma" ? "," : "."}" in the map if the ${other} is a decimal mark`
          : large !== null
            ? `write ${large.slice(1).join("")} if the ${other} parts the thousands, else mend the map's decimal`
            : `write ${text.replace(/[.,]$/, "").replace(/[.,]/, mark)} in the sheet if that is meant, or mend the map's decimal`,
    };
  },
  "import-later": ({ date, today }: { date: string; today: string }) => ({
    found: `the day ${date} has not come yet`,
    expected: `a day up to today, ${today}`,
    mend: "write the day that is meant; where the year is wrong, only the year",
  }),
  "import-block": ({ text, of }: { text: string; of: "day" | "engine" }) => ({
    found: `${quoted(text)} stands in a row of its own, and the readings below it would get another ${of}`,
    expected: of === "day" ? "the day of each reading" : "the engine of each reading",
    mend:
      of === "day"
        ? 'put "date": { "above": true } in the map, or write the day beside each reading'
        : "write the engine beside each reading, under a heading Engine",
  }),
  "import-undated": ({ text, like }: { text: string; like?: string }) => ({
    found:
      like === undefined
        ? `${quoted(text)} stands in a row without a date of its own`
        : `the figures are ${like} of the rows above, and no date stands beside them`,
    expected: "a date in the row of a test",
    mend: "write its date if it is a test; else delete the row",
  }),
  "import-row-twice": ({ row }: { row: number }) => ({
    found: `the same as row ${String(row)}, to the letter`,
    expected: "each row once; a test that was made twice, with a number in a column Take",
    mend: "delete one of the two, or write 1 and 2 in a column under the heading Take",
  }),
  "import-together": ({ text }: { text: string }) => ({
    found: `${quoted(text)} holds several readings`,
    expected: "one reading a cell, and a column a cylinder",
    mend:
      /^[^/]*\/[^/]*$/.test(text) && !/[;|]/.test(text)
        ? "write a cell a cylinder; if the second is the supply of a leak-down test, name leak-down as its kind"
        : "split it into a cell a cylinder (text to columns in the spreadsheet), and write 1, 2, 3 above",
  }),
  "import-doubtful": ({ text, figure }: { text: string; figure: string }) => ({
    found: `${quoted(text)} is no plain reading`,
    expected: "a figure alone; a doubtful one with ? behind it",
    mend: `write ${figure}? if it was about that; x if none was taken`,
  }),
  "import-mark": ({ text }: { text: string }) => ({
    found: `${quoted(text)} is next to nothing beside the others of its test: does its mark stand wrong?`,
    expected: "a reading near the others, or one marked as doubtful",
    mend: `write ${text.replace(/[.,]/, "").replace(/^0+/, "")} if that is meant; if it did read so, write ${text}?`,
  }),
  "import-formula": ({ text }: { text: string }) => ({
    found: `${quoted(text)} is a formula, not what it comes to`,
    expected: "the reading itself",
    mend: "save the CSV with values in place of formulas",
  }),
  "import-held": (_: object) => ({
    found: "percent held, and a tester is named",
    expected:
      'percent held without a tester, or "unit": { "fixed": "%" } and the tester\'s dial in gauges.csv',
    mend: "give the tester the dial percent-held in gauges.csv, and write % in the map",
  }),
  "import-twice": (facts: { readonly what: string; readonly take: number; readonly label: string }) => ({
    found: `a second reading of cylinder ${facts.label}: ${facts.what}, take ${String(facts.take)}`,
    expected: "each cylinder once in a take",
    mend: `number it take ${String(facts.take + 1)}, or take one of the two out`,
  }),
  "import-summary": ({ text }: { text: string }) => ({
    found: `${quoted(text)} is worked out from other cells`,
    expected: "readings only",
    mend: "nothing to do, or delete the row; if it is a machine, add it to the engines of the map",
  }),
  "import-header-again": ({ row }: { row: number }) => ({
    found: `the heading of row ${String(row)} again`,
    expected: "readings only",
    mend: "nothing to do, or delete the row",
  }),
  "import-row-empty": ({ text }: { text: string }) => ({
    found: `${quoted(text)} and no reading in its row`,
    expected: "a figure in a column of readings",
    mend: "nothing to do, or delete the row; if there are readings, write them in",
  }),
  "import-left": ({ text, id }: { text: string; id: string }) => ({
    found: `the map leaves ${quoted(text)} out`,
    expected: "an id behind its name, to take it in",
    mend: `write "engine": "${id}" in the map if it is wanted`,
  }),
} as const;
