// In which units `expect` tells what it rests on: as typed where it was typed, else in the system of the owner.

import { type PressureUnit, type UnitName, fromSi, toSi } from "@sealtrend/core";
import { shownOn } from "../ascii.ts";
import type { Typed } from "../../commands/expect-steps/expect-options.ts";

/** `us`: inches, feet, cubic inches, Fahrenheit, inches of mercury. */
export type System = "metric" | "us";

/** How the answer is told. */
export interface Telling {
  readonly unit: PressureUnit;
  readonly system: System;
  /** `why` shows every input and what the model did. */
  readonly detail: "short" | "why";
  readonly width: number;
  /** A text in the letters that the terminal shows, so that columns keep their widths. */
  readonly letters: (text: string) => string;
}

const ofSystem: Readonly<Partial<Record<UnitName, System>>> = {
  m: "metric",
  cm: "metric",
  mm: "metric",
  um: "metric",
  C: "metric",
  ft: "us",
  in: "us",
  thou: "us",
  F: "us",
  in3: "us",
};

/** Psi is read by owners who measure in inches and by others: what they typed tells.
 *  @param wanted - the value of --units, or what the logbook prefers */
export const systemOf = (wanted: string | undefined, typed: Typed): System => {
  if (wanted === "us") return "us";
  const systems = new Set(Object.values(typed).map(({ unit }) => ofSystem[unit]));
  const metric = systems.has("metric");
  if (wanted === undefined) return systems.has("us") && !metric ? "us" : "metric";
  return wanted === "psi" && !metric ? "us" : "metric";
};

/** A unit for each system, and decimals of a value nobody stated. */
export interface Units {
  readonly metric: readonly [unit: UnitName, places: number];
  readonly us: readonly [unit: UnitName, places: number];
}

/** A difference in a unit: a degree Celsius is as long as a kelvin. */
export const differenceIn = (unit: UnitName | undefined, amount: number): number =>
  unit === undefined ? amount : amount / (toSi(1, unit) - toSi(0, unit));

/** At most so many decimals, and more where nothing would be left of it. */
export const short = (value: number, places: number): string => {
  const rounded = Number(value.toFixed(places));
  return String(Math.abs(rounded) * 10 ** places < 1 ? Number(value.toPrecision(1)) : rounded);
};

/** `9000 ft`: as typed where it was. */
export const asTold = (
  si: number,
  units: Units,
  system: System,
  typed?: { readonly value: number; readonly unit: UnitName },
): string => {
  if (typed !== undefined) return `${String(typed.value)} ${typed.unit}`;
  const [unit, places] = units[system];
  return `${short(fromSi(si, unit), places)} ${unit}`;
};

const noBreak = "\u00a0";

/** Kept on one line where it stands in a sentence. */
export const held = (text: string): string => text.replaceAll(" ", noBreak);

/** In the letters of a terminal, what is held together still held. */
export const lettersOf =
  (io: { readonly unicode: boolean }) =>
  (text: string): string =>
    text
      .split(noBreak)
      .map((part) => shownOn(io, part))
      .join(noBreak);

/** The unit a quantity is told in. */
export const unitTold = (units: Units, system: System, typed?: { readonly unit: UnitName }): UnitName =>
  typed?.unit ?? units[system][0];
