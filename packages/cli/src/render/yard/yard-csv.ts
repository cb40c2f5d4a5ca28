// One engine of a yard as a row of CSV: the numbers of its JSON, by the same names as far as they go.

import { rowText } from "@sealtrend/core/parts";
import type { yardDocument } from "../../documents/yard-document.ts";

const columns = [
  "engine",
  "tests",
  "last",
  "test",
  "trust",
  "meter",
  "worst",
  "standing",
  "below_median",
  "below_others",
  "lost",
  "course",
  "course_of",
  "slope_per_year",
  "decision",
  "why",
  "due",
  "due_since",
  "due_meter",
  "licensed",
  "by_luck",
  "problems",
] as const;

const dialect = { delimiter: ",", decimalMark: ".", columns } as const;

export const yardCsvHeader = `${columns.join(",")}\n`;

export const yardCsvRow = (document: ReturnType<typeof yardDocument>): string => {
  const values = flat(document);
  const texts = columns.map((name) => {
    const value = values[name];
    return [name, typeof value === "string" ? inert(value) : String(value ?? "")] as const;
  });
  return `${rowText(Object.fromEntries(texts), dialect)}\n`;
};

type Flat = Readonly<Partial<Record<(typeof columns)[number], string | number | boolean | undefined>>>;

const flat = (document: ReturnType<typeof yardDocument>): Flat => {
  const { problems, engine, why } = document;
  const { count } = document.more ?? { count: 0 };
  const base = { engine, why, problems: problems === undefined ? undefined : problems.length + count };
  if (!("tests" in document)) return base;
  const { worst, decision, test } = document;
  return {
    ...base,
    tests: document.tests,
    last: document.last,
    test,
    trust: document.trust,
    meter: document.meter,
    worst: worst?.label,
    standing: worst?.standing,
    below_median: worst?.belowMedian,
    below_others: worst?.belowOthers,
    lost: worst?.lost,
    course: document.course,
    course_of: document.courseOf,
    slope_per_year: document.slopePerYear,
    decision: decision?.code,
    due: document.due,
    due_since: document.dueSince,
    due_meter: document.dueMeter,
    licensed: document.licensed,
    by_luck: document.byLuck,
  };
};

/** A text that a spreadsheet would take for a formula stays a text by an apostrophe before it. */
const inert = (text: string): string =>
  /^\s*[=+@\-\uFF1D\uFF0B\uFF0D\uFF20]/.test(text) ? `'${text}` : text;
