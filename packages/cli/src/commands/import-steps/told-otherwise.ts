// What the sheet states beside figures that are recorded already, and the record does not: meter, person, set aside, conditions, gauge
// and remark. The record stays as it is; the line that mends it is told, ready to type.

import { type ImportedTest, byKey, conditionKinds, numberColumns } from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import { typedLine } from "../../options/quote.ts";
import { type RawRow, rawTests } from "../amend-steps/amend-rows.ts";
import { readingPlace } from "./reading-place.ts";
import type { Standing } from "./recorded-standing.ts";

type ImportedRow = ImportedTest["rows"][number];

interface Texts {
  /** tests.csv as it stands. */
  readonly now: string;
  /** The same before any amendment: what was amended since is not told again. */
  readonly first: string;
}

/** One fact that the sheet has otherwise. */
interface Otherwise {
  readonly name: string;
  readonly sheet: string;
  readonly recorded: string;
  /** As `amend` takes it. */
  readonly typed: readonly string[];
}

/** A caution for each recorded test, or row of one, that the sheet says more of, or otherwise. @param standing - parallel to the tests */
export const toldOtherwise = (
  tests: readonly ImportedTest[],
  standing: readonly Standing[],
  { now, first }: Texts,
): readonly Fault[] => {
  const found = tests.flatMap((test, i) => {
    const one = standing[i];
    return one === undefined || one.match === "other" ? [] : [{ test, id: one.id }];
  });
  if (found.length === 0) return [];
  const rowsNow = rowsByTest(now);
  const rowsFirst = first === now ? rowsNow : rowsByTest(first);
  return found.flatMap(({ test, id }) =>
    ofTest(test, id, { now: rowsNow.get(id) ?? [], first: rowsFirst.get(id) ?? [] }),
  );
};

const rowsByTest = (text: string): ReadonlyMap<string, readonly RawRow[]> =>
  byKey(rawTests(text, "").rows, (row) => row.cell("test"));

interface Rows {
  readonly now: readonly RawRow[];
  readonly first: readonly RawRow[];
}

const ofTest = (test: ImportedTest, id: string, rows: Rows): readonly Fault[] => {
  const ofDay = [
    ...differing("meter", test.meter, rows, (text) => ["--meter", text]),
    ...differing("by", test.by, rows, (text) => ["--by", text]),
    ...differing("set_aside", test.setAside, rows, (text) => ["--set-aside", text]),
    ...Object.entries(test.conditions).flatMap(([column, text]) => ofCondition(column, text, rows)),
  ];
  const ofRows = test.rows.map((row) => ofRow(row, rows));
  const isOne = rows.now.length === 1;
  const [only = []] = isOne ? ofRows : [];
  return [
    ...told(test, id, { row: 0, facts: [...ofDay, ...only], pick: [] }),
    ...(isOne
      ? []
      : ofRows.flatMap((facts, row) =>
          told(test, id, { row, facts, pick: pickOf(test.rows[row], rows.now) }),
        )),
  ];
};

/** The same row of the record: that of the kind and take, or the only one of the kind. */
const sameRow = (row: ImportedRow | undefined, rows: readonly RawRow[]): RawRow | undefined => {
  const alike = rows.filter(({ cell }) => cell("what") === row?.what);
  const own = alike.filter(({ cell }) => (cell("take") || "1") === String(row?.take ?? 1));
  const [only] = alike.length === 1 ? alike : own;
  return own.length > 1 ? own.find(({ cell }) => cell("gauge") === row?.gauge) : only;
};

const ofRow = (row: ImportedRow, { now, first }: Rows): readonly Otherwise[] => {
  const there = sameRow(row, now);
  if (there === undefined) return [];
  const before = first.filter(({ row: { line } }) => line === there.row.line);
  const own = { now: [there], first: before };
  return [
    ...differing("gauge", row.gauge, own, (text) => ["--gauge", text]),
    ...differing("note", row.note, own, (text) => ["--note", text]),
  ];
};

const pickOf = (row: ImportedRow | undefined, rows: readonly RawRow[]): readonly string[] => {
  const there = sameRow(row, rows);
  if (row === undefined || there === undefined) return [];
  const gauge = there.cell("gauge");
  const takes = there.cell("take") || "1";
  return ["--what", row.what, "--take", takes, ...(gauge === "" ? [] : ["--of-gauge", gauge])];
};

const differing = (
  column: string,
  sheet: string | undefined,
  { now, first }: Rows,
  typed: (text: string) => readonly string[],
): readonly Otherwise[] => {
  const recorded = cellOf(now, column);
  if (sheet === undefined || sheet === "" || isSame(sheet, recorded) || isSame(sheet, cellOf(first, column)))
    return [];
  return [{ name: column, sheet, recorded, typed: typed(sheet) }];
};

const cellOf = (rows: readonly RawRow[], column: string): string =>
  rows.map(({ cell }) => cell(column)).find((text) => text !== "") ?? "";

const isSame = (sheet: string, recorded: string): boolean =>
  sheet.trim() === recorded || (recorded !== "" && Number(sheet) === Number(recorded.replace(",", ".")));

/** The option of `amend` for a condition column: what it states is the option's own, or a variant of it (engineTemp,
 *  engineTemperature; master, masterLost). */
const optionOf = (column: string): string | undefined =>
  Object.entries(conditionKinds).find(
    ([, { key, column: ofWords }]) =>
      ofWords === column || numberColumns[column]?.key.startsWith(key) === true,
  )?.[0];

/** One that is recorded in another unit is left as it is. */
const ofCondition = (column: string, sheet: string, rows: Rows): readonly Otherwise[] => {
  const option = optionOf(column);
  if (option === undefined) return [];
  const unit = column === "master_percent" ? "%" : (numberColumns[column]?.unit ?? "");
  const others =
    numberColumns[column] === undefined
      ? []
      : Object.keys(numberColumns).filter((name) => name !== column && optionOf(name) === option);
  const isElsewhere = cellOf(rows.now, column) === "" && others.some((name) => cellOf(rows.now, name) !== "");
  return isElsewhere ? [] : differing(column, sheet, rows, (text) => [`--${option}`, `${text}${unit}`]);
};

const told = (
  test: ImportedTest,
  id: string,
  {
    row,
    facts,
    pick,
  }: { readonly row: number; readonly facts: readonly Otherwise[]; readonly pick: readonly string[] },
): readonly Fault[] => {
  if (facts.length === 0) return [];
  const said = facts.map(
    ({ name, sheet, recorded }) => `${name} ${sheet} (recorded: ${recorded === "" ? "none" : recorded})`,
  );
  const line = [...pick, ...facts.flatMap(({ typed }) => typed), "--because", "the sheet says so"];
  return [
    {
      code: "import-otherwise",
      severity: "caution",
      found: `${test.engine} ${id} is recorded; of it the sheet says ${said.join(", ")}`,
      expected: "the same in the sheet and in the record",
      mend: `if the sheet is right: ${typedLine(["amend", test.engine, "--test", id, ...line])}`,
      ...readingPlace(test, row),
    },
  ];
};
