// What the maker's limits may be given for: what is measured of a part, and what is worked out from it.

import { quantitiesOf } from "./measured-parts.ts";
import type { MeasuredPart } from "./measurement-types.ts";

/** A quantity of a part that a limit may be given for. */
export interface LimitQuantity {
  readonly name: string;
  /** A limit T of a difference that may go either way holds from -T to T. */
  readonly signed: boolean;
}

const apart = (name: string): LimitQuantity => ({ name, signed: false });
const either = (name: string): LimitQuantity => ({ name, signed: true });

const round = [either("taper"), either("out-of-round")];
const flat = [apart("flatness"), apart("flatness 150")];

/** Worked out from what was measured. @source handbook/teardown.md 2 */
const derived: Readonly<Partial<Record<MeasuredPart, readonly LimitQuantity[]>>> = {
  bore: [...round, apart("cylindricity"), apart("wear")],
  piston: [apart("clearance")],
  main: round,
  pin: round,
  "main bearing": [apart("clearance")],
  "rod bearing": [apart("clearance")],
  crank: [apart("bend")],
  housing: [either("out-of-round")],
  deck: flat,
  head: flat,
  guide: [apart("clearance")],
};

/** Other names of the trade for the same figure. What is read by thread, and a gap under the straightedge, are one way to it. */
const also: Readonly<Partial<Record<MeasuredPart, Readonly<Record<string, string>>>>> = {
  bore: { ovality: "out-of-round" },
  piston: { "piston clearance": "clearance" },
  main: { ovality: "out-of-round" },
  pin: { ovality: "out-of-round" },
  "main bearing": { "oil clearance": "clearance", "thread clearance": "clearance" },
  "rod bearing": { "oil clearance": "clearance", "thread clearance": "clearance" },
  deck: { gap: "flatness", warp: "flatness" },
  head: { gap: "flatness", warp: "flatness" },
  guide: { "stem clearance": "clearance", "oil clearance": "clearance" },
};

/** All that a limit of a part may be given for. */
export const limitQuantitiesOf = (part: MeasuredPart): readonly LimitQuantity[] => [
  ...quantitiesOf(part).flatMap(({ name, kind }) =>
    kind === "length" && also[part]?.[name] === undefined ? [apart(name)] : [],
  ),
  ...(derived[part] ?? []),
];

/** The quantity that a text names, by its own name or another of the trade. */
export const limitQuantityNamed = (part: MeasuredPart, text: string): LimitQuantity | undefined => {
  const typed = text.trim().toLowerCase().replace(/\s+/g, " ");
  const name = also[part]?.[typed] ?? typed;
  return limitQuantitiesOf(part).find((quantity) => quantity.name === name);
};
