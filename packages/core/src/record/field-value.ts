// Whether a value is what a field of engine.json expects, and the value that a person typed for it.

import { type Dimension, readQuantity } from "../quantity/index.ts";
import { amountOf } from "./amount.ts";
import { clearanceFaults, clearanceStrangers } from "./clearance-faults.ts";
import { curvesFault } from "./cranking-curves.ts";
import type { FieldFault, FieldStranger } from "./field-fault.ts";
import type { FieldKind } from "./field-kind.ts";
import { offeredFaults, offeredStrangers } from "./offered.ts";
import { ownedForOf, ownedForText, renewedOf } from "./ownership.ts";
import { readRange } from "./quantity-range.ts";

/** Whether a JSON value is what the field expects. */
export const fits = (field: FieldKind, value: unknown): boolean => {
  switch (field.kind) {
    case "text":
      return typeof value === "string";
    case "yes-no":
      return typeof value === "boolean";
    case "word":
      return typeof value === "string" && field.words.includes(value);
    case "number":
      return (
        typeof value === "number" &&
        value >= field.least &&
        value <= field.most &&
        (field.whole !== true || Number.isInteger(value))
      );
    case "quantity":
      return typeof value === "string" && positive(value, field.dimension);
    case "range":
      return typeof value === "string" && readRange(value, field.dimension) !== undefined;
    case "labels":
      return areLabels(value);
    case "banks":
      return Array.isArray(value) && value.every(areLabels);
    case "price":
      return typeof value === "number" && value >= 0 && Number.isFinite(value);
    case "ownership":
      return typeof value === "string" && ownedForOf(value) !== undefined;
    case "since":
      return typeof value === "string" && renewedOf(value) !== undefined;
    case "curves":
      return curvesFault(value) === undefined;
    case "clearances":
    case "offered":
      return faultsInside(field, value).length === 0;
  }
};

/** What is wrong inside a field that holds entries of its own; none for any other field. */
export const faultsInside = ({ kind }: FieldKind, value: unknown): readonly FieldFault[] =>
  kind === "clearances" ? clearanceFaults(value) : kind === "offered" ? offeredFaults(value) : [];

/** Names inside such a field that nobody reads. */
export const strangersInside = ({ kind }: FieldKind, value: unknown): readonly FieldStranger[] =>
  kind === "clearances" ? clearanceStrangers(value) : kind === "offered" ? offeredStrangers(value) : [];

const positive = (text: string, dimension: Dimension): boolean => {
  const reading = readQuantity(text, dimension);
  return reading.ok && reading.si > 0;
};

const areLabels = (value: unknown): value is string[] =>
  Array.isArray(value) &&
  value.length >= 1 &&
  value.length <= 28 &&
  value.every((label) => typeof label === "string" && /^[A-Za-z0-9]{1,4}$/.test(label)) &&
  new Set(value).size === value.length;

/** The JSON value of what a person typed for a field, such as `26bar`, `true`, `1 3 4 2`; undefined when it does not fit. What
 *  holds entries of its own is returned with faults in them: they are named one by one where the file is read. */
export const fieldValue = (field: FieldKind, typed: string): unknown => {
  const value = candidate(field, typed.trim());
  const isNamed = faultsInside(field, value).some(({ path }) => path !== "");
  return fits(field, value) || isNamed ? value : undefined;
};

const candidate = (field: FieldKind, typed: string): unknown => {
  switch (field.kind) {
    case "yes-no":
      return typed === "true" || typed === "yes"
        ? true
        : typed === "false" || typed === "no"
          ? false
          : undefined;
    case "number":
      return /^[+-]?\d+([.,]\d+)?$/.test(typed) ? Number(typed.replace(",", ".")) : undefined;
    case "labels":
      // `4` or `12` is a count or a slip, hardly the label of an engine's only cylinder; that is `1`.
      return /^\d{1,2}$/.test(typed) && typed !== "1" ? undefined : typed.split(/[\s,]+/);
    case "banks":
      return typed.split(/\s*[/|]\s*/).map((bank) => bank.split(/[\s,]+/));
    case "price":
      return amountOf(typed);
    case "ownership": {
      const owned = ownedForOf(typed);
      return owned === undefined ? undefined : ownedForText(owned);
    }
    case "since":
      return renewedOf(typed);
    case "curves":
    case "clearances":
    case "offered":
      return parsed(typed);
    case "word":
      return field.also[typed.toLowerCase()] ?? typed;
    default:
      return typed;
  }
};

const parsed = (typed: string): unknown => {
  try {
    return JSON.parse(typed);
  } catch {
    return undefined;
  }
};
