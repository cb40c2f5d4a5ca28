// `import`: dry run, writing, and the second run. Sheets and figures are invented; what is expected was counted by hand.

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { deskWith, rowsOf } from "./import-desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

interface Document {
  readonly state: string;
  readonly readings: number;
  readonly tests: number;
  readonly faults: number;
  readonly from?: string;
  readonly to?: string;
  readonly recorded: { readonly readings: number };
  readonly engines: readonly { readonly id: string; readonly cylinders: readonly string[] }[];
  readonly questions: readonly { readonly code: string }[];
  readonly leftOut: readonly { readonly why: string; readonly row?: number; readonly column?: string }[];
}

/** The document of a dry run, checked against its schema. */
const documentOf = async (name: string, ...more: readonly string[]): Promise<Document> => {
  const document = await deskWith(name).json("import", name, ...more);
  expect(misfits(document, schemaOf("import"))).toEqual([]);
  return document as unknown as Document;
};

// cells with a figure, tests, engines, first and last day
test.each([
  // 8 days; 34 machines of two cylinders and 6 of one: 8 x 74, less 4 machines x 2 cylinders x 2 days left blank
  ["forty-machines-across.csv", [], 576, 312, 40, "2004-03-12", "2026-03-21"],
  // 3 machines x 2 days x 4, less one that was not taken
  ["two-header-rows.csv", [], 23, 6, 3, "2024-05-03", "2025-05-10"],
  ["decimal-commas.csv", [], 20, 5, 2, "2021-05-03", "2023-05-21"],
  ["windows-1252.csv", ["--what", "dry"], 9, 3, 2, "2022-05-14", "2023-06-02"],
  ["utf-16le.csv", [], 12, 3, 2, "2023-04-15", "2024-04-20"],
  // three of four in each row; the row of averages stays out
  ["not-taken.csv", [], 9, 3, 1, "2022-06-01", "2024-06-08"],
  ["trailing-separators.csv", [], 4, 2, 1, "2022-06-01", "2024-06-02"],
  ["row-a-reading.csv", [], 10, 2, 1, "2019-05-04", "2021-05-08"],
  [
    "one-engine.csv",
    ["--engine", "tractor", "--what", "dry", "--unit", "psi"],
    12,
    3,
    1,
    "2019-05-04",
    "2023-05-06",
  ],
] as const)("%s is read whole", async (name, more, readings, tests, engines, from, to) => {
  const document = await documentOf(name, ...more);
  expect(document).toMatchObject({ state: "would-add", readings, tests, faults: 0, from, to, questions: [] });
  expect(document.engines).toHaveLength(engines);
});

test("machines of one cylinder among those of two are told apart", async () => {
  const { engines } = await documentOf("forty-machines-across.csv");
  const single = engines.filter(({ cylinders }) => cylinders.length === 1).map(({ id }) => id);
  expect(single).toEqual(["saw-1", "saw-2", "saw-3", "saw-4", "saw-5", "saw-6"]);
});

test("the dry run writes nothing, anywhere", async () => {
  const desk = deskWith("decimal-commas.csv");
  const { exit, out } = await desk.type(["import", "decimal-commas.csv"]);
  expect(exit).toBe(0);
  expect(out).toContain("Would add 20 readings of 2 engines, 2021 to 2023. Nothing is written yet.");
  expect(out).toContain("next   sealtrend import decimal-commas.csv --write");
  expect(desk.names()).toEqual(["decimal-commas.csv"]);
});

test("what is written is what a person would type into tests.csv", async () => {
  const desk = deskWith("row-a-reading.csv");
  expect((await desk.type(["import", "row-a-reading.csv", "--write"])).exit).toBe(0);
  const common = { unit: "psi", gauge: "red", by: "me" };
  expect(rowsOf(desk, "mill")).toEqual([
    {
      test: "2019-05-04a",
      date: "2019-05-04",
      what: "dry",
      take: "1",
      ...common,
      c1: "142",
      c2: "144",
      c3: "143",
      c4: "128",
    },
    {
      test: "2019-05-04a",
      date: "2019-05-04",
      what: "dry",
      take: "2",
      ...common,
      c1: "x",
      c2: "x",
      c3: "x",
      c4: "129",
    },
    {
      test: "2019-05-04a",
      date: "2019-05-04",
      what: "wet",
      take: "1",
      ...common,
      c1: "x",
      c2: "x",
      c3: "x",
      c4: "141",
    },
    {
      test: "2021-05-08a",
      date: "2021-05-08",
      what: "dry",
      take: "1",
      ...common,
      c1: "141",
      c2: "143",
      c3: "142",
      c4: "122",
    },
  ]);
});

