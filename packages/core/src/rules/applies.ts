// To which engines a rule applies: `use=road|farm ignition=spark cycle=four-stroke cylinders=2..`.

import type { Engine } from "../record/index.ts";

/** What a rule needs to know of an engine. */
export type EngineFacts = Pick<Engine, "use" | "ignition" | "cycle" | "cylinders" | "compressionLimits">;

export type Applies =
  /** Listed so that an owner can compare; never judged. */
  | { readonly kind: "comparison" }
  | {
      readonly kind: "engines";
      readonly use?: readonly string[];
      readonly ignition?: readonly string[];
      readonly cycle?: readonly string[];
      /** How many cylinders, both ends included. */
      readonly cylinders?: { readonly least: number; readonly most?: number };
    };

export type AppliesReading =
  | { readonly ok: true; readonly applies: Applies }
  | { readonly ok: false; readonly text: string; readonly expected: string };

const words = {
  use: ["road", "farm", "stationary", "boat", "motorcycle", "aircraft", "other"],
  ignition: ["spark", "compression", "unknown"],
  cycle: ["four-stroke", "two-stroke"],
} as const satisfies { readonly [K in "use" | "ignition" | "cycle"]: readonly EngineFacts[K][] };

/** Reads the cell `applies`; empty means every engine, `comparison` none. */
export const readApplies = (text: string): AppliesReading => {
  if (text.trim() === "comparison") return { ok: true, applies: { kind: "comparison" } };
  let applies: Extract<Applies, { kind: "engines" }> = { kind: "engines" };
  for (const term of text.split(" ").filter((part) => part !== "")) {
    const [name = "", value = "", ...more] = term.split("=");
    const read = more.length > 0 ? undefined : readTerm(name, value);
    if (read === undefined) return { ok: false, text: term, expected: expectedFor(name) };
    if (name in applies) return { ok: false, text: term, expected: `${name}= once` };
    applies = { ...applies, ...read };
  }
  return { ok: true, applies };
};

/** Whether a rule is to be judged on this engine. */
export const appliesTo = (applies: Applies, engine: EngineFacts): boolean => {
  if (applies.kind === "comparison") return false;
  const { cylinders } = applies;
  const count = engine.cylinders.length;
  return (
    isAmong(applies.use, engine.use) &&
    isAmong(applies.ignition, engine.ignition) &&
    isAmong(applies.cycle, engine.cycle) &&
    (cylinders === undefined || (count >= cylinders.least && count <= (cylinders.most ?? count)))
  );
};

const isAmong = (list: readonly string[] | undefined, word: string): boolean => list?.includes(word) ?? true;

const readTerm = (
  name: string,
  value: string,
): Partial<Extract<Applies, { kind: "engines" }>> | undefined => {
  if (name === "cylinders") return readCylinders(value);
  if (name !== "use" && name !== "ignition" && name !== "cycle") return undefined;
  const list = value.split("|");
  const known: readonly string[] = words[name];
  return list.every((word) => known.includes(word)) ? { [name]: list } : undefined;
};

/** `2..` two or more, `2..4` two to four, `2` just two. */
const readCylinders = (value: string): Partial<Extract<Applies, { kind: "engines" }>> | undefined => {
  const match = /^([1-9]\d?)(\.\.([1-9]\d?)?)?$/.exec(value);
  if (match === null) return undefined;
  const least = Number(match[1]);
  const most = match[2] === undefined ? least : match[3] === undefined ? undefined : Number(match[3]);
  if (most === undefined) return { cylinders: { least } };
  return most < least ? undefined : { cylinders: { least, most } };
};

const expectedFor = (name: string): string => {
  if (name === "use" || name === "ignition" || name === "cycle")
    return `${name}= with ${words[name].join("|")}`;
  if (name === "cylinders") return "cylinders=2.. or cylinders=2..4 or cylinders=2";
  return "use=, ignition=, cycle= or cylinders=, separated by spaces, or the word comparison";
};
