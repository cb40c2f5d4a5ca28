// `limits.offered` of engine.json: the over- and undersizes that parts come in.

import { nearest } from "../problem/index.ts";
import { length, toSi } from "../quantity/index.ts";
import { type FieldFault, type FieldStranger, strangersIn } from "./field-fault.ts";
import { type JsonObject, fieldAt, isObject } from "./json-view.ts";
import { isLengthUnit, lengthUnits } from "./measured-value.ts";
import type { LengthUnit, OfferedPart, OfferedSizes } from "./measurement-types.ts";

const parts: readonly OfferedPart[] = ["bore", "main", "pin"];

/** A step larger than this is a whole size, not one over or under. [m] */
const largestStep = 0.01;

const isPart = (name: string): name is OfferedPart => parts.some((part) => part === name);

export const offeredFaults = (value: unknown): readonly FieldFault[] => {
  if (!isObject(value)) return [{ path: "", value, expected: "{ } around any of bore, main, pin" }];
  return Object.entries(value).flatMap(([name, entry]): readonly FieldFault[] => {
    const path = `.${name}`;
    if (isPart(name)) return entryFaults(entry, path);
    const near = nearest(name, parts)[0];
    const mend = near === undefined ? {} : { mend: `rename it "${near}"` };
    return [{ path, value: entry, expected: `one of ${parts.join(", ")} as its name`, ...mend }];
  });
};

export const offeredStrangers = (value: unknown): readonly FieldStranger[] =>
  Object.entries(isObject(value) ? value : {}).flatMap(([name, entry]) =>
    isPart(name) && isObject(entry) ? strangersIn(entry, ["unit", "sizes"], `.${name}`) : [],
  );

const entryFaults = (entry: unknown, path: string): readonly FieldFault[] => {
  if (!isObject(entry))
    return [
      { path, value: entry, expected: 'unit and sizes, such as { "unit": "mm", "sizes": [0.25, 0.5] }' },
    ];
  const { unit, sizes } = entry;
  if (typeof unit !== "string" || !isLengthUnit(unit))
    return [{ path: `${path}.unit`, value: unit, expected: `one of ${lengthUnits.join(", ")}` }];
  const listed: readonly unknown[] = Array.isArray(sizes) ? sizes : [];
  if (listed.length === 0)
    return [
      {
        path: `${path}.sizes`,
        value: sizes,
        expected: "a list of sizes over or under, such as [0.25, 0.5]",
        mend: "write them between [ and ], or take the entry out where none is offered",
      },
    ];
  return listed.flatMap((size, i): FieldFault[] => {
    const here = { path: `${path}.sizes[${String(i)}]`, value: size };
    if (!isStep(size, unit))
      return [
        {
          ...here,
          expected: `how much over or under, in ${unit}: a number above 0 and at most 10 mm`,
          mend: "write the step alone: 0.5, not the whole size",
        },
      ];
    return listed.indexOf(size) === i ? [] : [{ ...here, expected: "each size once", mend: "take one out" }];
  });
};

const isStep = (size: unknown, unit: LengthUnit): size is number =>
  typeof size === "number" && size > 0 && toSi(size, unit) <= largestStep;

/** The sizes, smallest first, of a field that was found sound. */
export const offeredOf = (root: JsonObject): Readonly<Partial<Record<OfferedPart, OfferedSizes>>> => {
  const value = fieldAt(root, "limits.offered");
  return Object.fromEntries(
    Object.entries(isObject(value) ? value : {}).flatMap(([name, entry]) => {
      const sizes = sizesOf(entry);
      return isPart(name) && sizes !== undefined ? [[name, sizes] as const] : [];
    }),
  );
};

const sizesOf = (entry: unknown): OfferedSizes | undefined => {
  if (!isObject(entry)) return undefined;
  const { unit, sizes } = entry;
  if (typeof unit !== "string" || !isLengthUnit(unit) || !Array.isArray(sizes)) return undefined;
  const steps = (sizes as readonly unknown[]).filter((size) => isStep(size, unit));
  return { unit, sizes: steps.toSorted((a, b) => a - b).map((size) => length(toSi(size, unit))) };
};
