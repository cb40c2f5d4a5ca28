// Tables without boxes: readings under the labels of their cylinders, lists, and prose that keeps to the width.
// Every text passes `clean` here, so a table cannot carry an escape; emphasise the finished lines.

import { clean } from "./clean.ts";
import { commandsWhole } from "./commands-whole.ts";
import { cut, displayWidth, padEnd, padStart } from "./width.ts";

const longest = 2000;
const noBreak = "\u00a0";

/** Lines of at most `width` columns, broken at spaces; a newline starts a new line. A no-break space (U+00A0) holds
 *  two words together and prints as a space. A word wider than a line stays whole: a path broken in two is no path. So does a
 *  command that fits a line.
 *  @param lead - stands before the first line; the following lines are indented by its width */
export const wrapText = (text: string, width: number, lead = ""): readonly string[] => {
  const start = clean(lead, longest);
  const indent = " ".repeat(displayWidth(start));
  const lines: string[] = [];
  for (const paragraph of commandsWhole(text, width - indent.length).split("\n")) {
    let line = lines.length === 0 ? start : indent;
    let empty = true;
    for (const word of paragraph.split(/[ \t\r]+/).filter((part) => part !== "")) {
      const next = clean(word, longest).replaceAll(noBreak, " ");
      if (!empty && displayWidth(line) + 1 + displayWidth(next) > width) {
        lines.push(line);
        line = indent;
        empty = true;
      }
      line += empty ? next : ` ${next}`;
      empty = false;
    }
    lines.push(line.trimEnd());
  }
  return lines;
};

export interface ColumnsRow {
  readonly name: string;
  /** Said once a row, never in a cell. */
  readonly unit?: string | undefined;
  /** One a label, in their order; absent = not taken, shown as `-`. A `?` at the end hangs outside the column. */
  readonly cells: readonly (string | undefined)[];
  /** A remark after the last cell. */
  readonly tail?: string | undefined;
  /** Below 60 columns its cells stand right after the labels, without the name: `3 lags: read 125 psi`. */
  readonly sentence?: "leads" | undefined;
}

export interface ColumnsOptions {
  /** Stands left of the labels, such as `pin`. */
  readonly head?: string | undefined;
  readonly labels: readonly string[];
  readonly rows: readonly ColumnsRow[];
  /** Columns of the output; below 60 each label gets a sentence of its own. */
  readonly width: number;
}

// Least and most widths; the least are the same on every screen, so that an eye finds cylinder 3 in the same place.
const names = { least: 14, most: 28 };
const units = { least: 3, most: 8 };
const cells = { least: 4, most: 16 };
/** Below this width there is no table: each label gets a sentence. */
export const narrow = 60;

interface Row {
  readonly name: string;
  readonly unit: string;
  readonly cells: readonly (string | undefined)[];
  readonly tail: string;
  readonly leads: boolean;
}

const cleanRow = ({ name, unit = "", cells: texts, tail = "", sentence }: ColumnsRow): Row => ({
  name: clean(name),
  unit: clean(unit),
  cells: texts.map((text) => (text === undefined ? undefined : clean(text))),
  tail: clean(tail, longest),
  leads: sentence === "leads",
});

const widest = (texts: readonly string[]): number =>
  texts.reduce((columns, text) => Math.max(columns, displayWidth(text)), 0);
const within = (texts: readonly string[], { least, most }: typeof names): number =>
  Math.min(most, Math.max(least, widest(texts)));

const body = (cell: string): string => cell.replace(/\?$/, "");

const inBlocks = (head: Row, rows: readonly Row[], width: number): readonly string[] => {
  const all = [head, ...rows];
  const nameWidth = within(
    all.map(({ name }) => name),
    names,
  );
  const unitWidth = within(
    all.map(({ unit }) => unit),
    units,
  );
  const cellWidth = within(
    all.flatMap((row) => row.cells.map((cell = "-") => body(cell))),
    cells,
  );
  const count = head.cells.length;
  const fit = Math.max(1, Math.floor((width - nameWidth - 1 - unitWidth) / (cellWidth + 2)));
  const each = Math.ceil(count / Math.ceil(count / fit));

  const shown = (cell = "-"): string =>
    ` ${padStart(cut(body(cell), cellWidth), cellWidth)}${cell.endsWith("?") ? "?" : " "}`;
  const line = ({ name, unit, cells: texts, tail }: Row, from: number): readonly string[] => {
    const lead = `${padEnd(cut(name, nameWidth), nameWidth)} ${padEnd(cut(unit, unitWidth), unitWidth)}`;
    const readings = (
      lead +
      texts
        .slice(from, from + each)
        .map(shown)
        .join("")
    ).trimEnd();
    if (tail === "" || from + each < count) return [readings];
    if (displayWidth(readings) + 3 + displayWidth(tail) <= width) return [`${readings}   ${tail}`];
    return [readings, ...wrapText(tail, width, "  ")];
  };
  const starts = Array.from({ length: Math.ceil(count / each) }, (_, i) => i * each);
  return starts.flatMap((from) => [...(from === 0 ? [] : [""]), ...all.flatMap((row) => line(row, from))]);
};

