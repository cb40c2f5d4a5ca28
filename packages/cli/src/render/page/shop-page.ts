// The sheet for the machine shop: who, what was measured as found and how well, what is asked for, what comes back. No
// chances, no prices, no opinion.

import { type Test, fromSi } from "@sealtrend/core";
import { agreedBlocks, askedSection } from "./asked-section.ts";
import { emptySection } from "./empty-sheet.ts";
import { loosePartsSection } from "./loose-parts.ts";
import { measuredSection } from "./measured-section.ts";
import type { PageInput } from "./page-input.ts";
import type { Page, PageSection } from "./page-model.ts";
import { engineLine, engineTitle, kept, meterText } from "./page-words.ts";
import { noteWords } from "../note.ts";
import { fixed } from "../words.ts";

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
      teardown === undefined ? emptySection(record.engine) : measuredSection(input, teardown),
      askedSection(input, teardown),
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
      { kind: "list", items: historyLines(input) },
    ],
  };
};

/** Three lines: the last dry test, the last leak-down, oil. */
const historyLines = (input: PageInput): readonly string[] => [
  dryLine(input),
  leakLine(input),
  oilLine(input),
];

const newestWith = ({ record: { tests } }: PageInput, what: string): Test | undefined =>
  tests.findLast(({ setAside, rows }) => setAside === undefined && rows.some((row) => row.what === what));

type Row = Test["rows"][number];

const cellsText = (row: Row): string => {
  const texts = row.cells.map((cell) => {
    if (cell.kind !== "reading") return "-";
    const number = row.holds === "lost" || row.unit === "%" ? fixed(cell.value * 100, 0) : kept(cell.text);
    return `${cell.pegged ? ">" : ""}${number.replace(/^>|\?$/g, "")}${cell.doubtful ? "?" : ""}`;
  });
  return `${texts.join(", ")} ${row.holds === "lost" ? "% lost" : row.unit}`;
};

const lastRow = (test: Test, what: string): Row | undefined => test.rows.findLast((row) => row.what === what);

const rowLine = (name: string, input: PageInput, what: string): string => {
  const test = newestWith(input, what);
  const row = test === undefined ? undefined : lastRow(test, what);
  if (test === undefined || row === undefined) return `${name}: not tested`;
  const gauge = row.gauge === undefined ? "gauge not named" : `gauge ${kept(row.gauge)}`;
  return `${name} ${test.date}, cylinders ${input.record.engine.cylinders.map(kept).join(" ")}: ${cellsText(row)} (${gauge})`;
};

const dryLine = (input: PageInput): string => rowLine("Dry compression", input, "dry");

const leakLine = (input: PageInput): string => {
  const test = newestWith(input, "leak-down");
  const supply = test?.conditions.regulated;
  const at = supply === undefined ? "" : `, supply ${fixed(fromSi(supply, "kPa"), 0)} kPa`;
  return `${rowLine("Leak-down", input, "leak-down")}${at}`;
};

/** With oil, and how much it uses; the words of a note stay at home. */
const oilLine = (input: PageInput): string => {
  const use = input.record.notes.findLast(({ what }) => what === "oil use");
  const wet = rowLine("With oil", input, "wet");
  return use === undefined ? `${wet}; oil use not recorded` : `${wet}; ${noteWords(use)} (${use.date})`;
};
