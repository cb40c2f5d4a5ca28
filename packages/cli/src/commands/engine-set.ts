// engine set: one field of engine.json, every other byte as it was.

import { join } from "node:path";
import { type Engine, type Problem, parseTable, readEngine, readTypedSizes } from "@sealtrend/core/parts";
import { type Command, type Fault, Stop } from "../command.ts";
import { enginesDocument } from "../documents/engines-document.ts";
import { missingFields } from "../documents/missing-fields.ts";
import { TypedJson, withField, withoutField } from "../logbook/edit-json.ts";
import { limitIn } from "../logbook/edit-limit.ts";
import { engineOverview, flatFields, isObject } from "../logbook/engine-overview.ts";
import { type Logbook, openLogbook } from "../logbook/open-logbook.ts";
import { readFile, readFileIfThere } from "../logbook/read-file.ts";
import { shown } from "../logbook/words.ts";
import { nodeWorld } from "../logbook/world.ts";
import { type Change, write } from "../logbook/write.ts";
import { quoted, typedLine } from "../options/quote.ts";
import { saidOnce } from "../render/aside.ts";
import { offeredTexts } from "../render/engine-limits.ts";
import { faultText } from "../render/faults.ts";
import { changesTold, limitChanges } from "../render/limit-changes.ts";
import { savedLine } from "../render/saved-line.ts";
import { wrapText } from "../render/table.ts";
import { typedValue } from "../render/typed-value.ts";
import { valuesOfField } from "./engine-options.ts";
import { type Field, isSetWhole, newValue, sizesExample, sizesExpected, wordsOf } from "./engine-field.ts";
import { limitEdit } from "./engine-limit.ts";
import { holdsRows, withCylinderColumns } from "./cylinder-columns.ts";
import { refuseDemo } from "./refuse-demo.ts";
import { theEngine } from "./the-engine.ts";
import { usage } from "./usage.ts";

export const engineSet: Command = {
  name: "engine set",
  summary: "change one thing that is known of an engine",
  examples: [
    "sealtrend engine set pump limits.compression.minimum 26bar",
    'sealtrend engine set pump limits.bore.taper.wear "up to 0.10mm, manual p. 62"',
    "sealtrend engine set pump wetTest.source -",
  ],
  positionals: [
    theEngine,
    {
      name: "PATH",
      help: "the field, such as geometry.bore; all of them: sealtrend engine show",
      need: "must",
    },
    {
      name: "VALUE",
      help: "its value, such as 86mm; - takes the field out",
      need: "may",
      wordsBy: (told) => valuesOfField(told("PATH") ?? ""),
    },
  ],
  options: [],
  run: async (args, io) => {
    const world = nodeWorld(io);
    const logbook = await openLogbook(world, "write", args.text("logbook"));
    refuseDemo(logbook);
    const field = wordsOf(args, logbook);
    const { id, path, typed, limit } = field;
    const file = join(logbook.root, id, "engine.json");
    const name = shown(io.cwd, file);
    const old = readFile(world, file).text;
    stopOnNoJson(old, name);
    const before = valueAt(old, field);
    const edit = editOf(field);
    const changes: Change[] = [
      {
        kind: "replace",
        path: `${id}/engine.json`,
        text: ({ text }) => checked(text, edit(text, name), { id, path, file: name }),
      },
    ];
    if (path === "cylinders") changes.push(...columnChanges(logbook, id, before, newValue(id, path, typed)));
    const command = typedLine(["engine", "set", id, path, typed]);
    const written = await write(world, { root: logbook.root, command, changes });
    const overview = engineOverview(logbook, id);
    const missing = overview.engine === undefined ? [] : missingFields(overview.engine, overview.fields);
    const done = written.files.length > 0;
    const after = valueAt(readFile(world, file).text, field);
    const now = after === undefined ? "not known" : limit === undefined ? typedValue(after) : typed;
    const told = toldOf(field, { before, now }, [readEngine(old, name, id).engine, overview.engine]);
    const text = done
      ? [
          savedLine(`set  ${id} ${told.said}`, written.undo, io.width),
          ...told.lines.flatMap((line) => wrapText(line, io.width, "     ")),
        ].join("\n")
      : wrapText(`${id} ${path} is ${now} already; nothing was written`, io.width).join("\n");
    const faults = overview.engineFaults.length === 0 ? "" : faultText(overview.engineFaults, io.width);
    const aside = saidOnce([...logbook.asides, ...written.asides]) + faults;
    return {
      exit: 0,
      text: `${text}\n`,
      json: enginesDocument(
        logbook.root,
        [{ overview, missing }],
        done ? { file: overview.file, path, before, after } : undefined,
      ),
      ...(aside === "" ? {} : { aside }),
    };
  },
};

