// The known holes typed for `gauge calibrate`, and what each read.

import {
  type Gauge,
  type KnownHole,
  isSameHole,
  percentOf,
  plainNumber,
  readKnownHole,
} from "@sealtrend/core/parts";
import { type Args, type Fault, Stop } from "../../command.ts";
import { usageFault } from "../usage.ts";

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
export const holesTyped = (args: Args, gauge: Gauge): readonly KnownHole[] => {
  const holes = wordsOf(args.list("hole"));
  const reads = wordsOf(args.list("reads"));
  const bare = holes.filter((hole) => !hole.includes(":"));
  if (bare.length !== reads.length) throw new Stop(2, [notPaired(bare, reads, gauge)]);
  const pairs = [
    ...holes.filter((hole) => hole.includes(":")),
    ...bare.map((hole, i) => `${hole}:${withUnit(reads[i] ?? "", gauge)}`),
  ];
  const read = pairs.map((text) => readKnownHole(pointed(text), percentOf(gauge)) ?? notRead(pointed(text)));
  const faults = read.flatMap((one) => ("code" in one ? [one] : []));
  if (faults.length > 0) throw new Stop(2, faults);
  return read.flatMap((one) => ("code" in one ? [] : [one]));
};

/** The cell with these holes added; a hole read again takes the place of its older reading. */
export const holesCell = ({ knownHoles = [] }: Gauge, typed: readonly KnownHole[]): string =>
  [...knownHoles.filter((old) => !typed.some((hole) => isSameHole(hole, old))), ...typed]
    .map(({ text }) => text)
    .join(" ");

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
