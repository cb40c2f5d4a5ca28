// Changes one field of a JSON text and nothing else: every byte outside it stays as somebody typed it.
// The text must be JSON already (JSON.parse took it): nothing is checked here.

interface Member {
  readonly name: string;
  readonly start: number;
  readonly valueStart: number;
  readonly end: number;
}

/** A value as somebody typed it in JSON: `0.10` keeps its zero. */
export class TypedJson {
  readonly text: string;
  constructor(text: string) {
    this.text = text.trim();
  }
}

/** Where a path ends: at its field, or at the object that lacks the rest of it; `blocked` = a value that is no object
 *  stands on the way. */
type Way =
  | { readonly kind: "there"; readonly object: number; readonly member: Member }
  | { readonly kind: "absent"; readonly object: number; readonly rest: readonly string[] }
  | { readonly kind: "blocked" };

/** The text with the field at a dotted path set; what is missing on the way is made, indented as the file is. Entries of a list
 *  go by their number, from 0; the number after the last one is a new entry.
 *  @returns undefined where something else stands on the way */
export const withField = (text: string, path: string, value: unknown): string | undefined => {
  const way = walk(text, path.split("."));
  if (way.kind === "blocked") return undefined;
  if (way.kind === "absent") return inserted(text, way.object, way.rest, value);
  const { start, valueStart, end } = way.member;
  const old = text.slice(valueStart, end);
  const broken = /[\r\n]/.test(old) && typeof value === "object" && !(value instanceof TypedJson);
  const now = broken ? onLines(text, value, indentBefore(text, start) ?? "") : inline(value);
  return text.slice(0, valueStart) + now + text.slice(end);
};

/** The text without the field or entry at a dotted path; the same text where it is not there. */
export const withoutField = (text: string, path: string): string => {
  const way = walk(text, path.split("."));
  if (way.kind !== "there") return text;
  const members = membersOf(text, way.object);
  const at = members.findIndex(({ start }) => start === way.member.start);
  const before = members[at - 1];
  const after = members[at + 1];
  const [from, to] =
    after !== undefined
      ? [way.member.start, after.start]
      : before !== undefined
        ? [before.end, way.member.end]
        : [way.object + 1, containerEnd(text, way.object) - 1];
  const left = text.slice(0, from) + text.slice(to);
  return text[way.object] === "[" ? left : withoutField(left, path);
};

const walk = (text: string, names: readonly string[]): Way => {
  let object = spaceEnd(text, 0);
  for (const [i, name] of names.entries()) {
    if (text[object] !== "{" && text[object] !== "[") return { kind: "blocked" };
    const members = membersOf(text, object);
    const member = members.findLast((one) => one.name === name);
    const isNew = text[object] === "{" || (name === String(members.length) && i === names.length - 1);
    if (member === undefined)
      return isNew ? { kind: "absent", object, rest: names.slice(i) } : { kind: "blocked" };
    if (i === names.length - 1) return { kind: "there", object, member };
    object = member.valueStart;
  }
  return { kind: "blocked" };
};

const inserted = (text: string, object: number, rest: readonly string[], value: unknown): string => {
  const last = membersOf(text, object).at(-1);
  const isList = text[object] === "[";
  if (last === undefined) {
    const end = containerEnd(text, object);
    const only = isList ? `[${inline(value)}]` : `{ ${member(rest, value)} }`;
    return text.slice(0, object) + only + text.slice(end);
  }
  const indent = indentBefore(text, last.start);
  const closesOnLine = indentBefore(text, containerEnd(text, object) - 1) !== undefined;
  const one = isList
    ? inline(value)
    : indent !== undefined && closesOnLine
      ? memberOnLines(text, rest, value, indent)
      : member(rest, value);
  const added = indent === undefined ? `, ${one}` : `,${lineEnd(text)}${indent}${one}`;
  return text.slice(0, last.end) + added + text.slice(last.end);
};

