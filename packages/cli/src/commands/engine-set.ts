// engine set: one field of engine.json, every other byte as it was.

import { join } from "node:path";
import { type Problem, parseTable, readEngine } from "@sealtrend/core";
import { type Command, type Fault, Stop } from "../command.ts";
import { enginesDocument } from "../documents/engines-document.ts";
import { missingFields } from "../documents/missing-fields.ts";
import { withField, withoutField } from "../logbook/edit-json.ts";
import { engineOverview, flatFields } from "../logbook/engine-overview.ts";
import { type Logbook, openLogbook } from "../logbook/open-logbook.ts";
import { readFile, readFileIfThere } from "../logbook/read-file.ts";
import { shown } from "../logbook/words.ts";
import { nodeWorld } from "../logbook/world.ts";
import { type Change, write } from "../logbook/write.ts";
import { typedLine } from "../options/quote.ts";
import { saidOnce } from "../render/aside.ts";
import { faultText } from "../render/faults.ts";
import { savedLine } from "../render/saved-line.ts";
import { wrapText } from "../render/table.ts";
import { typedValue } from "../render/typed-value.ts";
import { newValue, wordsOf } from "./engine-field.ts";
import { holdsRows, withCylinderColumns } from "./cylinder-columns.ts";
import { refuseDemo } from "./refuse-demo.ts";
import { usage } from "./usage.ts";

export const engineSet: Command = {
  name: "engine set",
  summary: "change one thing that is known of an engine",
  examples: [
    "sealtrend engine set pump limits.compression.minimum 26bar",
    'sealtrend engine set pump firingOrder "1 3 4 2"',
    "sealtrend engine set pump wetTest.source -",
  ],
  positionals: [
    { name: "ENGINE", help: "the engine; may be left out where there is only one", need: "may" },
    {
      name: "PATH",
      help: "the field, such as geometry.bore; sealtrend engine show lists them",
      need: "must",
    },
    { name: "VALUE", help: "its value, such as 86mm; - takes the field out", need: "may" },
  ],
  options: [],
  run: async (args, io) => {
    const world = nodeWorld(io);
    const logbook = await openLogbook(world, "write", args.text("logbook"));
    refuseDemo(logbook);
    const { id, path, typed } = wordsOf(args, logbook);
    const file = join(logbook.root, id, "engine.json");
    const before = valueAt(readFile(world, file).text, path, shown(io.cwd, file));
    const value = typed === "-" ? undefined : newValue(id, path, typed);
    const changes: Change[] = [
      {
        kind: "replace",
        path: `${id}/engine.json`,
        text: ({ text }) => changed(text, { id, path, value, file: shown(io.cwd, file) }),
      },
    ];
    if (path === "cylinders") changes.push(...columnChanges(logbook, id, before, value));
    const command = typedLine(["engine", "set", id, path, typed]);
    const written = await write(world, { root: logbook.root, command, changes });
    const overview = engineOverview(logbook, id);
    const missing = overview.engine === undefined ? [] : missingFields(overview.engine, overview.fields);
    const done = written.files.length > 0;
    const was = before === undefined ? "not known" : typedValue(before);
    const now = value === undefined ? "not known" : typedValue(value);
    const text = done
      ? savedLine(`set  ${id} ${path}: ${was} -> ${now}`, written.undo, io.width)
      : wrapText(`${id} ${path} is ${now} already; nothing was written`, io.width).join("\n");
    const faults = overview.engineFaults.length === 0 ? "" : faultText(overview.engineFaults, io.width);
    const aside = saidOnce([...logbook.asides, ...written.asides]) + faults;
    return {
      exit: 0,
      text: `${text}\n`,
      json: enginesDocument(
        logbook.root,
        [{ overview, missing }],
        done ? { file: overview.file, path, before, after: value } : undefined,
      ),
      ...(aside === "" ? {} : { aside }),
    };
  },
};

interface Wanted {
  readonly id: string;
  readonly path: string;
  readonly value: unknown;
  readonly file: string;
}

const changed = (text: string, { id, path, value, file }: Wanted): string => {
  const after = value === undefined ? withoutField(text, path) : withField(text, path, value);
  if (after === undefined)
    throw usage(
      "field-blocked",
      `a part of ${path} in ${file} is no object`,
      "an object in { }",
      `mend ${file} in an editor`,
    );
  const known = new Set(errorsIn(text, file, id).map(({ code, found }) => `${code} ${found}`));
  const fresh = errorsIn(after, file, id).filter(({ code, found }) => !known.has(`${code} ${found}`));
  if (fresh.length > 0)
    throw new Stop(
      2,
      fresh.map((fault) => asTyped(fault, id, path)),
    );
  return after;
};

const errorsIn = (text: string, file: string, id: string): readonly Problem[] =>
  readEngine(text, file, id).problems.filter(({ severity }) => severity === "error");

/** A fault that the change would bring, said of what was typed. */
const asTyped = ({ code, severity, found, expected, mend }: Problem, id: string, path: string): Fault => {
  const other = ["banks", "firingOrder"].find(
    (name) => path === "cylinders" && found.startsWith(`${name} is `),
  );
  return {
    code,
    severity,
    found: `with that, ${found}`,
    expected,
    mend:
      other === undefined ? mend : `sealtrend engine set ${id} ${other} - first, and set it anew afterwards`,
  };
};

/** Readings stand under the labels of their cylinders: a label with readings under it stays. */
const columnChanges = (logbook: Logbook, id: string, before: unknown, value: unknown): readonly Change[] => {
  const { world, root } = logbook;
  const labels = Array.isArray(value) ? value.map(String) : [];
  const old = Array.isArray(before) ? before.map(String) : [];
  const current = readFileIfThere(world, join(root, id, "tests.csv"))?.text;
  if (current === undefined || labels.length === 0) return [];
  const lost = old.filter((label) => !labels.includes(label));
  const change = (text: string): string => {
    if (lost.length > 0 && holdsRows(text))
      throw usage(
        "cylinders-in-use",
        `${id} has readings under cylinder ${lost.join(", ")}, which the new labels leave out: they would belong to nobody`,
        `the labels ${old.join(" ")}, and more if there are more`,
        "for another engine: sealtrend engine add",
      );
    const after = withCylinderColumns(text, old, labels);
    if (after === undefined)
      throw new Stop(1, parseTable(text, shown(world.cwd, join(root, id, "tests.csv"))).problems);
    return after;
  };
  return [{ kind: "replace", path: `${id}/tests.csv`, text: ({ text }) => change(text) }];
};

/** @throws Stop 1 where the file is no JSON object */
const valueAt = (text: string, path: string, file: string): unknown => {
  const { problems } = readEngine(text, file, "");
  const bad = problems.filter(({ code }) => code === "json-bad");
  if (bad.length > 0) throw new Stop(1, bad);
  const fields = JSON.parse(text) as Readonly<Record<string, unknown>>;
  return flatFields(fields).find(([name]) => name === path)?.[1];
};