/** The text after the change; undefined where something that is no object stands in the way. */
type Edit = (text: string, file: string) => string | undefined;

const editOf = ({ id, path, typed, limit, offered }: Field): Edit => {
  if (limit !== undefined) return limitEdit({ id, path, typed, limit });
  if (typed === "-") return (text) => withoutField(text, path);
  if (offered !== undefined) {
    const sizes = sizesJson(id, path, typed);
    return (text) => withField(text, path, sizes);
  }
  const value = newValue(id, path, typed);
  return (text) => withField(text, path, asTypedOf(path, value, typed));
};

/** @throws Stop 2 for what is no list of sizes */
const sizesJson = (id: string, path: string, typed: string): TypedJson => {
  const read = readTypedSizes(typed);
  if (read !== undefined)
    return new TypedJson(`{ "unit": "${read.unit}", "sizes": [${read.sizes.join(", ")}] }`);
  const isBare = readTypedSizes(`${typed}mm`) !== undefined;
  const line = typedLine(["engine", "set", id, path, isBare ? `${typed}mm` : sizesExample]);
  const which = isBare ? `${quoted(`${typed}in`)} if inches; if millimetres: ` : "";
  throw usage("field-bad", `${path} "${typed}"`, sizesExpected, which + line);
};

interface Told {
  readonly said: string;
  readonly lines: readonly string[];
}

/** What changed: a field by its value, limits and sizes of parts in words. */
const toldOf = (
  { path, limit }: Field,
  { before, now }: { readonly before: unknown; readonly now: string },
  [old, fresh]: readonly [Engine | undefined, Engine | undefined],
): Told => {
  if (old !== undefined && fresh !== undefined) {
    if (limit !== undefined || path === "limits.clearances") {
      const { said, lines } = changesTold(limitChanges(old.clearances, fresh.clearances));
      return { said: limit === undefined ? `${path}: ${said}` : said, lines };
    }
    if (path.startsWith("limits.offered"))
      return { said: sizesText("limits.offered", old, fresh), lines: [] };
  }
  const was = before === undefined ? "not known" : typedValue(before);
  return { said: `${path}: ${was} -> ${now}`, lines: [] };
};

/** `limits.offered: none -> bore 0.25 0.5 mm`. */
const sizesText = (path: string, old: Engine, fresh: Engine): string => {
  const [was, now] = [old, fresh].map((engine) => offeredTexts(engine).join(", ") || "none");
  return `${path}: ${was ?? ""} -> ${now ?? ""}`;
};

/** What was typed as JSON keeps the digits that it was typed with. */
const asTypedOf = (path: string, value: unknown, typed: string): unknown =>
  typeof value === "object" && isSetWhole(path) ? new TypedJson(typed) : value;

interface Place {
  readonly id: string;
  readonly path: string;
  readonly file: string;
}

/** @throws Stop 2 for a fault that the change would bring */
const checked = (text: string, after: string | undefined, { id, path, file }: Place): string => {
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
        `for another engine: ${typedLine(["engine", "add", `${id}-2`, "--cylinders", labels.join(" "), "--ignition", "spark"])}`,
      );
    const after = withCylinderColumns(text, old, labels);
    if (after === undefined)
      throw new Stop(1, parseTable(text, shown(world.cwd, join(root, id, "tests.csv"))).problems);
    return after;
  };
  return [{ kind: "replace", path: `${id}/tests.csv`, text: ({ text }) => change(text) }];
};

/** @throws Stop 1 where the file is no JSON object */
const stopOnNoJson = (text: string, file: string): void => {
  const bad = readEngine(text, file, "").problems.filter(({ code }) => code === "json-bad");
  if (bad.length > 0) throw new Stop(1, bad);
};

const valueAt = (text: string, { path, limit, offered }: Field): unknown => {
  if (limit !== undefined) return limitIn(text, limit);
  const fields = JSON.parse(text) as Readonly<Record<string, unknown>>;
  const at = (wanted: string): unknown => flatFields(fields).find(([name]) => name === wanted)?.[1];
  if (offered === undefined) return at(path);
  const sizes = at("limits.offered");
  return isObject(sizes) ? sizes[offered] : undefined;
};
