// The newest test: its answer, its numbers under the cylinders, each as read beside corrected.

import type { CylinderAssessment, TestAssessment } from "@sealtrend/core";
import type { PageInput } from "./page-input.ts";
import type { DotSeries, DotsBlock, PageBlock, PageSection, TableBlock } from "./page-model.ts";
import { left, right } from "./page-tables.ts";
import { ruleLine } from "../rule-words.ts";
import { showHeadline } from "../show/show-headline.ts";
import { showRows } from "../show/show-rows.ts";
import { narrow } from "../table.ts";
import { sentence } from "../words.ts";

/** So many columns of readings fit a page, and so many beside a chart. */
const mostColumns = 14;
const mostBeside = 6;

export const newestSection = (input: PageInput, heading = "The newest test"): PageSection => {
  const { newest } = input;
  if (newest === undefined)
    return {
      code: "newest",
      heading,
      blocks: [{ kind: "text", role: "lead", text: "No test is on record." }],
    };
  const chart = dotsOf(newest, input);
  const tables = rowTables(newest, input);
  const all = [...tables, ...(chart === undefined ? [] : [chart])];
  const isSmall = newest.record.engine.cylinders.length <= mostBeside;
  const numbers: readonly PageBlock[] = isSmall ? [{ kind: "beside", blocks: all }] : all;
  return {
    code: "newest",
    heading: `${heading}, ${newest.test.id}`,
    blocks: [
      { kind: "text", role: "lead", text: `${sheetText(newest, input)}${showHeadline(newest)}` },
      ...numbers,
      ...verdictTexts(newest, input),
    ],
  };
};

/** Whose the numbers are, where they are not the owner's own. */
const sheetText = ({ trust }: TestAssessment, { reader }: PageInput): string => {
  if (trust.reasons.every(({ code }) => code !== "seller")) return "";
  return `By ${reader === "owner" ? "the seller's" : "an earlier seller's"} sheet, which counts for nothing here: `;
};

/** The rows of the screen `show`, so that page and screen say the same. */
const rowTables = (newest: TestAssessment, { unit }: PageInput): readonly TableBlock[] => {
  const labels = newest.record.engine.cylinders;
  const rows = showRows(newest, { unit, width: narrow - 1 });
  const blocks = Math.max(1, Math.ceil(labels.length / mostColumns));
  const each = Math.ceil(labels.length / blocks);
  return Array.from({ length: blocks }, (_, block) => {
    const from = block * each;
    const own = labels.slice(from, from + each);
    return {
      kind: "table",
      ...(blocks === 1 ? { heard: "only" } : {}),
      caption:
        blocks === 1
          ? "As read and corrected, by cylinder."
          : `Cylinders ${own[0] ?? ""} to ${own.at(-1) ?? ""}.`,
      columns: [left("Cylinder"), left("Unit"), ...own.map(right)],
      rows: rows.map(({ name, unit: of = "", cells }) => ({
        cells: [name, of, ...cells.slice(from, from + each).map((cell) => cell ?? "-")],
      })),
    };
  });
};

const dotsOf = (newest: TestAssessment, { unit }: PageInput): DotsBlock | undefined => {
  const { cylinders, record, trust } = newest;
  const base = { kind: "dots", id: "newest", unit, labels: cylinders.map(({ label }) => label) } as const;
  if (cylinders.some(({ pressures }) => pressures.dry !== undefined)) {
    const { minimum } = record.engine.compressionLimits;
    return {
      ...base,
      caption: "Dry compression, each cylinder as read and corrected.",
      quantity: "pressure",
      series: drySeries(newest),
      ...(minimum === undefined ? {} : { limit: { value: minimum, text: "maker's minimum" } }),
    };
  }
  if (cylinders.every(({ leakDown }) => leakDown === undefined) || trust.voids === "all") return undefined;
  const { lost } = record.engine.leakDownLimits;
  return {
    ...base,
    caption: "Lost in the leak-down, by cylinder; less is better.",
    quantity: "lost",
    series: [{ name: "lost", mark: "filled", values: cylinders.map(({ leakDown }) => leakDown?.lost) }],
    ...(lost === undefined ? {} : { limit: { value: lost, text: "maker's limit" } }),
  };
};

const drySeries = ({ cylinders, speed, correction }: TestAssessment): readonly DotSeries[] => {
  const full =
    cylinders.every(({ pressures: { dry } }) => dry === undefined || dry.full !== undefined) &&
    speed?.to !== undefined;
  const valueOf = ({ pressures: { dry } }: CylinderAssessment) =>
    full && dry?.full !== undefined
      ? { value: dry.full.corrected, u: dry.full.uncertainty }
      : { value: dry?.corrected, u: dry?.uncertainty };
  const values = cylinders.map(valueOf);
  const at = full
    ? `at sea level and ${speed.to.toFixed(0)} rpm`
    : correction.factor === 1
      ? "as it counts"
      : "at sea level";
  return [
    { name: "as read", mark: "hollow", values: cylinders.map(({ pressures }) => pressures.dry?.read) },
    {
      name: at,
      mark: "filled",
      values: values.map(({ value }) => value),
      doubt: values.map(({ u }) => (u === undefined ? undefined : 2 * u)),
    },
  ];
};

const verdictTexts = (newest: TestAssessment, { unit, reader }: PageInput): readonly PageBlock[] => {
  const { trust, rules, missing } = newest;
  const doubts = trust.reasons.map(({ code, text }) =>
    code === "seller" && reader === "others" ? "it is an earlier seller's sheet" : text,
  );
  const word = { trusted: "Trusted", doubtful: "Doubtful", void: "Void" }[trust.code];
  const said = `${word}${doubts.length === 0 ? "" : `: ${doubts.join("; ")}`}.`;
  const gaps = missing.length === 0 ? "" : ` Not recorded: ${missing.join("; ")}.`;
  const limits = trust.voids === "all" ? "" : rules.map((rule) => ruleLine(rule, unit)).join(" · ");
  const verdict = limits === "" ? "" : `${sentence(limits)}. `;
  const tails = showRows(newest, { unit, width: narrow - 1 }).flatMap(({ name, tail = "" }) =>
    tail === "" ? [] : [`${name}: ${tail.replace(/^\((.*)\)$/, "$1")}`],
  );
  return [
    { kind: "text", text: verdict + said + gaps },
    ...(tails.length === 0
      ? []
      : [{ kind: "text", role: "small", text: `${sentence(tails.join("; "))}.` } as const]),
  ];
};
