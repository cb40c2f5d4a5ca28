// Every fault the core can name, as a folder: a bad input, what is printed of it to the letter, and the mended input.
// `{{x*70000}}` in an input stands for so many of that sign. expected.txt is hand-checked prose, not a snapshot.

import { existsSync, readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import {
  type Gauge,
  type NamedText,
  type Problem,
  faultSheets,
  importReadings,
  parseSheet,
  problemCodes,
  readEngine,
  readEngineRecord,
  readFaults,
  readGauges,
  readImportMap,
  readLogbook,
  readRuleSheet,
  readTypedLine,
  readYardEngine,
  readYardHeader,
  startTyping,
} from "@sealtrend/core/parts";
import { afterAll, describe, expect, test } from "vitest";
import { faultText } from "../../packages/cli/src/render/faults.ts";
import { uncarried } from "./carries.ts";

const here = new URL("./", import.meta.url);
const folders = readdirSync(here, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && !entry.name.startsWith("shell"))
  .map(({ name }) => name);

const expanded = (text: string): string =>
  text.replace(/\{\{(.)\*(\d+)\}\}/g, (_, sign: string, count: string) => sign.repeat(Number(count)));

/** One file of a case; undefined where the case has none. */
const fileOf = (folder: string, file: string): NamedText | undefined => {
  const url = new URL(`${folder}/${file}`, here);
  return existsSync(url) ? { file, text: expanded(readFileSync(url, "utf8")) } : undefined;
};

const smallEngine = { file: "engine.json", text: '{ "cylinders": ["1", "2", "3", "4"], "ignition": "spark" }' };

/** The sheets of a case in place of the shipped ones; those named in left-out.txt are missing. */
const problemsOfTables = (folder: string): readonly Problem[] => {
  const place = new URL(`${folder}/faults/`, here);
  if (!existsSync(place)) return [];
  const textOf = (url: URL): string => readFileSync(url, "utf8");
  const own = readdirSync(place).filter((name) => name.endsWith(".csv"));
  const leftOut = readdirSync(place).includes("left-out.txt") ? textOf(new URL("left-out.txt", place)) : "";
  const shipped = faultSheets.filter((name) => !leftOut.includes(name) && !own.includes(name));
  const outcome = readFaults({
    ...Object.fromEntries(shipped.map((name) => [name, textOf(new URL(`../../data/faults/${name}`, here))])),
    ...Object.fromEntries(own.map((name) => [name, textOf(new URL(name, place))])),
  });
  return outcome.ok ? outcome.cautions : outcome.problems;
};

/** The lines of typed.txt, each in what those before it have set. */
const problemsOfTyping = (typed: NamedText | undefined, json: NamedText): readonly Problem[] => {
  const { engine } = readEngine(json.text, json.file, "pump");
  if (typed === undefined || engine === undefined) return [];
  let context = startTyping("2026-03-02");
  return typed.text
    .trimEnd()
    .split("\n")
    .flatMap((text, i) => {
      const read = readTypedLine(text, context, engine);
      if (read.kind === "context") context = read.context;
      return read.kind === "fault" ? read.problems.map((one) => ({ ...one, file: typed.file, line: i + 1 })) : [];
    });
};

const smallMap = {
  file: "map.json",
  text: `{ "schema": "sealtrend/import-map@1", "delimiter": ",", "decimal": ".", "firstRow": 2, "readings": { "columns": ["C-D"] },
    "engine": { "column": "A" }, "date": { "column": "B" }, "cylinder": { "headerRow": 1 }, "what": { "fixed": "dry" },
    "unit": { "fixed": "psi" }, "notTaken": ["x"], "engines": [{ "sheet": "Pump", "engine": "pump", "cylinders": ["1", "2"] }] }`,
};

/** A stranger's sheet through its map: what is wrong with either, and what is left out. */
const problemsOfSheet = (sheet: NamedText | undefined, map: NamedText): readonly Problem[] => {
  if (sheet === undefined) return [];
  const parsed = parseSheet(sheet.text, sheet.file);
  const read = readImportMap(map.text, map.file);
  if (!read.ok || parsed.problems.length > 0) return [...parsed.problems, ...(read.ok ? [] : read.problems)];
  const imported = importReadings(parsed.sheet, read.value.map, {
    place: (path) => read.value.place(path),
    today: "2026-12-31",
  });
  return imported.ok ? imported.value.left.map((one) => one.problem) : imported.problems;
};

/** A table of one engine, pump, as `yard` reads it. */
const problemsOfYard = (fleet: NamedText | undefined): readonly Problem[] => {
  if (fleet === undefined) return [];
  const [head = "", ...rows] = fleet.text.split(/(?<=\n)/);
  const { header, problems } = readYardHeader(head, fleet.file);
  if (header === undefined) return problems;
  const { problems: found, ofHeader } = readYardEngine(header, "pump", [{ line: 2, text: rows.join("") }]);
  return [...ofHeader, ...found];
};

/** Reads all files of a case as a logbook of one engine, its rule sheet and its tables of faults. */
const problemsOf = async (folder: string): Promise<readonly Problem[]> => {
  const named = (file: string) => fileOf(folder, file);
  const logbook = named("logbook.json");
  const gaugeFile = named("gauges.csv");
  const rules = named("rules.csv");
  const book = readLogbook(logbook?.text ?? "{}", "logbook.json");
  const none: { gauges: readonly Gauge[]; problems: readonly Problem[] } = { gauges: [], problems: [] };
  const gauges = gaugeFile === undefined ? none : readGauges(gaugeFile.text, gaugeFile.file);
  const [tests, services, notes, measurements] = [
    "tests.csv",
    "services.csv",
    "notes.csv",
    "measurements.csv",
  ].map(named);
  const record = readEngineRecord(
    {
      id: "pump",
      engine: named("engine.json") ?? smallEngine,
      ...(tests === undefined ? {} : { tests }),
      ...(services === undefined ? {} : { services }),
      ...(notes === undefined ? {} : { notes }),
      ...(measurements === undefined ? {} : { measurements }),
    },
    gauges.gauges,
    book.logbook,
  );
  const sheet = rules === undefined ? undefined : await readRuleSheet(rules.text, rules.file);
  const ofSheet = sheet === undefined ? [] : sheet.ok ? sheet.cautions : sheet.problems;
  const typing = problemsOfTyping(named("typed.txt"), named("engine.json") ?? smallEngine);
  const ofTables = problemsOfTables(folder);
  const strange = problemsOfSheet(named("sheet.csv"), named("map.json") ?? smallMap);
  const yard = problemsOfYard(named("fleet.csv"));
  return [...book.problems, ...gauges.problems, ...record.problems, ...ofSheet, ...ofTables, ...typing, ...strange, ...yard];
};

test("every code of the catalogue has a folder here, and every folder a code", () => {
  expect(folders.toSorted()).toEqual(problemCodes.toSorted());
});

describe.each(folders)("%s", (code) => {
  test("is the only fault of the bad input, and is printed to the letter", async () => {
    const problems = await problemsOf(`${code}/bad`);
    expect(new Set(problems.map((problem) => problem.code))).toEqual(new Set([code]));
    expect(faultText(problems, 80)).toBe(readFileSync(new URL(`${code}/expected.txt`, here), "utf8"));
  });

  test("is gone from the mended input, and nothing else is said", async () => {
    expect(faultText(await problemsOf(`${code}/mended`), 80)).toBe("");
  });

  test("is mended by what its mend says, word for word, or mend-by-hand.txt says what choice is left", async () => {
    const problems = await problemsOf(`${code}/bad`);
    const open = filesOf(code).flatMap((file) => {
      const ofFile = problems.filter((one) => one.file === undefined || file.endsWith(one.file));
      const [bad, mended] = ["bad", "mended"].map((state) => fileOf(`${code}/${state}`, file)?.text ?? "");
      return uncarried(ofFile, bad ?? "", mended ?? "").map((part) => `${file}:${part}`);
    });
    expect(open).toEqual(byHand(code));
  });
});

/** What is new in the mended input and leaves a choice, as mend-by-hand.txt lists it below the line that says why. */
const byHand = (code: string): readonly string[] =>
  fileOf(code, "mend-by-hand.txt")?.text.trimEnd().split("\n").slice(1) ?? [];

/** The files of a case by their path, be they bad or mended. */
const filesOf = (code: string): readonly string[] => [
  ...new Set(
    ["bad", "mended"].flatMap((state) =>
      readdirSync(new URL(`${code}/${state}/`, here), { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map(({ parentPath, name }) => join(parentPath, name).replace(/^.*\/(?:bad|mended)\//, "")),
    ),
  ),
];

afterAll(() => {
  const open = folders.map((code) => byHand(code).length);
  process.stdout.write(
    `faults of data: ${String(folders.length)} codes; ${String(open.reduce((sum, one) => sum + one, 0))} mends of ${String(open.filter((one) => one > 0).length)} codes leave a choice\n`,
  );
});
