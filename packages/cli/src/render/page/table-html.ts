// A table of a page: a caption, heads of columns and rows that say what they head, cells to write in and to tick.

import { clean } from "../clean.ts";
import { type Markup, html, none } from "./html.ts";
import type { PageCell, PageColumn, PageRow, TableBlock } from "./page-model.ts";

/** A table of so many rows is not parted by the end of a page. */
const mostWhole = 5;

export const tableHtml = ({ caption, heard, columns, rows }: TableBlock): Markup =>
  html`<div class="${rows.length <= mostWhole ? "wide whole" : "wide"}" tabindex="0" role="group" aria-label="${heard === undefined ? shortName(caption) : caption}">
    <table${isOfNumbers(columns) ? html` class="n"` : none}>
      <caption${heard === undefined ? none : html` class="q"`}>
        ${caption}
      </caption>
      <thead>
        ${headOf(columns)}
      </thead>
      ${bodiesOf(columns, rows)}
    </table>
  </div>`;

/** What a table is called by ear, before its caption is read. */
const shortName = (caption: string): string => caption.split(/[,;:.]/)[0] ?? caption;

/** Most of its columns stand to the right: then their cells need not say so one by one. */
const isOfNumbers = (columns: readonly PageColumn[]): boolean =>
  columns.filter(({ align }) => align === "right").length * 2 > columns.length;

/** One row of heads, or two where columns stand under a common one. */
const headOf = (columns: readonly PageColumn[]): Markup => {
  const usual = usualIn(columns);
  const names = (some: readonly PageColumn[]): readonly Markup[] =>
    some.map(({ name, align }) => html`<th scope="col" ${sideOf({ align, usual })}>${name}</th>`);
  if (columns.every(({ group }) => group === undefined))
    return html`<tr>
      ${names(columns)}
    </tr>`;
  const upper = runsOf(columns).map(({ group, columns: own }) =>
    group === undefined
      ? html`${own.map(({ name, align }) => html`<th scope="col" rowspan="2" ${sideOf({ align, usual })}>${name}</th>`)}`
      : html`<th scope="colgroup" colspan="${String(own.length)}">${group}</th>`,
  );
  return html`<tr>
      ${upper}
    </tr>
    <tr>
      ${names(columns.filter(({ group }) => group !== undefined))}
    </tr>`;
};

interface Run {
  readonly group: string | undefined;
  readonly columns: PageColumn[];
}

const runsOf = (columns: readonly PageColumn[]): readonly Run[] => {
  const runs: Run[] = [];
  for (const column of columns) {
    const last = runs.at(-1);
    if (last !== undefined && last.group === column.group) last.columns.push(column);
    else runs.push({ group: column.group, columns: [column] });
  }
  return runs;
};

/** Rows under one heading are a body of their own, which no page parts. */
const bodiesOf = (columns: readonly PageColumn[], rows: readonly PageRow[]): readonly Markup[] => {
  if (rows.every(({ joins }) => joins === undefined))
    return [
      html`<tbody>
        ${rows.map((row) => rowHtml(columns, row, { heads: 1, ofAll: 1 }))}
      </tbody>`,
    ];
  const groups: PageRow[][] = [];
  for (const row of rows) {
    const last = groups.at(-1);
    if (row.joins === undefined || last === undefined) groups.push([row]);
    else last.push(row);
  }
  return groups.map((group) => {
    // what the first row says at its end is of all of them
    const isOfAll = group.slice(1).every(({ cells }) => cells.at(-1) === "");
    return html`<tbody class="one">
      ${group.map((row, i) => rowHtml(columns, isOfAll && i > 0 ? { cells: row.cells.slice(0, -1) } : row, { heads: i === 0 ? group.length : 0, ofAll: isOfAll && i === 0 ? group.length : 1 }))}
    </tbody>`;
  });
};

interface Spans {
  /** Rows that its heading stands for; 0: it stands above. */
  readonly heads: number;
  /** Rows that its last cell stands for. */
  readonly ofAll: number;
}

const rowHtml = (columns: readonly PageColumn[], { cells }: PageRow, { heads, ofAll }: Spans): Markup => {
  const [first, ...rest] = cells;
  const span = heads > 1 ? html` scope="rowgroup" rowspan="${String(heads)}"` : html` scope="row"`;
  const wide = typeof first === "string" && hasLongWord(first) ? html` class="w"` : none;
  const head = heads === 0 ? none : html`<th${span}${wide}>${cellText(first ?? "")}</th>`;
  const isLast = (i: number): boolean => ofAll > 1 && i === rest.length - 1;
  const usual = usualIn(columns);
  return html`<tr>
    ${head}${rest.map((cell, i) => cellHtml(cell, { align: columns[i + 1]?.align ?? "left", usual }, isLast(i) ? html` rowspan="${String(ofAll)}"` : none))}
  </tr>`;
};

const blankClass = html` class="blank"`;
const verdictClass = html` class="v"`;

/** @param span - that it stands for several rows */
const cellHtml = (cell: string | PageCell, side: Side, span: Markup): Markup => {
  if (typeof cell === "string") return html`<td${classOf(cell, side)}${span}>${cell}</td>`;
  if (cell.role === "blank") return html`<td${blankClass}${span}>${cell.text}</td>`;
  if (cell.role === "tick") return html`<td${span}><span class="box"></span></td>`;
  return cell.role !== undefined
    ? html`<td${verdictClass}${span}>${cellText(cell)}</td>`
    : html`<td${sideOf(side)}${span}>${cellText(cell)}</td>`;
};

const cellText = (cell: string | PageCell): Markup => {
  if (typeof cell === "string") return html`${cell}`;
  const text = cell.role === "strong" ? html`<strong>${cell.text}</strong>` : html`${cell.text}`;
  return cell.second === undefined ? text : html`${text}<span class="sub">${cell.second}</span>`;
};

const longWord = 16;

const hasLongWord = (text: string): boolean =>
  clean(text, Infinity)
    .split(/\s+/)
    .some((word) => word.length > longWord);

/** Numbers and a few short words stay on one line; a word that is wider than a column may be broken. */
const classOf = (text: string, side: Side): Markup => {
  if (hasLongWord(text)) return html` class="w"`;
  return isShort(text) && side.align === "left" ? html` class="k"` : sideOf(side);
};

const isShort = (text: string): boolean => text.includes(" ") && clean(text, Infinity).length <= 18;

/** The side of a cell, and that of most cells of its table. */
interface Side {
  readonly align: "left" | "right";
  readonly usual: "left" | "right";
}

/** What a cell says of its side, where it is not that of its table. */
const sideOf = ({ align, usual }: Side): Markup =>
  align === usual ? none : align === "right" ? html` class="r"` : html` class="l"`;

const usualIn = (columns: readonly PageColumn[]): Side["usual"] => (isOfNumbers(columns) ? "right" : "left");
