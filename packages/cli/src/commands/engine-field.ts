// What `engine set` was told: which engine, which field, which value.

import {
  type FieldKind,
  type LimitPlace,
  type OfferedPart,
  engineFields,
  expectation,
  limitExample,
  limitMeant,
  limitPath,
  limitPathMeant,
  limitPlace,
  nearest,
  offeredMeant,
  offeredPartAt,
  readTypedLimit,
  readTypedSizes,
  typedExample,
} from "@sealtrend/core/parts";
import { type Args, Stop } from "../command.ts";
import { engineOverview } from "../logbook/engine-overview.ts";
import { type Logbook, pickEngine } from "../logbook/open-logbook.ts";
import { typedLine } from "../options/quote.ts";
import { valueTyped } from "./engine-options.ts";
import { cylinderLabels } from "./new-engine.ts";
import { usage } from "./usage.ts";

export interface Field {
  readonly id: string;
  readonly path: string;
  readonly typed: string;
  /** Where the field is one limit of a part. */
  readonly limit?: LimitPlace;
  /** Where the field is the sizes of one part. */
  readonly offered?: OfferedPart;
}

/** ENGINE may be left out: two words are a field and its value unless the first one names an engine. */
export const wordsOf = (args: Args, logbook: Logbook): Field => {
  const [first = "", second = "", third] = args.positionals;
  const without = third === undefined && !logbook.ids.includes(first);
  const isField = engineFields[first] !== undefined || first.startsWith("limits.");
  const id = pickEngine(logbook, without && isField ? undefined : first);
  const path = without ? first : second;
  const typed = without ? second : third;
  const field = engineFields[path];
  const labels = engineOverview(logbook, id).engine?.cylinders ?? [];
  const limit = field === undefined ? limitPlace(path, labels) : undefined;
  const offered = offeredPartAt(path);
  if (field === undefined && limit === undefined && offered === undefined)
    throw unknownField(id, path, typed);
  if (typed !== undefined)
    return {
      ...{ id, path, typed },
      ...(limit === undefined ? {} : { limit }),
      ...(offered === undefined ? {} : { offered }),
    };
  const [wanted, example] =
    offered !== undefined
      ? [sizesExpected, sizesExample]
      : field === undefined
        ? ["a limit", exampleOf(path)]
        : [expectation(field), typedExample(field)];
  throw usage(
    "value-missing",
    `no value for ${path}`,
    wanted,
    typedLine(["engine", "set", id, path, example]),
  );
};

export const sizesExpected = "the steps over or under, with one unit at the end";
export const sizesExample = "0.25 0.5 0.75mm";

/** A field that holds entries of its own, typed as JSON. */
export const isSetWhole = (path: string): boolean =>
  ["clearances", "offered", "curves"].includes(engineFields[path]?.kind ?? "");

const exampleOf = (path: string): string => {
  const field = engineFields[path];
  const limit = limitPlace(path, []);
  return field !== undefined ? typedExample(field) : limit === undefined ? "" : limitExample(limit, "mm");
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
  const sizes = offeredMeant(path);
  if (sizes !== undefined)
    return usage(
      "field-unknown",
      `an engine has no field "${path}"`,
      `a field such as ${sizes}`,
      typedLine(["engine", "set", id, sizes, sizesMeant(typed)]),
    );
  const limit = path.startsWith("limits.") && !isKnown(path, paths) ? limitPathMeant(path) : undefined;
  if (limit !== undefined)
    return usage(
      "field-unknown",
      `an engine has no limit "${path}"`,
      limit.expected,
      typedLine(["engine", "set", id, limitPath(limit.meant), limitValue(limit.meant, typed)]),
    );
  const whole = paths.find((known) => isSetWhole(known) && path.startsWith(`${known}.`));
  if (whole !== undefined)
    return usage(
      "field-unknown",
      `${path} is a part of ${whole}, which is set as a whole`,
      whole === "limits.clearances" ? "one limit by itself, or all as JSON" : `${whole} as JSON`,
      whole === "limits.clearances"
        ? typedLine(["engine", "set", id, "limits.bore.taper.wear", exampleOf("limits.bore.taper.wear")])
        : typedLine(["engine", "set", id, whole, exampleOf(whole)]),
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
      : typedLine(["engine", "set", id, near, fitting(near, typed) ?? exampleOf(near)]),
  );
};

const sizesMeant = (typed = ""): string => (readTypedSizes(typed) === undefined ? sizesExample : typed);

const limitValue = (meant: LimitPlace, typed = ""): string =>
  readTypedLimit(typed) === undefined ? (limitMeant(typed, meant)[0] ?? limitExample(meant, "mm")) : typed;

/** The value that was typed, where it fits the field that was meant. */
const fitting = (path: string, typed: string | undefined): string | undefined => {
  const field = engineFields[path];
  if (field === undefined || typed === undefined) return undefined;
  return path === "cylinders" || valueTyped(path, field, typed) !== undefined ? typed : undefined;
};

/** `limits.compression` is no slip of `limits.crank`. */
const isKnown = (path: string, paths: readonly string[]): boolean => {
  const group = path.split(".").slice(0, 2).join(".");
  return paths.some((known) => known === group || known.startsWith(`${group}.`));
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