const inSentences = (head: Row, rows: readonly Row[], width: number): readonly string[] => {
  const labels = head.cells.map((label = "") => label);
  const labelWidth = widest(labels);
  const said = ({ name, unit, cells: texts }: Row, at: number): string[] => {
    const cell = texts[at] ?? "";
    return cell === "" ? [] : [`${name} ${cell}${unit === "" ? "" : noBreak + unit}`];
  };
  const sentences = labels.flatMap((label, at) => {
    const readings = rows.flatMap((row) => (row.leads ? [] : said(row, at))).join(", ");
    const verdict = rows.flatMap((row) => (row.leads ? (row.cells[at] ?? []) : [])).join(" ");
    const lead = `${padStart(label, labelWidth)}${verdict === "" ? "" : ` ${verdict}`}: `;
    return wrapText(readings === "" ? "not taken" : readings, width, lead);
  });
  const tails = rows.flatMap(({ name, tail }) => (tail === "" ? [] : wrapText(`${name}: ${tail}`, width)));
  const title = head.name === "" ? [] : [head.name];
  return [...title, ...sentences, ...tails];
};

/** Readings under the labels of their cylinders, right-aligned. Labels that do not fit beside one another go on in
 *  further blocks under labels of their own; below 60 columns each label gets a sentence instead.
 *  @throws RangeError when a row has not one cell a label */
export const columns = (options: ColumnsOptions): readonly string[] => {
  const { head = "", labels, rows, width } = options;
  const count = labels.length;
  const odd = rows.find((row) => row.cells.length !== count);
  if (odd !== undefined)
    throw new RangeError(
      `columns: "${odd.name}" has ${String(odd.cells.length)} cells for ${String(count)} labels`,
    );
  if (count === 0) return [];
  const top = cleanRow({ name: head, cells: labels });
  return (width < narrow ? inSentences : inBlocks)(top, rows.map(cleanRow), width);
};

export type Align = "left" | "right";

export interface GridOptions {
  /** Names of the columns. */
  readonly head?: readonly string[] | undefined;
  /** Columns of the output; without it nothing is wrapped. */
  readonly width?: number | undefined;
}

const gap = "  ";
const leastLast = 16;

/** A list in columns, two spaces apart. Where it is wider than `width`, its last column is wrapped if that is prose
 *  (left-aligned) and 16 columns are left for it; otherwise each row becomes a sentence of `head value` pairs.
 *  @param align - one a column; a column beyond the list is left-aligned */
export const grid = (
  rows: readonly (readonly string[])[],
  align: readonly Align[],
  { head, width = Infinity }: GridOptions = {},
): readonly string[] => {
  const titles = head?.map((text) => clean(text));
  const body = rows.map((row) => row.map((text) => clean(text, longest)));
  const all = titles === undefined ? body : [titles, ...body];
  const last = all.reduce((most, row) => Math.max(most, row.length), 0) - 1;
  const widths = Array.from({ length: last + 1 }, (_, i) => widest(all.map((row) => row[i] ?? "")));
  const before = widths.slice(0, last).reduce((sum, column) => sum + column + gap.length, 0);
  const fits = before + (widths[last] ?? 0) <= width;
  const wraps = (align[last] ?? "left") === "left" && width - before >= leastLast;

  if (!fits && !wraps)
    return body.flatMap((row) => {
      const pairs = row.flatMap((text, i) => (text === "" ? [] : [`${titles?.[i] ?? ""} ${text}`.trim()]));
      return wrapText(pairs.join(", "), width).map((line, i) => (i === 0 ? line : gap + line));
    });
  return all.flatMap((row) => {
    const cell = (text: string, i: number): string =>
      (align[i] ?? "left") === "right" ? padStart(text, widths[i] ?? 0) : padEnd(text, widths[i] ?? 0);
    const lead = Array.from({ length: last }, (_, i) => cell(row[i] ?? "", i) + gap).join("");
    const end = row[last] ?? "";
    if (before + displayWidth(end) > width) return wrapText(end, width, lead);
    return [(lead + cell(end, last)).trimEnd()];
  });
};
