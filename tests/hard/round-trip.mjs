// Rows by lot, written and read back: in four dialects, with three line ends, with and without a mark in front. What is read is
// what was written, and written a second time it is the same to the letter.
//   node tests/hard/round-trip.mjs [--count 5000] [--seed 1] [--case N]

import { isDeepStrictEqual } from "node:util";
import { builtInNames, formulaTexts, markupTexts, steeringTexts } from "./shared/hostile-texts.mjs";
import { begin, options } from "./shared/part.mjs";
import { loadProgram } from "./shared/program.mjs";
import { randomOf } from "../random.mjs";

const { count, seed, case: only } = options({ count: "5000", case: "" });
const program = await loadProgram();
const part = begin();
const { engine } = program.readEngine(
  '{ "cylinders": ["1", "2", "3"], "ignition": "spark" }',
  "engine.json",
  "pump",
);

const dialects = [
  { delimiter: ",", decimalMark: "." },
  { delimiter: ";", decimalMark: "," },
  { delimiter: ";", decimalMark: "." },
  { delimiter: "\t", decimalMark: "," },
];
const texts = [
  ...Object.values(steeringTexts).filter((text) => text.length < 100),
  ...Object.values(markupTexts),
  ...formulaTexts,
  ...builtInNames,
  "two\nlines",
  "two\r\nlines",
  "a\rb",
  'said "fine"',
  '"',
  "a,b;c\td",
  " blanks ",
  "1,5",
  "1.234",
  "2.5",
  "\ud800",
  "漢字 é e\u0301 🔧",
];

/** A number as a person types it: up to five digits, up to three behind the mark, none of it meant to be computed. */
const number = (random, most) => {
  const whole = String(random.below(most));
  const decimals = random.pick([0, 0, 1, 2, 3, 4]);
  const behind = String(random.below(10 ** decimals)).padStart(decimals, "0");
  // A fourth decimal of 0 tells of no digit where a comma is the mark: the program puts one there itself.
  return decimals === 0 ? whole : `${whole}.${behind.replace(/^(...)0$/, "$19")}`;
};
const text = (random) => (random.chance(0.4) ? "" : random.pick(texts));
const day = (random) =>
  `${String(random.between(1950, 2090))}-${String(random.between(1, 12)).padStart(2, "0")}-${String(random.between(1, 28)).padStart(2, "0")}`;
const reading = (random) =>
  random.pick([
    () => number(random, 300),
    () => `${number(random, 300)}?`,
    () => `>${number(random, 300)}`,
    () => "x",
    () => "",
  ])();

/** Of each file: its columns, a row by lot, and how it is read. */
const files = {
  "tests.csv": {
    columns: program.testColumns(engine.cylinders),
    row: (random, n) => {
      const date = day(random);
      const cells = { c1: reading(random), c2: reading(random), c3: reading(random) };
      const conditions = random.chance(0.5) ? { altitude_m: number(random, 3_000), air_temp_C: number(random, 40) } : {};
      return { test: `t${String(n)}`, date, meter: number(random, 90_000), what: "dry", unit: "psi", ...cells, ...conditions, by: text(random), note: text(random) };
    },
    read: (source) => program.readTests(source, "tests.csv", engine, []),
  },
  "services.csv": {
    columns: program.serviceColumns,
    row: (random) => ({ date: day(random), meter: number(random, 90_000), what: random.pick(["plugs", "oil change", "other"]), by: text(random), note: text(random) }),
    read: (source) => program.readServices(source, "services.csv", engine),
  },
  "notes.csv": {
    columns: program.noteColumns,
    row: (random) => ({ date: day(random), what: "oil use", value: number(random, 9), unit: "L/100h", by: text(random), note: text(random) }),
    read: (source) => program.readNotes(source, "notes.csv", engine),
  },
  "measurements.csv": {
    columns: program.measurementColumns,
    row: (random) => ({ teardown: "1", date: day(random), part: "bore", label: "2", at: "top/thrust", quantity: "diameter", value: number(random, 90), unit: "mm", by: text(random), note: text(random) }),
    read: (source) => program.readMeasurements(source, "measurements.csv", engine),
  },
}; // prettier-ignore

const ends = ["\n", "\r\n", "\r"];
const starts = ["", "\uFEFF"];

const write = (rows, dialect, end, start) =>
  start +
  [dialect.columns.join(dialect.delimiter), ...rows.map((row) => program.rowText(row, dialect))].join(end) +
  end;

/** What a table holds, cell by cell, as text with a decimal point. */
const rowsOf = (source, file, { decimalMark }) => {
  const { table } = program.parseTable(source, file);
  return table.rows.map(({ cells }) =>
    Object.fromEntries(
      table.header.map(({ name }, i) => {
        const cell = cells[i]?.text ?? "";
        return [name, decimalMark === "," && !isWords(name) ? program.plainNumber(cell) : cell];
      }),
    ),
  );
};
const isWords = (name) => /^(test|date|what|gauge|unit|by|note|part|label|at|quantity|cylinders)$/.test(name);

/** Text is kept on one line, without blanks at its ends. */
const kept = (written) =>
  written
    .replace(/\s*[\r\n]+\s*/g, " ")
    .trim()
    .replace(/\p{Surrogate}/gu, "\uFFFD");

const faultOfTrip = (random) => {
  const [name, file] = random.pick(Object.entries(files));
  const rows = Array.from({ length: random.between(1, 4) }, (_, n) => file.row(random, n));
  const dialect = { ...random.pick(dialects), columns: file.columns };
  const source = write(rows, dialect, random.pick(ends), random.pick(starts));
  const plain = write(rows, { ...dialects[0], columns: file.columns }, "\n", "");
  const bare = (read) => JSON.stringify(read, (key, value) => (key === "line" || key === "text" || key === "excerpt" || key === "column" ? undefined : key === "value" && typeof value === "string" ? value.replace(",", ".").replace(/(\.\d{3})0$/, "$1") : value));
  const { problems, ...read } = file.read(source);
  const expected = file.read(plain);
  if (bare(read) !== bare({ ...expected, problems: undefined })) return `${name}: ${bare(read)} is not ${bare(expected)}`;
  const error = problems.find(({ severity }) => severity === "error");
  if (error !== undefined) return `${name}: ${error.code}, ${error.found}`;
  const back = rowsOf(source, name, dialect);
  for (const [n, row] of rows.entries())
    for (const [column, value] of Object.entries(row))
      if (isWords(column) && (back[n]?.[column] ?? "").trim() !== kept(value)) return `${name}, ${column}: ${JSON.stringify(value)} comes back as ${JSON.stringify(back[n]?.[column])}`;
  const own = program.dialectOf(source, name);
  if (own.delimiter !== dialect.delimiter || !isDeepStrictEqual(own.columns, dialect.columns)) return `${name}: another dialect`;
  const again = write(back, dialect, "\n", "");
  const once = write(rows, dialect, "\n", "").replace(/\p{Surrogate}/gu, "\uFFFD");
  return again === once ? undefined : `${name}: written again it is ${JSON.stringify(again)}, not ${JSON.stringify(once)}`;
}; // prettier-ignore

const cases = only === "" ? Array.from({ length: Number(count) }, (_, n) => n + 1) : [Number(only)];
for (const nth of cases) {
  const label = `case ${String(nth)} of seed ${seed}`;
  try {
    part.tried(label, faultOfTrip(randomOf(Number(seed), nth)));
  } catch (error) {
    part.fail(`${label}: throws ${error.stack}`);
  }
}
part.end({ roundTrips: cases.length });
