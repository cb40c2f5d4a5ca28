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

/** `bore 3 top/thrust`. */
export const placeNamed = ({ part, label, at }: Place): string =>
  [partNamed({ part, ...(label === undefined ? {} : { label }) }), at].filter(Boolean).join(" ");

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
