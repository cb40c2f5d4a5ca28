// The rows of a teardown as readings: repeats put together, each with what its instrument can do.

import { type Length, length } from "../../quantity/index.ts";
import type { LengthUnit, Measurement, PartState } from "../../record/index.ts";
import { mean } from "../../statistics/index.ts";
import {
  type Instrument,
  feelerUncertainty,
  instrumentFor,
  instrumentText,
  readingUncertainty,
} from "../conformity/index.ts";
import type { TeardownItem } from "../teardown.ts";

/** A figure of one place with its instrument. */
export interface Reading {
  readonly item: TeardownItem;
  readonly instrument: Instrument;
}

const units: readonly (string | undefined)[] = ["mm", "um", "in", "thou"] satisfies readonly LengthUnit[];
const isLengthUnit = (unit: string | undefined): unit is LengthUnit => units.includes(unit);

/** Lengths alone, in the order of measuring. Rows that agree in all but the value are repeats. */
export const readingsOf = (measurements: readonly Measurement[]): readonly Reading[] => {
  const places = new Map<string, Measurement[]>();
  for (const one of measurements.filter(isLength)) {
    const key = keyOf(one);
    places.set(key, [...(places.get(key) ?? []), one]);
  }
  const readings = [...places.values()].flatMap((repeats) => readingOf(repeats) ?? []);
  return withSuperseded(readings);
};

const isLength = ({ value, unit }: Measurement): boolean =>
  (value.kind === "length" || value.kind === "between") && isLengthUnit(unit);

const keyOf = ({ part, label, at, quantity, state, instrument, resolution, value }: Measurement): string =>
  JSON.stringify([part, label, at, quantity, state, instrument, resolution, value.kind]);

const readingOf = (repeats: readonly Measurement[]): Reading | undefined => {
  const [first] = repeats;
  if (first === undefined || !isLengthUnit(first.unit)) return undefined;
  const { part, label, at, quantity, unit, state } = first;
  const between = betweenOf(repeats);
  const value = between === undefined ? meanOf(repeats) : length((between.low + between.high) / 2);
  const instrument = instrumentFor({
    part,
    quantity,
    unit,
    size: value,
    ...(first.instrument === undefined ? {} : { instrument: first.instrument }),
    ...(first.resolution === undefined ? {} : { resolution: first.resolution }),
    ...(first.uncertainty === undefined ? {} : { uncertainty: first.uncertainty }),
  });
  const uncertainty =
    between === undefined
      ? readingUncertainty({ instrument, readings: repeats.length })
      : feelerUncertainty(between, instrument.common);
  return {
    instrument,
    item: {
      part,
      ...(label === undefined ? {} : { label }),
      ...(at === undefined ? {} : { at }),
      quantity,
      value,
      ...(between === undefined ? {} : { between }),
      uncertainty,
      uncertaintyFrom: instrumentText(instrument, unit, repeats.length),
      readings: repeats.length,
      unit,
      ...(first.instrument === undefined ? {} : { instrument: first.instrument }),
      state,
      verdicts: [],
    },
  };
};

const meanOf = (repeats: readonly Measurement[]): Length =>
  length(mean(repeats.flatMap(({ value }) => (value.kind === "length" ? [value.value] : []))));

/** Of leaves that went in repeats, the middle of those that went and of those that did not. */
const betweenOf = (
  repeats: readonly Measurement[],
): { readonly low: Length; readonly high: Length } | undefined => {
  const leaves = repeats.flatMap(({ value }) => (value.kind === "between" ? [value] : []));
  return leaves.length === 0
    ? undefined
    : { low: length(mean(leaves.map(({ low }) => low))), high: length(mean(leaves.map(({ high }) => high))) };
};

/** How far the work had come. What was cleaned takes the place of what was found at the same place; a new part or a machined
 *  one that of all that was measured of the old one. */
const stages: Readonly<Record<PartState, number>> = {
  "as found": 0,
  cleaned: 1,
  "new part": 2,
  "after machining": 2,
};

/** The thing that is replaced as one: a ring of several on a piston, else the part. */
export const pieceOf = ({ part, label, at }: Pick<TeardownItem, "part" | "label" | "at">): string =>
  [part, label, part === "ring" || part === "housing" ? at?.split("/")[0] : undefined].join("|");

const withSuperseded = (readings: readonly Reading[]): readonly Reading[] =>
  readings.map((reading, i) => {
    const { item } = reading;
    const own = readings.filter((other) => pieceOf(other.item) === pieceOf(item));
    const later = readings.slice(i + 1).filter((other) => own.includes(other));
    const stage = stages[item.state];
    const isReplaced =
      stage < 2
        ? own.some((other) => stages[other.item.state] === 2 || isCleanedSince(item, other.item))
        : later.some((other) => stages[other.item.state] === 2 && other.item.state !== item.state);
    return isReplaced ? { ...reading, item: { ...item, superseded: true } } : reading;
  });

const isCleanedSince = (item: TeardownItem, other: TeardownItem): boolean =>
  stages[other.state] > stages[item.state] && other.quantity === item.quantity && other.at === item.at;

/** Of the parts as they are now; at one place the reading that is known best. */
export const currentReadings = (readings: readonly Reading[]): readonly Reading[] => {
  const now = readings.filter(({ item }) => item.superseded === undefined);
  return now.filter(({ item }) =>
    now.every(
      ({ item: other }) =>
        other === item ||
        !isSamePlace(item, other) ||
        isKnownBetter(item, other) ||
        isFirst(now, item, other),
    ),
  );
};

const isSamePlace = (one: TeardownItem, other: TeardownItem): boolean =>
  one.part === other.part &&
  one.label === other.label &&
  one.at === other.at &&
  one.quantity === other.quantity;

const isKnownBetter = (one: TeardownItem, other: TeardownItem): boolean =>
  one.uncertainty < other.uncertainty;

const isFirst = (readings: readonly Reading[], one: TeardownItem, other: TeardownItem): boolean =>
  one.uncertainty === other.uncertainty &&
  readings.findIndex(({ item }) => item === one) < readings.findIndex(({ item }) => item === other);
