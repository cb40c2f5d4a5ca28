// The places where air of a leak-down is heard or seen, and what people call them.

import type { Heard, HeardPlace } from "./types.ts";

/** The words of a `heard` cell: a place each, or none. */
export const heardPlaces: readonly HeardPlace[] = [
  "intake",
  "exhaust",
  "crankcase",
  "coolant",
  "neighbour",
  "plug",
  "outside",
  "none",
];

/** What else each place is called, in small letters with blanks. @source handbook/leakdown.md B, where the air is heard */
const names: Readonly<Record<HeardPlace, readonly string[]>> = {
  intake: [
    "inlet",
    "inlet port",
    "intake port",
    "induction",
    "manifold",
    "carburettor",
    "carburetor",
    "carb",
    "throttle",
    "throttle body",
    "air inlet",
    "air intake",
    "air filter",
    "air cleaner",
  ],
  exhaust: ["tailpipe", "tail pipe", "exhaust pipe", "exhaust port", "muffler", "silencer"],
  crankcase: [
    "breather",
    "oil filler",
    "oil cap",
    "oil filler cap",
    "filler cap",
    "dipstick",
    "dipstick tube",
    "pcv",
    "pcv valve",
    "rocker cover",
    "sump",
  ],
  coolant: ["radiator", "header tank", "expansion tank", "cooling water", "water", "bubbles"],
  neighbour: [
    "neighbor",
    "next",
    "adjacent",
    "next plug hole",
    "next cylinder",
    "neighbouring plug hole",
    "adjacent plug hole",
  ],
  plug: ["plug hole", "plug thread", "spark plug", "glow plug", "adapter"],
  outside: ["joint", "head joint", "barrel joint", "injector"],
  none: ["nothing", "no"],
};

const byName: ReadonlyMap<string, HeardPlace> = new Map(
  heardPlaces.flatMap((place) => [place, ...names[place]].map((name) => [name, place] as const)),
);

const faint = new Set(["faint", "faintly", "slight"]);
const loud = new Set(["loud", "strong"]);

/** Whether a word says how loud, and not where. */
export const isStrength = (word: string): boolean =>
  faint.has(word.toLowerCase()) || loud.has(word.toLowerCase());

/** Whether these words, put together, name a place. */
export const namesPlace = (words: readonly string[]): boolean => byName.has(nameOf(words));

const nameOf = (words: readonly string[]): string => words.join(" ").toLowerCase().replaceAll("-", " ");

/** One place as it was written: `exhaust`, `oil filler:faint`, `neighbour:4`; undefined where it is none.
 *  @param labels - of the engine's cylinders */
export const placeIn = (text: string, labels: readonly string[]): Heard | undefined => {
  const words = wordsOf(text);
  const rest = words.filter((word) => !isStrength(word));
  const label = rest.find((word, i) => i > 0 && labels.includes(word));
  const place = byName.get(nameOf(rest.filter((word) => word !== label)));
  if (place === undefined || (label !== undefined && place !== "neighbour")) return undefined;
  const isFaint = words.some((word) => faint.has(word.toLowerCase()));
  return { place, faint: isFaint, ...(label === undefined ? {} : { neighbour: label }) };
};

/** The mark of a neighbour that is no cylinder of the engine, in a text that placeIn refused. */
export const strangeNeighbour = (text: string, labels: readonly string[]): string | undefined => {
  const words = wordsOf(text).filter((word) => !isStrength(word));
  const mark = words.at(-1);
  const isNeighbour = byName.get(nameOf(words.slice(0, -1))) === "neighbour";
  return isNeighbour && mark !== undefined && !labels.includes(mark) ? mark : undefined;
};

const wordsOf = (text: string): readonly string[] => text.split(/[\s:]+/).filter((word) => word !== "");
