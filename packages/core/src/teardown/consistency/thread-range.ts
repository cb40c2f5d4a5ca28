// Gauging thread read outside of what its thickness is made for: it cannot tell, whatever the card says.

import { toSi, type UnitName } from "../../quantity/index.ts";
import { lengthText, rangeText } from "../length-text.ts";
import { placeNamed, placeOnly } from "../places.ts";
import type { TeardownConflict, TeardownItem } from "../teardown.ts";

interface ThreadKind {
  readonly name: string;
  readonly low: number;
  readonly high: number;
}

const kind = (name: string, low: number, high: number, unit: UnitName): ThreadKind => ({
  name,
  low: toSi(low, unit),
  high: toSi(high, unit),
});

/** One maker's types. @source an encyclopedia's table */
const byLetter: readonly ThreadKind[] = [
  kind("type X", 0.018, 0.045, "mm"),
  kind("type A", 0.025, 0.175, "mm"),
  kind("type B", 0.1, 0.25, "mm"),
  kind("type C", 0.175, 0.5, "mm"),
  kind("type D", 0.5, 1, "mm"),
  kind("type E", 0.75, 1.75, "mm"),
];
/** The kind that is told by colour. @source sellers' pages for green and red; blue from memory */
const byColour: readonly ThreadKind[] = [
  kind("green", 0.001, 0.003, "in"),
  kind("red", 0.002, 0.006, "in"),
  kind("blue", 0.004, 0.009, "in"),
];

/** By a colour or `type B` in the name of the instrument. */
const kindsOf = (instrument: string): readonly ThreadKind[] =>
  [byLetter, byColour].find((kinds) => named(kinds, instrument) !== undefined) ?? [];

const named = (kinds: readonly ThreadKind[], instrument: string): ThreadKind | undefined =>
  kinds.find(({ name }) => new RegExp(`\\b${name}\\b`, "i").test(instrument));

/** Undefined where the thread was not named, or the reading lies in its range. */
export const threadRange = (item: TeardownItem): TeardownConflict | undefined => {
  const { instrument = "", unit, value } = item;
  if (item.quantity !== "thread clearance") return undefined;
  const kinds = kindsOf(instrument);
  const used = named(kinds, instrument);
  const play = 1e-9;
  if (used === undefined || (value >= used.low - play && value <= used.high + play)) return undefined;
  const better = kinds.find(({ low, high }) => value >= low && value <= high);
  return {
    code: "thread-range",
    ...placeOnly(item),
    quantity: item.quantity,
    text: `${placeNamed(item)}: ${lengthText(value, unit)} lies outside what thread ${used.name} can tell, ${rangeText(used.low, used.high, unit)}`,
    mend:
      better === undefined
        ? "no thread of that kind reaches it: bore gauge and micrometer"
        : `take thread ${better.name}, ${rangeText(better.low, better.high, unit)}`,
    weight: "conflict",
  };
};
