// From the options of `amend` to the cells that change. The column that holds a fact changes in the rows that state it;
// where none does, in the first row of the test.

import {
  type Engine,
  type UnitName,
  conditionCell,
  conditionKinds,
  cylinderColumn,
  gaugeUnits,
  numberColumns,
  plainNumber,
  withConditionColumns,
} from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import {
  type RawRow,
  type RawTests,
  type Selector,
  isOpen,
  pickMend,
  rowName,
  rowsPicked,
} from "./amend-rows.ts";
import type { CellEdit } from "./amend-text.ts";
import { columnMissing } from "../new-row.ts";
import { usage } from "../usage.ts";

interface Scene {
  readonly args: Args;
  readonly tests: RawTests;
  readonly engine: Engine;
  readonly pick: Selector;
  /** The rows of the test that are picked, all where nothing picks. */
  readonly rows: readonly RawRow[];
  /** Every row of the test. */
  readonly all: readonly RawRow[];
}

const isCell = (args: Args): boolean => (args.text("cylinder") ?? args.text("to")) !== undefined;

/** All cells that the command line changes, also in columns of facts that the file may lack. @throws Stop 2 for what is open or not there, 1 for a column that is missing */
export const amendEdits = (
  args: Args,
  tests: RawTests,
  test: string,
  engine: Engine,
): readonly CellEdit[] => {
  const byGauge = isCell(args) && args.text("of-gauge") === undefined;
  const pick: Selector = {
    what: args.text("what"),
    take: args.text("take"),
    gauge: byGauge ? args.text("gauge") : nameOf(args.text("of-gauge")),
  };
  const scene: Scene = {
    args,
    tests,
    engine,
    pick,
    rows: rowsPicked(tests, test, pick),
    all: rowsPicked(tests, test, {}),
  };
  const facts = factNames.filter((name) => name !== "gauge" || !byGauge);
  const edits = [
    ...(isCell(args) ? [cellEdit(scene)] : []),
    ...facts.flatMap((option) => factEdits(scene, option)),
    ...Object.keys(conditionKinds).flatMap((option) => conditionEdits(scene, option)),
  ];
  const known = [...withConditionColumns(tests.dialect.columns), ...factColumns];
  const lost = edits.find(({ column }) => !known.includes(column));
  if (lost !== undefined) throw columnMissing(tests.dialect, tests.file, lost.column);
  return edits;
};

/** A gauge that was left open has no name: `-`, as what takes a fact out. */
const nameOf = (gauge: string | undefined): string | undefined => (gauge?.trim() === "-" ? "" : gauge);

const cellEdit = ({ args, engine, rows }: Scene): CellEdit => {
  const label = args.text("cylinder")?.trim();
  const to = args.text("to")?.trim();
  if (label === undefined)
    throw usage(
      "cylinder-missing",
      `--to ${to ?? ""}: of which cylinder?`,
      "--cylinder",
      `add --cylinder ${engine.cylinders[0] ?? "1"}`,
    );
  if (to === undefined)
    throw usage(
      "to-missing",
      `cylinder ${label}: what is to stand there?`,
      "--to",
      "add --to 141, or --to x if it was not taken",
    );
  if (!engine.cylinders.includes(label))
    throw usage(
      "cylinder-unknown",
      `${engine.id} has no cylinder "${label}"`,
      `one of: ${engine.cylinders.join(", ")}`,
      `--cylinder ${engine.cylinders[0] ?? "1"}`,
    );
  const [held = "", supply] = to.split("/");
  if (supply !== undefined && !to.includes(":"))
    throw usage(
      "to-pair",
      `--to "${to}"`,
      "the cylinder side alone",
      `--to ${held}; the supply is --regulated ${supply}psi (or kPa, bar)`,
    );
  const [row, other] = rows;
  if (row === undefined || other !== undefined)
    throw usage(
      "row-open",
      `which reading of cylinder ${label}? ${String(rows.length)} rows could be meant`,
      `one of: ${rows.map(rowName).join(", ")}`,
      pickMend(rows),
    );
  return { row: row.row, column: cylinderColumn(label), to: plainNumber(to) };
};

const factNames = ["date", "meter", "unit", "gauge", "by", "note", "set-aside"] as const;
type FactOption = (typeof factNames)[number];

const columnOf = (option: FactOption): string => (option === "set-aside" ? "set_aside" : option);
const factColumns = factNames.map(columnOf);

