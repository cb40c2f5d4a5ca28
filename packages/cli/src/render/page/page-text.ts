// A page as plain text of 76 columns, to be sent in a message: the same words, tables without boxes, charts in words.

import { dotsWords } from "./dots-words.ts";
import { type Page, type PageBlock, type PageCell, type TableBlock, blank } from "./page-model.ts";
import { stripWords } from "./strips-words.ts";
import { prose } from "../prose.ts";
import { type Align, grid } from "../table.ts";
import { displayWidth } from "../width.ts";

const width = 76;

/** The whole text, with a line end at its end. */
export const pageText = ({ title, under, sections, foot }: Page): string =>
  [
    ...prose(title, width),
    "=".repeat(Math.min(width, displayWidth(title))),
    ...under.flatMap((text) => prose(text, width)),
    ...sections.flatMap(({ heading, blocks }) => [
      "",
      ...(heading === ""
        ? []
        : [...prose(heading, width), "-".repeat(Math.min(width, displayWidth(heading)))]),
      ...blocks.flatMap((block, i) => [...(i > 0 && isTall(block) ? [""] : []), ...blockLines(block)]),
    ]),
    "",
    ...foot.flatMap((text) => prose(text, width)),
  ]
    .map((line) => `${line.trimEnd()}\n`)
    .join("");

const isTall = ({ kind }: PageBlock): boolean =>
  kind === "table" || kind === "strips" || kind === "dots" || kind === "beside";

const blockLines = (block: PageBlock): readonly string[] => {
  switch (block.kind) {
    case "text":
      return prose(written(block.text), width);
    case "list":
      return block.items.flatMap((text) => prose(written(text), width, "- "));
    case "facts":
      return block.items.flatMap(({ name, value }) => prose(written(`${name}: ${value}`), width));
    case "blanks":
      return block.items.flatMap(({ name, given = "" }) =>
        prose(`${name}: ${given === "" ? line : given}`, width),
      );
    case "ticks":
      return block.items.flatMap(({ text }) => prose(written(text), width, "[ ] "));
    case "table":
      return tableLines(block);
    case "strips":
      return [
        ...prose(block.caption, width),
        ...block.cylinders.flatMap((one) => prose(stripWords(one, block), width, `${one.label}  `)),
        ...(block.limit === undefined ? [] : prose(block.limit.text, width)),
      ];
    case "dots":
      return [...prose(block.caption, width), ...prose(dotsWords(block).replaceAll("; ", "\n"), width)];
    case "sketch":
      return prose(`${block.caption}: by another way, with the front of the engine marked.`, width);
    case "beside":
      return block.blocks.flatMap(blockLines);
  }
};

const line = "_".repeat(20);
const written = (text: string): string => text.replaceAll(blank, "_____");

const tableLines = (table: TableBlock): readonly string[] => {
  const { caption, heard, columns, rows } = withoutForms(table);
  const texts = rows.map(({ cells }) => cells.map(cellWords));
  const groups = [...new Set(columns.flatMap(({ group }) => group ?? []))];
  const gridOf = (places: readonly number[]): readonly string[] => {
    const pick = <T>(list: readonly T[]): readonly T[] => list.filter((_, i) => places.includes(i));
    const head = pick(columns).map(({ name }) => name);
    const aligns = pick(columns).map(({ align }): Align => align);
    return grid(texts.map(pick), aligns, { head, width: width - 2 });
  };
  const placesOf = (wanted: (group: string | undefined, place: number) => boolean): readonly number[] =>
    columns.flatMap(({ group }, i) => (wanted(group, i) ? [i] : []));
  const wideOf = (place: number): number =>
    2 + Math.max(...[columns[place]?.name ?? "", ...texts.map((row) => row[place] ?? "")].map(displayWidth));
  /** Side by side as far as there is room, else in two parts, so that an eye can still run down a column. */
  const halves = (lead: readonly number[], own: readonly number[]): readonly (readonly number[])[] => {
    const wide = [...lead, ...own].reduce((so, place) => so + wideOf(place), -2);
    const half = Math.ceil(own.length / 2);
    return wide <= width - 2
      ? [[...lead, ...own]]
      : [
          [...lead, ...own.slice(0, half)],
          [...lead, ...own.slice(half)],
        ];
  };
  const first = columns.findIndex(({ group }) => group !== undefined);
  const lead = placesOf((group, i) => group === undefined && i < first);
  const after = placesOf((group, i) => group === undefined && i > first);
  // under a common head each group gets lines of its own, so that the numbers stand in columns
  const tables =
    first === -1
      ? gridOf(placesOf(() => true))
      : [
          ...groups.flatMap((name) => [
            `${name}:`,
            ...halves(
              lead,
              placesOf((group) => group === name),
            ).flatMap((places) => [...gridOf(places), ""]),
          ]),
          ...texts.flatMap((row) => {
            const said = row.filter((text, i) => after.includes(i) && text !== "");
            return said.length === 0 ? [] : prose(said.join("; "), width, `${row[0] ?? ""}  `);
          }),
        ];
  return [...(heard === undefined ? prose(caption, width) : []), ...tables];
};

/** Rows and columns that are there to be filled in by hand, beside others that say something, are of no use in a message. */
const withoutForms = (table: TableBlock): TableBlock => {
  const rows = table.rows.filter(({ use }) => use === undefined);
  const isForm = (place: number): boolean => rows.every(({ cells }) => isToWrite(cells[place] ?? ""));
  const said = table.columns.flatMap((_, i) => (isForm(i) ? [] : [i]));
  if (rows.length === 0 || said.length < 2 || rows.some(({ cells }) => cells.some(isTick))) return table;
  return {
    ...table,
    columns: said.flatMap((i) => table.columns[i] ?? []),
    rows: rows.map((row) => ({ ...row, cells: said.map((i) => row.cells[i] ?? "") })),
  };
};

const isToWrite = (cell: string | PageCell): boolean =>
  typeof cell !== "string" && cell.role === "blank" && cell.text === "";
const isTick = (cell: string | PageCell): boolean => typeof cell !== "string" && cell.role === "tick";

const cellWords = (cell: string | PageCell): string => {
  if (typeof cell === "string") return cell;
  if (cell.role === "blank") return cell.text === "" ? "_____" : `${cell.text} _____`;
  if (cell.role === "tick") return "[ ]";
  return cell.second === undefined ? cell.text : `${cell.text} ${cell.second}`;
};
