// An imported test as rows of tests.csv, and whether the logbook has it already.

import { byKey, byText } from "../../problem/index.ts";
import { type PressureUnit, fromSi, toSi } from "../../quantity/index.ts";
import { cylinderColumn } from "../test-rows.ts";
import type { Cell, EngineRecord, PressureRow, Test } from "../types.ts";
import type { ImportedRow, ImportedTest, Recorded } from "./imported.ts";

/** The values of each row by the column of tests.csv, for `rowText`. @param id - the test's name in tests.csv */
export const testValues = (
  { date, meter, by, setAside, conditions, rows, cylinders }: ImportedTest,
  id: string,
): readonly Readonly<Record<string, string>>[] =>
  rows.map(({ what, take, gauge, unit, cells, note }, i) => ({
    test: id,
    date,
    ...(meter === undefined ? {} : { meter }),
    what,
    take: String(take),
    ...(gauge === undefined ? {} : { gauge }),
    unit,
    ...Object.fromEntries(cylinders.map((label, at) => [cylinderColumn(label), cells[at] ?? "x"])),
    ...(i === 0 ? conditions : {}),
    ...(by === undefined ? {} : { by }),
    ...(setAside === undefined ? {} : { set_aside: setAside }),
    ...(note === undefined ? {} : { note }),
  }));

/** A figure as it is compared: `131,50?` and `131.5?` are the same. */
const figure = (text: string): string => {
  const [, sign = "", number = "", doubt = ""] = /^(>?)\s*\+?([\d.,]+)(\??)$/.exec(text) ?? [];
  return number === "" ? "x" : `${sign}${String(Number(number.replace(",", ".")))}${doubt}`;
};

const rowKey = (
  { what, unit }: Pick<ImportedRow, "what" | "unit">,
  cells: ReadonlyMap<string, string>,
): string =>
  `${what} ${unit} ${[...cells]
    .filter(([, text]) => figure(text) !== "x")
    .sort(([a], [b]) => byText(a, b))
    .map(([label, text]) => `${label}:${figure(text)}`)
    .join(" ")}`;

const importedRowKey = (row: ImportedRow, labels: readonly string[]): string =>
  rowKey(row, new Map(labels.map((label, i) => [label, row.cells[i] ?? "x"])));

const textOf = (cell: Cell): string => (cell.kind === "not-taken" ? "x" : cell.text);

const recordedRowKey = (row: PressureRow, labels: readonly string[]): string =>
  rowKey(row, new Map(labels.map((label, i) => [label, textOf(row.cells[i] ?? { kind: "not-taken" })])));

/** For each imported test of one engine the test of its record that it is, or that stands on its day; each test of the record
 *  answers for one. Undefined where that day has none left. Gauges and notes do not count: they may have been added since. */
export const alreadyRecorded = (
  tests: readonly ImportedTest[],
  { engine, tests: recorded }: Pick<EngineRecord, "engine" | "tests">,
): readonly (Recorded | undefined)[] => {
  const used = new Set<Test>();
  const days = byKey(recorded, ({ date }) => date);
  const compared = tests.map((test) =>
    (days.get(test.date) ?? []).map((one) => ({ one, ...standing(test, one, engine.cylinders) })),
  );
  const best = (match: Recorded["match"]) => (found: (typeof compared)[number]) => {
    const hit = found.find((other) => other.match === match && !used.has(other.one));
    if (hit !== undefined) used.add(hit.one);
    return hit;
  };
  const answers = new Map<number, (typeof compared)[number][number]>();
  for (const match of ["same", "part", "other"] as const)
    compared.forEach((found, i) => {
      const hit = answers.has(i) ? undefined : best(match)(found);
      if (hit !== undefined) answers.set(i, hit);
    });
  return tests.map((_, i) => {
    const hit = answers.get(i);
    if (hit === undefined) return undefined;
    const { one, ...found } = hit;
    return { id: one.id, ...found };
  });
};

/** All readings of a test of the sheet as one text: the same for a recorded test that has the same ones. */
export const readingsKey = ({ rows, cylinders }: ImportedTest): string =>
  inOrder(rows.map((row) => importedRowKey(row, cylinders)));

/** All readings of a recorded test as one text. @param labels - of its engine */
export const recordedKey = ({ rows }: Test, labels: readonly string[]): string =>
  inOrder(rows.map((row) => recordedRowKey(row, labels)));

const inOrder = (keys: readonly string[]): string => [...keys].sort(byText).join("\n");

interface RecordedRow {
  readonly row: PressureRow;
  readonly name: string;
  /** Figures by label, cylinders that were not taken left out. */
  readonly figures: ReadonlyMap<string, string>;
}

const figuresOf = (cells: readonly (readonly [label: string, text: string])[]): ReadonlyMap<string, string> =>
  new Map(cells.map(([label, text]) => [label, figure(text)] as const).filter(([, text]) => text !== "x"));

