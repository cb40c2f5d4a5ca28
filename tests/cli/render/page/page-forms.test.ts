// One page, three forms: HTML, text and JSON say the same.

import { expect, test } from "vitest";
import { pageFile } from "../../../../packages/cli/src/render/page/page-file.ts";
import type { Page, PageBlock, Strip } from "../../../../packages/cli/src/render/page/page-model.ts";
import { stripsSvg } from "../../../../packages/cli/src/render/page/strips-svg.ts";

const pageOf = (...blocks: readonly PageBlock[]): Page => ({
  title: "A page",
  under: ["of an engine"],
  sections: [{ code: "one", heading: "One", blocks }],
  foot: ["printed by us"],
});

const asHtml = (...blocks: readonly PageBlock[]): string => pageFile(pageOf(...blocks), "html", "unicode");
const asText = (...blocks: readonly PageBlock[]): string => pageFile(pageOf(...blocks), "text", "unicode");

const readings: PageBlock = {
  kind: "table",
  caption: "Readings",
  columns: [
    { name: "Test", align: "left" },
    { name: "1", align: "right", group: "As read" },
    { name: "2", align: "right", group: "As read" },
    { name: "Day", align: "left" },
  ],
  rows: [
    { cells: ["2026-05-03a", "150", "148", "warm"] },
    { cells: ["2026-05-03a", "151", "149", ""], joins: "above" },
  ],
};

test("a head says what it heads; one heading stands for the rows that join it, and so does what was said of the day", () => {
  const html = asHtml(readings);
  expect(html).toContain('scope=colgroup colspan="2"');
  expect(html).toContain('scope=rowgroup rowspan="2"');
  expect(html).toContain('<td rowspan="2">warm');
  expect(html.match(/2026-05-03a/g)).toHaveLength(1);
});

test("the text of a table holds every cell", () => {
  const text = asText(readings);
  for (const cell of ["2026-05-03a", "150", "148", "151", "149", "warm"]) expect(text).toContain(cell);
});

test("no line of the text is wider than 76 columns but for a word that is", () => {
  const long = "a text that goes on ".repeat(20);
  const text = asText(
    { kind: "text", text: long },
    { kind: "list", items: [long] },
    { kind: "ticks", items: [{ text: long }] },
    { kind: "facts", items: [{ name: "bore", value: long }] },
  );
  for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(76);
});

test("a place to write is a line on paper and underscores in a message; a box is ticked by hand in both", () => {
  const ticks: PageBlock = { kind: "ticks", items: [{ text: "bore ___ to ___" }] };
  expect(asHtml(ticks).match(/class=line>/g)).toHaveLength(2);
  expect(asText(ticks)).toContain("[ ] bore _____ to _____");
});

test("the page says of itself that nothing may be loaded or run", () => {
  const html = asHtml();
  expect(html).toContain(`content="default-src 'none'; style-src 'unsafe-inline'; img-src data:"`);
  expect(html).not.toMatch(/<script|<link|<img|@import|https?:/);
  expect(html.indexOf("<meta charset")).toBeLessThan(200);
});

test("where only ASCII can be shown HTML keeps its letters as numbers, text their plain twins", () => {
  const block: PageBlock = { kind: "text", text: "Müller: 20 °C" };
  expect(pageFile(pageOf(block), "html", "ascii")).toContain("M&#252;ller: 20 &#176;C");
  expect(pageFile(pageOf(block), "text", "ascii")).toMatch(/^[\n\x20-\x7e]*$/);
});

const strip = (label: string, values: Strip["values"], more: Partial<Strip> = {}): Strip => ({
  label,
  values,
  nothing: [],
  anew: [],
  course: "steady",
  word: "steady",
  ...more,
});

const years = (cylinders: readonly Strip[]): string =>
  String(
    stripsSvg({
      kind: "strips",
      id: "years",
      caption: "over the years",
      quantity: "against-others",
      unit: "psi",
      tests: [
        { date: "2020-05-03", gauge: 0, counts: "yes" },
        { date: "2021-05-03", gauge: 1, counts: "yes" },
        { date: "2022-05-03", gauge: 0, counts: "no" },
        { date: "2023-05-03", gauge: 0, counts: "yes" },
      ],
      gauges: ["gauge red", "gauge blue"],
      cylinders,
      works: [{ date: "2022-08-01", text: "valve job", cylinders: ["1"] }],
      limit: { value: -0.25, text: "0.75 of the others" },
    }),
  );

const lineOf = (svg: string): string => /class=line d="([^"]*)"/.exec(svg)?.[1] ?? "";

test("the line goes through what counts and is broken where a new history begins", () => {
  const through = lineOf(years([strip("1", [0, 0.01, -0.5, 0.02])]));
  expect([through.match(/M/g)?.length, through.match(/L/g)?.length]).toEqual([1, 2]);
  const broken = lineOf(years([strip("1", [0, 0.01, undefined, 0.02], { anew: [3] })]));
  expect(broken.match(/M/g)).toHaveLength(2);
});

test("gauges are told apart by marks, what does not count is hollow, what held nothing is crossed", () => {
  const svg = years([strip("1", [0, 0.01, -0.02, undefined], { nothing: [3] })]);
  for (const mark of ["years-0", "years-1", "years-0h"]) {
    expect(svg).toContain(`<marker id="${mark}"`);
    expect(svg).toContain(`url(#${mark})`);
  }
  expect(svg).toContain("class=cross");
});

test("a drawing says in words what it shows", () => {
  const svg = years([strip("1", [0, 0.01, undefined, -0.1])]);
  expect(svg).toContain("1: 0.0 % on 2020-05-03, -10.0 % on 2023-05-03, steady");
});
