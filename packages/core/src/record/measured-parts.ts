// What is measured on an engine taken apart: each part, the quantities it takes, of which label and at which places.
// @source handbook/teardown.md 1.1

import type { MeasuredPart } from "./measurement-types.ts";
import { type PlacePart, lineOf, wordsAt } from "./measured-places.ts";

/** What the label of a row names. `rod`: a cylinder or the number of a pin; `face`: which head or deck, where there are several. */
export type MeasuredLabel = "cylinder" | "journal" | "rod" | "valve" | "face" | "casting" | "none";

/** One quantity that can be measured on a part of an engine taken apart, and how it is written. */
export interface MeasuredQuantity {
  readonly name: string;
  /** A length, a volume or a force has rows that repeat each other at one place; several words there are several findings. */
  readonly kind: "length" | "volume" | "force" | "word";
  /** The words of a finding; none of anything else. */
  readonly words: readonly string[];
  readonly label: MeasuredLabel;
  /** The ways to say where on the part; each a list of what stands between the strokes. */
  readonly places: readonly (readonly PlacePart[])[];
  /** Whether a row without a place says nothing. */
  readonly placeNeeded: boolean;
  /** More is taken for a thousands mark where a comma or point can be one. [m], [m3] or [N] */
  readonly most: number;
}

const levels = wordsAt("top", "middle", "bottom");
const directions = wordsAt("thrust", "axial");
const unworn = wordsAt("unworn");
const ends = wordsAt("front", "middle", "rear");
const degrees: PlacePart = { kind: "degrees" };
const millimetres: PlacePart = { kind: "distance" };
const ring = wordsAt("1", "2", "3", "4", "oil");
const line = lineOf(["long1", "long2", "centre", "diagonal1", "diagonal2", "end1", "end2"], "between 1-2");
const helix = wordsAt("inner", "outer");

type Place = Pick<MeasuredQuantity, "places" | "placeNeeded">;
const nowhere: Place = { places: [], placeNeeded: false };
const at = (...places: (readonly PlacePart[])[]): Place => ({ places, placeNeeded: false });
const only = (...places: (readonly PlacePart[])[]): Place => ({ places, placeNeeded: true });

/** Sizes of whole parts, and the small lengths between two of them. [m] */
const sizeMost = 2;
const gapMost = 0.03;

const size = (name: string, label: MeasuredLabel, place: Place): MeasuredQuantity => ({
  name,
  kind: "length",
  words: [],
  label,
  ...place,
  most: sizeMost,
});
const gap = (name: string, label: MeasuredLabel, place: Place): MeasuredQuantity => ({
  ...size(name, label, place),
  most: gapMost,
});
const finding = (name: string, label: MeasuredLabel, place: Place, ...words: string[]): MeasuredQuantity => ({
  ...size(name, label, place),
  kind: "word",
  words,
});
const volume = (name: string, label: MeasuredLabel): MeasuredQuantity => ({
  ...size(name, label, nowhere),
  kind: "volume",
  most: 0.02,
});
const force = (name: string, label: MeasuredLabel, place: Place): MeasuredQuantity => ({
  ...size(name, label, place),
  kind: "force",
  most: 50_000,
});

const inBore = at([levels, directions], [levels], [directions]);
const alongHole = only([levels, directions], [levels]);
const onJournal = only([ends, degrees], [ends]);
const alongBearing = at([ends, degrees], [ends], [degrees]);

const journal: readonly MeasuredQuantity[] = [
  size("diameter", "journal", onJournal),
  finding("appearance", "journal", at([ends]), "normal", "scored", "blued"),
];
const bearing = (label: MeasuredLabel): readonly MeasuredQuantity[] => [
  size("bore", label, alongBearing),
  gap("thread clearance", label, alongBearing),
  finding(
    "appearance",
    label,
    at([wordsAt("upper", "lower")]),
    "normal",
    "one-sided",
    "wiped",
    "scored",
    "embedded",
    "cracked or flaking",
    "corroded",
    "polished back",
    "copper showing",
  ),
];
const face: readonly MeasuredQuantity[] = [gap("gap", "face", only([line, millimetres], [line]))];

/** Every part with its quantities. */
export const measuredParts: Readonly<Record<MeasuredPart, readonly MeasuredQuantity[]>> = {
  bore: [
    size("diameter", "cylinder", only([levels, directions], [levels], [unworn, directions], [unworn])),
    gap("ridge", "cylinder", at([directions])),
    finding("crosshatch", "cylinder", inBore, "full", "part", "none"),
    finding("score", "cylinder", inBore, "none", "light", "nail catches"),
    gap("score depth", "cylinder", inBore),
  ],
  piston: [size("diameter", "cylinder", at([millimetres]))],
  ring: [
    gap("end gap", "cylinder", only([ring, levels], [ring])),
    gap("side clearance", "cylinder", only([ring, degrees], [ring])),
  ],
  main: journal,
  pin: journal,
  "main bearing": bearing("journal"),
  "rod bearing": bearing("rod"),
  rod: [gap("side clearance", "rod", nowhere)],
  crank: [gap("end play", "none", nowhere), gap("runout", "journal", nowhere)],
  housing: [size("bore", "rod", only([wordsAt("main", "rod"), degrees], [wordsAt("main", "rod")]))],
  deck: face,
  head: face,
  guide: [size("bore", "valve", alongHole), gap("rocking", "valve", at([directions]))],
  stem: [size("diameter", "valve", alongHole)],
  seat: [gap("width", "valve", nowhere), gap("runout", "valve", nowhere)],
  valve: [gap("margin", "valve", nowhere)],
  spring: [
    size("free length", "valve", at([helix])),
    gap("squareness", "valve", at([helix])),
    force("load", "valve", at([helix, millimetres], [millimetres], [helix])),
  ],
  chamber: [volume("volume", "cylinder")],
  crown: [volume("volume", "cylinder")],
  crack: [
    finding("found by", "casting", at([{ kind: "free" }]), "dye", "magnetic", "pressure", "seen"),
    size("length", "casting", at([{ kind: "free" }])),
  ],
};

/** Every part that can be measured. */
export const partNames = Object.keys(measuredParts) as readonly MeasuredPart[];

/** What can be measured of a part. */
export const quantitiesOf = (part: MeasuredPart): readonly MeasuredQuantity[] => measuredParts[part];

/** One quantity of a part by its name; undefined where the part has none of that name. */
export const quantityOf = (part: MeasuredPart, name: string): MeasuredQuantity | undefined =>
  measuredParts[part].find((quantity) => quantity.name === name);
