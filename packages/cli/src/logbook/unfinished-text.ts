// An unfinished entry as text and back. Whatever stands in the file is checked before it is believed: it may be torn, of another
// version, or meant to harm.

import { isIsoDate } from "@sealtrend/core/parts";
import { type Owner, parseOwner } from "./owner.ts";

export type EntryCommand = "enter" | "teardown";

/** What was typed and not saved yet. */
export interface Unfinished {
  readonly cylinders: readonly string[];
  /** When its first answer was typed, local, `YYYY-MM-DDTHH:MM:SS`. */
  readonly begun: string;
  /** The day it is of, unless an option says otherwise. */
  readonly day: string;
  /** Options of the command line that have a value, and those that have none. */
  readonly options: Readonly<Record<string, string>>;
  readonly flags: readonly string[];
  /** What was asked, with its answer, in the order of asking. */
  readonly answers: readonly (readonly [string, string])[];
  /** `saving`: it was about to be written into the logbook, and may stand there. */
  readonly stage: "typing" | "saving";
}

export type ReadUnfinished =
  | { readonly kind: "entry"; readonly entry: Unfinished; readonly owner: Owner }
  | { readonly kind: "other-version" }
  | { readonly kind: "unreadable" };

const schema = "sealtrend/unfinished@1";

export const unfinishedText = (entry: Unfinished, owner: Owner): string =>
  JSON.stringify({ schema, owner, ...entry });

export const readUnfinished = (text: string): ReadUnfinished => {
  const json = objectIn(text);
  const version = json?.schema;
  if (typeof version === "string" && version !== schema && version.startsWith("sealtrend/unfinished@"))
    return { kind: "other-version" };
  const owner = parseOwner(JSON.stringify(json?.owner ?? {}));
  const entry = json === undefined || version !== schema ? undefined : entryIn(json);
  return entry === undefined || owner === undefined
    ? { kind: "unreadable" }
    : { kind: "entry", entry, owner };
};

const entryIn = (json: Record<string, unknown>): Unfinished | undefined => {
  const { begun, day, stage } = json;
  const cylinders = textsIn(json.cylinders);
  const flags = textsIn(json.flags);
  const options = optionsIn(json.options);
  const answers = answersIn(json.answers);
  if (typeof begun !== "string" || !/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/.test(begun)) return undefined;
  if (typeof day !== "string" || !isIsoDate(day)) return undefined;
  if (stage !== "typing" && stage !== "saving") return undefined;
  if (cylinders === undefined || flags === undefined || options === undefined || answers === undefined)
    return undefined;
  return { begun, day, stage, cylinders, flags, options, answers };
};

const objectIn = (text: string): Record<string, unknown> | undefined => {
  try {
    const json: unknown = JSON.parse(text);
    return isObject(json) ? json : undefined;
  } catch {
    return undefined;
  }
};

const isObject = (json: unknown): json is Record<string, unknown> =>
  typeof json === "object" && json !== null && !Array.isArray(json);

const longest = 4000;
const most = 5000;

/** A line of a person: no control but the tab. */
const isLine = (one: unknown): one is string =>
  typeof one === "string" && one.length <= longest && !/(?!\t)[\p{Cc}\p{Cs}]/u.test(one);

const textsIn = (json: unknown): readonly string[] | undefined =>
  Array.isArray(json) && json.length <= most && json.every(isLine) ? json : undefined;

const optionsIn = (json: unknown): Readonly<Record<string, string>> | undefined => {
  if (!isObject(json)) return undefined;
  const all = Object.entries(json).flatMap(([name, value]): (readonly [string, string])[] =>
    isLine(value) ? [[name, value]] : [],
  );
  return all.length === Object.keys(json).length ? Object.fromEntries(all) : undefined;
};

const answersIn = (json: unknown): Unfinished["answers"] | undefined => {
  if (!Array.isArray(json) || json.length > most) return undefined;
  const all = json.flatMap((one): (readonly [string, string])[] => {
    const [key, answer] = textsIn(one) ?? [];
    return key === undefined || answer === undefined ? [] : [[key, answer]];
  });
  return all.length === json.length ? all : undefined;
};
