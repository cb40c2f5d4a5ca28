// `limits.clearances` of engine.json: what is wrong with its entries, each fault with its own path and mend.

import { nearest } from "../problem/index.ts";
import { toSi } from "../quantity/index.ts";
import { placeFaults } from "./clearance-place.ts";
import { type FieldFault, type FieldStranger, strangersIn } from "./field-fault.ts";
import { type JsonObject, isObject } from "./json-view.ts";
import { type LimitQuantity, limitQuantitiesOf, limitQuantityNamed } from "./limit-quantities.ts";
import { type LimitAs, limitSlip } from "./limit-slip.ts";
import { partNames } from "./measured-parts.ts";
import { isLengthUnit, lengthUnits } from "./measured-value.ts";
import type { LengthUnit, MeasuredPart } from "./measurement-types.ts";

const names = ["part", "label", "at", "quantity", "new", "wear", "unit", "source", "also"];
const alsoNames = ["new", "wear", "unit"];
const kinds = ["new", "wear"] as const;

/** No size of an engine is larger. [m] */
const most = 2;

export const clearanceFaults = (value: unknown): readonly FieldFault[] => {
  if (!Array.isArray(value))
    return [{ path: "", value, expected: "a list of entries, each in { }, between [ and ]" }];
  const entries: readonly unknown[] = value;
  return [...entries.flatMap((entry, i) => entryFaults(entry, `[${String(i)}]`)), ...twice(entries)];
};

/** Entries of an entry that have no name here. */
export const clearanceStrangers = (value: unknown): readonly FieldStranger[] =>
  (Array.isArray(value) ? (value as readonly unknown[]) : []).flatMap((entry, i) => {
    if (!isObject(entry)) return [];
    const path = `[${String(i)}]`;
    const { also } = entry;
    return [
      ...strangersIn(entry, names, path),
      ...(isObject(also) ? strangersIn(also, alsoNames, `${path}.also`) : []),
    ];
  });

const entryFaults = (entry: unknown, path: string): readonly FieldFault[] => {
  if (!isObject(entry))
    return [{ path, value: entry, expected: "{ } around part, quantity, new or wear, unit and source" }];
  const part = partNames.find((name) => name === entry.part);
  const quantity = part === undefined ? undefined : quantityIn(part, entry.quantity);
  return [
    ...(part === undefined ? [wordFault(`${path}.part`, entry.part, partNames)] : []),
    ...(part !== undefined && quantity === undefined
      ? [
          wordFault(
            `${path}.quantity`,
            entry.quantity,
            limitQuantitiesOf(part).map(({ name }) => name),
          ),
        ]
      : []),
    ...textFaults(entry, path),
    ...(part === undefined || quantity === undefined ? [] : placeFaults(entry.at, path, part, quantity.name)),
    ...pairsFaults(entry, path, part, quantity),
    ...(entry.also === undefined ? [] : alsoFaults(entry, path, quantity)),
  ];
};

export const quantityIn = (part: MeasuredPart, value: unknown): LimitQuantity | undefined =>
  typeof value === "string" ? limitQuantityNamed(part, value) : undefined;

const wordFault = (path: string, value: unknown, words: readonly string[]): FieldFault => {
  const near = typeof value === "string" ? nearest(value, words)[0] : undefined;
  return {
    path,
    value,
    expected: `one of ${words.join(", ")}`,
    ...(near === undefined ? {} : { mend: `write "${near}"` }),
  };
};

const textFaults = (entry: JsonObject, path: string): readonly FieldFault[] =>
  ["label", "at", "source"].flatMap((name): FieldFault[] => {
    const value = entry[name];
    if (value === undefined || typeof value === "string") return [];
    return [{ path: `${path}.${name}`, value, expected: "text", mend: "write it in double quotes" }];
  });

/** The unit of an entry and the limits in it; at least one of the two kinds has to be there. */
const pairsFaults = (
  entry: JsonObject,
  path: string,
  part: MeasuredPart | undefined,
  quantity: LimitQuantity | undefined,
): readonly FieldFault[] => {
  const { unit } = entry;
  const isUnit = typeof unit === "string" && isLengthUnit(unit);
  const stated = kinds.filter((kind) => entry[kind] !== undefined);
  const faults = stated.flatMap((kind) => {
    const pair = entry[kind];
    const found = pairFaults(`${path}.${kind}`, pair, isUnit ? unit : "mm", quantity?.signed === true);
    if (found.length > 0 || part === undefined || quantity === undefined || !isUnit) return found;
    return slipFaults(`${path}.${kind}`, pair, { part, quantity: quantity.name, kind, unit });
  });
  return [
    ...(isUnit ? [] : [wordFault(`${path}.unit`, unit, lengthUnits)]),
    ...(stated.length === 0
      ? [
          {
            path,
            value: entry,
            expected: "new or wear, each as [lowest, highest]",
            mend: 'add "wear": [null, 0.1]; null where one end is open',
          },
        ]
      : []),
    ...(faults.length > 0 || part === undefined ? faults : newLeftOut(entry, path)),
  ];
};

