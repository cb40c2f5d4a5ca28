// What the instruments of a home workshop can do. The owner's certificate or own repeat test takes the place of these.

import { type Length, length, toSi } from "../../quantity/index.ts";
import type { LengthUnit } from "../../record/index.ts";

export type InstrumentCode =
  | "micrometer"
  | "bore-gauge"
  | "telescopic"
  | "small-hole gauge"
  | "inside micrometer"
  | "caliper"
  | "thread"
  | "feeler"
  | "straightedge"
  | "dial";

/** One kind of instrument; every uncertainty is standard [m]. */
export interface InstrumentKind {
  readonly code: InstrumentCode;
  /** As told to a mechanic. */
  readonly name: string;
  /** Words of measurements.csv that mean it, in lower case, hyphens as blanks. */
  readonly words: readonly string[];
  /** The coarsest usual one, where none is stated. */
  readonly resolution: { readonly mm: number; readonly in: number };
  /** The finer one that it is made with besides. */
  readonly finer?: { readonly mm: number; readonly in: number };
  /** Shared by all readings made with it: scale, setting. @param size - of what is measured */
  readonly common: (size: Length, resolution: Length) => number;
  /** Of one reading: resolution, handling, feel. */
  readonly read: (resolution: Length) => number;
  /** Whether the mean of repeats is better than one: not where they share the leaf, the thread or the card. */
  readonly repeatsHelp: boolean;
  /** Whether the resolution enters its uncertainty. */
  readonly byResolution: boolean;
  /** Carries a size to or from a micrometer, whose scale then is the only one. */
  readonly carries?: "set in" | "read by";
}

const micron = 1e-6;
const rootThree = Math.sqrt(3);

/** A rectangle of the width of one division. */
const division = (resolution: Length): number => resolution / Math.sqrt(12);

/** Largest error of an outside micrometer: ±4 µm to 50 mm and ±1 µm for each 50 mm more, as a rectangle.
 *  @source DIN 863 table (±4, ±5, ±6 to 150 mm; continued beyond, from memory) */
const micrometerScale = (size: Length): number =>
  ((4 + Math.max(0, Math.ceil(size / 0.05 - 1e-9) - 1)) * micron) / rootThree;

/** Feel of the ratchet 2.5 µm, judgement. */
const micrometerRead = (resolution: Length): number => Math.hypot(2.5 * micron, division(resolution));

/** Finest division of a gauge whose setting micrometer reads 0.001 mm; a coarser gauge is set as coarsely. */
const fineGauge = 3 * micron;
const settingRead = (resolution: Length): number =>
  micrometerRead(resolution <= fineGauge ? length(micron) : resolution);

/** Leaf and feel of a feeler, 6 µm, with the interval from the leaf that goes to the one that does not. */
const feelerRead = (step: Length): number => Math.hypot(6 * micron, division(step));

/** A gauge locked in the hole and measured outside it: handling 10 µm, judgement. */
const readByMicrometer = {
  resolution: { mm: 0.01, in: 0.0005 },
  common: micrometerScale,
  read: () => 10 * micron,
  repeatsHelp: true,
  byResolution: false,
  carries: "read by",
} as const;

/** A straightedge that spans a usual head, 500 mm, straight to 0.0002 in a foot (a service section of Ford), as a rectangle. */
const edgeError = ((toSi(0.0002, "in") / toSi(1, "ft")) * 0.5) / rootThree;

