// Columns that hold what may stand beside a reading: take, gauge, meter, person, note and conditions.

import { type Guess, silent } from "./guess-parts.ts";
import { columnLetters } from "./columns.ts";
import { supplyIn } from "./heading-text.ts";
import type { Source } from "./import-map.ts";
import type { ImportHints } from "./imported.ts";
import type { SheetShape } from "./sheet-shape.ts";
import { ignitionNamed, kindNamed, plainText } from "./sheet-words.ts";
import type { Seen } from "./typed-and-said.ts";

/** Columns that hold what may stand beside a reading. */
export const guessExtras = ({ shape, columns }: Seen, hints: ImportHints): Guess => {
  const free = shape.columns.filter(({ index }) => !columns.includes(index));
  const test = free.find(({ index }) => isTestNames(shape, index));
  const ofRole = (["ignition", "take", "gauge", "meter", "by", "set_aside", "note"] as const).flatMap(
    (role): readonly (readonly [string, Source])[] => {
      const column = free.find(
        (one) => one.role === role && (role !== "ignition" || saysIgnition(shape, one.index)),
      );
      const told = role === "gauge" || role === "by" ? hints[role] : undefined;
      if (told !== undefined) return [[role, { fixed: told }]];
      return column === undefined ? [] : [[role, { column: columnLetters(column.index) }]];
    },
  );
  const ofTests: typeof ofRole = test === undefined ? [] : [["test", { column: columnLetters(test.index) }]];
  const named = [...ofTests, ...ofRole];
  const supply = supplySaid(shape);
  const conditions = free.flatMap(({ condition, index }) =>
    condition !== undefined ? [[condition, { column: columnLetters(index) }] as const] : [],
  );
  const said = supply === undefined ? [] : [[supply.column, { fixed: supply.text }] as const];
  if (named.length + conditions.length + said.length === 0) return silent;
  return {
    map: {
      ...Object.fromEntries(named),
      ...(conditions.length + said.length === 0
        ? {}
        : { conditions: Object.fromEntries<Source>([...said, ...conditions]) }),
    },
    open: [],
    why: [
      ...named.flatMap(([entry, source]) =>
        "column" in source ? [{ entry, text: `column ${source.column} ${extraWords[entry] ?? ""}` }] : [],
      ),
      ...said.map(([entry]) => ({ entry, text: "the heading names the supply" })),
    ],
  };
};

const textsIn = ({ data }: SheetShape, column: number): readonly string[] =>
  data.map(({ cells }) => cells[column]?.text ?? "").filter((text) => text !== "");

/** Under that word others write degrees, or what the coil is. */
const saysIgnition = (shape: SheetShape, column: number): boolean =>
  textsIn(shape, column).every((text) => ignitionNamed(text) !== undefined || plainText(text) === "unknown");

/** The column of tests.csv by its own name, with names as they stand there: a stranger's column "test" has the kinds. */
const isTestNames = (shape: SheetShape, column: number): boolean => {
  const texts = textsIn(shape, column);
  const isNamed = shape.columns[column]?.heads.some((head) => plainText(head) === "test") === true;
  return isNamed && texts.length > 0 && texts.every((text) => /^\d{4}-\d{2}-\d{2}[a-z]{1,2}$/.test(text));
};

/** The supply that the heading of a leak-down names, where there is only one. */
const supplySaid = ({ headings }: SheetShape): ReturnType<typeof supplyIn> => {
  const found = headings.flatMap(({ cells }) =>
    cells.flatMap(({ text }) => (kindNamed(text)?.startsWith("leak") === true ? (supplyIn(text) ?? []) : [])),
  );
  const [first, ...others] = found;
  return others.every((one) => one.column === first?.column && one.text === first.text) ? first : undefined;
};

const extraWords: Readonly<Record<string, string>> = {
  ignition: "says how the engines fire",
  test: "names the tests",
  set_aside: "says what is set aside",
  take: "numbers the takes",
  gauge: "names the gauges",
  meter: "has the meter readings",
  by: "says who measured",
  note: "has the notes",
};
