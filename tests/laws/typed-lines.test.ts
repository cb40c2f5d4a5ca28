// What must hold for every typed line: it is read or refused, never both and never thrown at, and what was read stands so in
// measurements.csv.

import {
  type Measurement,
  type TypedMeasurement,
  type TypingContext,
  measurementColumns,
  readEngine,
  readMeasurements,
  readTypedLine,
  rowOf,
  rowText,
  startTyping,
  typingHelp,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

const { engine } = readEngine(
  '{ "cylinders": ["1", "2", "3", "4"], "ignition": "spark" }',
  "engine.json",
  "pump",
);
if (engine === undefined) throw new Error("the engine of this test has a fault");

const read = (lines: readonly string[], start: TypingContext = startTyping("2026-03-02")) => {
  let context = start;
  const measurements: TypedMeasurement[] = [];
  for (const line of lines) {
    const one = readTypedLine(line, context, engine);
    if (one.kind === "measurements") measurements.push(...one.measurements);
    if (one.kind === "context" || one.kind === "measurements") context = one.context;
  }
  return measurements;
};

/** What the table says of rows, without the lines they stand on. */
const stored = (measurements: readonly TypedMeasurement[], delimiter: "," | ";", mark: "." | ",") => {
  const columns = [...measurementColumns, "instead"];
  const dialect = { delimiter, decimalMark: mark, columns };
  const rows = measurements.map((one) => rowText(rowOf(one), dialect));
  const text = `${columns.join(delimiter)}\n${rows.map((row) => `${row}\n`).join("")}`;
  const back = readMeasurements(text, "measurements.csv", engine);
  return {
    measurements: back.measurements.map(({ line: _, ...rest }: Measurement) => rest),
    problems: back.problems,
  };
};

const bare = ({ typed: _, column: __, written: ___, ...rest }: TypedMeasurement) => rest;
const sorted = (measurements: readonly TypedMeasurement[]) =>
  measurements
    .map((one, i) => ({ one, i }))
    .toSorted(
      (a, b) =>
        a.one.teardown - b.one.teardown ||
        (a.one.date < b.one.date ? -1 : a.one.date > b.one.date ? 1 : a.i - b.i),
    )
    .map(({ one }) => one);

const pieces = [
  ...new Set(typingHelp.flatMap(({ example }) => [example, ...example.split(/[ :]+/)])),
  ..."bore,main bearing,rod bearing,ring gap,ring side,head,deck,guide,stem,seat,spring,chamber,crack,1,3in,3ex,9,top,axial,front,90,at,long1".split(
    ",",
  ),
  ...[
    ":",
    ": ",
    " ",
    ",",
    ";",
    " ; ",
    "#",
    "/",
    "..",
    "<",
    "+",
    "-",
    "x",
    "+.12",
    "-0,02",
    "86,62",
    "1,234",
    "3-7/16",
    "7/8",
  ],
  ...[
    "mm",
    "in",
    "th",
    "tenths",
    "um",
    "ml",
    "N",
    "set 86.50",
    "with thread",
    "=1+1",
    "\u2212",
    "µm",
    "\u00A0",
    "\t",
    '"',
    "​",
  ],
];
const heads = typingHelp
  .filter(({ kind }) => kind !== "setting")
  .map(({ example }) => example.replace(/:.*/, ""));
const cells = ["-", "x", "86.62", "86,58", ".0022", "<0.04", "0.35..0.40", "3-7/16in", "7/8", "22th", "25tenths", "+.12", "-0,02", "1/2/3", "250N", "42.5ml", "5cc", "0", "mm", "in", "8.5/8.6th", "+2um", "0.5 .. 0.6"]; // prettier-ignore
const words = [
  "crosshatch full",
  "score light",
  "one-sided",
  "scored",
  "12mm",
  "dye",
  "seen",
  "wall 2",
  "normal",
];
const half = fc.oneof(
  fc.array(fc.constantFrom(...cells), { maxLength: 4 }).map((some) => some.join(" ")),
  fc.array(fc.constantFrom(...words), { maxLength: 3 }).map((some) => some.join(", ")),
);
const partLine = fc
  .tuple(fc.constantFrom(...heads), half, fc.constantFrom("", " ; note 1", " # no", " ; a,b;c"))
  .map(([head, behind, note]) => `${head}: ${behind}${note}`);
const junk = fc.oneof(
  { weight: 4, arbitrary: partLine },
  {
    weight: 4,
    arbitrary: fc.array(fc.constantFrom(...pieces), { maxLength: 10 }).map((some) => some.join(" ")),
  },
  {
    weight: 2,
    arbitrary: fc.array(fc.constantFrom(...pieces), { maxLength: 14 }).map((some) => some.join("")),
  },
  { weight: 1, arbitrary: fc.string({ unit: "binary", maxLength: 60 }) },
  { weight: 1, arbitrary: fc.string({ maxLength: 60 }) },
);
const settings = fc.subarray(["mm", "in", "th", "tenths", "set 86.50mm", "set 3-7/16in", "ml", "N", "with micrometer 0.0001in", "by Ann", "at 75mm", "date 2026-04-01", "state new part", "teardown 2"]); // prettier-ignore

test("twenty thousand lines of any kind are read or refused, and none throws", () => {
  const counts = { measurements: 0, context: 0, blank: 0, fault: 0 };
  fc.assert(
    fc.property(settings, junk, (before, line) => {
      const start = before.reduce((context, one) => {
        const set = readTypedLine(one, context, engine);
        return set.kind === "context" ? set.context : context;
      }, startTyping("2026-03-02"));
      const one = readTypedLine(line, start, engine);
      counts[one.kind]++;
      if (one.kind !== "fault") return true;
      return (
        one.problems.length > 0 &&
        one.problems.every(
          ({ column = 0, excerpt, mend, found }) =>
            column > 0 && excerpt?.text.length === line.length && !/undefined|NaN/.test(`${mend}${found}`),
        )
      );
    }),
    { numRuns: 20_000 },
  );
  // The lines are worth something: every kind comes up.
  expect(Math.min(counts.measurements, counts.fault)).toBeGreaterThan(1_000);
  expect(Math.min(counts.context, counts.blank)).toBeGreaterThan(20);
});

test("whatever was read is what the table says after it was written there", () => {
  fc.assert(
    fc.property(settings, fc.array(junk, { maxLength: 4 }), (before, lines) => {
      const measurements = read([...before, ...lines]);
      const back = stored(measurements, ",", ".");
      expect(back.problems).toEqual([]);
      expect(back.measurements).toEqual(sorted(measurements).map(bare));
    }),
    { numRuns: 1_500 },
  );
});

const figure = fc
  .tuple(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 0, max: 99_999 }))
  .map(([whole, rest]) => `${whole}.${String(rest).padStart(5, "0")}`);
