// how: how to make a test on this engine, one screen.

import {
  type Engine,
  type Procedure,
  type ProcedureKind,
  procedureFor,
  procedureKinds,
  readEngine,
  nearest,
} from "@sealtrend/core/parts";
import { type Args, type Command, Stop } from "../command.ts";
import { howDocument } from "../documents/how-document.ts";
import type { Io } from "../io.ts";
import { type Logbook, engineFiles, openLogbook, pickEngine, stopOnErrors } from "../logbook/open-logbook.ts";
import { nodeWorld } from "../logbook/world.ts";
import { howScreen } from "../render/how.ts";
import { shapeLines } from "../render/teardown/teardown-shapes.ts";
import { saidAside } from "./pick.ts";
import { theEngine } from "./the-engine.ts";
import { usage } from "./usage.ts";

export const how: Command = {
  name: "how",
  summary: "how to make a test: preparation, cautions, steps, what voids it",
  examples: ["sealtrend how dry tractor", "sealtrend how leak-down tractor --why"],
  positionals: [
    {
      name: "KIND",
      help: `${procedureKinds.join(", ")} (default dry); may stand second`,
      need: "may",
      choices: procedureKinds,
    },
    theEngine,
  ],
  options: [],
  run: async (args, io) => {
    const logbook = await logbookIfAny(args, io);
    const { kind, named } = wordsOf(args.positionals, logbook);
    const none = logbook === undefined || (logbook.ids.length === 0 && named === undefined);
    const engine = none ? undefined : engineOf(logbook, named);
    const procedure = engine === undefined ? general(kind) : procedureFor(kind, engine);
    const isWhy = args.flag("why");
    const typing = isWhy && kind === "teardown" ? ["", typingTitle, ...shapeLines(io.width)] : [];
    const lines = [...howScreen(procedure, { width: io.width, detail: isWhy ? "why" : "short" }), ...typing];
    const said =
      engine === undefined ? { aside: `${noEngine}\n` } : logbook === undefined ? {} : saidAside(logbook);
    return {
      exit: 0,
      text: `${lines.join("\n")}\n`,
      json: howDocument(kind, engine, procedure),
      ...said,
    };
  },
};

const typingTitle = "How the lines of `sealtrend teardown` are typed:";

const noEngine =
  "no engine in a logbook yet: this holds for any of them; yours: sealtrend engine add pump --cylinders 4 --ignition spark";

/** The logbook, or nothing where there is none at all. */
const logbookIfAny = async (args: Args, io: Io): Promise<Logbook | undefined> => {
  try {
    return await openLogbook(nodeWorld(io), "read", args.text("logbook"));
  } catch (error) {
    if (error instanceof Stop && error.faults[0]?.code === "logbook-none") return undefined;
    throw error;
  }
};

/** A kind and an engine, in either order. @throws Stop 2 for a word that is neither */
const wordsOf = (
  words: readonly string[],
  logbook: Logbook | undefined,
): { readonly kind: ProcedureKind; readonly named: string | undefined } => {
  const kindOf = (word: string | undefined): ProcedureKind | undefined =>
    procedureKinds.find((kind) => kind === word);
  const [first, second] = words;
  const kind = kindOf(first) ?? kindOf(second);
  const named = kindOf(first) !== undefined ? second : kind === undefined ? undefined : first;
  const ids = logbook?.ids ?? [];
  if (kind !== undefined && (named === undefined || ids.includes(named))) return { kind, named };
  if (kind === undefined && first === undefined) return { kind: "dry", named: undefined };
  if (kind === undefined && second === undefined && first !== undefined && ids.includes(first))
    return { kind: "dry", named: first };
  const strange =
    [first, second].find((word) => word !== undefined && kindOf(word) === undefined && !ids.includes(word)) ??
    second ??
    "";
  const known = kind === undefined ? [...procedureKinds, ...ids] : ids;
  const [near] = nearest(strange, known);
  throw usage(
    "word-unknown",
    kind === undefined && ids.includes(strange)
      ? `two engines: ${words.join(" and ")}`
      : `"${strange}" is ${kind === undefined ? "neither a test nor an engine here" : "no engine here"}`,
    known.length === 0 ? "an engine of your logbook" : `one of: ${known.join(", ")}`,
    near === undefined ? `sealtrend how ${kind ?? "dry"}` : `did you mean ${near}?`,
  );
};

const engineOf = (logbook: Logbook, named: string | undefined): Engine => {
  const id = pickEngine(logbook, named);
  const { engine: file } = engineFiles(logbook, id);
  const { engine, problems } = readEngine(file.text, file.file, id);
  stopOnErrors(problems);
  if (engine === undefined) throw new TypeError(`how: ${id} has no engine and no fault`);
  return engine;
};

/** For an engine of which nothing is known. */
const general = (kind: ProcedureKind): Procedure => {
  const { engine } = readEngine('{ "cylinders": ["1", "2", "3", "4"], "ignition": "unknown" }', "", "ENGINE");
  if (engine === undefined) throw new TypeError("how: the unknown engine cannot be read");
  const procedure = procedureFor(kind, engine);
  return { ...procedure, title: procedure.title.replace(/:.*/, ": any engine, spark or diesel") };
};
