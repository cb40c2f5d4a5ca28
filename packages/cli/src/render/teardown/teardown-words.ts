// Parts, places and verdicts of a teardown in words.

import type { MeasuredPart, TeardownItem } from "@sealtrend/core";
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

/** `bore 3`, `pins 2 and 6`, `12 pins`, `rings of cylinder 3`, `head`. @param labels - none for a part that has none */
export const partNamed = (part: MeasuredPart, labels: readonly string[]): string => {
  if (labels.length === 0) return part;
  const isMany = labels.length > most;
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
  labels.length > 1 || (part === "ring" && labels.length > 0);

/** Several parts as one subject: `bore 3, pins 2 and 6 are`. */
export const subjects = (parts: readonly (readonly [MeasuredPart, readonly string[]])[]): string => {
  const names = parts.map(([part, labels]) => partNamed(part, labels));
  const only = parts.length === 1 ? parts[0] : undefined;
  if (only !== undefined) return partIs(...only);
  return `${names.some((name) => name.includes(" and ")) ? names.join(", ") : joined(names)} are`;
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
