// A figure or a word of a line as a measurement, with what holds for it.

import { length, toSi } from "../../quantity/index.ts";
import {
  type MeasuredPart,
  type MeasuredQuantity,
  type MeasuredUnit,
  type MeasuredValue,
  decimalsOf,
  isLengthUnit,
} from "../../record/index.ts";
import { inUnit } from "./decimal.ts";
import { readWith } from "./instruments.ts";
import type { TypedMeasurement, TypingContext } from "./typing.ts";
import { nameOfUnit } from "./units.ts";

/** What all measurements of a line share. */
export interface Shared {
  readonly part: MeasuredPart;
  readonly quantity: MeasuredQuantity;
  readonly label: string;
  readonly note: string | undefined;
  readonly context: TypingContext;
}

interface Measured {
  readonly at: string;
  readonly value: MeasuredValue;
  readonly written: string;
  readonly unit?: MeasuredUnit;
  readonly isDeviation?: boolean;
  readonly typed: string;
  readonly column: number;
}

export const measurementOf = (shared: Shared, measured: Measured): TypedMeasurement => {
  const { part, quantity, label, context } = shared;
  const { at, value, unit, written, typed, column } = measured;
  const { instrument, isChosen } = readWith({ part, quantity, value, chosen: context.instrument });
  const resolution = isChosen ? resolutionIn(unit, context) : undefined;
  const decimals = unit !== undefined && isLengthUnit(unit) ? decimalsOf(written) : undefined;
  const note = noteOf(shared, measured);
  return {
    teardown: context.teardown,
    date: context.date,
    part,
    ...(label === "" ? {} : { label }),
    ...(at === "" ? {} : { at }),
    quantity: quantity.name,
    value,
    ...(unit === undefined ? {} : { unit }),
    ...(decimals === undefined ? {} : { decimals }),
    ...(instrument === undefined ? {} : { instrument }),
    ...(resolution === undefined ? {} : { resolution: resolution.value }),
    ...(context.by === undefined ? {} : { by: context.by }),
    state: context.state,
    ...(note === "" ? {} : { note }),
    typed,
    column,
    written: { value: written, unit: unit ?? "", resolution: resolution?.text ?? "" },
  };
};

const resolutionIn = (unit: MeasuredUnit | undefined, { resolution }: TypingContext) => {
  if (unit === undefined || resolution === undefined || !isLengthUnit(unit)) return undefined;
  const text = inUnit(resolution, unit);
  return { text, value: length(toSi(Number(text), unit)) };
};

/** A size read as a deviation says what it counts from: the setting has an error of its own. */
const noteOf = ({ note, context: { set } }: Shared, { isDeviation }: Measured): string => {
  const setting =
    isDeviation === true && set !== undefined ? `set at ${set.text} ${nameOfUnit(set.unit)}` : "";
  return [setting, note ?? ""].filter((text) => text !== "").join("; ");
};
