// JSON seen by field, with the line and column of each field for a message.

import { type Place, type Problem, problem } from "../problem/index.ts";
import { type JsonScan, scanJson } from "./json-scan.ts";

/** JSON seen as fields of unknown kind. */
export type JsonObject = Readonly<Record<string, unknown>>;

/** A JSON file that holds an object, and where each of its fields stands. */
export interface JsonView {
  readonly root: JsonObject;
  /** Where a field such as `limits.compression.minimum` or `limits.clearances[2].wear` stands; of one that is not there, what
   *  would hold it; else the start of the file. */
  place(path: string): Place;
  /** A number as it stands in the file, zeros at its end and all; undefined where none stands. */
  written(path: string): string | undefined;
}

export const isObject = (value: unknown): value is JsonObject =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** Parses JSON that must be an object; undefined after a problem was noted. */
export const viewJson = (source: string, file: string, problems: Problem[]): JsonView | undefined => {
  const text = source.replace(/^\uFEFF/, "");
  const { fields, numbers, fault } = scanJson(text);
  if (fault !== undefined) {
    const { reason, mend, offset, length } = fault;
    problems.push(problem("json-bad", { reason, mend }, placeAt(text, file, offset, length)));
    return undefined;
  }
  const root: unknown = JSON.parse(text, (key, inner: unknown) => (key === "__proto__" ? undefined : inner));
  if (isObject(root))
    return {
      root,
      place: (path) => placeOfField(text, file, fields, path),
      written: (path) => numbers.get(path),
    };
  const facts = { reason: "it is no object", mend: "put everything between { and }" };
  problems.push(problem("json-bad", facts, { file, line: 1, column: 1 }));
  return undefined;
};

const placeOfField = (text: string, file: string, fields: JsonScan["fields"], path: string): Place => {
  const offset = fields.get(path);
  if (offset !== undefined) return placeAt(text, file, offset, lengthOf(path));
  const holder = /^(.+)(?:\.[^.[\]]+|\[\d+\])$/.exec(path)?.[1];
  return holder?.includes("[") === true
    ? placeOfField(text, file, fields, holder)
    : { file, line: 1, column: 1 };
};

/** A name in its quotes; of an entry of a list only where it begins. */
const lengthOf = (path: string): number => (path.endsWith("]") ? 1 : path.length - path.lastIndexOf(".") + 1);

const placeAt = (text: string, file: string, offset: number, length: number): Place => {
  let [line, start] = [1, 0];
  for (let end = text.indexOf("\n"); end !== -1 && end < offset; end = text.indexOf("\n", start)) {
    line += 1;
    start = end + 1;
  }
  const end = text.indexOf("\n", start);
  const column = offset - start + 1;
  const excerpt = text.slice(start, end === -1 ? undefined : end).replace(/\r$/, "");
  return { file, line, column, excerpt: { text: excerpt, from: column, to: column + length - 1 } };
};

/** Walks to a nested field; undefined where the way ends. */
export const fieldAt = (root: JsonObject, path: string): unknown =>
  path
    .split(".")
    .reduce<unknown>(
      (value, name) => (isObject(value) && Object.hasOwn(value, name) ? value[name] : undefined),
      root,
    );