const kinds: readonly InstrumentKind[] = [
  {
    code: "micrometer",
    name: "micrometer",
    words: ["micrometer", "outside micrometer", "mic", "depth micrometer"],
    resolution: { mm: 0.01, in: 0.0005 },
    finer: { mm: 0.001, in: 0.0001 },
    common: micrometerScale,
    read: micrometerRead,
    repeatsHelp: true,
    byResolution: true,
  },
  {
    // handling 3 µm (judgement); scale and setting are those of the micrometer that it was set in
    code: "bore-gauge",
    name: "bore gauge",
    words: ["bore gauge", "dial bore gauge", "cylinder gauge"],
    resolution: { mm: 0.01, in: 0.0005 },
    finer: { mm: 0.002, in: 0.0001 },
    common: (size, resolution) => Math.hypot(micrometerScale(size), settingRead(resolution)),
    read: (resolution) => Math.hypot(3 * micron, division(resolution)),
    repeatsHelp: true,
    byResolution: true,
    carries: "set in",
  },
  {
    ...readByMicrometer,
    code: "telescopic",
    name: "telescopic gauge and micrometer",
    words: ["telescopic", "telescopic gauge", "telescoping gauge"],
  },
  {
    ...readByMicrometer,
    code: "small-hole gauge",
    name: "small-hole gauge and micrometer",
    words: ["small hole gauge", "small hole"],
  },
  {
    // ±0.0005 in with 0.001 in graduations: TB 9-5210-207-24; reading 5 µm, judgement
    code: "inside micrometer",
    name: "inside micrometer",
    words: ["inside micrometer"],
    resolution: { mm: 0.01, in: 0.001 },
    common: () => toSi(0.0005, "in") / rootThree,
    read: () => 5 * micron,
    repeatsHelp: true,
    byResolution: false,
  },
  {
    // ±20 µm and 20 µm more inside: DIN 862 table; reading 10 µm, judgement
    code: "caliper",
    name: "caliper",
    words: ["caliper", "calipers", "calliper", "dial caliper", "vernier"],
    resolution: { mm: 0.02, in: 0.001 },
    common: () => (40 * micron) / rootThree,
    read: () => 10 * micron,
    repeatsHelp: true,
    byResolution: false,
  },
  {
    // ±0.0005 in taken as two standard uncertainties, from memory; all strips share the packet and its card
    code: "thread",
    name: "gauging thread",
    words: ["thread", "plastic thread", "gauging thread"],
    resolution: { mm: 0.01, in: 0.0005 },
    common: () => 0,
    read: () => toSi(0.0005, "in") / 2,
    repeatsHelp: false,
    byResolution: false,
  },
  {
    code: "feeler",
    name: "feeler",
    words: ["feeler", "feelers", "feeler gauge"],
    resolution: { mm: 0.05, in: 0.002 },
    common: () => 0,
    read: feelerRead,
    repeatsHelp: false,
    byResolution: true,
  },
  {
    code: "straightedge",
    name: "straightedge and feeler",
    words: ["straightedge", "straight edge"],
    resolution: { mm: 0.05, in: 0.002 },
    common: () => edgeError,
    read: feelerRead,
    repeatsHelp: false,
    byResolution: true,
  },
  {
    // scale 3 µm and reading 5 µm of one with 0.01 mm divisions, judgement; coarser divisions count as such
    code: "dial",
    name: "dial indicator",
    words: ["dial", "dial indicator", "dial gauge", "clock"],
    resolution: { mm: 0.01, in: 0.001 },
    common: () => 3 * micron,
    read: (resolution) =>
      Math.max(5 * micron, Math.hypot(Math.sqrt(25 - 100 / 12) * micron, division(resolution))),
    repeatsHelp: true,
    byResolution: true,
  },
];

const byCode: ReadonlyMap<InstrumentCode, InstrumentKind> = new Map(kinds.map((kind) => [kind.code, kind]));

/** @throws TypeError for a code without a row, which the types rule out */
export const kindOf = (code: InstrumentCode): InstrumentKind => {
  const kind = byCode.get(code);
  if (kind === undefined) throw new TypeError(`kindOf: no instrument ${code}`);
  return kind;
};

const byLongestWord = kinds
  .flatMap((kind) => kind.words.map((word) => ({ kind, word })))
  .sort((a, b) => b.word.length - a.word.length);

/** The instrument that a name means: a word of the table, alone or among an owner's own words ("old bore-gauge"). */
export const instrumentNamed = (name: string): InstrumentKind | undefined => {
  const plain = ` ${name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, " ")
    .trim()} `;
  return byLongestWord.find(({ word }) => plain.includes(` ${word} `))?.kind;
};

/** Each by its usual name. */
export const instrumentWords: readonly string[] = kinds.flatMap(({ words }) => words.slice(0, 1));

/** The coarsest usual division in the system of `unit`. */
export const usualResolution = ({ resolution }: InstrumentKind, unit: LengthUnit): Length =>
  inSystem(resolution, unit);

/** Divisions that it is made with besides. */
export const finerOf = ({ finer }: InstrumentKind, unit: LengthUnit): readonly Length[] =>
  finer === undefined ? [] : [inSystem(finer, unit)];

/** A size in millimetres or in inches, as the unit goes. */
export const inSystem = (sizes: { readonly mm: number; readonly in: number }, unit: LengthUnit): Length =>
  unit === "in" || unit === "thou" ? length(toSi(sizes.in, "in")) : length(toSi(sizes.mm, "mm"));
