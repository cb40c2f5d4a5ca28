// Columns that hold what may stand beside a reading: take, gauge, meter, person, note and conditions.

import { type Guess, silent } from "./guess-parts.ts";
import { columnLetters } from "./columns.ts";
import { supplyIn } from "./heading-text.ts";
import type { Source } from "./import-map.ts";
import type { ImportHints } from "./imported.ts";
import type { SheetShape } from "./sheet-shape.ts";
import { kindNamed } from "./sheet-words.ts";
import type { Seen } from "./typed-and-said.ts";

/** Columns that hold what may stand beside a reading. */
export const guessExtras = ({ shape, columns }: Seen, hints: ImportHints): Guess => {
  const free = shape.columns.filter(({ index }) => !columns.includes(index));
  const ofRole = (["take", "gauge", "meter", "by", "note"] as const).flatMap(
    (role): readonly (readonly [string, Source])[] => {
      const column = free.find((one) => one.role === role);
      const told = role === "gauge" || role === "by" ? hints[role] : undefined;
      if (told !== undefined) return [[role, { fixed: told }]];
      return column === undefined ? [] : [[role, { column: columnLetters(column.index) }]];
    },
  );
  const supply = supplySaid(shape);
  const conditions = free.flatMap(({ condition, index }) =>
    condition !== undefined ? [[condition, { column: columnLetters(index) }] as const] : [],
  );
  const said = supply === undefined ? [] : [[supply.column, { fixed: supply.text }] as const];
  if (ofRole.length + conditions.length + said.length === 0) return silent;
  return {
    map: {
      ...Object.fromEntries(ofRole),
      ...(conditions.length + said.length === 0
        ? {}
        : { conditions: Object.fromEntries<Source>([...said, ...conditions]) }),
    },
    open: [],
    why: [
      ...ofRole.flatMap(([entry, source]) =>
        "column" in source ? [{ entry, text: `column ${source.column} ${extraWords[entry] ?? ""}` }] : [],
      ),
      ...said.map(([entry]) => ({ entry, text: "the heading names the supply" })),
    ],
  };
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
  take: "numbers the takes",
  gauge: "names the gauges",
  meter: "has the meter readings",
  by: "says who measured",
  note: "has the notes",
};
