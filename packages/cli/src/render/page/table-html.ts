// A table of a page: a caption, heads of columns and rows that say what they head, cells to write in and to tick.

import { clean } from "../clean.ts";
import { type Markup, html, none } from "./html.ts";
import type { PageCell, PageColumn, PageRow, TableBlock } from "./page-model.ts";

/** A table of so many rows is not parted by the end of a page. */
const mostWhole = 12;

export const tableHtml = ({ caption, heard, columns, rows }: TableBlock): Markup =>
  html`<div class="${rows.length <= mostWhole ? "wide whole" : "wide"}" tabindex="0" role="group" aria-label="${caption}">
    <table>
      <caption${heard === undefined ? none : html` class="q"`}>
        ${caption}
      </caption>
      <thead>
        ${headOf(columns)}
      </thead>
      ${bodiesOf(columns, rows)}
    </table>
  </div>`;

/** One row of heads, or two where columns stand under a common one. */
const headOf = (columns: readonly PageColumn[]): Markup => {
  const names = (some: readonly PageColumn[]): readonly Markup[] =>
    some.map(({ name, align }) => html`<th scope="col" ${alignOf(align)}>${name}</th>`);
  if (columns.every(({ group }) => group === undefined))
    return html`<tr>
      ${names(columns)}
    </tr>`;
  const upper = runsOf(columns).map(({ group, columns: own }) =>
    group === undefined
      ? html`${own.map(({ name, align }) => html`<th scope="col" rowspan="2" ${alignOf(align)}>${name}</th>`)}`
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
  return html`<tr>
    ${head}${rest.map((cell, i) => (isLast(i) ? html`<td rowspan="${String(ofAll)}">${cellText(cell)}</td>` : cellHtml(cell, columns[i + 1]?.align ?? "left")))}
  </tr>`;
};

const cellHtml = (cell: string | PageCell, align: "left" | "right"): Markup => {
  if (typeof cell === "string") return html`<td${classOf(cell, align)}>${cell}</td>`;
  if (cell.role === "blank") return html`<td class="blank">${cell.text}</td>`;
  if (cell.role === "tick") return html`<td><span class="box"></span></td>`;
  return cell.role !== undefined
    ? html`<td class="v">${cellText(cell)}</td>`
    : html`<td${alignOf(align)}>${cellText(cell)}</td>`;
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
const classOf = (text: string, align: "left" | "right"): Markup => {
  if (hasLongWord(text)) return html` class="w"`;
  return isShort(text) && align === "left" ? html` class="k"` : alignOf(align);
};

const isShort = (text: string): boolean => text.includes(" ") && clean(text, Infinity).length <= 18;

const alignOf = (align: "left" | "right"): Markup => (align === "right" ? html` class="r"` : none);