const between = fc
  .tuple(fc.integer({ min: 0, max: 98 }), fc.integer({ min: 1, max: 50 }))
  .map(([low, more]) => `0.${String(low).padStart(3, "0")}..0.${String(low + more).padStart(3, "0")}`);
const cell = fc.oneof(
  figure,
  between,
  figure.map((one) => `+${one}`),
  fc.constantFrom("-", "<0.04", ".5"),
);
const part = fc.constantFrom("bore 3", "main 4", "pin 1 middle", "ring 2", "ring gap 2 bottom", "guide 1in", "rod bearing 2", "housing rod 1", "head long1 at 75", "bore 1 unworn", "pin 2 instead"); // prettier-ignore

test("good lines stand in the table to the last digit, with points or with decimal commas", () => {
  fc.assert(
    fc.property(
      fc.constantFrom("mm", "in", "th", "tenths", "um"),
      fc.array(fc.tuple(part, fc.array(cell, { minLength: 1, maxLength: 2 })), {
        minLength: 1,
        maxLength: 4,
      }),
      (unit, typed) => {
        const lines = typed.map(([head, cells]) => `${head}: ${cells.join(" ")}`);
        const measurements = read([
          unit,
          "set 20.5",
          'with "gauge" 0.01mm',
          ...lines,
          'bore 3: 2 ; set again; with "care"',
        ]);
        for (const [delimiter, mark] of [
          [",", "."],
          [";", ","],
          [";", "."],
        ] as const) {
          const back = stored(measurements, delimiter, mark);
          expect(back.problems).toEqual([]);
          expect(back.measurements).toEqual(measurements.map(bare));
        }
      },
    ),
    { numRuns: 300 },
  );
});
