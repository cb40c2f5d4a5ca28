// Small words of the screens: counts, lists of cylinders, percents.

const numbers = "no one two three four five six seven eight nine ten eleven twelve".split(" ");

/** A count in words up to twelve. */
export const count = (n: number): string => numbers[n] ?? String(n);

/** The number that is written in words, from one to twelve. */
export const numberNamed = (text: string): number | undefined => {
  const at = numbers.indexOf(text.trim().toLowerCase());
  return at < 1 ? undefined : at;
};

/** `one test`, `two tests`. */
export const counted = (n: number, noun: string): string => `${count(n)} ${noun}${n === 1 ? "" : "s"}`;

/** `1, 2 and 4`. */
export const joined = (items: readonly string[]): string =>
  items.length <= 1 ? items.join("") : `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`;

/** `Cylinder 3`, `Cylinders 2 and 3`. */
export const cylinders = (labels: readonly string[]): string =>
  `Cylinder${labels.length === 1 ? "" : "s"} ${joined(labels)}`;

/** What a cylinder is compared with. @param n - cylinders of the engine */
export const theOthers = (n: number): string => (n === 2 ? "the other" : "the others");

/** A number of so many decimals, never `-0`; 7.5 that arithmetic left a hair short is rounded as 7.5. */
export const fixed = (value: number, places: number): string =>
  Number(value.toPrecision(12))
    .toFixed(places)
    .replace(/^-(0(?:\.0+)?)$/, "$1");

/** A fraction in percent, to what a gauge can carry. */
export const percent = (fraction: number, places = 0): string => `${fixed(fraction * 100, places)} %`;

/** Whether a part without its sign rounds to no tenth of a percent. */
export const isBelowTenth = (part: number): boolean => fixed(part * 100, 1) === "0.0";

/** What is lost or gained a year, without its sign: `1.2 %`, or `less than 0.1 %` where nothing would be left of it. */
export const yearlyText = (part: number): string =>
  isBelowTenth(part) ? "less than 0.1 %" : percent(part, 1);

/** Whether a yearly rate, a part with its sign, is told: its interval is off 0 as it would be printed; below a tenth, which is
 *  printed without one, off 0 at all. */
export const isRateShown = (rate: number, [low, high]: readonly [low: number, high: number]): boolean =>
  low < 0 === high < 0 &&
  (isBelowTenth(Math.abs(rate)) || ![low, high].some((end) => isBelowTenth(Math.abs(end))));

/** Decimals of a percent, one at least, with which a part is more than zeros. */
export const carryingPlaces = (part: number): number =>
  [1, 2, 3].find((places) => Number(fixed(part * 100, places)) !== 0) ?? 1;

/** A change in percent without its unit, with its sign: `+3`, `-18`, `0`. */
export const signedPercent = (fraction: number, places = 0): string => {
  const text = fixed(fraction * 100, places);
  return fraction > 0 && Number(text) !== 0 ? `+${text}` : text;
};

/** A sentence with a capital and its full stop. */
export const wholeSentence = (text: string): string => `${sentence(text)}${/[.?!]$/.test(text) ? "" : "."}`;

/** A sentence with a capital. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
