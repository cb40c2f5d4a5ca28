// One limit of a part in the text of engine.json: set, or taken out; every other byte as it was.
// The text must be JSON already.

import { type JsonObject, type LimitPlace, type TypedLimit, limitQuantityNamed } from "@sealtrend/core/parts";
import { TypedJson, withField, withoutField } from "./edit-json.ts";
import { isObject } from "./engine-overview.ts";

const list = "limits.clearances";
const kinds = ["new", "wear"] as const;

/** The text with a limit set. A new entry stands at the end of the list; one that is there keeps what else it says, but for the
 *  same limit in a second unit.
 *  @returns the other limit's unit where the entry is in another; undefined where something that is no list is in the way */
export const withLimit = (
  text: string,
  place: LimitPlace,
  limit: TypedLimit,
): { readonly text: string } | { readonly unit: string } | undefined => {
  const found = entryAt(text, place);
  const pair = pairOf(limit);
  if (found === undefined) return put(text, newEntry(place, limit, pair));
  const { entry, path } = found;
  const isAlone = entry[other(place.kind)] === undefined;
  if (entry.unit !== limit.unit && !isAlone) return { unit: String(entry.unit) };
  const edits: readonly (readonly [string, unknown])[] = [
    [place.kind, pair],
    ...(entry.unit === limit.unit ? [] : [["unit", limit.unit] as const]),
    ...(limit.source === undefined ? [] : [["source", limit.source] as const]),
  ];
  const after = edits.reduce<string | undefined>(
    (so, [name, value]) => (so === undefined ? so : withField(so, `${path}.${name}`, value)),
    withoutSecond(text, found, place.kind),
  );
  if (after === undefined || limit.also === undefined)
    return after === undefined ? undefined : { text: after };
  return withSecond(after, place, limit.also);
};

type Figures = Pick<TypedLimit, "low" | "high" | "unit">;

const pairOf = ({ low, high }: Figures): TypedJson => new TypedJson(`[${low ?? "null"}, ${high ?? "null"}]`);

const secondOf = (kind: "new" | "wear", also: Figures): TypedJson =>
  new TypedJson(`{ "${kind}": ${pairOf(also).text}, "unit": "${also.unit}" }`);

/** The text with the same limit in a second unit; the unit that the other limit has there, where that is another one. */
const withSecond = (text: string, place: LimitPlace, also: Figures): ReturnType<typeof withLimit> => {
  const found = entryAt(text, place);
  if (found === undefined) return undefined;
  const there = found.entry.also;
  if (isObject(there) && there.unit !== also.unit) return { unit: String(there.unit) };
  const after = isObject(there)
    ? withField(text, `${found.path}.also.${place.kind}`, pairOf(also))
    : withField(text, `${found.path}.also`, secondOf(place.kind, also));
  return after === undefined ? undefined : { text: after };
};

/** The text without a limit; an entry that says nothing more goes with it, and the list with its last entry. */
export const withoutLimit = (text: string, place: LimitPlace): string => {
  const found = entryAt(text, place);
  if (found?.entry[place.kind] === undefined) return text;
  if (found.entry[other(place.kind)] !== undefined)
    return withoutField(withoutSecond(text, found, place.kind), `${found.path}.${place.kind}`);
  return withoutField(text, found.count === 1 ? list : found.path);
};

/** The limit as the file has it, with its unit; undefined where none is. */
export const limitIn = (text: string, place: LimitPlace): unknown => {
  const found = entryAt(text, place);
  const pair = found?.entry[place.kind];
  return pair === undefined ? undefined : { [place.kind]: pair, unit: found?.entry.unit };
};

interface Found {
  readonly entry: JsonObject;
  /** `limits.clearances.3` */
  readonly path: string;
  readonly count: number;
}

const other = (kind: "new" | "wear"): "new" | "wear" => (kind === "new" ? "wear" : "new");

const entryAt = (text: string, place: LimitPlace): Found | undefined => {
  const entries = entriesIn(text);
  const at = entries.findIndex((entry) => isObject(entry) && isFor(entry, place));
  const entry = entries[at];
  return isObject(entry) ? { entry, path: `${list}.${String(at)}`, count: entries.length } : undefined;
};

const isFor = (entry: JsonObject, { part, quantity, label, at }: LimitPlace): boolean =>
  entry.part === part &&
  typeof entry.quantity === "string" &&
  limitQuantityNamed(part, entry.quantity)?.name === quantity &&
  lower(entry.label) === label &&
  lower(entry.at) === at;

const lower = (value: unknown): string | undefined =>
  typeof value === "string" && value !== "" ? value.toLowerCase() : undefined;

const newEntry = (
  { part, label, at, quantity, kind }: LimitPlace,
  { unit, source, also }: TypedLimit,
  pair: TypedJson,
): TypedJson => {
  const second = also === undefined ? undefined : secondOf(kind, also);
  const entry = { part, label, at, quantity, [kind]: pair, unit, source, also: second };
  const members = Object.entries(entry).flatMap(([name, value]) =>
    value === undefined
      ? []
      : [`"${name}": ${value instanceof TypedJson ? value.text : JSON.stringify(value)}`],
  );
  return new TypedJson(`{ ${members.join(", ")} }`);
};

const put = (text: string, entry: TypedJson): { readonly text: string } | undefined => {
  const { limits } = JSON.parse(text) as JsonObject;
  const isThere = isObject(limits) && limits.clearances !== undefined;
  const after = isThere
    ? withField(text, `${list}.${String(entriesIn(text).length)}`, entry)
    : withField(text, list, new TypedJson(`[${entry.text}]`));
  return after === undefined ? undefined : { text: after };
};

/** What `also` says of the same limit holds no longer. */
const withoutSecond = (text: string, { entry, path }: Found, kind: "new" | "wear"): string => {
  const { also } = entry;
  if (!isObject(also) || also[kind] === undefined) return text;
  const isAll = kinds.every((one) => one === kind || also[one] === undefined);
  return withoutField(text, isAll ? `${path}.also` : `${path}.also.${kind}`);
};

const entriesIn = (text: string): readonly unknown[] => {
  const { limits } = JSON.parse(text) as JsonObject;
  const entries = isObject(limits) ? limits.clearances : undefined;
  return Array.isArray(entries) ? entries : [];
};
