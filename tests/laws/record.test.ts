// What must hold for every logbook: order and dialect never matter, and what is written is read back.

import {
  type Cell,
  type Dialect,
  type Test,
  dialectOf,
  isIsoDate,
  readEngine,
  readGauges,
  readTests,
  rowText,
  testColumns,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

const { engine } = readEngine('{ "cylinders": ["1", "2", "3"], "ignition": "spark" }', "engine.json", "pump");
if (engine === undefined) throw new Error("the engine of this test has a fault");
const { gauges } = readGauges(
  "gauge,kind,unit,dial\nred,compression,psi,\n2.5,compression,bar,\nheld,leak-down,,percent-held\n",
  "gauges.csv",
);

type Row = Readonly<Record<string, string>>;
const columns = [...testColumns(engine.cylinders), "colour"];

/** Tests as read, without what tells of the file and not of the engine: line numbers, and the mark of typed digits. */
const read = (text: string): { readonly tests: readonly unknown[]; readonly codes: readonly string[] } => {
  const { tests, problems } = readTests(text, "tests.csv", engine, gauges);
  const typed = (cell: Cell): Cell =>
    cell.kind === "reading" ? { ...cell, text: cell.text.replace(",", ".") } : cell;
  const bare = (one: Test): unknown => ({
    ...one,
    rows: one.rows.map(({ line: _, cells, ...row }) => ({ ...row, cells: cells.map(typed) })),
  });
  return { tests: tests.map(bare), codes: problems.map(({ code }) => code) };
};

const written = (rows: readonly Row[], dialect: Dialect): string =>
  [dialect.columns.join(dialect.delimiter), ...rows.map((row) => rowText(row, dialect))].join("\n") + "\n";
const plain: Dialect = { delimiter: ",", decimalMark: ".", columns };

const tenths = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((n) => (n / 10).toFixed(1));
const reading = fc.oneof(
  tenths(80, 250),
  tenths(80, 250).map((n) => `${n}?`),
  fc.constantFrom("x", "", "-", ">300", "131", "9"),
);
const day = fc
  .integer({ min: 10_000, max: 20_000 })
  .map((n) => new Date(n * 86_400_000).toISOString().slice(0, 10));
const words = fc.constantFrom("", "warm day", 'said "fine"', "wind; rain", "a,b", "1.5", "Müller µ");

/** The rows of one test; conditions stand on one row or on all, always the same. */
const oneTest = fc
  .record({
    date: day,
    letter: fc.constantFrom("a", "b", "c"),
    meter: fc.option(tenths(0, 9_000)),
    kinds: fc.uniqueArray(
      fc.constantFrom("dry", "wet", "first-stroke", "running", "leak-down", "heard", "oil", "speed"),
      {
        minLength: 1,
        maxLength: 5,
      },
    ),
    cells: fc.array(fc.array(reading, { minLength: 3, maxLength: 3 }), { minLength: 5, maxLength: 5 }),
    conditions: fc.record(
      {
        altitude_m: fc.integer({ min: 0, max: 900 }).map(String),
        air_temp_C: tenths(-20, 40),
        crank_rpm: fc.integer({ min: 120, max: 400 }).map(String),
        engine_temp: fc.constantFrom("warm", "cold"),
        by: fc.constantFrom("me", "shop"),
      },
      { requiredKeys: [] },
    ),
    everywhere: fc.boolean(),
    notes: fc.array(words, { minLength: 5, maxLength: 5 }),
  })
  .map(({ date, letter, meter, kinds, cells, conditions, everywhere, notes }) =>
    kinds.map((what, i): Row => {
      const [c1 = "", c2 = "", c3 = ""] =
        what === "heard"
          ? ["exhaust:faint+intake", "neighbour:3", "none"]
          : what === "oil"
            ? ["5", "", "7.5"]
            : what === "speed"
              ? ["230", "235", ""]
              : what === "leak-down"
                ? ["82", "95.5", "x"]
                : (cells[i] ?? []);
      const gauge =
        what === "leak-down"
          ? { gauge: "held", unit: "%" }
          : what === "dry"
            ? { gauge: "red" }
            : { unit: "psi" };
      const stated = everywhere || i === 0 ? { ...conditions, ...(meter === null ? {} : { meter }) } : {};
      return {
        test: `${date}${letter}`,
        date,
        what,
        ...gauge,
        c1,
        c2,
        c3,
        ...stated,
        note: notes[i] ?? "",
        colour: "red",
      };
    }),
  );
const logbook = fc
  .uniqueArray(oneTest, { selector: (rows) => rows[0]?.test, minLength: 1, maxLength: 4 })
  .map((tests) => tests.flat());

const dialects = fc.constantFrom<Pick<Dialect, "delimiter" | "decimalMark">>(
  { delimiter: ",", decimalMark: "." },
  { delimiter: ";", decimalMark: "," },
  { delimiter: ";", decimalMark: "." },
  { delimiter: "\t", decimalMark: "," },
  { delimiter: "\t", decimalMark: "." },
);
const shuffled = <T>(items: readonly T[]) => fc.shuffledSubarray([...items], { minLength: items.length });

test("a logbook of this kind has no fault, so that what follows says something", () => {
  fc.assert(
    fc.property(logbook, (rows) => {
      const { tests, codes } = read(written(rows, plain));
      expect(codes).toEqual([]);
      expect(tests).toHaveLength(new Set(rows.map(({ test: id }) => id)).size);
    }),
  );
});

test("rows in any order, columns in any order, any separator, mark and line end: the same tests", () => {
  const variant = logbook.chain((rows) =>
    fc.tuple(
      fc.constant(rows),
      shuffled(rows),
      shuffled(columns),
      dialects,
      fc.constantFrom("\n", "\r\n", "\r"),
      fc.constantFrom("", "\uFEFF", "\uFEFFsep=\n"),
      fc.constantFrom("whole", "no last line end", "separators behind"),
    ),
  );
  fc.assert(
    fc.property(variant, ([rows, mixed, order, marks, lineEnd, start, end]) => {
      const text = written(mixed, { ...marks, columns: order });
      const tail = end === "separators behind" ? `${marks.delimiter.repeat(3)}\n` : "";
      const whole = end === "no last line end" ? text.slice(0, -1) : text + tail;
      const begin = start.replace("sep=", `sep=${marks.delimiter}`);
      expect(read((begin + whole).replaceAll("\n", lineEnd))).toEqual(read(written(rows, plain)));
    }),
  );
});

test("a spreadsheet that sorts the rows and drops the unit of nothing changes no test", () => {
  fc.assert(
    fc.property(logbook, (rows) => {
      const sorted = rows.toSorted((a, b) => (a.what ?? "").localeCompare(b.what ?? "", "en"));
      expect(read(written(sorted, plain))).toEqual(read(written(rows, plain)));
    }),
  );
});

test("a column that is not known, or stands empty, changes no test", () => {
  fc.assert(
    fc.property(logbook, (rows) => {
      const without: Dialect = { ...plain, columns: columns.filter((name) => name !== "colour") };
      const bare = rows.map(({ colour: _, ...row }) => row);
      expect(read(written(bare, without))).toEqual(read(written(rows, plain)));
    }),
  );
});

test("rows in the dialect of a file are added to it and read as if they had always been there", () => {
  fc.assert(
    fc.property(logbook, dialects, (rows, marks) => {
      const [first, ...further] = rows;
      if (first === undefined) return;
      const file = written([first], { ...marks, columns });
      const own = dialectOf(file, "tests.csv");
      expect(own.delimiter).toBe(marks.delimiter);
      const grown = file + further.map((row) => `${rowText(row, own)}\n`).join("");
      expect(read(grown)).toEqual(read(written(rows, plain)));
    }),
  );
});

test("every cell that is written is read back: numbers as their value, words as they are", () => {
  const number = fc
    .tuple(fc.integer({ min: -99_999, max: 99_999 }), fc.integer({ min: 0, max: 6 }))
    .map(([n, places]) => (n / 10 ** Math.min(places, 4)).toFixed(places));
  fc.assert(
    fc.property(number, fc.string({ unit: "grapheme", maxLength: 20 }), dialects, (value, note, marks) => {
      const own: Dialect = {
        ...marks,
        columns: ["test", "date", "what", "c1", "c2", "c3", "unit", "air_temp_C", "note"],
      };
      const celsius = Number(value) >= -60 && Number(value) <= 60 ? value : "20.125";
      const row = {
        test: "a",
        date: "2026-05-03",
        what: "dry",
        unit: "psi",
        c1: "131",
        air_temp_C: celsius,
        note,
      };
      const { tests, problems } = readTests(written([row], own), "tests.csv", engine, gauges);
      expect(problems.filter(({ severity }) => severity === "error")).toEqual([]);
      expect(tests[0]?.conditions.airTemperature).toBeCloseTo(Number(celsius) + 273.15, 9);
      // one line in the file: line breaks become a blank; blanks around do not count
      const line = note.replace(/\s*[\r\n]+\s*/g, " ").replace(/^[\s\u00A0\u202F]+|[\s\u00A0\u202F]+$/g, "");
      expect(tests[0]?.notes).toEqual(line === "" ? [] : [line]);
    }),
    { numRuns: 500 },
  );
});

test("no text at all makes the reader fail: it is read, or its faults have a place in it", () => {
  const sign = fc.constantFrom(
    ..."ab1,;\t\"\n\r =x.-'\u0000é",
    "2026-05-03",
    "dry",
    "psi",
    "test,date,what,c1,c2,c3\n",
  );
  fc.assert(
    fc.property(fc.array(sign, { maxLength: 60 }), (signs) => {
      const text = signs.join("");
      const { tests, problems } = readTests(text, "tests.csv", engine, gauges);
      for (const { date } of tests) expect(isIsoDate(date)).toBe(true);
      const lines = text.replace(/^\uFEFF/, "").split(/\r\n|\n|\r/);
      for (const { line = 0, column = 0 } of problems) {
        expect(line).toBeGreaterThanOrEqual(1);
        expect(line).toBeLessThanOrEqual(lines.length);
        expect(column).toBeGreaterThanOrEqual(1);
        expect(column).toBeLessThanOrEqual((lines[line - 1]?.length ?? 0) + 1);
      }
    }),
    { numRuns: 3_000 },
  );
});
