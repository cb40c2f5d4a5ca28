// The sheet for the machine shop: who, what was measured as found and how well, what is asked for, what comes back. No
// chances, no prices, no opinion.

import type { Test } from "@sealtrend/core";
import { agreedBlocks, askedSection } from "./asked-section.ts";
import { emptySection } from "./empty-sheet.ts";
import { loosePartsSection } from "./loose-parts.ts";
import { measuredSection } from "./measured-section.ts";
import type { PageInput } from "./page-input.ts";
import type { Page, PageBlock, PageRow, PageSection, TableBlock } from "./page-model.ts";
import { left, right } from "./page-tables.ts";
import { engineLine, engineTitle, kept, meterText, pressureText } from "./page-words.ts";
import { noteWords } from "../note.ts";
import { fixed, sentence } from "../words.ts";

export const shopPage = (input: PageInput): Page => {
  const { record, data, dated, teardown } = input;
  return {
    title: `For the machine shop: ${engineTitle(record.engine)}`,
    under: [
      ...(data === "invented" ? ["INVENTED DATA: a demonstration; there is no such engine."] : []),
      `${record.engine.id}: ${engineLine(record.engine)}; ${dated}`,
    ],
    sections: [
      whoSection(input),
      teardown === undefined ? emptySection(record.engine) : measuredSection(input, teardown, "yes"),
      sketchSection,
      askedSection(input, teardown?.now),
      { code: "agreed", heading: "", blocks: agreedBlocks },
      loosePartsSection(record.engine),
    ],
    foot: [
      "Printed from the owner's logbook by sealtrend. The maker's manual and your own measuring decide.",
      ...(record.engine.use === "aircraft"
        ? ["Aircraft: approved data and parts only; release is a licensed person's."]
        : []),
    ],
  };
};

const whoSection = (input: PageInput): PageSection => {
  const { engine, tests } = input.record;
  const meter = tests.findLast((test) => test.meter !== undefined)?.meter;
  return {
    code: "who",
    heading: "",
    blocks: [
      {
        kind: "blanks",
        items: [
          { name: "Owner" },
          { name: "Phone" },
          { name: "Date in" },
          { name: "Type" },
          { name: "Serial no." },
          { name: "Meter", given: meterText(meter, engine) },
          { name: "Opened because", width: "wide" },
        ],
      },
      ...testBlocks(input),
    ],
  };
};

/** Where cracks, scores and marks are shown that no table can. */
const sketchSection: PageSection = {
  code: "sketch",
  heading: "",
  blocks: [
    {
      kind: "sketch",
      caption: "Sketch: cracks, scores, marks of over- and undersize; number the photos here",
    },
  ],
};

const kinds = [
  { what: "dry", name: "Dry compression" },
  { what: "leak-down", name: "Leak-down" },
  { what: "wet", name: "With oil" },
] as const;

/** So many cylinders stand side by side. */
const mostColumns = 14;

/** The last dry test, the last leak-down, the last with oil: a row each under the cylinders; what was not tested, and oil. */
const testBlocks = (input: PageInput): readonly PageBlock[] => {
  const { cylinders } = input.record.engine;
  const rows = kinds.flatMap(({ what, name }) => testRow(input, what, name));
  const never = kinds
    .filter(({ what }) => newestWith(input, what) === undefined)
    .map(({ name }) => name.toLowerCase());
  const tables = rows.length === 0 ? 0 : Math.ceil(cylinders.length / mostColumns);
  return [
    ...Array.from({ length: tables }, (_, i): TableBlock => {
      const from = i * mostColumns;
      const labels = cylinders.slice(from, from + mostColumns);
      return {
        kind: "table",
        caption: `The last tests, by cylinder${i > 0 ? ", continued" : ""}.`,
        heard: "only",
        columns: [left("Cylinder"), ...labels.map((label) => right(kept(label)))],
        rows: rows.map(({ name, cells }): PageRow => ({
          cells: [name, ...cells.slice(from, from + mostColumns)],
        })),
      };
    }),
    {
      kind: "text",
      text: `${never.length === 0 ? "" : `Not tested: ${never.join(", ")}. `}${oilText(input)}`,
    },
  ];
};

const newestWith = ({ record: { tests } }: PageInput, what: string): Test | undefined =>
  tests.findLast(({ setAside, rows }) => setAside === undefined && rows.some((row) => row.what === what));

type Row = Test["rows"][number];

const cellText = (row: Row, place: number): string => {
  const cell = row.cells[place];
  if (cell?.kind !== "reading") return "-";
  const number = row.holds === "lost" || row.unit === "%" ? fixed(cell.value * 100, 0) : kept(cell.text);
  return `${cell.pegged ? ">" : ""}${number.replace(/^>|\?$/g, "")}${cell.doubtful ? "?" : ""}`;
};

/** `Leak-down 2026-05-17, psi of 80 psi, gauge tester`. */
const testRow = (
  input: PageInput,
  what: string,
  name: string,
): readonly { readonly name: string; readonly cells: readonly string[] }[] => {
  const test = newestWith(input, what);
  const row = test?.rows.findLast((one) => one.what === what);
  if (test === undefined || row === undefined) return [];
  const supply = what === "leak-down" ? test.conditions.regulated : undefined;
  const unit = row.unit === "%" ? input.unit : row.unit;
  const told = [
    `${name} ${test.date}`,
    row.holds === "lost" ? "% lost" : row.unit,
    ...(supply === undefined ? [] : [`supply ${pressureText(supply, unit)}`]),
    row.gauge === undefined ? "gauge not named" : `gauge ${kept(row.gauge)}`,
  ];
  return [{ name: told.join(", "), cells: input.record.engine.cylinders.map((_, i) => cellText(row, i)) }];
};

/** How much oil it uses; the words of a note stay at home. */
const oilText = ({ record: { notes } }: PageInput): string => {
  const use = notes.findLast(({ what }) => what === "oil use");
  return use === undefined ? "Oil use not recorded." : `${sentence(noteWords(use))} (${use.date}).`;
};
