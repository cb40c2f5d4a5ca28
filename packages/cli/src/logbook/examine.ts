// Every file of a logbook, read only to see what is wrong with it. Nothing stops at a fault; nothing is changed.

import { join } from "node:path";
import {
  type Engine,
  type Gauge,
  type LogbookFacts,
  type NamedText,
  gaugeColumns,
  measurementColumns,
  noteColumns,
  numberColumns,
  optionalMeasurementColumns,
  parseTable,
  readEngine,
  readEngineRecord,
  readGauges,
  readLogbook,
  serviceColumns,
  testColumns,
} from "@sealtrend/core/parts";
import { type Fault, Stop } from "../command.ts";
import { siblingsThatLookLikeCopies } from "./copies.ts";
import { engineIdFault, engineMissing, engineTables } from "./engine-id.ts";
import { columnsNearlyNamed, fieldsUnknown, headerFaults, shapeFaults } from "./examine-columns.ts";
import { daysAhead } from "./examine-dates.ts";
import { isFolder, isThere } from "./inside.ts";
import { textOf } from "./open-logbook.ts";
import { shown } from "./words.ts";
import type { World } from "./world.ts";

export interface Examined {
  /** The files read, as shown. */
  readonly files: readonly string[];
  /** By file, line and column. */
  readonly faults: readonly Fault[];
}

/** @param today - `YYYY-MM-DD`  @param only - the one engine to look at; all folders otherwise */
export const examine = (world: World, root: string, today: string, only?: string): Examined => {
  const desk = new Desk(world);
  const own = desk.text(join(root, "logbook.json"));
  const book = own === undefined ? undefined : readLogbook(own.text, own.file);
  desk.note(
    book?.problems ?? [],
    own === undefined
      ? []
      : fieldsUnknown(own, ["schema", "demo", "homeAltitude_m", "units", "tools", "name", "note"]),
  );
  const gaugeText = desk.text(join(root, "gauges.csv"));
  const gauges = gaugeText === undefined ? undefined : readGauges(gaugeText.text, gaugeText.file);
  desk.note(
    gauges?.problems ?? [],
    columnsNearlyNamed(gaugeText, gaugeColumns),
    daysAhead(gaugeText, today, "link_date"),
  );
  if (only === undefined) desk.copies(root);
  const facts = book?.logbook ?? { demo: false };
  for (const folder of only === undefined ? folders(world, root) : [only])
    examineEngine(desk, root, folder, { gauges: gauges?.gauges ?? [], facts, today });
  return { files: desk.files, faults: desk.faults.toSorted(byPlace) };
};

/** Files read so far and what was wrong with them. */
class Desk {
  readonly files: string[] = [];
  readonly faults: Fault[] = [];
  readonly world: World;
  constructor(world: World) {
    this.world = world;
  }

  /** One by one: a file may have more faults than a call may have arguments. */
  note(...lists: readonly (readonly Fault[])[]): void {
    for (const faults of lists) for (const fault of faults) this.faults.push(fault);
  }

  /** The text of a file; undefined where there is none or it cannot be read, which is noted. */
  text(path: string): NamedText | undefined {
    if (!isThere(this.world, path)) return undefined;
    this.files.push(shown(this.world.cwd, path));
    try {
      return textOf(this.world, path, this.faults);
    } catch (error) {
      if (!(error instanceof Stop)) throw error;
      this.faults.push(...error.faults);
      return undefined;
    }
  }

  copies(folder: string): void {
    const { cwd } = this.world;
    for (const { path, of } of siblingsThatLookLikeCopies(this.world, folder)) {
      const file = shown(cwd, path);
      this.faults.push({
        code: "file-copy",
        severity: "caution",
        file,
        found: `${file} looks like a copy of ${of}; it is not read`,
        expected: `${of} alone`,
        mend: `compare it with ${shown(cwd, join(folder, of))}, bring over what only it holds, then delete it`,
      });
    }
  }
}

/** Folders that hold any file of an engine, in order. */
const folders = (world: World, root: string): readonly string[] =>
  [...world.fs.readdirSync(root)]
    .sort()
    .filter(
      (name) =>
        isFolder(world, join(root, name)) &&
        ["engine.json", ...engineTables].some((file) => isThere(world, join(root, name, file))),
    );

interface Shared {
  readonly gauges: readonly Gauge[];
  readonly facts: LogbookFacts;
  readonly today: string;
}

const examineEngine = (desk: Desk, root: string, id: string, { gauges, facts, today }: Shared): void => {
  const folder = join(root, id);
  const file = shown(desk.world.cwd, folder);
  const bad = engineIdFault(id);
  if (bad !== undefined)
    desk.faults.push({
      ...bad,
      file,
      found: `${file}: ${bad.found}; it is not read`,
      mend: `rename the folder: ${bad.mend}`,
    });
  const json = desk.text(join(folder, "engine.json"));
  const [tests, services, notes, measurements, amendments] = engineTables.map((name) =>
    desk.text(join(folder, name)),
  );
  desk.copies(folder);
  if (!isThere(desk.world, join(folder, "engine.json"))) desk.faults.push(engineMissing(file));
  const engine = json === undefined ? undefined : readEngine(json.text, json.file, id).engine;
  if (json !== undefined) {
    const given = {
      ...(tests && { tests }),
      ...(services && { services }),
      ...(notes && { notes }),
      ...(measurements && { measurements }),
    };
    desk.note(readEngineRecord({ id, engine: json, ...given }, gauges, facts).problems);
  }
  const read = [tests, services, notes, measurements];
  if (engine === undefined) desk.note(...read.map(shapeFaults));
  desk.note(
    ...read.map((table) => daysAhead(table, today)),
    headerFaults(amendments, "amendments.csv"),
    columnsNearlyNamed(tests, [...testColumns(labelsOf(engine, tests)), ...Object.keys(numberColumns)]),
    columnsNearlyNamed(services, serviceColumns),
    columnsNearlyNamed(notes, noteColumns),
    columnsNearlyNamed(measurements, [...measurementColumns, ...optionalMeasurementColumns]),
  );
};

/** The labels of the engine; without one, those that the columns of tests.csv name. */
const labelsOf = (engine: Engine | undefined, tests: NamedText | undefined): readonly string[] =>
  engine?.cylinders ??
  (tests === undefined
    ? []
    : parseTable(tests.text, tests.file).table.header.flatMap(({ name }) =>
        /^c(?!rank_)./.test(name) ? [name.slice(1)] : [],
      ));

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const byPlace = (a: Fault, b: Fault): number =>
  compare(a.file ?? "", b.file ?? "") || (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0);
