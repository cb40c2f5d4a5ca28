// engine add: a new engine, from options, from a file, or asked.

import { resolve } from "node:path";
import { type JsonObject, readEngine } from "@sealtrend/core/parts";
import { type Args, type Command, Stop } from "../command.ts";
import { enginesDocument } from "../documents/engines-document.ts";
import { missingFields } from "../documents/missing-fields.ts";
import type { Io } from "../io.ts";
import { newEngineFault } from "../logbook/engine-id.ts";
import { engineOverview } from "../logbook/engine-overview.ts";
import { openLogbook, stopOnErrors } from "../logbook/open-logbook.ts";
import { readFile } from "../logbook/read-file.ts";
import { shown } from "../logbook/words.ts";
import { type World, nodeWorld } from "../logbook/world.ts";
import { write } from "../logbook/write.ts";
import { typedLine } from "../options/quote.ts";
import { saidOnce } from "../render/aside.ts";
import { faultText } from "../render/faults.ts";
import { savedLine } from "../render/saved-line.ts";
import { exampleDry } from "./example-readings.ts";
import { askMissing } from "./ask-missing.ts";
import { engineFieldsTyped, engineOptions } from "./engine-options.ts";
import { newEngine } from "./new-engine.ts";
import { refuseDemo } from "./refuse-demo.ts";
import { usage } from "./usage.ts";

export const engineAdd: Command = {
  name: "engine add",
  summary: "begin the record of a new engine",
  examples: [
    "sealtrend engine add pump --cylinders 4 --ignition compression --minimum 26bar --meter h",
    "sealtrend engine add pump --from pump.json",
  ],
  positionals: [{ name: "NAME", help: "a short name, such as pump: it names a folder", need: "must" }],
  options: [
    ...engineOptions,
    { name: "from", value: "FILE", help: "take over an engine.json that somebody else made" },
  ],
  run: async (args, io) => {
    const [id = ""] = args.positionals;
    const world = nodeWorld(io);
    const opened = await openLogbook(world, "write", args.text("logbook"));
    refuseDemo(opened);
    const bad = newEngineFault(world, opened.root, id);
    if (bad !== undefined) throw new Stop(2, [bad]);
    const from = args.text("from");
    const { fields, cautions } =
      from === undefined ? await fieldsTyped(args, io, id) : fieldsFrom(args, world, id, from);
    const { changes } = newEngine(world, opened.root, id, fields);
    const command = typedLine(["engine", "add", id, ...givenWords(args)]);
    const written = await write(world, { root: opened.root, command, changes });
    const logbook = await openLogbook(world, "write", args.text("logbook") ?? opened.root);
    const overview = engineOverview(logbook, id);
    const { engine } = overview;
    const missing = engine === undefined ? [] : missingFields(engine, overview.fields);
    const count = engine?.cylinders.length ?? 0;
    const kind = engine?.ignition === "unknown" ? "ignition not known" : `${engine?.ignition ?? ""} ignition`;
    const said = `added  ${id}: ${count === 1 ? "1 cylinder" : `${String(count)} cylinders`}, ${kind}`;
    const example = exampleDry(engine ?? { ignition: "unknown", cylinders: [] });
    const where = opened.place.state === "new" ? [`your logbook is ${opened.root}`] : [];
    const lines = [
      savedLine(said, written.undo, io.width),
      "",
      `next   sealtrend enter ${id} ${example}`,
      ...(missing.length === 0 ? [] : [`       what else would help: sealtrend engine show ${id}`]),
    ];
    const aside = saidOnce([...where, ...opened.asides, ...written.asides]) + cautions;
    return {
      exit: 0,
      text: `${lines.join("\n")}\n`,
      json: enginesDocument(logbook.root, [{ overview, missing }], { file: overview.file }),
      ...(aside === "" ? {} : { aside }),
    };
  },
};

interface Fields {
  readonly fields: JsonObject;
  /** Said on stderr. */
  readonly cautions: string;
}

const fieldsTyped = async (typed: Args, io: Io, id: string): Promise<Fields> => {
  const args = await askMissing(typed, io, [
    {
      option: "cylinders",
      question: "how many cylinders, or their labels such as L R: ",
      mend: `sealtrend engine add ${id} --cylinders 4 --ignition ${typed.text("ignition") ?? "spark"}`,
      found: `how many cylinders has ${id}?`,
    },
    {
      option: "ignition",
      question: "ignition: spark, compression (a diesel) or unknown: ",
      mend: `sealtrend engine add ${id} --cylinders "${typed.text("cylinders") ?? "4"}" --ignition spark`,
      found: `how does ${id} fire?`,
    },
  ]);
  const { fields, faults } = engineFieldsTyped(args);
  if (faults.length > 0) throw new Stop(2, faults);
  return { fields, cautions: "" };
};

/** The fields of somebody's engine.json. @throws Stop 1 with every fault of it, 3 when it cannot be read */
const fieldsFrom = (args: Args, world: World, id: string, from: string): Fields => {
  const both = engineOptions.find(({ name }) => args.text(name) !== undefined);
  if (both !== undefined)
    throw usage(
      "from-and-option",
      `--from and --${both.name} together`,
      "the file alone",
      `leave --${both.name} out, then: sealtrend engine set ${id}`,
    );
  const path = resolve(world.cwd, from);
  const { text, cautions: said } = readFile(world, path);
  const { problems } = readEngine(text, shown(world.cwd, path), id);
  stopOnErrors(problems);
  const fields = JSON.parse(text) as JsonObject;
  return { fields, cautions: faultText([...said, ...problems], 80) };
};

const givenWords = (args: Args): readonly string[] =>
  [...engineOptions.map(({ name }) => name), "from"].flatMap((name) => {
    const value = args.text(name);
    return value === undefined ? [] : [`--${name}`, value];
  });
