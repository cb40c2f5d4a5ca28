// How a place of an engine taken apart is named, and which places are fellows of each other.

import type { MeasuredPart } from "../record/index.ts";
import type { TeardownItem } from "./teardown.ts";

interface Place {
  readonly part: MeasuredPart;
  readonly label?: string;
  readonly at?: string;
}

/** The place alone, for a value that carries more. */
export const placeOnly = ({ part, label, at }: Place): Place => ({
  part,
  ...(label === undefined ? {} : { label }),
  ...(at === undefined ? {} : { at }),
});

/** `bore 3`, `crank`. */
export const partNamed = ({ part, label }: Pick<Place, "part" | "label">): string =>
  label === undefined ? part : `${part} ${label}`;

/** Parts along which the number of a place is a distance in mm, not degrees or a ring. */
const alongParts: readonly MeasuredPart[] = ["piston", "spring", "head", "deck"];

/** Where on its part, as it is typed: `top/thrust`, `at 11 mm`, `long1 at 40 mm`; empty where nothing says it. */
export const atNamed = ({ part, at = "" }: Pick<Place, "part" | "at">): string => {
  const [, word = "", distance] = /^(?:(.*)\/)?([\d.]+)$/.exec(at) ?? [];
  if (distance === undefined || !alongParts.includes(part)) return at;
  return `${word === "" ? "" : `${word} `}at ${distance} mm`;
};

/** `bore 3 top/thrust`, `piston 3 at 11 mm`, `ring 1 of cylinder 3, bottom`. */
export const placeNamed = (place: Place): string => {
  const { part, label, at } = place;
  if (part !== "ring" || label === undefined || at === undefined) return placeTyped(place);
  const [ring = "", ...depth] = at.split("/");
  return [`ring ${ring} of cylinder ${label}`, ...depth].join(", ");
};

/** As a line begins that is typed: `ring 3 1/bottom`. */
const placeTyped = ({ part, label, at }: Place): string =>
  [
    partNamed({ part, ...(label === undefined ? {} : { label }) }),
    atNamed({ part, ...(at === undefined ? {} : { at }) }),
  ]
    .filter(Boolean)
    .join(" ");

/** Whether one is the same figure of another cylinder or journal, in the same state of the work. */
export const isFellow = (one: TeardownItem, other: TeardownItem): boolean =>
  one.part === other.part &&
  one.quantity === other.quantity &&
  one.at === other.at &&
  one.state === other.state &&
  one.label !== undefined &&
  other.label !== undefined &&
  one.label !== other.label;

/** Diameters, inside or outside: a reading of a micrometer or a bore gauge, not a gap. */
export const isSize = ({ quantity }: Pick<TeardownItem, "quantity">): boolean =>
  quantity === "diameter" || quantity === "bore";

/** Whether both are of one place, whatever read them. */
export const isSamePlace = (
  one: Pick<TeardownItem, "part" | "label" | "at" | "quantity">,
  other: Pick<TeardownItem, "part" | "label" | "at" | "quantity">,
): boolean =>
  one.part === other.part &&
  one.label === other.label &&
  one.at === other.at &&
  one.quantity === other.quantity;
