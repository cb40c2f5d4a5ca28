// What `engine set` was told: which engine, which field, which value.

import { type FieldKind, engineFields, expectation, nearest, typedExample } from "@sealtrend/core";
import { type Args, Stop } from "../command.ts";
import { type Logbook, pickEngine } from "../logbook/open-logbook.ts";
import { typedLine } from "../options/quote.ts";
import { valueTyped } from "./engine-options.ts";
import { cylinderLabels } from "./new-engine.ts";
import { usage } from "./usage.ts";

/** ENGINE may be left out: two words are a field and its value unless the first one names an engine. */
export const wordsOf = (
  args: Args,
  logbook: Logbook,
): { readonly id: string; readonly path: string; readonly typed: string } => {
  const [first = "", second = "", third] = args.positionals;
  const without = third === undefined && !logbook.ids.includes(first);
  const id = pickEngine(logbook, without && engineFields[first] !== undefined ? undefined : first);
  const path = without ? first : second;
  const typed = without ? second : third;
  const field = engineFields[path];
  if (field === undefined) throw unknownField(id, path, typed);
  if (typed === undefined)
    throw usage(
      "value-missing",
      `no value for ${path}`,
      expectation(field),
      typedLine(["engine", "set", id, path, typedExample(field)]),
    );
  return { id, path, typed };
};

const exampleOf = (path: string): string => {
  const field = engineFields[path];
  return field === undefined ? "" : typedExample(field);
};

const unknownField = (id: string, path: string, typed: string | undefined): Stop => {
  const paths = Object.keys(engineFields);
  const last = path.split(".").at(-1) ?? path;
  const ends = paths.filter((known) => known.split(".").at(-1)?.toLowerCase() === last.toLowerCase());
  const [near] = [
    ...nearest(path, paths),
    ...ends,
    ...paths.filter((known) => nearest(last, [known.split(".").at(-1) ?? ""]).length > 0),
  ];
  const whole = paths.find(
    (known) => ["any", "curves"].includes(engineFields[known]?.kind ?? "") && path.startsWith(`${known}.`),
  );
  if (whole !== undefined)
    return usage(
      "field-unknown",
      `${path} is a part of ${whole}, which is set as a whole`,
      `${whole} as JSON`,
      `write it in ${id}/engine.json with an editor`,
    );
  const inside = paths.filter((known) => known.startsWith(`${path}.`));
  if (inside[0] !== undefined)
    return usage(
      "field-unknown",
      `${path} holds fields of its own`,
      `one of: ${inside.join(", ")}`,
      typedLine(["engine", "set", id, inside[0], exampleOf(inside[0])]),
    );
  return usage(
    "field-unknown",
    `an engine has no field "${path}"`,
    near === undefined ? `one of: ${paths.join(", ")}` : `a field such as ${near}`,
    near === undefined
      ? `sealtrend engine show ${id}`
      : typedLine(["engine", "set", id, near, typed ?? exampleOf(near)]),
  );
};

/** An example, or the word that is near; a word that is not near is none, for it would say what nobody said. */
const exampleFor = (path: string, field: FieldKind, typed: string): string | undefined => {
  if (field.kind === "word") return nearest(typed, field.words)[0];
  return path === "homeAltitude_m" ? "350m" : typedExample(field);
};

/** The value that was typed, as it stands in the file. @throws Stop 2 where it does not fit the field */
export const newValue = (id: string, path: string, typed: string): unknown => {
  const field = engineFields[path];
  if (field === undefined) return undefined;
  const value = path === "cylinders" ? cylinderLabels(typed) : valueTyped(path, field, typed);
  if (value !== undefined) return value;
  const example = exampleFor(path, field, typed);
  throw usage(
    "field-bad",
    `${path} "${typed}"`,
    expectation(field),
    example === undefined ? "write one of these words" : typedLine(["engine", "set", id, path, example]),
  );
};