const standing = (
  { rows, cylinders }: ImportedTest,
  recorded: Test,
  labels: readonly string[],
): Omit<Recorded, "id"> => {
  const there = [...recorded.rows];
  const takenOut = (row: ImportedRow, isIt: (one: PressureRow) => boolean): boolean => {
    const at = there.findIndex(isIt);
    if (at !== -1) there.splice(at, 1);
    return at === -1;
  };
  const open = rows
    .filter((row) => {
      const key = importedRowKey(row, cylinders);
      return takenOut(row, (one) => recordedRowKey(one, labels) === key);
    })
    .filter((row) => takenOut(row, (one) => isSameConverted({ row, cylinders }, one, labels)));
  const left = there.map((row) => ({
    row,
    name: `${row.what} ${row.unit}`,
    figures: figuresOf(labels.map((label, i) => [label, textOf(row.cells[i] ?? { kind: "not-taken" })])),
  }));
  const parted = open.map((row) => ({ row, ...partOf(row, cylinders, left) }));
  const missing = parted.flatMap(({ row, known }) => (known === undefined ? [row] : []));
  const filling = parted.flatMap(({ rest }) => rest ?? []);
  const known = [...rows.filter((row) => !open.includes(row)), ...parted.flatMap((one) => one.known ?? [])];
  const match = missing.length + filling.length === 0 ? "same" : known.length > 0 ? "part" : "other";
  return { match, missing, filling, known, others: left.map(({ row }) => row.what) };
};

/** Whether a row says in one unit what the recorded one says in another, as far as either was read. */
const isSameConverted = (
  { row, cylinders }: { readonly row: ImportedRow; readonly cylinders: readonly string[] },
  one: PressureRow,
  labels: readonly string[],
): boolean => {
  const { what, unit } = row;
  if (one.what !== what || one.unit === unit || one.unit === "%" || unit === "%") return false;
  const own = figuresOf(cylinders.map((label, i) => [label, row.cells[i] ?? "x"]));
  const there = figuresOf(labels.map((label, i) => [label, textOf(one.cells[i] ?? { kind: "not-taken" })]));
  if (own.size === 0 || own.size !== there.size) return false;
  const recordedUnit = one.unit;
  return [...own].every(([label, text]) => {
    const other = there.get(label);
    return other !== undefined && isWithinRounding([text, unit], [other, recordedUnit]);
  });
};

/** A figure as it is written, and its unit. */
export type FigureInUnit = readonly [text: string, unit: PressureUnit | "%"];

/** Whether two figures are the same; in two units of pressure, within half a step of the coarser. */
export const isSameFigure = ([a, unitA]: FigureInUnit, [b, unitB]: FigureInUnit): boolean => {
  if (unitA === unitB) return figure(a) === figure(b);
  return unitA !== "%" && unitB !== "%" && isWithinRounding([a, unitA], [b, unitB]);
};

/** A figure in the unit and with the decimals of another; as it stands where that cannot be. */
export const figureLike = ([text, unit]: FigureInUnit, [like, to]: FigureInUnit): string => {
  const [number = ""] = /\d+(?:[.,]\d+)?/.exec(text) ?? [];
  if (unit === to || unit === "%" || to === "%" || number === "") return text;
  const value = fromSi(toSi(Number(number.replace(",", ".")), unit), to);
  return text.replace(number, value.toFixed((/[.,](\d+)/.exec(like)?.[1] ?? "").length));
};

type InUnit = readonly [text: string, unit: PressureUnit];

/** Half a step of the coarser of two figures; signs and doubts are the same. */
const isWithinRounding = ([a, unitA]: InUnit, [b, unitB]: InUnit): boolean => {
  const parts = (text: string): readonly [around: string, number: string] => [
    text.replace(/[\d.]+/, " "),
    text.replace(/[^\d.]/g, ""),
  ];
  const [aroundA, numberA] = parts(a);
  const [aroundB, numberB] = parts(b);
  const halfStep = (text: string): number => 0.5 * 10 ** -(text.split(".")[1] ?? "").length;
  const most = Math.max(toSi(halfStep(numberA), unitA), toSi(halfStep(numberB), unitB));
  const apart = Math.abs(toSi(Number(numberA), unitA) - toSi(Number(numberB), unitB));
  return aroundA === aroundB && apart <= most * 1.000_001;
};

/** What of a row stands there in rows that say nothing else, and what does not; such rows are taken out of the list. An earlier import
 *  may have left a cell open, and a later one brought it as a take of its own. */
const partOf = (
  row: ImportedRow,
  labels: readonly string[],
  left: RecordedRow[],
): { readonly known?: ImportedRow; readonly rest?: readonly ImportedRow[] } => {
  const own = figuresOf(labels.map((label, i) => [label, row.cells[i] ?? "x"]));
  const found = new Set<string>();
  let gauge = row.gauge;
  for (const one of [...left]) {
    const { name, figures } = one;
    const isPart = [...figures].every(([label, text]) => own.get(label) === text && !found.has(label));
    if (name !== `${row.what} ${row.unit}` || figures.size === 0 || !isPart) continue;
    for (const label of figures.keys()) found.add(label);
    gauge ??= one.row.gauge;
    left.splice(left.indexOf(one), 1);
  }
  if (found.size === 0) return {};
  const only = (isWanted: (label: string) => boolean): ImportedRow => ({
    ...row,
    ...(gauge === undefined ? {} : { gauge }),
    cells: row.cells.map((text, i) => (isWanted(labels[i] ?? "") ? text : "x")),
  });
  return {
    known: only((label) => found.has(label)),
    rest: found.size === own.size ? [] : [only((label) => own.has(label) && !found.has(label))],
  };
};
