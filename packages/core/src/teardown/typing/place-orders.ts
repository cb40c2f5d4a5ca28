// In which order the figures of a line stand on the part.

import { type MeasuredPart, type MeasuredQuantity, readPlace } from "../../record/index.ts";

/** Every pairing of the first with the second, the second changing first: `top/thrust top/axial middle/thrust …`. */
const each = (first: readonly string[], second: readonly string[]): readonly string[] =>
  first.flatMap((one) => second.map((other) => `${one}/${other}`));

const levels = ["top", "middle", "bottom"];
const directions = ["thrust", "axial"];
const angles = ["0", "90"];
const quarters = ["0", "90", "180", "270"];
const ends = ["front", "rear"];
const threeEnds = ["front", "middle", "rear"];
const rings: readonly (readonly string[])[] = [
  ["1"],
  ["1", "2"],
  ["1", "2", "oil"],
  ["1", "2", "3", "oil"],
  ["1", "2", "3", "4", "oil"],
];
/** At the crown and to both sides of it; 0 is the parting line. */
const housingAngles = ["45", "90", "135"];

/** Orders of one quantity; the first that is long enough counts. */
interface Orders {
  readonly plain: readonly (readonly string[])[];
  /** Only where the head of the line names a place of it: `ring 3 bottom`, `bore 3 unworn`. */
  readonly named: readonly (readonly string[])[];
}

const single: Orders = { plain: [[""]], named: [] };
const nowhere: Orders = { plain: [], named: [] };
const inHole: Orders = { plain: [each(levels, directions)], named: [] };
const acrossOnly: Orders = { plain: [[""], directions], named: [] };
const onJournal: Orders = { plain: [each(ends, angles), each(threeEnds, angles)], named: [] };
const inBearing: Orders = { plain: [[""], ends, threeEnds], named: [each(threeEnds, angles)] };
const coils: Orders = { plain: [[""], ["inner", "outer"]], named: [] };

const orders: Readonly<Partial<Record<MeasuredPart, Readonly<Record<string, Orders>>>>> = {
  bore: {
    diameter: { plain: [each(levels, directions)], named: [each(["unworn"], directions)] },
    ridge: acrossOnly,
  },
  ring: {
    "end gap": { plain: rings, named: rings.slice(2).map((some) => each(some, levels)) },
    "side clearance": { plain: rings, named: rings.slice(2).map((some) => each(some, quarters)) },
  },
  main: { diameter: onJournal },
  pin: { diameter: onJournal },
  "main bearing": { bore: inBearing, "thread clearance": inBearing },
  "rod bearing": { bore: inBearing, "thread clearance": inBearing },
  housing: { bore: { plain: [], named: [each(["main"], housingAngles), each(["rod"], housingAngles)] } },
  guide: { bore: inHole, rocking: acrossOnly },
  stem: { diameter: inHole },
  spring: { "free length": coils, squareness: coils },
};

export type PlacesOfLine =
  | { readonly ok: true; readonly places: readonly string[] }
  /** `most`: of the longest order that fits what was named; none where nothing fits. `fewer`: how many a shorter order takes,
   *  where the figures are too many for it and too few for the next. */
  | { readonly ok: false; readonly most: readonly string[]; readonly fewer?: number };

interface Asked {
  readonly part: MeasuredPart;
  readonly quantity: MeasuredQuantity;
  /** Words of places in the head of the line. */
  readonly named: readonly string[];
  readonly count: number;
}

/** Where the figures of a line stand, one place each. A single figure stands where the head says, and nowhere closer. */
export const placesOf = ({ part, quantity, named, count }: Asked): PlacesOfLine => {
  const exact = readPlace(quantity, named.join("/"));
  if (count <= 1 && named.length > 0 && exact !== undefined) return { ok: true, places: [exact] };
  const usual = quantity.placeNeeded ? nowhere : single;
  const { plain, named: more } = orders[part]?.[quantity.name] ?? usual;
  const all = named.length === 0 ? plain : [...plain, ...more];
  const fitting = all
    .map((order) => order.filter((place) => named.every((word) => place.split("/").includes(word))))
    .filter((order) => order.length > 0);
  const long = fitting.find((order) => order.length >= count);
  const fewer = fitting.findLast((order) => order.length > 1 && order.length < count)?.length;
  if (long !== undefined && long.length > count && fewer !== undefined)
    return { ok: false, most: long, fewer };
  if (long !== undefined) return { ok: true, places: long };
  const longest = fitting.toSorted((a, b) => b.length - a.length)[0];
  return { ok: false, most: longest ?? (exact === undefined ? [] : [exact]) };
};