const factEdits = (scene: Scene, option: FactOption): readonly CellEdit[] => {
  const typed = scene.args.text(option)?.trim();
  if (typed === undefined) return [];
  const column = columnOf(option);
  const to =
    typed === "-"
      ? ""
      : option === "meter"
        ? plainNumber(typed)
        : option === "unit"
          ? unitTyped(typed)
          : typed;
  const rows = option === "date" ? scene.all : stating(scene, [column], option);
  return rows.map(({ row }) => ({ row, column, to }));
};

const unitTyped = (typed: string): string => {
  const known = [...gaugeUnits, "%"].find(
    (unit) => unit.toLowerCase() === typed.toLowerCase() && typed !== "mPa",
  );
  if (known !== undefined) return known;
  throw usage(
    "unit-unknown",
    `--unit "${typed}"`,
    `one of: ${[...gaugeUnits, "%"].join(", ")}`,
    "--unit psi",
  );
};

/** The rows that state a fact, or the row that is to state it. @throws Stop 2 where they say different things on purpose */
const stating = (scene: Scene, columns: readonly string[], option: string): readonly RawRow[] => {
  const { rows, all, pick } = scene;
  const said = ({ cell }: RawRow): string => columns.map(cell).join("\n").trim();
  const states = (row: RawRow): boolean => said(row) !== "";
  const ofReadings = option === "unit" || option === "gauge";
  const fitting = ofReadings ? rows.filter(holdsReadings) : rows;
  const told = fitting.filter(states);
  const differ = new Set((ofReadings ? fitting : told).map(said)).size > 1;
  const deliberate =
    ofReadings || option === "note" || new Set(told.map(({ cell }) => cell("gauge"))).size > 1;
  if (differ && deliberate && isOpen(pick))
    throw usage(
      "row-open",
      `--${option}: the rows of the test say different things; which is meant?`,
      `one of: ${fitting.map(rowName).join(", ")}`,
      pickMend(fitting),
    );
  if (told.length > 0) return told;
  if (ofReadings) return fitting;
  // What holds for the whole test may be stated in a row that was not picked; a gauge picked may differ from the others.
  const elsewhere = pick.gauge === undefined ? all.filter(states) : [];
  return elsewhere.length > 0 ? elsewhere : rows.slice(0, 1);
};

/** Facts by cylinder and what was heard have neither gauge nor unit of their own. */
const holdsReadings = ({ cell }: RawRow): boolean =>
  !["heard", "oil", "speed", "strokes", "order"].includes(cell("what"));

/** The columns that hold the same condition as this one, each in a unit of its own. */
const sameCondition = (column: string, columns: readonly string[]): readonly string[] => {
  const key = numberColumns[column]?.key;
  return key === undefined ? [column] : columns.filter((name) => numberColumns[name]?.key === key);
};

const conditionEdits = (scene: Scene, option: string): readonly CellEdit[] => {
  const typed = scene.args.text(option)?.trim();
  if (typed === undefined) return [];
  const { columns } = scene.tests.dialect;
  if (typed === "-") return columnsOf(option, columns).flatMap((column) => emptied(scene, column));
  const assumed = option === "regulated" || option === "master" ? unitRead(scene) : undefined;
  const cell = (among: readonly string[]): { readonly column: string; readonly text: string } => {
    const made = conditionCell(option, typed, among, assumed);
    if (made.ok) return made;
    throw usage("condition-bad", made.found, made.expected, made.mend);
  };
  const fresh = cell(withConditionColumns(columns));
  const held = sameCondition(fresh.column, columns);
  return stating(scene, held, option).flatMap((row) => {
    const filled = held.filter((column) => row.cell(column) !== "");
    return (filled.length === 0 ? [fresh] : filled.map((column) => cell([column]))).map(
      ({ column, text }) => ({ row: row.row, column, to: text }),
    );
  });
};

const columnsOf = (option: string, columns: readonly string[]): readonly string[] => {
  const kind = conditionKinds[option];
  const keys: readonly (string | undefined)[] = [
    kind?.key,
    ...(option === "engine-temp" ? ["engineTemperature"] : []),
    ...(option === "master" ? ["masterLost"] : []),
  ];
  return columns.filter((name) => name === kind?.column || keys.includes(numberColumns[name]?.key));
};

const emptied = ({ rows }: Scene, column: string): readonly CellEdit[] =>
  rows.filter(({ cell }) => cell(column) !== "").map(({ row }) => ({ row, column, to: "" }));

/** The unit the readings of the test stand in, for a supply typed as a bare number. */
const unitRead = ({ rows }: Scene): UnitName | "%" | undefined => {
  const units = rows.map(({ cell }) => cell("unit"));
  return units.includes("%")
    ? "%"
    : gaugeUnits.find((unit) => units.some((text) => text.toLowerCase() === unit.toLowerCase()));
};
