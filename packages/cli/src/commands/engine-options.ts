// The fields of an engine that `engine add` takes as options, and how a typed value becomes a field.

import {
  type FieldKind,
  type JsonObject,
  dimensionOf,
  engineFields,
  expectation,
  fieldValue,
  fromSi,
  readQuantity,
  unitNamed,
} from "@sealtrend/core/parts";
import type { Args, Fault, Option } from "../command.ts";
import { cylinderLabels } from "./new-engine.ts";
import { usageFault } from "./usage.ts";

interface EngineOption {
  readonly name: string;
  readonly path: string;
  readonly value: string;
  readonly help: string;
}

const option = (name: string, path: string, value: string, help: string): EngineOption => ({
  name,
  path,
  value,
  help,
});

const table: readonly EngineOption[] = [
  option("cylinders", "cylinders", "4", 'how many, or their labels: "L R"'),
  option("ignition", "ignition", "spark", "how it fires (diesel, petrol and gas are understood)"),
  option("name", "name", "TEXT", "what you call it"),
  option("use", "use", "farm", "what it drives"),
  option("cycle", "cycle", "four-stroke", "strokes of a cycle (default four-stroke)"),
  option("cooling", "cooling", "liquid", "how it is cooled"),
  option("meter", "meter", "h", "what its meter counts"),
  option("home-altitude", "homeAltitude_m", "350m", "height of its usual place"),
  option("bore", "geometry.bore", "86mm", "cylinder bore"),
  option("stroke", "geometry.stroke", "86mm", "piston stroke"),
  option("compression-ratio", "geometry.compressionRatio", "8.5", "compression ratio"),
  option("minimum", "limits.compression.minimum", "26bar", "the maker's least cranking pressure"),
];

/** The words of a field, and those that are taken for one of them. */
export const wordsOfField = (path: string): Pick<Option, "choices" | "also"> => {
  const field = engineFields[path];
  return field?.kind === "word" ? { choices: field.words, also: field.also } : {};
};

/** What a field can be set to, where that is a short list. */
export const valuesOfField = (path: string): readonly string[] => {
  const field = engineFields[path];
  if (field?.kind === "yes-no") return ["yes", "no"];
  return field?.kind === "word" ? field.words : [];
};

export const engineOptions: readonly Option[] = table.map(({ name, path, value, help }) => ({
  name,
  value,
  help,
  ...wordsOfField(path),
}));

/** The value of a field from what a person typed. A quantity with a unit is turned into that of the name: 350m or 1150ft
 *  for `homeAltitude_m`. @returns undefined where it does not fit */
export const valueTyped = (path: string, field: FieldKind, typed: string): unknown => {
  const plain = fieldValue(field, typed);
  const unit = unitNamed(/_([A-Za-z]+)$/.exec(path)?.[1] ?? "");
  if (plain !== undefined || field.kind !== "number" || unit === undefined) return plain;
  const reading = readQuantity(typed, dimensionOf(unit));
  if (!reading.ok) return undefined;
  const value = reading.unit === unit ? reading.value : fromSi(reading.si, unit);
  return fieldValue(field, String(Number(value.toFixed(1))));
};

/** The fields given as options, in the order of engine.json, and every value that does not fit. */
export const engineFieldsTyped = (
  args: Args,
): { readonly fields: JsonObject; readonly faults: readonly Fault[] } => {
  const faults: Fault[] = [];
  const given = new Map<string, unknown>();
  for (const { name, path, value: example } of table) {
    const typed = args.text(name);
    const field = engineFields[path];
    if (typed === undefined || field === undefined) continue;
    const bare = name === "home-altitude" && /^[\d.,\s-]+$/.test(typed);
    const value = bare
      ? undefined
      : name === "cylinders"
        ? cylinderLabels(typed)
        : valueTyped(path, field, typed);
    if (value !== undefined) given.set(path, value);
    else {
      const expected =
        name === "home-altitude"
          ? "a height with its unit, -500 to 6000 m, such as 350m or 1150ft"
          : expectation(field);
      faults.push(usageFault("field-bad", `--${name} "${typed}"`, expected, `--${name} ${example}`));
    }
  }
  return {
    fields: nested(
      Object.keys(engineFields).flatMap((path) =>
        given.has(path) ? [[path, given.get(path)] as const] : [],
      ),
    ),
    faults,
  };
};

/** `a.b` = 1 as `{ a: { b: 1 } }`. */
const nested = (entries: readonly (readonly [string, unknown])[]): JsonObject => {
  const names = [...new Set(entries.map(([path]) => path.split(".")[0] ?? ""))];
  return Object.fromEntries(
    names.map((name) => {
      const own = entries.find(([path]) => path === name);
      const below = entries
        .filter(([path]) => path.startsWith(`${name}.`))
        .map(([path, value]) => [path.slice(name.length + 1), value] as const);
      return [name, own === undefined ? nested(below) : own[1]];
    }),
  );
};