const member = ([name = "", ...rest]: readonly string[], value: unknown): string =>
  `${JSON.stringify(name)}: ${rest.length === 0 ? inline(value) : `{ ${member(rest, value)} }`}`;

const memberOnLines = (
  text: string,
  [name = "", ...rest]: readonly string[],
  value: unknown,
  indent: string,
): string => {
  if (rest.length === 0) return `${JSON.stringify(name)}: ${inline(value)}`;
  const deeper = indent + indentUnit(text);
  const end = lineEnd(text);
  return `${JSON.stringify(name)}: {${end}${deeper}${memberOnLines(text, rest, value, deeper)}${end}${indent}}`;
};

/** A value on one line, as in the manual. */
const inline = (value: unknown): string => {
  if (value instanceof TypedJson) return value.text;
  if (Array.isArray(value)) return `[${value.map(inline).join(", ")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const members = Object.entries(value).map(([name, one]) => `${JSON.stringify(name)}: ${inline(one)}`);
  return members.length === 0 ? "{}" : `{ ${members.join(", ")} }`;
};

const onLines = (text: string, value: unknown, indent: string): string =>
  JSON.stringify(value, undefined, indentUnit(text)).replaceAll("\n", lineEnd(text) + indent);

const lineEnd = (text: string): string => /\r\n|\n|\r/.exec(text)?.[0] ?? "\n";

const indentUnit = (text: string): string => /[\r\n]([ \t]+)"/.exec(text)?.[1] ?? "  ";

/** The blanks before a place, where nothing else stands before it on its line. */
const indentBefore = (text: string, at: number): string | undefined =>
  /(?:\r|\n)([ \t]*)$/.exec(text.slice(0, at))?.[1];

/** Of a list each entry, named by its number. */
const entriesOf = (text: string, list: number): readonly Member[] => {
  const entries: Member[] = [];
  let at = spaceEnd(text, list + 1);
  while (at < text.length && text[at] !== "]") {
    const end = valueEnd(text, at);
    entries.push({ name: String(entries.length), start: at, valueStart: at, end });
    const comma = spaceEnd(text, end);
    at = text[comma] === "," ? spaceEnd(text, comma + 1) : comma;
  }
  return entries;
};

const membersOf = (text: string, object: number): readonly Member[] => {
  if (text[object] === "[") return entriesOf(text, object);
  const members: Member[] = [];
  let at = spaceEnd(text, object + 1);
  while (text[at] === '"') {
    const nameEnd = matchEnd(text, at, stringShape);
    const valueStart = spaceEnd(text, spaceEnd(text, nameEnd) + 1);
    const end = valueEnd(text, valueStart);
    members.push({ name: String(JSON.parse(text.slice(at, nameEnd))), start: at, valueStart, end });
    const comma = spaceEnd(text, end);
    at = text[comma] === "," ? spaceEnd(text, comma + 1) : comma;
  }
  return members;
};

const stringShape = /"(?:[^"\\]|\\.)*"/y;

const spaceEnd = (text: string, at: number): number => matchEnd(text, at, /[ \t\r\n]*/y);

/** @param shape - sticky */
const matchEnd = (text: string, at: number, shape: RegExp): number => {
  const own = new RegExp(shape);
  own.lastIndex = at;
  return own.test(text) ? own.lastIndex : at;
};

const valueEnd = (text: string, at: number): number => {
  if (text[at] === "{" || text[at] === "[") return containerEnd(text, at);
  return matchEnd(text, at, text[at] === '"' ? stringShape : /[^\s,\]}]+/y);
};

/** The place after the bracket that closes the one at `start`. */
const containerEnd = (text: string, start: number): number => {
  const parts = /"(?:[^"\\]|\\.)*"|[{}[\]]/g;
  parts.lastIndex = start;
  let depth = 0;
  for (let part = parts.exec(text); part !== null; part = parts.exec(text)) {
    if (part[0] === "{" || part[0] === "[") depth += 1;
    if (part[0] === "}" || part[0] === "]") depth -= 1;
    if (depth === 0) return parts.lastIndex;
  }
  return text.length;
};
