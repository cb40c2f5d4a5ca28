// `limits.clearances` of engine.json as limits: SI inside, and the figures as they were written.

import { length, toSi } from "../quantity/index.ts";
import { quantityIn } from "./clearance-faults.ts";
import { type JsonObject, type JsonView, fieldAt, isObject } from "./json-view.ts";
import { partNames } from "./measured-parts.ts";
import { isLengthUnit } from "./measured-value.ts";
import type { ClearanceLimit, LengthUnit, LimitPair, Measurement } from "./measurement-types.ts";

const field = "limits.clearances";

/** The limits of a file whose entries were found sound. */
export const clearancesOf = (view: JsonView): readonly ClearanceLimit[] => {
  const value = fieldAt(view.root, field);
  const entries: readonly unknown[] = Array.isArray(value) ? value : [];
  return entries.flatMap((entry, i): ClearanceLimit[] => {
    if (!isObject(entry)) return [];
    const part = partNames.find((name) => name === entry.part);
    const quantity = part === undefined ? undefined : quantityIn(part, entry.quantity)?.name;
    const limits = limitsOf(entry);
    if (part === undefined || quantity === undefined || limits === undefined) return [];
    const also = isObject(entry.also) ? limitsOf(entry.also) : undefined;
    const path = `${field}[${String(i)}]`;
    const { label, at, source } = entry;
    return [
      {
        part,
        ...(typeof label === "string" && label !== "" ? { label: label.toLowerCase() } : {}),
        ...(typeof at === "string" && at !== "" ? { at: at.toLowerCase() } : {}),
        quantity,
        ...limits,
        ...(also === undefined ? {} : { also }),
        written: { ...writtenOf(view, path, ""), ...writtenOf(view, `${path}.also`, "also.") },
        ...(typeof source === "string" ? { source } : {}),
      },
    ];
  });
};

interface Limits {
  readonly new?: LimitPair;
  readonly wear?: LimitPair;
  readonly unit: LengthUnit;
}

const limitsOf = (entry: JsonObject): Limits | undefined => {
  const { unit } = entry;
  if (typeof unit !== "string" || !isLengthUnit(unit)) return undefined;
  const fresh = pairOf(entry.new, unit);
  const wear = pairOf(entry.wear, unit);
  return {
    ...(fresh === undefined ? {} : { new: fresh }),
    ...(wear === undefined ? {} : { wear }),
    unit,
  };
};

const pairOf = (value: unknown, unit: LengthUnit): LimitPair | undefined => {
  if (!Array.isArray(value)) return undefined;
  const [low, high] = value as readonly unknown[];
  return {
    ...(typeof low === "number" ? { low: length(toSi(low, unit)) } : {}),
    ...(typeof high === "number" ? { high: length(toSi(high, unit)) } : {}),
  };
};

const writtenOf = (view: JsonView, path: string, prefix: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    ["new", "wear"].flatMap((kind) =>
      ["low", "high"].flatMap((end, i) => {
        const text = view.written(`${path}.${kind}[${String(i)}]`);
        return text === undefined ? [] : [[`${prefix}${kind}.${end}`, text] as const];
      }),
    ),
  );

/** Whether a limit is for a figure. A limit without `label` or `at` is for all of its kind; `at` may name the beginning of the
 *  place (ring `1` of `1/top`), `label` the kind of a valve (`in`, `ex`).
 *  The quantity is as limits name it: `clearance` for what a thread reads, `flatness` for a gap. */
export const isLimitFor = (
  limit: Pick<ClearanceLimit, "part" | "label" | "at" | "quantity">,
  figure: Pick<Measurement, "part" | "label" | "at" | "quantity">,
): boolean =>
  limit.part === figure.part &&
  quantityIn(figure.part, figure.quantity)?.name === limit.quantity &&
  (limit.at === undefined || figure.at === limit.at || figure.at?.startsWith(`${limit.at}/`) === true) &&
  (limit.label === undefined || isLabelled(limit.label, figure.label?.toLowerCase() ?? ""));

const isLabelled = (wanted: string, label: string): boolean =>
  label === wanted || (/^(?:in|ex)$/.test(wanted) && new RegExp(`${wanted}[1-4]?$`).test(label));
