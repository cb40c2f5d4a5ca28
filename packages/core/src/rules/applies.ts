// To which engines a rule applies: `use=road|farm ignition=spark cycle=four-stroke cylinders=2..`; a leak-down limit also
// says for which bores and which tester: `bore=..5in tester=0.04in@80psi`.

import { readQuantity } from "../quantity/index.ts";
import type { Engine } from "../record/index.ts";

/** What a rule needs to know of an engine. */
export type EngineFacts = Pick<
  Engine,
  "use" | "ignition" | "cycle" | "cylinders" | "compressionLimits" | "leakDownLimits" | "geometry"
>;

/** A leak-down tester, as a limit asks for it. */
export interface RuleTester {
  /** Bore [m]. */
  readonly restrictor: number;
  /** [Pa gauge]. */
  readonly supply: number;
}

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
      /** Bores [m], the lower end included and the upper not. */
      readonly bore?: { readonly least?: number; readonly below?: number };
      /** Leak-down: the tester the limit is for; absent = it names none. */
      readonly tester?: RuleTester;
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
  const { cylinders, bore } = applies;
  const count = engine.cylinders.length;
  return (
    isAmong(applies.use, engine.use) &&
    isAmong(applies.ignition, engine.ignition) &&
    isAmong(applies.cycle, engine.cycle) &&
    (cylinders === undefined || (count >= cylinders.least && count <= (cylinders.most ?? count))) &&
    (bore === undefined || isWithin(bore, engine.geometry.bore))
  );
};

/** A bore that is not known lies within no limits. */
const isWithin = (
  { least, below }: { readonly least?: number; readonly below?: number },
  bore: number | undefined,
): boolean =>
  bore !== undefined && (least === undefined || bore >= least) && (below === undefined || bore < below);

const isAmong = (list: readonly string[] | undefined, word: string): boolean => list?.includes(word) ?? true;

const readTerm = (
  name: string,
  value: string,
): Partial<Extract<Applies, { kind: "engines" }>> | undefined => {
  if (name === "cylinders") return readCylinders(value);
  if (name === "bore") return readBore(value);
  if (name === "tester") return readTester(value);
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

/** `..5in` below 5 inches, `5in..` from there on. */
const readBore = (value: string): Partial<Extract<Applies, { kind: "engines" }>> | undefined => {
  const ends = /^(.*)\.\.(.*)$/.exec(value);
  const [least, below] = [ends?.[1] ?? "", ends?.[2] ?? ""].map((text) => boreOf(text));
  if (least === "bad" || below === "bad" || (least === undefined && below === undefined)) return undefined;
  return {
    bore: { ...(least === undefined ? {} : { least }), ...(below === undefined ? {} : { below }) },
  };
};

const boreOf = (text: string): number | "bad" | undefined => {
  if (text === "") return undefined;
  const read = readQuantity(text, "length");
  return read.ok ? read.si : "bad";
};

/** `0.04in@80psi`: bore of the restrictor, and the supply it is set to. */
const readTester = (value: string): Partial<Extract<Applies, { kind: "engines" }>> | undefined => {
  const [bore = "", pressure = "", ...more] = value.split("@");
  const restrictor = readQuantity(bore, "length");
  const supply = readQuantity(pressure, "pressure");
  if (more.length > 0 || !restrictor.ok || !supply.ok) return undefined;
  return { tester: { restrictor: restrictor.si, supply: supply.si } };
};

const expectedFor = (name: string): string => {
  if (name === "use" || name === "ignition" || name === "cycle")
    return `${name}= with ${words[name].join("|")}`;
  if (name === "cylinders") return "cylinders=2.. or cylinders=2..4 or cylinders=2";
  if (name === "bore") return "bore=..5in or bore=5in..";
  if (name === "tester") return "tester=0.04in@80psi, the restrictor and its supply";
  return "use=, ignition=, cycle=, cylinders=, bore= or tester=, separated by spaces, or the word comparison";
};
