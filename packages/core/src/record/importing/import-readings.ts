// A stranger's sheet through its map: every reading cell with all that belongs to it becomes part of a test, or is on the
// list of what was left out. A faulty cell never sinks its neighbours.

import { type Outcome, bad, good, problem } from "../../problem/index.ts";
import { type AttributeReaders, type Attributed, attributeReaders } from "./attribute-readers.ts";
import { columnLetters } from "./columns.ts";
import { type FactReader, factReader } from "./day-facts.ts";
import { attributes, fitMap } from "./fit-map.ts";
import { finishedTests } from "./finished-tests.ts";
import { type DayFacts, type Gathering, gatherTests } from "./gather.ts";
import { withCylinders, withIgnition } from "./engines-in-sheet.ts";
import type { Attribute, ImportMap } from "./import-map.ts";
import type { Imported, LostRemark, Sheet, SheetRow } from "./imported.ts";
import { type LeftList, leftList } from "./left-out.ts";
import { type OwnUnits, ownUnits } from "./own-units.ts";
import { readingText } from "./reading-text.ts";
import { type RowKind, rowKinds } from "./row-kinds.ts";
import { plainText } from "./sheet-words.ts";
import { type Look, type Spot, lookAt } from "./sources.ts";
import type { ImportOptions, ToRead } from "./to-read.ts";

/** Reads the tests of a sheet. Not ok only where the map does not go with the sheet. */
export const importReadings = (
  sheet: Sheet,
  map: ImportMap,
  { place = () => ({}), today }: ImportOptions = {},
): Outcome<Imported> => {
  const { columns, problems } = fitMap(sheet, map, place);
  if (problems.length > 0) return bad(problems);
  const whole = withCylinders(sheet, map, columns);
  return good(new SheetReader({ sheet, map: whole, columns, today }).read());
};

const nothing: Spot = { text: "" };
const noFacts: DayFacts = {};
/** The units that tests.csv has a column of supply pressures for. */
const supplyUnits: readonly string[] = ["psi", "kPa", "bar"];

class SheetReader {
  readonly #sheet: Sheet;
  readonly #map: ImportMap;
  readonly #columns: readonly number[];
  readonly #left: LeftList;
  readonly #readers: AttributeReaders;
  readonly #fact: FactReader;
  readonly #looks: ReadonlyMap<string, Look>;
  readonly #conditions: readonly string[];
  readonly #hasFacts: boolean;
  /** Whether the readings of a row have their facts of the day in common. */
  readonly #isShared: boolean;
  readonly #notTaken: ReadonlySet<string>;
  readonly #gathering: Gathering;
  readonly #own: OwnUnits;
  /** The supply that the pairs of a row name. */
  #supply = "";
  #ofRow: DayFacts | undefined;
  #readings = 0;
  #blank = 0;
  readonly #remarks: LostRemark[] = [];

