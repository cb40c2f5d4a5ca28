// The sheet of an import, read by its map: the one that is there, else a guess.

import {
  type GuessedMap,
  type ImportHints,
  type ImportMap,
  type Imported,
  type OpenQuestion,
  type Problem,
  type Sheet,
  type UnreadColumn,
  guessImportMap,
  importReadings,
  parseSheet,
  readEngine,
  unreadColumns,
} from "@sealtrend/core/parts";
import { type Args, Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import { type Logbook, textOf } from "../../logbook/open-logbook.ts";
import { sparing } from "../../sparing.ts";
import { usageFault } from "../usage.ts";
import { importHints, typedEncoding, typedSeparator, withTyped } from "./import-hints.ts";
import { type MapFile, mapFile } from "./map-file.ts";
import { sheetBytes, sheetText } from "./sheet-text.ts";
import { withSupply } from "./typed-supply.ts";

/** What was read of the sheet; its cells are not kept, for there may be a million. */
export interface ReadSheet {
  readonly file: string;
  readonly shape: readonly Problem[];
  readonly map: ImportMap;
  readonly used: MapFile | undefined;
  readonly open: readonly OpenQuestion[];
  readonly why: GuessedMap["why"];
  /** The readings; none while a question is open. */
  readonly taken: Imported | undefined;
  /** Columns that hold something and are not read. */
  readonly unread: readonly UnreadColumn[];
  readonly asides: readonly string[];
}

/** The sheet by its map: the one that is there, else a guess. @throws Stop 1 where either cannot be read, or they do not fit */
export const readSheet = async (args: Args, io: Io, logbook: Logbook): Promise<ReadSheet> => {
  const { world } = logbook;
  const { file, bytes } = await sheetBytes(world, io, args.positionals[0] ?? "");
  sparing(bytes.length);
  const used = mapFile(world, args.text("map"));
  const { text, encoding, asides } = sheetText(file, bytes, typedEncoding(args) ?? used?.encoding);
  const delimiter = typedSeparator(args) ?? used?.map.delimiter;
  const { sheet, problems } = parseSheet(text, file, delimiter === undefined ? {} : { delimiter });
  if (sheet.rows.length === 0) throw new Stop(1, problems);
  const known = knownEngines(logbook);
  const {
    map: read,
    open,
    why,
  } = used === undefined
    ? guessed(args, io, sheet, { known, encoding, gauges: logbook.gauges })
    : { map: withTyped(used, args, io.today), open: [], why: [] };
  const map = withIgnition(withSupply(read, args), args);
  return {
    ...{ file, shape: problems, map, used, open, why },
    taken: open.length > 0 ? undefined : takenFrom(sheet, map, { used, today: io.today }),
    unread: map.readings.columns.length === 0 ? [] : unreadColumns(sheet, map),
    asides: [...asides, ...(used?.asides ?? [])],
  };
};

/** What was typed of how new engines fire stands in the map, so that one laid down says it the next time. */
const withIgnition = (map: ImportMap, args: Args): ImportMap => {
  const typed = ignitions.find((one) => one === args.text("ignition"));
  if (typed === undefined) return map;
  const engines = map.engines.map((one) => (one.ignition === "unknown" ? { ...one, ignition: typed } : one));
  return { ...map, engines };
};
const ignitions = ["spark", "compression"] as const;

/** A gauge that is named tells its unit where nothing in the sheet does. */
const guessed = (
  args: Args,
  io: Io,
  sheet: Sheet,
  { gauges, ...known }: Parameters<typeof importHints>[2] & Pick<Logbook, "gauges">,
): GuessedMap => {
  const hints = importHints(args, io.today, known);
  refuseSecondSay(sheet, hints);
  const first = guessImportMap(sheet, hints);
  const gauge = gauges.find(({ id }) => id === args.text("gauge"));
  const isPercent = gauge?.dial !== undefined && gauge.dial !== "pressure";
  const unit = isPercent ? (gauge.dial === "percent-held" ? "% held" : "%") : gauge?.unit;
  const isOpen = args.text("unit") === undefined && first.open.some(({ code }) => code === "unit");
  return isOpen && unit !== undefined ? guessImportMap(sheet, { ...hints, unit }) : first;
};

/** @throws Stop 2 where the sheet has a column of its own for the gauge or the person that was typed */
const refuseSecondSay = (sheet: Sheet, { gauge, by, ...others }: ImportHints): void => {
  if (gauge === undefined && by === undefined) return;
  const { map } = guessImportMap(sheet, others);
  const faults = Object.keys({
    ...(gauge === undefined ? {} : { gauge }),
    ...(by === undefined ? {} : { by }),
  }).flatMap((name) => {
    const own = name === "gauge" ? map.gauge : map.by;
    if (own === undefined || !("column" in own)) return [];
    return [
      usageFault(
        "from-and-option",
        `--${name}, and column ${own.column} of the sheet says it too`,
        "one of the two: an option fills what the sheet leaves open",
        `leave --${name} out`,
      ),
    ];
  });
  if (faults.length > 0) throw new Stop(2, faults);
};

const takenFrom = (
  sheet: Sheet,
  map: ImportMap,
  { used, today }: { readonly used: MapFile | undefined; readonly today: string },
): Imported => {
  const taken = importReadings(sheet, map, { today, ...(used === undefined ? {} : { place: used.place }) });
  if (!taken.ok) throw new Stop(1, taken.problems);
  return taken.value;
};

/** What the logbook has already, so that the sheet's names can be matched. */
const knownEngines = (logbook: Logbook) =>
  logbook.ids.flatMap((id) => {
    const file = textOf(logbook.world, `${logbook.root}/${id}/engine.json`, []);
    const engine = file === undefined ? undefined : readEngine(file.text, file.file, id).engine;
    return engine === undefined ? [] : [{ id, name: engine.name, cylinders: engine.cylinders }];
  });
