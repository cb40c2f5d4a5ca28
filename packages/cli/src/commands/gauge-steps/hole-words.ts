// The known holes typed for `gauge calibrate`, and what each read.

import { type Gauge, type KnownHole, plainNumber, readKnownHole } from "@sealtrend/core";
import { type Args, type Fault, Stop } from "../../command.ts";
import { usageFault } from "../usage.ts";

export interface TypedHole {
  /** As the cell of gauges.csv has it: `1.0mm:55psi`. */
  readonly text: string;
  readonly hole: KnownHole;
}

/** A number and the unit that may stand apart from it, `1.0 mm`; two of them around a colon are a pair. */
const quantity = String.raw`[\d.,]+\s*(?:[A-Za-z%"'µ][\w/²%]*)?`;
const words = new RegExp(`${quantity}(?:\\s*:\\s*${quantity})?`, "g");

/** The words of the uses of an option; a use that holds anything else is one word, to be refused as a whole. */
const wordsOf = (uses: readonly string[]): readonly string[] =>
  uses.flatMap((use) =>
    use.replace(words, "").trim() === ""
      ? (use.match(words) ?? []).map((word) => word.replace(/\s+/g, ""))
      : [use],
  );

/** `--hole 1.0mm --reads 55psi`, in pairs where there are several, or `--hole "0.8mm:74psi 1.0mm:66psi"`.
 *  A reading without a unit stands in that of the dial. @throws Stop 2 with every fault */
export const holesTyped = (args: Args, gauge: Gauge): readonly TypedHole[] => {
  const holes = wordsOf(args.list("hole"));
  const reads = wordsOf(args.list("reads"));
  const bare = holes.filter((hole) => !hole.includes(":"));
  if (bare.length !== reads.length) throw new Stop(2, [notPaired(bare, reads, gauge)]);
  const pairs = [
    ...holes.filter((hole) => hole.includes(":")),
    ...bare.map((hole, i) => `${hole}:${withUnit(reads[i] ?? "", gauge)}`),
  ];
  const percent = gauge.dial === "percent-held" ? "percent-held" : "percent-lost";
  const read = pairs.map((text) => ({ text: pointed(text), hole: readKnownHole(text, percent) }));
  const faults = read.flatMap(({ text, hole }) => (hole === undefined ? [notRead(text)] : []));
  if (faults.length > 0) throw new Stop(2, faults);
  return read.flatMap(({ text, hole }) => (hole === undefined ? [] : [{ text, hole }]));
};

/** The cell with these holes added; a hole read again takes the place of its older reading. */
export const holesCell = (gauge: Gauge, before: string, typed: readonly TypedHole[]): string => {
  const percent = gauge.dial === "percent-held" ? "percent-held" : "percent-lost";
  const again = (text: string): boolean => {
    const old = readKnownHole(text, percent);
    return old !== undefined && typed.some(({ hole }) => Math.abs(hole.hole - old.hole) < sameSize);
  };
  const kept = before.split(/\s+/).filter((text) => text !== "" && !again(text));
  return [...kept, ...typed.map(({ text }) => text)].join(" ");
};

/** Holes nearer to each other than this are one [m]: no drill is better. */
const sameSize = 0.000005;

const withUnit = (reading: string, { dial, unit }: Gauge): string => {
  if (/[^\d.,]/.test(reading)) return reading;
  return `${reading}${dial === "percent-lost" || dial === "percent-held" ? "%" : (unit ?? "")}`;
};

/** Decimal points, whatever was typed: a blank parts the holes of the cell, and a comma may part its file. */
const pointed = (text: string): string =>
  text
    .split(":")
    .map((part) => part.replace(/^[\d.,]+/, plainNumber))
    .join(":");

const notPaired = (holes: readonly string[], reads: readonly string[], { unit = "psi" }: Gauge): Fault =>
  usageFault(
    "hole-unpaired",
    `${String(holes.length)} of --hole and ${String(reads.length)} of --reads`,
    "a reading for each hole, in the same order",
    `--hole 1.0mm --reads 55${unit}`,
  );

const notRead = (text: string): Fault =>
  usageFault(
    "hole-bad",
    `"${text}" is no hole with what it read`,
    "a hole of 0.1 to 10 mm with its unit, and a gauge pressure or percent with its unit",
    "--hole 1.0mm --reads 55psi",
  );