test("marks of a reading and words for none arrive as tests.csv has them", async () => {
  const desk = deskWith("not-taken.csv");
  expect((await desk.type(["import", "not-taken.csv", "--write"])).exit).toBe(0);
  const cells = rowsOf(desk, "tractor").map(({ c1, c2, c3, c4, meter }) => [c1, c2, c3, c4, meter].join(" "));
  expect(cells).toEqual(["150 x 149 151 1020", "149 148? x 150 1101", "x 147 146 >300 1185"]);
});

test("decimal commas become points, half hours stay, and the remark is kept", async () => {
  const desk = deskWith("decimal-commas.csv");
  await desk.type(["import", "decimal-commas.csv", "--write"]);
  const [, second] = rowsOf(desk, "heuwender");
  expect(second).toMatchObject({
    c1: "11.1",
    c3: "10.4",
    meter: "455.5",
    note: "nach Ventilspiel",
    unit: "bar",
  });
});

test("end to end: import, show, history, import again, undo", async () => {
  const desk = deskWith("two-header-rows.csv");
  const before = readFileSync(`${desk.folder}/two-header-rows.csv`);
  const written = await desk.type(["import", "two-header-rows.csv", "--write"]);
  expect(written.exit).toBe(0);
  expect(written.out).toContain("saved  23 readings of 3 engines, 2024 to 2025");
  expect(written.out).toContain("sealtrend undo takes it back");
  expect(written.err).toContain(`your logbook is ${desk.folder}/data/sealtrend`);
  const shown = await desk.type(["show", "old-loader"]);
  expect([shown.exit, shown.out]).toEqual([0, expect.stringContaining("Cylinder 3")]);
  expect((await desk.type(["history", "yard-pump"])).exit).toBe(0);
  expect((await desk.type(["proofread"])).out).toContain("no fault");

  const again = await desk.type(["import", "two-header-rows.csv", "--write"]);
  expect([again.exit, again.out]).toEqual([
    0,
    expect.stringContaining("Everything in two-header-rows.csv is recorded already: 23 readings"),
  ]);
  const undone = await desk.type(["undo"]);
  expect([undone.exit, undone.out]).toEqual([0, expect.stringContaining("taken back")]);
  expect(desk.has("data/sealtrend/old-loader")).toBe(false);
  expect(readFileSync(`${desk.folder}/two-header-rows.csv`)).toEqual(before);
});

test("what a sheet leaves open is asked, with what to type; --write is refused until it is settled", async () => {
  const document = await documentOf("open-questions.csv");
  expect(document.state).toBe("open");
  expect(document.questions.map(({ code }) => code).sort()).toEqual(["dates", "unit", "what"]);
  const desk = deskWith("open-questions.csv");
  const asked = await desk.type(["import", "open-questions.csv"]);
  expect([asked.exit, asked.err]).toEqual([2, ""]);
  expect(asked.out).toContain("3 questions are open before anything of open-questions.csv can be added.");
  for (const option of ["--dates", "--unit", "--what"]) expect(asked.out).toContain(option);
  const refused = await desk.type(["import", "open-questions.csv", "--write"]);
  expect([refused.exit, refused.out]).toEqual([2, ""]);
  expect(desk.has("data")).toBe(false);
  const settled = ["--dates", "dmy", "--unit", "psi", "--what", "dry"];
  expect((await desk.type(["import", "open-questions.csv", ...settled, "--write"])).exit).toBe(0);
  expect(rowsOf(desk, "boat").map(({ date }) => date)).toEqual(["2025-12-11", "2026-04-03"]);
});

test("faulty cells are listed with place and mend and sink no neighbour", async () => {
  const document = await documentOf("faulty-rows.csv");
  expect(document).toMatchObject({ readings: 17, tests: 5, faults: 4 });
  const faults = document.leftOut.map(({ row, column }) => `${String(column)}${String(row)}`);
  expect(faults).toEqual(["D3", "A4", "D5", "C6"]);
  const desk = deskWith("faulty-rows.csv");
  const dry = await desk.type(["import", "faulty-rows.csv"]);
  expect(dry.exit).toBe(1);
  expect(dry.out).toContain('faulty-rows.csv:3:24 column D "14O" is not a number');
  const written = await desk.type(["import", "faulty-rows.csv", "--write"]);
  expect(written.exit).toBe(1);
  expect(written.out).toContain(
    "saved  17 readings of tractor, 2022 to 2026; 7 readings left out at 4 places",
  );
  for (const cell of ["14O", "45231", "#REF!", "=B2-1"]) expect(written.err).toContain(cell);
  expect((await desk.type(["proofread"])).exit).toBe(0);
});
