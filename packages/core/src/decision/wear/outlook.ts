// The chance over the years of ownership, by the worst line or as typed.

import type { Wear, WearLine } from "../input.ts";
import { passedWithin } from "./known.ts";

/** One line, or a typed chance spread evenly over the horizon it was typed for. */
export type SingleWear =
  | { readonly kind: "line"; readonly line: WearLine }
  | { readonly kind: "typed"; readonly probability: number; readonly years: number };

export interface Outlook {
  readonly wear: SingleWear;
  /** That the worst passes its limit within the horizon. */
  readonly probability: number;
  /** Of that line. */
  readonly label?: string;
  /** No union of them is likelier: the sum over the lines, 1 at most. */
  readonly atMost: number;
}

/** A typed chance is held this far from never and from always: nobody knows better (ours). */
const leastChance = 1e-6;

/** @returns undefined where nothing is known  @source handbook/decision.md 3; statistics.md E (Frechet bounds) */
export const outlookOf = (wear: Wear, years: number): Outlook | undefined => {
  if (wear.kind === "unknown") return undefined;
  if (wear.kind === "typed") {
    const probability = Math.min(1 - leastChance, Math.max(leastChance, wear.probability));
    return { wear: { ...wear, probability, years }, probability, atMost: probability };
  }
  const chances = wear.lines.map((line) => ({ line, probability: passedWithin(line, years) }));
  const worst = chances.reduce((a, b) => (b.probability > a.probability ? b : a));
  return {
    wear: { kind: "line", line: worst.line },
    probability: worst.probability,
    label: worst.line.label,
    atMost: Math.min(
      1,
      chances.reduce((sum, { probability }) => sum + probability, 0),
    ),
  };
};

/** What a line is less likely than within the horizon takes no part: the risk taken is shared among lines that count, and
 *  sound cylinders must not use it up (ours). */
const telling = 0.001;

/** The lines that count within the horizon, and those beside them. */
export const countingWithin = (lines: readonly WearLine[], years: number): Wear => {
  const chances = lines.map((line) => ({ line, probability: passedWithin(line, years) }));
  const isBest = ({ line: { oneOf }, probability }: (typeof chances)[number], at: number): boolean =>
    oneOf === undefined ||
    chances.every(
      (other, k) =>
        other.line.oneOf !== oneOf ||
        other.probability < probability ||
        (other.probability === probability && k >= at),
    );
  const worst = Math.max(...chances.map(({ probability }) => probability));
  const least = Math.min(worst, telling);
  const counted = chances.filter((one, at) => one.probability >= least && isBest(one, at));
  const [first, ...rest] = counted.map(({ line }) => line);
  if (first === undefined) return { kind: "unknown" };
  const beside = lines.filter((line) => !counted.some((one) => one.line === line));
  return { kind: "lines", lines: [first, ...rest], ...(beside.length === 0 ? {} : { beside }) };
};

/** The same wear, by what counts within other years. */
export const recounted = (wear: Wear, years: number): Wear =>
  wear.kind === "lines" && wear.beside !== undefined
    ? countingWithin([...wear.lines, ...wear.beside], years)
    : wear;

/** With the lines that are too unlikely within the horizon to count. */
export const withBeside = (wear: Wear): Wear =>
  wear.kind === "lines" && wear.beside !== undefined
    ? { kind: "lines", lines: [...wear.lines, ...wear.beside] }
    : wear;

/** Every line that is held to one limit, held to another. */
export const withLimit = (wear: Wear, from: number, to: number): Wear => {
  if (wear.kind !== "lines") return wear;
  const moved = (line: WearLine): WearLine => (line.limit === from ? { ...line, limit: to } : line);
  const [first, ...rest] = wear.lines;
  return {
    kind: "lines",
    lines: [moved(first), ...rest.map(moved)],
    ...(wear.beside === undefined ? {} : { beside: wear.beside.map(moved) }),
  };
};

/** F(t), t in years from now. */
export const passedBy = (wear: SingleWear, years: number): number =>
  wear.kind === "line"
    ? passedWithin(wear.line, years)
    : wear.probability * Math.min(1, Math.max(0, years / wear.years));

/** D: what a cost at the time of need is worth today. Quarters of the horizon, from F(0) today on;
 *  of a typed chance (1 - e^(-dH))/(dH).  @param interest - real, a year  @source handbook/decision.md 3 */
export const discountOf = (wear: SingleWear, years: number, interest: number): number => {
  if (interest === 0) return 1;
  if (wear.kind === "typed") return (1 - Math.exp(-interest * years)) / (interest * years);
  const whole = passedBy(wear, years);
  if (whole === 0) return 1;
  let before = passedBy(wear, 0);
  let worth = before;
  for (let quarter = 1; quarter <= 4; quarter += 1) {
    const until = passedBy(wear, (years * quarter) / 4);
    worth += (until - before) * Math.exp((-interest * years * (quarter - 0.5)) / 4);
    before = until;
  }
  return worth / whole;
};
