// Parts, places and verdicts of a teardown in words.

import { type MeasuredPart, type TeardownItem, atNamed } from "@sealtrend/core/parts";
import { clean } from "../clean.ts";
import { joined } from "../words.ts";

const several: Readonly<Partial<Record<MeasuredPart, string>>> = {
  crank: "crank",
  deck: "deck",
  head: "head",
  crack: "cracks",
};

/** `bores`, `main bearings`. */
export const partsName = (part: MeasuredPart): string => several[part] ?? `${part}s`;

/** More labels than these are counted, not named. */
const most = 8;

/** `bore 3`, `pins 2 and 6`, `12 pins`, `rings of cylinder 3`, `crank at main 2`, `head`. @param labels - none for a part that has none */
export const partNamed = (part: MeasuredPart, labels: readonly string[]): string => {
  if (labels.length === 0) return part;
  const isMany = labels.length > most;
  if (part === "crank") return `crank at ${isMany ? many(labels, "mains") : named("main", labels)}`;
  if (part === "ring") return `rings of ${isMany ? many(labels, "cylinders") : named("cylinder", labels)}`;
  return isMany ? many(labels, partsName(part)) : named(part, labels);
};

const many = (labels: readonly string[], what: string): string => `${String(labels.length)} ${what}`;

const named = (what: string, labels: readonly string[]): string =>
  `${what}${labels.length === 1 ? "" : "s"} ${joined(labels)}`;

/** The same as the subject of a sentence, with `is` or `are`. */
const partIs = (part: MeasuredPart, labels: readonly string[]): string =>
  `${partNamed(part, labels)} ${isSeveral(part, labels) ? "are" : "is"}`;

const isSeveral = (part: MeasuredPart, labels: readonly string[]): boolean =>
  part !== "crank" && (labels.length > 1 || (part === "ring" && labels.length > 0));

/** Several parts as one subject: `bore 3, pins 2 and 6 are`. */
export const subjects = (parts: readonly (readonly [MeasuredPart, readonly string[]])[]): string => {
  const names = parts.map(([part, labels]) => partNamed(part, labels));
  const only = parts.length === 1 ? parts[0] : undefined;
  if (only !== undefined) return partIs(...only);
  return `${names.some((name) => name.includes(" and ")) ? names.join(", ") : joined(names)} are`;
};

/** Where on its part, as it is typed: `top/thrust`, `at 11 mm`. */
export const atText = (item: Pick<TeardownItem, "part" | "at">): string =>
  clean(atNamed(item)).replace(/ mm$/, "\u00a0mm");

/** `bore 3 top/thrust`, `piston 3 at 11 mm`; a quantity that is not the usual one of the part behind it. */
export const placeText = (item: Pick<TeardownItem, "part" | "label" | "at" | "quantity">): string => {
  const own = ["diameter", "thread clearance", "gap", "end gap"].includes(item.quantity) ? "" : item.quantity;
  const named =
    item.part === "crank" && item.label === undefined
      ? "crank"
      : partNamed(item.part, item.label === undefined ? [] : [item.label]);
  return [named, atText(item), own].filter((text) => text !== "").join(" ");
};

/** Which of its rings: `top ring`, `ring 2`, `oil ring`. */
export const ringOf = ({ part, at }: Pick<TeardownItem, "part" | "at">): string => {
  const [first] = (at ?? "").split("/");
  if (part !== "ring" || first === undefined || first === "") return "";
  return /^\d+$/.test(first) ? `ring ${first}` : `${first} ring`;
};

/** What was measured: `taper`, `ring 1 end gap`. */
export const figureName = ({ part, at, quantity }: Pick<TeardownItem, "part" | "at" | "quantity">): string =>
  [ringOf({ part, ...(at === undefined ? {} : { at }) }), quantity].filter((word) => word !== "").join(" ");

/** One figure by its place: `bore 3 taper`. */
export const itemName = (item: Pick<TeardownItem, "part" | "label" | "at" | "quantity">): string =>
  `${partNamed(item.part, item.label === undefined ? [] : [item.label])} ${figureName(item)}`;

/** Quantities that run both ways. */
const signed: readonly string[] = ["taper", "out-of-round"];

export const isSigned = ({ quantity }: Pick<TeardownItem, "quantity">): boolean => signed.includes(quantity);
