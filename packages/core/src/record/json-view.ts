// JSON seen by field, with the line and column of each field for a message.

import { type Place, type Problem, problem } from "../problem/index.ts";

export type JsonObject = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is JsonObject => typeof value === "object" && value !== null && !Array.isArray(value);

/** Parses JSON that must be an object; problems carry the place. */
export const parseJsonObject = (source: string, file: string, problems: Problem[]): JsonObject | undefined => {
  const text = source.replace(/^\uFEFF/, "");
  if (deeperThan(text, 32)) {
    problems.push(problem("json-bad", { reason: "brackets are nested too deep" }, { file, line: 1, column: 1 }));
    return undefined;
  }
  try {
    const value: unknown = JSON.parse(text, (key, inner: unknown) => (key === "__proto__" ? undefined : inner));
    if (isObject(value)) return value;
    problems.push(problem("json-bad", { reason: "it is no object in { }" }, { file, line: 1, column: 1 }));
  } catch (error) {
    const message = error instanceof Error ? error.message : "";
    const offset = Number(/position (\d+)/.exec(message)?.[1] ?? text.length);
    const reason = message.replace(/ in JSON at position.*| in JSON$/, "").replace(/^Unexpected/, "unexpected").replace(/, ".*/, "");
    problems.push(problem("json-bad", { reason }, placeAt(text, file, offset, 1)));
  }
  return undefined;
};

const deeperThan = (text: string, most: number): boolean => {
  let depth = 0;
  for (const char of text) {
    if (char === "{" || char === "[") depth++;
    if (char === "}" || char === "]") depth--;
    if (depth > most) return true;
  }
  return false;
};

const placeAt = (text: string, file: string, offset: number, length: number): Place => {
  const before = text.slice(0, offset).split("\n");
  const column = (before.at(-1)?.length ?? 0) + 1;
  const line = text.split("\n")[before.length - 1]?.replace(/\r$/, "") ?? "";
  return { file, line: before.length, column, excerpt: { text: line, from: column, to: column + length - 1 } };
};

/** Where a field such as `limits.compression.minimum` stands; the start of the file when it is not there. */
export const placeOfField = (source: string, file: string, path: string): Place => {
  const text = source.replace(/^\uFEFF/, "");
  let at = 0;
  for (const name of path.split(".")) {
    const pattern = new RegExp(`"${name.replace(/[^\w]/g, "\\$&")}"\\s*:`, "g");
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found === null) return { file, line: 1, column: 1 };
    at = found.index;
  }
  const last = path.split(".").at(-1) ?? "";
  return placeAt(text, file, at, last.length + 2);
};

/** Walks to a nested field; undefined where the way ends. */
export const fieldAt = (root: JsonObject, path: string): unknown =>
  path.split(".").reduce<unknown>((value, name) => (isObject(value) && Object.hasOwn(value, name) ? value[name] : undefined), root);

export { isObject };
