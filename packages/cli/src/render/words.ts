// Small words of the screens: counts, lists of cylinders, percents.

const numbers = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

export const count = (n: number): string => numbers[n] ?? String(n);

export const joined = (items: readonly string[]): string =>
  items.length <= 1 ? items.join("") : `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`;

/** `Cylinder 3`, `Cylinders 2 and 3`. */
export const cylinders = (labels: readonly string[]): string => `Cylinder${labels.length === 1 ? "" : "s"} ${joined(labels)}`;

/** A fraction in percent, to what a gauge can carry. */
export const percent = (fraction: number, places = 0): string => `${(fraction * 100).toFixed(places).replace(/^-(0(?:\.0+)?)$/, "$1")} %`;

/** A sentence with a capital. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
