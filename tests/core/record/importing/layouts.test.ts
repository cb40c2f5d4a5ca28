// Whatever way a person lays the same readings out, the same tests come in: records to sheet, sheet through the guessed map
// to records.

import { readImportMap, suggestEngineId, writeImportMap } from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";
import { guessed, imported, inShort } from "./imported-sheet.ts";

interface Machine {
  readonly name: string;
  /** Readings by day, a cell a cylinder. */
  readonly days: readonly (readonly string[])[];
}

interface Shed {
  readonly dates: readonly string[];
  readonly machines: readonly Machine[];
}

const names = ["Hay baler", "Saw 2", "Pumpe Süd", "Loader"];

const reading = fc.oneof(
  { weight: 6, arbitrary: fc.integer({ min: 40, max: 999 }).map(String) },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.integer({ min: 5, max: 99 }), fc.nat(9))
      .map(([a, b]) => `${String(a)}.${String(b)}`),
  },
  { weight: 1, arbitrary: fc.constantFrom("x", ">300", "131?", ">9.5?") },
);

const shed: fc.Arbitrary<Shed> = fc
  .record({
    dates: fc.subarray(["2023-10-14", "2024-10-12", "2025-10-11", "2026-02-01"], { minLength: 2 }),
    cylinders: fc.array(fc.integer({ min: 2, max: 4 }), { minLength: 2, maxLength: 4 }),
  })
  .chain(({ dates, cylinders }) =>
    fc
      .tuple(
        ...cylinders.map((count) =>
          fc.tuple(
            ...dates.map(() =>
              fc
                .tuple(
                  fc.integer({ min: 40, max: 999 }).map(String),
                  fc.array(reading, { minLength: count - 1, maxLength: count - 1 }),
                )
                .map(([first, rest]) => [first, ...rest]),
            ),
          ),
        ),
      )
      .map((machines) => ({
        dates,
        machines: machines.map((days, i) => ({ name: names[i] ?? "", days })),
      })),
  );

type Rows = readonly (readonly string[])[];

const counted = (count: number): readonly number[] => Array.from({ length: count }, (_, i) => i);
const mostCylinders = ({ machines }: Shed): number =>
  Math.max(...machines.map(({ days }) => days[0]?.length ?? 0));

/** The same shed as people lay it out. */
const layouts: Readonly<Record<string, (shed: Shed) => Rows>> = {
  "a row a test": (all) => [
    ["Date", "Machine", ...counted(mostCylinders(all)).map((i) => `Cyl ${String(i + 1)}`), "Remarks"],
    ...all.dates.flatMap((date, day) =>
      all.machines.map(({ name, days }) => [date, name, ...(days[day] ?? [])]),
    ),
  ],
  "a row a reading": ({ dates, machines }) => [
    ["Machine", "Date", "Cylinder", "Reading"],
    ...machines.flatMap(({ name, days }) =>
      dates.flatMap((date, day) => (days[day] ?? []).map((cell, i) => [name, date, String(i + 1), cell])),
    ),
  ],
  "engine and date written once": ({ dates, machines }) => [
    ["Machine", "Date", "Zyl.", "Wert"],
    ...machines.flatMap(({ name, days }) =>
      dates.flatMap((date, day) =>
        (days[day] ?? []).map((cell, i) => [
          day + i === 0 ? name : "",
          i === 0 ? date : "",
          String(i + 1),
          cell,
        ]),
      ),
    ),
  ],
  "machines across, date and cylinder down": (all) => [
    ["Date", "Cyl", ...all.machines.map(({ name }) => name)],
    ...all.dates.flatMap((date, day) =>
      counted(mostCylinders(all)).map((i) => [
        date,
        String(i + 1),
        ...all.machines.map(({ days }) => days[day]?.[i] ?? ""),
      ]),
    ),
  ],
  "merged machines over cylinders, dates down": ({ dates, machines }) => [
    ["", ...machines.flatMap(({ name, days }) => (days[0] ?? []).map((_, i) => (i === 0 ? name : "")))],
    ["Date", ...machines.flatMap(({ days }) => (days[0] ?? []).map((_, i) => String(i + 1)))],
    ...dates.map((date, day) => [date, ...machines.flatMap(({ days }) => days[day] ?? [])]),
  ],
  "merged dates over cylinders, machines down": (all) => [
    ["", ...all.dates.flatMap((date) => counted(mostCylinders(all)).map((i) => (i === 0 ? date : "")))],
    ["Machine", ...all.dates.flatMap(() => counted(mostCylinders(all)).map((i) => String(i + 1)))],
    ...all.machines.map(({ name, days }) => [
      name,
      ...days.flatMap((cells) => counted(mostCylinders(all)).map((i) => cells[i] ?? "")),
    ]),
  ],
  "dates across, machine and cylinder down": ({ dates, machines }) => [
    ["Machine", "Cyl", ...dates],
    ...machines.flatMap(({ name, days }) =>
      (days[0] ?? []).map((_, i) => [name, String(i + 1), ...dates.map((_day, day) => days[day]?.[i] ?? "")]),
    ),
  ],
};

const expected = ({ dates, machines }: Shed): readonly string[] =>
  machines.flatMap(({ name, days }) =>
    days.map((cells, day) => `${suggestEngineId(name)} ${dates[day] ?? ""}: dry 1 psi ${cells.join(",")}`),
  );

const dialects = [
  { delimiter: ",", mark: ".", end: "\n" },
  { delimiter: ";", mark: ",", end: "\r\n" },
  { delimiter: "\t", mark: ",", end: "\n" },
] as const;

const sheetText = (rows: Rows, { delimiter, mark, end }: (typeof dialects)[number]): string =>
  rows
    .map(
      (row) =>
        row.map((cell) => (/^>?\d+\.\d\??$/.test(cell) ? cell.replace(".", mark) : cell)).join(delimiter) +
        end,
    )
    .join("");

test.each(Object.entries(layouts))("%s: the same tests come in, in every dialect", (_name, layOut) => {
  fc.assert(
    fc.property(shed, fc.constantFrom(...dialects), (all, dialect) => {
      const text = sheetText(layOut(all), dialect);
      const { map, open } = guessed(text, { unit: "psi", what: "dry" });
      expect(open).toEqual([]);
      const read = readImportMap(writeImportMap(map), "map.json");
      expect(read.ok && read.value.map).toEqual(map);
      const result = imported(text, map);
      expect(result.tests.map(inShort).toSorted()).toEqual(expected(all).toSorted());
      expect(result.left).toEqual([]);
    }),
    { numRuns: 60 },
  );
});
