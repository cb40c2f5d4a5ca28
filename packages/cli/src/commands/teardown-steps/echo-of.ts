// The answer to a line that was just taken: judged with what it is compared with and no more, so that the last of two hundred
// lines is answered as fast as the first.

import {
  type ConflictCode,
  type MeasuredPart,
  type Measurement,
  type TeardownConflict,
  type TypedMeasurement,
  judgeTeardown,
} from "@sealtrend/core/parts";
import { clean } from "../../render/clean.ts";
import { prose } from "../../render/prose.ts";
import { repeatTexts } from "../../render/teardown/teardown-repeats.ts";
import { echoLines } from "../../render/teardown/teardown-echo.ts";
import type { MeasuredEngine } from "./measured-engine.ts";
import { areRecordedAlready } from "./recorded-already.ts";
import { type Entry, asRecorded, typedMeasurements } from "./typed-entry.ts";

interface Known extends Pick<MeasuredEngine, "engine" | "measurements"> {
  readonly width: number;
  /** Whether a line that is recorded already is left out. */
  readonly skips: boolean;
  /** The value of --units. */
  readonly units: string | undefined;
}

export interface Echo {
  /** Without line ends. */
  readonly lines: readonly string[];
  /** Whether a figure of the line looks like a slip of the hand. */
  readonly isSlip: boolean;
}

export const echoOf = (
  measurements: readonly TypedMeasurement[],
  entry: Entry,
  { engine, measurements: before, width, units, skips }: Known,
): Echo => {
  const [first] = measurements;
  if (first === undefined) return { lines: ["  nothing taken"], isSlip: false };
  const head = clean((entry.taken.at(-1)?.text ?? "").replace(/:.*/, "")).trim();
  if (skips && areRecordedAlready(measurements, before))
    return { lines: prose(`${head}: recorded already, to the letter`, width, "  "), isSlip: false };
  const typed = typedMeasurements(entry);
  const earlier = [...before, ...typed.slice(0, typed.length - measurements.length)];
  const all = [...before, ...asRecorded(typed, before)].filter((one) => isBeside(one, first));
  const assessment = judgeTeardown({ engine, measurements: all }, first.teardown);
  const lines = assessment === undefined ? [] : echoLines(assessment, measurements, { width, units });
  const isSaid = assessment?.conflicts.some(
    ({ code, part, label }) => saidThere.includes(code) && part === first.part && label === first.label,
  );
  const repeats = isSaid === true ? [] : repeatTexts(measurements, earlier, head);
  return {
    lines: [...lines, ...repeats.flatMap((text) => prose(text, width, "  "))],
    isSlip: assessment?.conflicts.some((conflict) => isSlipOf(conflict, measurements)) === true,
  };
};

const slips: readonly ConflictCode[] = ["likely-slip", "cannot-be", "swapped-digits", "whole-turn"];

/** Of one of these figures, and with what was meant instead, or one that cannot be whatever was meant. */
const isSlipOf = (
  { code, part, label, at, quantity, meant }: TeardownConflict,
  measurements: readonly TypedMeasurement[],
): boolean =>
  slips.includes(code) &&
  (meant !== undefined || code === "cannot-be") &&
  measurements.some(
    (one) =>
      one.part === part &&
      one.label === label &&
      (quantity === undefined || one.quantity === quantity) &&
      (at === undefined || one.at === at),
  );

/** Doubts that say more of figures which stand twice than that they are repeats. */
const saidThere: readonly ConflictCode[] = ["entered-twice", "repeats-apart"];

/** Parts that run in each other. */
const pairs: readonly (readonly MeasuredPart[])[] = [
  ["bore", "piston", "ring"],
  ["main", "main bearing"],
  ["pin", "rod bearing"],
  ["guide", "stem"],
];

/** The same quantity of every part of its kind, and all of what runs in this one. */
const isBeside = (
  { part, label, quantity }: Measurement,
  typed: Pick<TypedMeasurement, "part" | "label" | "quantity">,
): boolean => {
  if (part === typed.part) return quantity === typed.quantity || label === typed.label;
  const pair = pairs.find((parts) => parts.includes(typed.part));
  // the pin of a rod has a number of its own
  return pair?.includes(part) === true && (label === typed.label || pair.includes("pin"));
};
