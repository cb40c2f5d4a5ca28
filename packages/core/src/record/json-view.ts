// JSON seen by field, with the line and column of each field for a message.

import { type Place, type Problem, problem } from "../problem/index.ts";
import { type JsonScan, scanJson } from "./json-scan.ts";

export type JsonObject = Readonly<Record<string, unknown>>;

/** A JSON file that holds an object, and where each of its fields stands. */
export interface JsonView {
  readonly root: JsonObject;
  /** Where a field such as `limits.compression.minimum` stands; the start of the file when it is not there. */
  place(path: string): Place;
}

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Parses JSON that must be an object; undefined after a problem was noted. */
export const viewJson = (source: string, file: string, problems: Problem[]): JsonView | undefined => {
  const text = source.replace(/^\uFEFF/, "");
  const { fields, fault } = scanJson(text);
  if (fault !== undefined) {
    const { reason, mend, offset, length } = fault;
    problems.push(problem("json-bad", { reason, mend }, placeAt(text, file, offset, length)));
    return undefined;
  }
  const root: unknown = JSON.parse(text, (key, inner: unknown) => (key === "__proto__" ? undefined : inner));
  if (isObject(root)) return { root, place: (path) => placeOfField(text, file, fields, path) };
  const facts = { reason: "it is no object", mend: "put everything between { and }" };
  problems.push(problem("json-bad", facts, { file, line: 1, column: 1 }));
  return undefined;
};

const placeOfField = (text: string, file: string, fields: JsonScan["fields"], path: string): Place => {
  const offset = fields.get(path);
  if (offset === undefined) return { file, line: 1, column: 1 };
  return placeAt(text, file, offset, path.length - path.lastIndexOf(".") + 1);
};

const placeAt = (text: string, file: string, offset: number, length: number): Place => {
  const before = text.slice(0, offset).split("\n");
  const column = (before.at(-1)?.length ?? 0) + 1;
  const line = text.split("\n")[before.length - 1]?.replace(/\r$/, "") ?? "";
  return {
    file,
    line: before.length,
    column,
    excerpt: { text: line, from: column, to: column + length - 1 },
  };
};

/** Walks to a nested field; undefined where the way ends. */
export const fieldAt = (root: JsonObject, path: string): unknown =>
  path
    .split(".")
    .reduce<unknown>(
      (value, name) => (isObject(value) && Object.hasOwn(value, name) ? value[name] : undefined),
      root,
    );
