// The rows of a teardown as readings: repeats put together, each with what its instrument can do.

import { type Length, length } from "../../quantity/index.ts";
import type { LengthUnit, Measurement } from "../../record/index.ts";
import { mean } from "../../statistics/index.ts";
import {
  type DivisionBy,
  feelerUncertainty,
  instrumentFor,
  instrumentText,
  readingUncertainty,
} from "../conformity/index.ts";
import { isSamePlace } from "../places.ts";
import type { TeardownItem } from "../teardown.ts";
import { digitsOf, divisionBy } from "./digits.ts";
import { withKeptInstruments } from "./kept-instruments.ts";
import { type Reading, withoutMean } from "./reading.ts";
import { withSuperseded } from "./superseded.ts";

const units: readonly (string | undefined)[] = ["mm", "um", "in", "thou"] satisfies readonly LengthUnit[];
const isLengthUnit = (unit: string | undefined): unit is LengthUnit => units.includes(unit);

/** Lengths alone, in the order of measuring. Rows that agree in all but the value are repeats; one that stands instead begins
 *  anew. @param measurements - each once, whatever was entered twice */
export const readingsOf = (measurements: readonly Measurement[]): readonly Reading[] => {
  const lengths = withKeptInstruments(measurements.filter(isLength), placeOf);
  const begun = new Map<string, number>();
  const places = new Map<string, Measurement[]>();
  for (const one of lengths) {
    const place = placeOf(one);
    if (one.instead === true) begun.set(place, (begun.get(place) ?? 0) + 1);
    const key = JSON.stringify([place, begun.get(place) ?? 0, toolOf(one)]);
    places.set(key, [...(places.get(key) ?? []), one]);
  }
  const isReplaced = ([first]: readonly Measurement[]): boolean =>
    first !== undefined && standsBefore(lengths, first);
  return withSuperseded(
    [...places.values()].flatMap((repeats) => {
      const reading = readingOf(repeats, divisionBy(digitsOf(lengths, repeats)));
      return reading === undefined
        ? []
        : [{ reading: withoutMean(reading), isReplaced: isReplaced(repeats) }];
    }),
  );
};

/** Whether a row behind it stands instead of it. */
export const standsBefore = (rows: readonly Measurement[], one: Measurement): boolean =>
  rows
    .slice(rows.indexOf(one) + 1)
    .some((later) => later.instead === true && placeOf(later) === placeOf(one));

const isLength = ({ value, unit }: Measurement): boolean =>
  (value.kind === "length" || value.kind === "between") && isLengthUnit(unit);

const placeOf = ({ teardown, part, label, at, quantity, state }: Measurement): string =>
  JSON.stringify([teardown, part, label, at, quantity, state]);

const toolOf = ({ instrument, resolution, value }: Measurement): readonly unknown[] => [
  instrument,
  resolution,
  value.kind,
];

const readingOf = (repeats: readonly Measurement[], byDigits: DivisionBy): Reading | undefined => {
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
    byDigits,
  });
  const uncertainty =
    between === undefined
      ? readingUncertainty({ instrument, readings: repeats.length })
      : feelerUncertainty(between, instrument.common);
  return {
    instrument,
    repeats: repeats.flatMap(middleOf),
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

const meanOf = (repeats: readonly Measurement[]): Length => length(mean(repeats.flatMap(middleOf)));

const middleOf = ({ value }: Measurement): readonly Length[] => {
  if (value.kind === "length") return [value.value];
  return value.kind === "between" ? [length((value.low + value.high) / 2)] : [];
};

/** Of leaves that went in repeats, the middle of those that went and of those that did not. */
const betweenOf = (
  repeats: readonly Measurement[],
): { readonly low: Length; readonly high: Length } | undefined => {
  const leaves = repeats.flatMap(({ value }) => (value.kind === "between" ? [value] : []));
  return leaves.length === 0
    ? undefined
    : { low: length(mean(leaves.map(({ low }) => low))), high: length(mean(leaves.map(({ high }) => high))) };
};

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

const isKnownBetter = (one: TeardownItem, other: TeardownItem): boolean =>
  one.uncertainty < other.uncertainty;

const isFirst = (readings: readonly Reading[], one: TeardownItem, other: TeardownItem): boolean =>
  one.uncertainty === other.uncertainty &&
  readings.findIndex(({ item }) => item === one) < readings.findIndex(({ item }) => item === other);
