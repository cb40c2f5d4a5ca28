// One engine of a yard as a row of CSV: the numbers of its JSON, by the same names as far as they go.

import { isFormula, rowText } from "@sealtrend/core/parts";
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
  "held_below_others",
  "low",
  "leaking",
  "leaking_most",
  "unread",
  "course",
  "course_of",
  "slope_per_year",
  "decision",
  "use",
  "urgency",
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
    return [name, typeof value === "string" ? inert(inOneLine(value)) : numberText(value)] as const;
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
    held_below_others: worst?.heldBelowOthers,
    low: document.low?.map(({ label }) => label).join(" "),
    leaking: document.leaking?.cylinders,
    leaking_most: document.leaking?.most,
    unread: document.unread?.join(" "),
    course: document.course,
    course_of: document.courseOf,
    slope_per_year: document.slopePerYear,
    decision: decision?.code,
    use: decision?.use,
    urgency: decision?.urgency,
    due: document.due,
    due_since: document.dueSince,
    due_meter: document.dueMeter,
    licensed: document.licensed,
    by_luck: document.byLuck,
  };
};

/** A hundredth of a percent: no reading carries more; JSON has every digit. */
const places = 4;
const numberText = (value: number | boolean | undefined): string =>
  typeof value === "number" ? String(Number(value.toFixed(places))) : String(value ?? "");

/** As the table writes a line end in a name. */
const inOneLine = (text: string): string =>
  text.replace(/[\r\n]/g, (end) => `\\u{${end.charCodeAt(0).toString(16)}}`);

/** A formula stays a text by an apostrophe before it. */
const inert = (text: string): string => (isFormula(text.trim()) ? `'${text}` : text);