const slipFaults = (path: string, value: unknown, as: LimitAs): readonly FieldFault[] => {
  const slip = limitSlip([endOf(value, 0), endOf(value, 1)], as);
  if (slip === undefined) return [];
  const [low, high] = slip.ends;
  const unit = slip.unit === as.unit ? "" : ` with the unit "${slip.unit}"`;
  const mend = `write [${low ?? "null"}, ${high ?? "null"}]${unit}`;
  return [{ path, value, expected: slip.expected, mend }];
};

const endOf = (pair: unknown, i: 0 | 1): string | null => {
  const end: unknown = Array.isArray(pair) ? (pair as readonly unknown[])[i] : null;
  return typeof end === "number" ? String(end) : null;
};

/** What may stay in and leaves out every new part is misread, or one of the two is. */
const newLeftOut = (entry: JsonObject, path: string): readonly FieldFault[] => {
  const isPast = (low: string | null, high: string | null): boolean =>
    low !== null && high !== null && Number(low) > Number(high);
  const { new: fresh, wear } = entry;
  if (!isPast(endOf(fresh, 0), endOf(wear, 1)) && !isPast(endOf(wear, 0), endOf(fresh, 1))) return [];
  const expected = `a limit that new parts keep: new is ${JSON.stringify(fresh)}`;
  return [
    { path: `${path}.wear`, value: wear, expected, mend: "look both up again: one of them is misread" },
  ];
};

const pairFaults = (
  path: string,
  value: unknown,
  unit: LengthUnit,
  signed: boolean,
): readonly FieldFault[] => {
  const pair: readonly unknown[] = Array.isArray(value) ? value : [];
  const expected = "[lowest, highest], with null for an end that is open";
  if (pair.length !== 2) {
    const mend = typeof value === "number" ? `write [null, ${String(value)}]` : "write [null, 0.1]";
    return [{ path, value, expected, mend }];
  }
  const bad = pair.flatMap((end, i): FieldFault[] => {
    if (end === null || (typeof end === "number" && isSize(end, unit, signed))) return [];
    const wanted = `a number in ${unit} ${signed ? "" : "of 0 or more "}and at most 2 m, or null`;
    const mend = typeof end === "string" ? "write the number alone, without quotes and unit" : undefined;
    return [
      {
        path: `${path}[${String(i)}]`,
        value: end,
        expected: wanted,
        ...(mend === undefined ? {} : { mend }),
      },
    ];
  });
  if (bad.length > 0) return bad;
  const [low, high] = pair;
  if (low === null && high === null)
    return [{ path, value, expected, mend: "take it out, or write one end" }];
  if (typeof low === "number" && typeof high === "number" && low > high)
    return [{ path, value, expected: "the lowest first", mend: `write [${String(high)}, ${String(low)}]` }];
  return [];
};

const isSize = (value: number, unit: LengthUnit, signed: boolean): boolean =>
  Math.abs(toSi(value, unit)) <= most && (signed || value >= 0);

/** The same limits in a second unit; whether they are misprinted is judged beside the first. */
const alsoFaults = (
  entry: JsonObject,
  path: string,
  quantity: LimitQuantity | undefined,
): readonly FieldFault[] => {
  const { also, unit } = entry;
  const here = `${path}.also`;
  if (!isObject(also))
    return [{ path: here, value: also, expected: "{ } around the same limits in a second unit" }];
  const alone = kinds.filter((kind) => also[kind] !== undefined && entry[kind] === undefined);
  return [
    ...pairsFaults(also, here, undefined, quantity),
    ...(also.unit === unit && typeof unit === "string" && isLengthUnit(unit)
      ? [{ path: `${here}.unit`, value: unit, expected: `another unit than ${unit}` }]
      : []),
    ...alone.map((kind) => ({
      path: `${here}.${kind}`,
      value: also[kind],
      expected: `${kind} in ${String(unit)} as well`,
      mend: `write "${kind}" beside "also" too`,
    })),
  ];
};

/** One limit for one thing: two entries could not both be meant. */
const twice = (entries: readonly unknown[]): readonly FieldFault[] => {
  const keys = entries.map((entry) => {
    const part = isObject(entry) ? partNames.find((name) => name === entry.part) : undefined;
    if (!isObject(entry) || part === undefined) return undefined;
    return JSON.stringify([part, quantityIn(part, entry.quantity)?.name, entry.label, entry.at]);
  });
  return keys.flatMap((key, i): FieldFault[] => {
    const first = keys.indexOf(key);
    if (key === undefined || first === i) return [];
    return [
      {
        path: `[${String(i)}]`,
        value: entries[i],
        expected: `one entry for one quantity; entry ${String(first + 1)} is for the same`,
        mend: "bring new and wear together into one entry, or say by at or label which one each is for",
      },
    ];
  });
};
