// What was done, with which gauges, and what was changed in the record afterwards.

import { type Gauge, startsAnew } from "@sealtrend/core/parts";
import type { PageInput } from "./page-input.ts";
import type { PageRow, PageSection, TableBlock } from "./page-model.ts";
import { left, right, tableOrText } from "./page-tables.ts";
import { kept, meterText, whoText } from "./page-words.ts";
import { gaugeText } from "../gauges/gauges.ts";
import { noteWords } from "../note.ts";

/** A longer list takes the width of the paper, so that a page can part it. */
const mostBeside = 8;

export const servicesSection = (input: PageInput): PageSection => {
  const {
    record: { engine, services },
    notes,
  } = input;
  return {
    code: "services",
    heading: "What was done",
    ...(services.length <= mostBeside ? { room: "half" } : {}),
    blocks: tableOrText("No work is on record.", {
      caption: "What was done, in the order of time.",
      heard: "only",
      columns: [
        left("Date"),
        left("Work"),
        right("Meter"),
        left("Cylinders"),
        left("New history"),
        left("By"),
        ...(notes === "shown" ? [left("Note")] : []),
      ],
      rows: services.map(({ date, what, meter, cylinders, newBaseline, by, note }) => ({
        cells: [
          date,
          what,
          meterText(meter, engine),
          labelsText(cylinders, engine.cylinders),
          newBaseline.length === 0
            ? startsAnew(what)
              ? "none, by its owner"
              : "no"
            : labelsText(newBaseline, engine.cylinders),
          whoText(by, input),
          ...(notes === "shown" ? [kept(note)] : []),
        ],
      })),
    }),
  };
};

const labelsText = (labels: readonly string[], all: readonly string[]): string =>
  labels.length === 0 ? "-" : labels.length === all.length ? "all" : labels.join(" ");

/** Those that a test names, and those that it names and nobody described. */
export const gaugesSection = ({ record: { gauges, tests, services }, notes }: PageInput): PageSection => {
  const used = new Map<string, number>();
  for (const { rows } of tests)
    for (const name of new Set(rows.map(({ gauge }) => gauge ?? "")))
      used.set(name, (used.get(name) ?? 0) + 1);
  const rows = [...used].map(([name, count]): PageRow => {
    const known = gauges.find(({ id }) => id === name);
    const text =
      name === ""
        ? "not named: nothing is known of it"
        : known === undefined
          ? "not described"
          : told(known, notes);
    return { cells: [name === "" ? "no name" : kept(name), String(count), text] };
  });
  return {
    code: "gauges",
    heading: "Gauges",
    ...(services.length <= mostBeside && rows.length <= mostBeside ? { room: "half" } : {}),
    blocks: tableOrText("No gauge is on record.", {
      caption: "The gauges of these tests.",
      heard: "only",
      columns: [left("Gauge"), right("Tests"), left("What is known of it")],
      rows,
    }),
  };
};

const told = (gauge: Gauge, notes: PageInput["notes"]): string =>
  [gaugeText(gauge), ...(notes === "shown" && gauge.note !== undefined ? [kept(gauge.note)] : [])].join("; ");

/** Every entry that was changed after it was made, and every test that was set aside, with the reason that was given. */
export const changesSection = (input: PageInput): PageSection => {
  const { amendments, record, notes } = input;
  const aside = record.tests.flatMap(({ id, setAside }) =>
    setAside === undefined
      ? []
      : [`${id} is set aside, shown with the others and counted in nothing: ${kept(setAside)}`],
  );
  const rows = amendments.map(({ when, row, column, was, is, because }): PageRow => {
    const own = notes === "left-out" && column === "note";
    const told = (text: string): string =>
      own ? "(private)" : (column === "by" ? whoText(text, input) : kept(text)) || "nothing";
    return {
      cells: [when.slice(0, 10), kept(row), columnWords(column), told(was), told(is), kept(because)],
    };
  });
  const none = [
    ...(rows.length === 0 ? ["No entry was changed by a command that keeps a trace."] : []),
    ...(aside.length === 0 ? ["No test is set aside."] : []),
  ].join(" ");
  return {
    code: "changes",
    heading: "Changed or set aside afterwards",
    ...(rows.length === 0 && aside.length <= mostBeside ? { room: "half" } : {}),
    blocks: [
      ...(rows.length === 0 ? [] : [amendedTable(rows)]),
      ...(aside.length === 0 ? [] : [{ kind: "list", items: aside } as const]),
      ...(none === "" ? [] : [{ kind: "text", text: none } as const]),
    ],
  };
};

/** `cylinder 4` for the column `c4`, `set aside` for `set_aside`. */
const columnWords = (column: string): string => {
  const cylinder = /^c([a-z0-9]{1,4})$/i.exec(column)?.[1];
  return cylinder === undefined ? kept(column.replaceAll("_", " ")) : `cylinder ${cylinder}`;
};

const amendedTable = (rows: readonly PageRow[]): TableBlock => ({
  kind: "table",
  caption: "Entries that were changed.",
  columns: ["Changed", "Entry", "What", "Was", "Is", "Because"].map(left),
  rows,
});

/** Other evidence, by its owner's own word. */
export const notesSection = (input: PageInput): PageSection => {
  const { engine, notes } = input.record;
  return {
    code: "notes",
    heading: "Owner's records",
    blocks: tableOrText("None.", {
      caption: "What was noted beside the tests, by the owner's word.",
      columns: [left("Date"), right("Meter"), left("What"), left("By"), left("Note")],
      rows: notes.map((note) => ({
        cells: [
          note.date,
          meterText(note.meter, engine),
          noteWords(note),
          whoText(note.by, input),
          kept(note.note),
        ],
      })),
    }),
  };
};
