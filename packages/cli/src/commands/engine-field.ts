// What `engine set` was told: which engine, which field, which value.

import { engineFields, expectation, nearest } from "@sealtrend/core";
import { type Args, Stop } from "../command.ts";
import { type Logbook, pickEngine } from "../logbook/open-logbook.ts";
import { typedLine } from "../options/quote.ts";
import { typedValue } from "../render/typed-value.ts";
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
  if (field === undefined) throw unknownField(id, path, typed ?? "VALUE");
  if (typed === undefined)
    throw usage(
      "value-missing",
      `no value for ${path}`,
      expectation(field),
      `sealtrend engine set ${id} ${path} VALUE`,
    );
  return { id, path, typed };
};

const unknownField = (id: string, path: string, typed: string): Stop => {
  const paths = Object.keys(engineFields);
  const last = path.split(".").at(-1) ?? path;
  const ends = paths.filter((known) => known.split(".").at(-1)?.toLowerCase() === last.toLowerCase());
  const [near] = [
    ...nearest(path, paths),
    ...ends,
    ...paths.filter((known) => nearest(last, [known.split(".").at(-1) ?? ""]).length > 0),
  ];
  const whole = paths.find((known) => engineFields[known]?.kind === "any" && path.startsWith(`${known}.`));
  if (whole !== undefined)
    return usage(
      "field-unknown",
      `${path} is a part of ${whole}, which is set as a whole`,
      `${whole} as JSON`,
      `write it in ${id}/engine.json with an editor`,
    );
  return usage(
    "field-unknown",
    `an engine has no field "${path}"`,
    near === undefined ? `one of: ${paths.join(", ")}` : `a field such as ${near}`,
    near === undefined ? `sealtrend engine show ${id}` : typedLine(["engine", "set", id, near, typed]),
  );
};

/** The value that was typed, as it stands in the file. @throws Stop 2 where it does not fit the field */
export const newValue = (id: string, path: string, typed: string, before: unknown): unknown => {
  const field = engineFields[path];
  if (field === undefined) return undefined;
  const value = path === "cylinders" ? cylinderLabels(typed) : valueTyped(path, field, typed);
  if (value !== undefined) return value;
  const example =
    field.kind === "quantity" ? field.example : before === undefined ? "VALUE" : typedValue(before);
  throw usage(
    "field-bad",
    `${path} "${typed}"`,
    expectation(field),
    typedLine(["engine", "set", id, path, example]),
  );
};
