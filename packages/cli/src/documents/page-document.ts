// The JSON of `page`, sealtrend/page@1: what stands on the page, and the values of its charts in the units of every document.

import { type Engine, fromSi } from "@sealtrend/core";
import type {
  DotsBlock,
  Page,
  PageBlock,
  PageCell,
  StripsBlock,
  TableBlock,
} from "../render/page/page-model.ts";

interface Written {
  readonly engine: Engine;
  readonly purpose: string;
  readonly form: "html" | "text";
  readonly bytes: number;
  /** Absent: standard output. */
  readonly file?: string;
}

/** What is undefined is left out when the document is written. */
export const pageDocument = (
  { title, under, sections, foot }: Page,
  { engine, purpose, form, bytes, file }: Written,
) => ({
  schema: "sealtrend/page@1",
  engine: { id: engine.id, name: engine.name },
  for: purpose,
  form,
  file,
  bytes,
  title,
  under,
  sections: sections.map(({ code, heading, blocks }) => ({
    code,
    heading,
    blocks: blocks.map(blockDocument),
  })),
  foot,
});

const blockDocument = (block: PageBlock): object => {
  switch (block.kind) {
    case "table":
      return tableDocument(block);
    case "beside":
      return { kind: "beside", blocks: block.blocks.map(blockDocument) };
    case "strips":
      return stripsDocument(block);
    case "dots":
      return dotsDocument(block);
    default:
      return block;
  }
};

const tableDocument = ({ kind, caption, columns, rows }: TableBlock): object => ({
  kind,
  caption,
  columns,
  rows: rows.map(({ cells }) => cells.map(cellText)),
});

const cellText = (cell: string | PageCell): string => {
  if (typeof cell === "string") return cell;
  return cell.second === undefined ? cell.text : `${cell.text} ${cell.second}`;
};

/** Pressures in kPa, all else as fractions. */
const inDocument =
  ({ quantity }: Pick<StripsBlock, "quantity">) =>
  (value: number | undefined): number | null =>
    value === undefined ? null : quantity === "pressure" ? fromSi(value, "kPa") : value;

const stripsDocument = (chart: StripsBlock): object => {
  const value = inDocument(chart);
  const { kind, caption, quantity, tests, gauges, cylinders, works, limit } = chart;
  return {
    kind,
    caption,
    quantity,
    unit: quantity === "pressure" ? "kPa" : "1",
    tests: tests.map(({ gauge, ...test }) => ({ ...test, gauge: gauges[gauge] })),
    cylinders: cylinders.map(({ label, values, course, nothing, ends, before }) => ({
      label,
      course,
      first: ends?.first,
      last: ends?.last,
      before,
      values: values.map(value),
      heldNothing: nothing.map((place) => tests[place]?.date),
    })),
    works,
    limit: limit === undefined ? undefined : { text: limit.text, value: value(limit.value) },
  };
};

const dotsDocument = (chart: DotsBlock): object => {
  const value = inDocument(chart);
  const { kind, caption, quantity, labels, series, limit } = chart;
  return {
    kind,
    caption,
    quantity,
    unit: quantity === "pressure" ? "kPa" : "1",
    labels,
    series: series.map(({ name, values, doubt }) => ({
      name,
      values: values.map(value),
      U: doubt?.map(value),
    })),
    limit: limit === undefined ? undefined : { text: limit.text, value: value(limit.value) },
  };
};
