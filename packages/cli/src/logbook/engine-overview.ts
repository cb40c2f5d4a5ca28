// One engine as `engine list`, `show`, `add` and `set` see it: its file, its fields, and how much is recorded.

import {
  type Engine,
  type JsonObject,
  type Problem,
  engineFields,
  readEngine,
  readEngineRecord,
} from "@sealtrend/core/parts";
import { type Logbook, engineFiles } from "./open-logbook.ts";

export interface EngineOverview {
  readonly id: string;
  /** engine.json as messages name it. */
  readonly file: string;
  /** Absent where engine.json has a fault. */
  readonly engine?: Engine;
  /** engine.json as it stands; empty where it is no JSON. */
  readonly fields: JsonObject;
  readonly tests: number;
  /** Day of the latest test. */
  readonly last?: string;
  /** Faults of engine.json, and of all files. */
  readonly engineFaults: readonly Problem[];
  readonly faults: readonly Problem[];
}

/** @param asOf - tests after this day are left out  @throws Stop 3 when a file cannot be read */
export const engineOverview = (logbook: Logbook, id: string, asOf?: string): EngineOverview => {
  const files = engineFiles(logbook, id);
  const { text, file } = files.engine;
  const { engine, problems: own } = readEngine(text, file, id);
  const { record, problems } = readEngineRecord(files, logbook.gauges, logbook.facts);
  const tests = (record?.tests ?? []).filter(({ date }) => asOf === undefined || date <= asOf);
  const last = tests.at(-1)?.date;
  return {
    id,
    file,
    ...(engine === undefined ? {} : { engine }),
    fields: jsonObject(text),
    tests: tests.length,
    ...(last === undefined ? {} : { last }),
    engineFaults: own.filter(({ severity }) => severity === "error"),
    faults: problems.filter(({ severity }) => severity === "error"),
  };
};

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const jsonObject = (text: string): JsonObject => {
  try {
    const value: unknown = JSON.parse(text);
    return isObject(value) ? value : {};
  } catch {
    return {};
  }
};

/** Every field that is there, by its dotted path, in the order of the file. */
export const flatFields = (fields: JsonObject, prefix = ""): readonly (readonly [string, unknown])[] =>
  Object.entries(fields).flatMap(([name, value]) => {
    const path = prefix + name;
    return isObject(value) && engineFields[path] === undefined
      ? flatFields(value, `${path}.`)
      : [[path, value] as const];
  });