  constructor({ sheet, map, columns, today }: ToRead) {
    this.#sheet = sheet;
    this.#map = map;
    this.#columns = columns;
    this.#left = leftList(sheet);
    this.#readers = attributeReaders(this.#left, { sheet, map, columns, today });
    this.#fact = factReader(map, this.#left);
    this.#conditions = Object.keys(map.conditions ?? {});
    this.#notTaken = new Set(map.notTaken.map(plainText));
    this.#gathering = gatherTests(sheet, map.sameDay);
    this.#own = ownUnits(map);
    const sources = [
      ...attributes.map((name) => [name, map[name]] as const),
      ...Object.entries(map.conditions ?? {}),
    ];
    this.#looks = new Map(
      sources.flatMap(([name, source]) =>
        source === undefined ? [] : [[name, lookAt(sheet, source, { columns, firstRow: map.firstRow })]],
      ),
    );
    const facts = ["meter", "by", "test", "set_aside", ...this.#conditions].flatMap(
      (name) => this.#looks.get(name) ?? [],
    );
    this.#hasFacts = facts.length > 0;
    this.#isShared = facts.every(({ isOfRow }) => isOfRow);
  }

  read(): Imported {
    const { firstRow, lastRow = Infinity } = this.#map;
    const columns = this.#columns;
    const kindOf = rowKinds(this.#sheet, this.#map, { columns, isBlank: (text) => this.#isBlank(text) });
    for (const row of this.#sheet.rows)
      if (row.row >= firstRow && row.row <= lastRow) this.#row(row, kindOf(row));
    const { tests, lost } = finishedTests(this.#gathering.handOver(), this.#left);
    return {
      tests,
      engines: withIgnition(this.#sheet, this.#map, columns),
      left: this.#left.all(),
      moreLeft: this.#left.more(),
      counts: { readings: this.#readings - lost, notTaken: this.#blank, ...this.#own.counts() },
      remarks: this.#remarks,
    };
  }

  #row(row: SheetRow, kind: RowKind): void {
    if (kind.kind === "header") this.#left.row(row, "import-header-again", { row: kind.of }, kind);
    if (kind.kind === "summary") this.#left.row(row, "import-summary", { text: kind.text }, kind);
    if (kind.kind === "header" || kind.kind === "summary") return;
    // A footer's name and date are those of no test, and fill no row below it.
    const isFooter = kind.kind === "doubtful" && kind.problem.code === "import-undated";
    if (!isFooter) for (const look of this.#looks.values()) look.enter(row);
    if (kind.kind === "doubtful") this.#left.found(kind.at, kind.column, kind.problem, kind.readings);
    if (kind.kind === "empty") this.#left.row(row, "import-row-empty", { text: kind.text }, kind);
    const before = this.#readings;
    this.#supply = "";
    this.#ofRow = undefined;
    if (kind.kind === "readings") for (const column of this.#columns) this.#cell(row, column);
    if (this.#readings === before) this.#loseRemark(row);
  }

  #loseRemark({ row }: SheetRow): void {
    const { note } = this.#map;
    if (note === undefined || !("column" in note) || note.fill === true) return;
    const { text } = this.#looks.get("note")?.spot(-1) ?? nothing;
    if (text !== "") this.#remarks.push({ row, text });
  }

  #cell(row: SheetRow, column: number): void {
    const text = row.cells[column]?.text ?? "";
    const isBlank = this.#isBlank(text);
    const at = (name: Attribute): Spot => this.#looks.get(name)?.spot(column) ?? nothing;
    const engine = this.#readers.engine(at("engine"));
    const date = this.#readers.date(at("date"));
    const what = this.#readers.what(at("what"));
    const kindText = at("what").text;
    const fault = (one: ReturnType<typeof problem>): void => {
      this.#left.found(row, column, one, 1);
    };
    const own = isBlank ? undefined : this.#own.of(text, kindText);
    if (own === undefined && this.#map.unit === undefined) {
      if (isBlank) this.#blank++;
      else fault(problem("unit-missing", { text }));
      return;
    }
    const unit = own === undefined ? this.#readers.unit(at("unit")) : { ok: true as const, value: own };
    const take = this.#readers.take(at("take"));
    const gauge = this.#readers.gauge(at("gauge"));
    const label = engine.ok ? this.#readers.cylinder(at("cylinder"), engine.value) : engine;
    const isKnown = engine.ok && date.ok && what.ok && unit.ok && take.ok && gauge.ok && label.ok;
    if (!isKnown) {
      if (!isBlank) lose([engine, date, what, unit, take, gauge, label]);
      return;
    }
    const beside = this.#own.against(kindText, unit.value);
    if (!isBlank && beside !== undefined) {
      fault(problem("import-unit", { text: kindText, own: beside, unit: unit.value }));
      return;
    }
    const isLeak = what.value.startsWith("leak");
    const isPercent = unit.value === "%" || unit.value === "% held";
    if (!isBlank && isPercent && !isLeak) {
      fault(problem("percent-out-of-place", { what: what.value }));
      return;
    }
    if (!isBlank && unit.value === "% held" && gauge.value !== "") {
      fault(problem("import-held", {}));
      return;
    }
    const pairs = isLeak && supplyUnits.includes(unit.value);
    const name = `column ${columnLetters(column)}`;
    const rules = { unit: unit.value, decimal: this.#map.decimal, pairs, column: name };
    const read = isBlank ? ({ kind: "reading", text: "x" } as const) : readingText(text, rules);
    if (read.kind === "fault") {
      fault(read.problem);
      return;
    }
    const supply = "supply" in read ? read.supply : "";
    if (supply !== "" && this.#supply !== "" && supply !== this.#supply) {
      fault(problem("number-bad", { column: name, text, fault: "pair" }));
      return;
    }
    this.#supply = supply === "" ? this.#supply : supply;
    const ofDay = this.#facts(column);
    const facts = supply === "" ? ofDay : { ...ofDay, [`regulated_${unit.value}`]: supply };
    const taken = this.#gathering.add({
      engine: engine.value,
      date: date.value,
      what: what.value,
      unit: unit.value === "% held" ? "%" : unit.value,
      gauge: gauge.value,
      take: take.value,
      label: label.value,
      text: read.text,
      facts,
      note: isBlank ? "" : this.#note(at("note"), label.value),
      at: { row, column },
    });
    if (isBlank) this.#blank++;
    else if (taken === "taken") {
      this.#readings++;
      this.#own.note(own, supply);
    }
    if (isBlank || taken === "taken") return;
    if (taken === "full") fault(problem("take-bad", { text: "100" }));
    else fault(problem("import-twice", { what: what.value, take: take.value ?? 1, label: label.value }));
  }

  #isBlank(text: string): boolean {
    return text === "" || /^[xX?-]$/.test(text) || this.#notTaken.has(plainText(text));
  }

  /** Read once for a row where nothing of them stands above the columns. */
  #facts(column: number): DayFacts {
    if (this.#ofRow !== undefined) return this.#ofRow;
    if (!this.#hasFacts) return noFacts;
    const spot = (name: string): Spot => this.#looks.get(name)?.spot(column) ?? nothing;
    const facts = {
      meter: this.#fact("meter", spot("meter")),
      by: this.#readers.freeText(spot("by"), "by"),
      test: spot("test").text,
      set_aside: this.#readers.freeText(spot("set_aside"), "set_aside"),
      ...Object.fromEntries(this.#conditions.map((name) => [name, this.#fact(name, spot(name))])),
    };
    if (this.#isShared) this.#ofRow = facts;
    return facts;
  }

  /** A note beside one reading says which cylinder it is about. */
  #note(spot: Spot, label: string): string {
    const text = this.#readers.freeText(spot, "note");
    const { cylinder } = this.#map;
    const isOfOne = cylinder !== undefined && "column" in cylinder;
    return text !== "" && isOfOne ? `cylinder ${label}: ${text}` : text;
  }
}

/** Counts a reading as lost to the first thing that keeps it out. */
const lose = (all: readonly Attributed<unknown>[]): void => {
  const barred = all.find((one) => !one.ok);
  if (barred?.ok === false) barred.bar.readings++;
};
