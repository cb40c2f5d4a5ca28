// import: a stranger's spreadsheet into the logbook, read through a map that can be edited. First it only says what it would do.

import { type Answer, type Args, type Command, type Fault, Stop } from "../command.ts";
import { importDocument } from "../documents/import-document.ts";
import type { Io } from "../io.ts";
import { engineIdFault } from "../logbook/engine-id.ts";
import { type Logbook, openLogbook } from "../logbook/open-logbook.ts";
import { nodeWorld } from "../logbook/world.ts";
import { saidOnce } from "../render/aside.ts";
import { faultText } from "../render/faults.ts";
import { openFaults } from "../render/import/import-open.ts";
import { toMendFirst, worthALook } from "../render/import/import-left.ts";
import { importScreen } from "../render/import/import-screen.ts";
import { type EnginePlan, enginePlans } from "./import-steps/engine-plans.ts";
import { importOptions, mapTerms } from "./import-steps/import-options.ts";
import {
  type ImportResult,
  faultsToMend,
  keptOutFaults,
  keptOutRest,
  slipsOf,
} from "./import-steps/import-result.ts";
import { layDown } from "./import-steps/map-file.ts";
import { commandLine, nextLine } from "./import-steps/next-line.ts";
import { type ReadSheet, readSheet } from "./import-steps/read-sheet.ts";
import { type SavedImport, saveImport } from "./import-steps/save-import.ts";
import { refuseDemo } from "./refuse-demo.ts";
import { checkTexts } from "./typed/typed-text.ts";

export const importSheet: Command = {
  name: "import",
  summary: "the readings of an old spreadsheet, saved as CSV; first it only says what it would add",
  examples: [
    "sealtrend import old.csv",
    "sealtrend import old.csv --unit psi --dates dmy --write",
    "sealtrend import old.csv --map old-map.json",
  ],
  positionals: [
    { name: "FILE", help: "the sheet as CSV, or - for standard input; it is never changed", need: "must" },
  ],
  options: importOptions,
  terms: mapTerms,
  run: async (args, io) => {
    checkTexts(args, ["gauge", "by"]);
    checkEngine(args);
    const world = nodeWorld(io);
    const logbook = await openLogbook(world, "write", args.text("logbook"));
    refuseDemo(logbook);
    const read = await readSheet(args, io, logbook);
    const plans = enginePlans({
      logbook,
      map: { ...read.map, engines: read.taken?.engines ?? read.map.engines },
      tests: read.taken?.tests ?? [],
      ignition: args.text("ignition"),
      differing: args.flag("again") ? "added" : "kept out",
    });
    const laid = laidDown(args, logbook, read);
    if (read.open.length > 0 && args.flag("write")) throw new Stop(2, openFaults(read.open), laid.after);
    const isNew = plans.some(({ placed }) => placed.added.length > 0);
    const saved =
      isNew && args.flag("write") ? await saveImport(logbook, plans, commandLine(args)) : undefined;
    const result = resultOf(args, { read, plans: saved?.plans ?? plans, saved, laid });
    return answer(args, io, { result, read, logbook, saved });
  },
};

/** @throws Stop 2 for what cannot be the name of an engine: the readings would go to one of another name */
const checkEngine = (args: Args): void => {
  const typed = args.text("engine");
  const fault = typed === undefined ? undefined : engineIdFault(typed);
  if (fault !== undefined) throw new Stop(2, [fault]);
};

interface LaidDown {
  readonly mapFile?: NonNullable<ImportResult["mapFile"]>;
  /** Said where the command stops all the same. */
  readonly after: string;
}

const laidDown = (args: Args, { world }: Logbook, { map, used }: ReadSheet): LaidDown => {
  const typed = args.text("map");
  if (used !== undefined) return { mapFile: { file: used.file, state: "used" }, after: "" };
  if (typed === undefined) return { after: "" };
  const file = layDown(world, typed, map);
  return { mapFile: { file, state: "laid down" }, after: `the guess is laid down in ${file}\n` };
};

interface Came {
  readonly read: ReadSheet;
  readonly plans: readonly EnginePlan[];
  readonly saved: SavedImport | undefined;
  readonly laid: LaidDown;
}

const resultOf = (args: Args, { read, plans, saved, laid }: Came): ImportResult => {
  const { taken } = read;
  const isNew = plans.some(({ placed }) => placed.added.length > 0);
  const done = saved === undefined ? "would add" : "added";
  const state = read.open.length > 0 ? "open" : isNew ? done : "nothing new";
  return {
    file: read.file,
    state,
    purpose: args.flag("write") ? "write" : "look",
    map: read.map,
    ...(laid.mapFile === undefined ? {} : { mapFile: laid.mapFile }),
    why: read.why,
    open: read.open,
    ...(taken === undefined ? {} : { counts: taken.counts }),
    plans,
    left: taken?.left ?? [],
    moreLeft: taken?.moreLeft ?? [],
    shape: read.shape,
    unread: read.unread,
    remarks: taken?.remarks ?? [],
    next: nextLine(args, {
      state,
      open: read.open,
      plans,
      file: read.file,
      hasMap: laid.mapFile !== undefined,
    }),
    ...(saved === undefined ? {} : { undo: saved.written.undo }),
  };
};

interface Told {
  readonly result: ImportResult;
  readonly read: ReadSheet;
  readonly logbook: Logbook;
  readonly saved: SavedImport | undefined;
}

const answer = (args: Args, io: Io, { result, read, logbook, saved }: Told): Answer => {
  const faults = keptOutFaults(result);
  const where =
    saved !== undefined && logbook.place.state === "new" ? [`your logbook is ${logbook.root}`] : [];
  const said = saidOnce([...where, ...logbook.asides, ...read.asides, ...(saved?.written.asides ?? [])]);
  const toMend = faultsToMend(result);
  const told = args.flag("write")
    ? faultText(faults, io.width, "folded", keptOutRest(result)) +
      listText(toMendFirst, toMend, io.width) +
      listText(worthALook, slipsOf(result), io.width)
    : "";
  const aside = said + told;
  const detail = args.flag("why") ? "why" : "short";
  return {
    exit: result.open.length > 0 ? 2 : faults.length + toMend.length > 0 ? 1 : 0,
    text: `${importScreen(result, { width: io.width, detail }).join("\n")}\n`,
    json: importDocument(result, saved?.written, io.cwd),
    ...(aside === "" ? {} : { aside }),
  };
};

const listText = (title: string, faults: readonly Fault[], width: number): string =>
  faults.length === 0 ? "" : `${title}\n${faultText(faults, width)}`;
