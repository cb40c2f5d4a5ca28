// The sizes of one part as a person sets them: where they stand, `limits.offered.bore`, and what they are, `0.020 0.040 0.060in`.

import { nearest } from "../problem/index.ts";
import { readNumber } from "../quantity/index.ts";
import { isLengthUnit, measuredUnitNamed } from "./measured-value.ts";
import type { LengthUnit, OfferedPart } from "./measurement-types.ts";

const parts: readonly OfferedPart[] = ["bore", "main", "pin"];
const offered = "limits.offered";

/** The part whose sizes a path names. */
export const offeredPartAt = (path: string): OfferedPart | undefined =>
  parts.find((part) => path === `${offered}.${part}`);

/** The path that was nearly typed: `offered.bore`, `limits.offered.bores`. */
export const offeredMeant = (path: string): string | undefined => {
  const [, name = ""] = /^(?:limits\.)?offered\.([^.]+)$/.exec(path.toLowerCase()) ?? [];
  const [part] = [...parts.filter((known) => name === `${known}s`), ...nearest(name, parts)];
  return part === undefined ? undefined : `${offered}.${part}`;
};

export interface TypedSizes {
  /** In the digits they were typed in, as JSON takes them. */
  readonly sizes: readonly string[];
  readonly unit: LengthUnit;
}

/** Steps over or under with one unit at the end: `0.25 0.5 0.75mm`, `0.020, 0.040in`.
 *  @returns undefined where it is no such list */
export const readTypedSizes = (text: string): TypedSizes | undefined => {
  const [, figures = "", unitText = ""] = /^(.*?\d)\s*([A-Za-zµμ"″]+)$/.exec(text.trim()) ?? [];
  const unit = measuredUnitNamed(unitText);
  if (unit === undefined || !isLengthUnit(unit)) return undefined;
  const sizes = figures.split(/\s*;\s*|,?\s+/).map(digitsOf);
  const read = sizes.flatMap((size) => (size === undefined ? [] : [size]));
  return read.length === sizes.length ? { sizes: read, unit } : undefined;
};

/** A step is below a thousand of any unit: a mark in it is a decimal one. */
const digitsOf = (typed: string): string | undefined => {
  if (!readNumber(typed).ok) return undefined;
  const digits = typed.replace(",", ".").replace(/^\+?(?=\.)/, "0");
  return /^(?:0|[1-9]\d*)(?:\.\d+)?$/.test(digits) ? digits : undefined;
};
