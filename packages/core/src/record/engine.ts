// engine.json: what the engine is. Only cylinders and ignition are needed; all else may be unknown.

import { type Problem, byPlace, nearest, problem } from "../problem/index.ts";
import { gaugePressure, length, readQuantity, speed, volume } from "../quantity/index.ts";
import { curvesFault, curvesOf } from "./cranking-curves.ts";
import { engineFields, expectation, fits } from "./engine-fields.ts";
import { checkGeometry, geometryOf } from "./engine-geometry.ts";
import type { FieldKind } from "./field-kind.ts";
import { ownedForOf } from "./ownership.ts";
import { pricesOf } from "./prices.ts";
import { readRange } from "./quantity-range.ts";
import { type JsonObject, type JsonView, fieldAt, isObject, viewJson } from "./json-view.ts";
import type { CompressionLimits, CorrectionChoice, Engine } from "./engine-types.ts";

/** Reads engine.json. @param id - the folder's name @returns undefined when it cannot serve at all */
export const readEngine = (
  text: string,
  file: string,
  id: string,
): { readonly engine: Engine | undefined; readonly problems: readonly Problem[] } => {
  const problems: Problem[] = [];
  const view = viewJson(text, file, problems);
  if (view === undefined) return { engine: undefined, problems };
  checkFields(view, view.root, problems);
  for (const [field, example] of [
    ["cylinders", '["1", "2", "3", "4"]'],
    ["ignition", '"spark"'],
  ] as const)
    if (fieldAt(view.root, field) === undefined)
      problems.push(problem("field-missing", { field, example }, { file, line: 1, column: 1 }));
  checkLabels(view, problems);
  if (problems.every(({ severity }) => severity !== "error")) checkGeometry(view, problems);
  if (problems.some(({ severity }) => severity === "error"))
    return { engine: undefined, problems: problems.sort(byPlace) };
  return { engine: engineOf(view.root, id), problems };
};

/** The paths that hold further fields: `limits`, `limits.compression` … */
const groups: ReadonlySet<string> = new Set(
  Object.keys(engineFields).flatMap((path) =>
    path
      .split(".")
      .slice(0, -1)
      .map((_, i, parts) => parts.slice(0, i + 1).join(".")),
  ),
);

/** The names that may stand behind a prefix such as `limits.`. */
const namesAfter = (prefix: string): readonly string[] => [
  ...new Set(
    Object.keys(engineFields)
      .filter((path) => path.startsWith(prefix))
      .map((path) => path.slice(prefix.length).split(".")[0] ?? ""),
  ),
];

const checkFields = (view: JsonView, value: JsonObject, problems: Problem[], prefix = ""): void => {
  for (const [name, inner] of Object.entries(value)) {
    const path = prefix + name;
    const field = Object.hasOwn(engineFields, path) ? engineFields[path] : undefined;
    const refuse = (expected: string, mend?: string): void => {
      const facts = {
        field: path,
        text: JSON.stringify(inner),
        expected,
        ...(mend === undefined ? {} : { mend }),
      };
      problems.push(problem("field-bad", facts, view.place(path)));
    };
    if (field !== undefined) {
      const found = field.kind === "curves" ? curvesFault(inner) : undefined;
      if (!fits(field, inner)) refuse(found ?? expectation(field), fieldMend(field, inner));
    } else if (!groups.has(path)) {
      const facts = { field: path, fields: namesAfter(prefix) };
      problems.push(problem("field-unknown", facts, view.place(path), "caution"));
    } else if (isObject(inner)) checkFields(view, inner, problems, `${path}.`);
    else refuse(`{ } around any of ${namesAfter(`${path}.`).join(", ")}`);
  }
};

/** What to type instead; undefined where the expectation says it all. */
const fieldMend = (field: FieldKind, value: unknown): string | undefined => {
  if (field.kind === "yes-no") return "write true or false, without quotes";
  if (field.kind === "text") return "write it in double quotes";
  if (field.kind === "quantity" || field.kind === "range")
    return `write it in quotes and with its unit: "${field.example}"`;
  if (field.kind === "number") return "write the number alone, without quotes and without a unit";
  if (field.kind === "price") return priceMend(value);
  if (field.kind === "ownership") return 'write "5y" or "for-good"';
  if (field.kind === "since") return 'write it in double quotes: "2004"';
  if (field.kind !== "word" || typeof value !== "string") return undefined;
  const near = field.also[value.toLowerCase()] ?? nearest(value, field.words)[0];
  return near === undefined ? undefined : `write "${near}"`;
};

const priceMend = (value: unknown): string =>
  typeof value === "number"
    ? "write what it costs as a number above 0; leave the line out where nobody knows"
    : "write the number alone, without quotes; the currency stands once, in prices.currency";

/** Banks and firing order name each cylinder once, as soon as the cylinders themselves are sound. */
const checkLabels = (view: JsonView, problems: Problem[]): void => {
  const labels = fieldAt(view.root, "cylinders");
  if (!isFit("cylinders", labels)) return;
  for (const path of ["banks", "firingOrder"]) {
    const value = fieldAt(view.root, path);
    if (!isFit(path, value)) continue;
    const named = value.flat();
    const complete =
      new Set(named).size === labels.length &&
      named.length === labels.length &&
      named.every((label) => labels.includes(label));
    if (complete) continue;
    const expected = `each of the cylinders ${labels.join(" ")} once`;
    const facts = { field: path, text: JSON.stringify(value), expected };
    problems.push(problem("field-bad", facts, view.place(path)));
  }
};

const isFit = (path: string, value: unknown): value is readonly unknown[] => {
  const field = engineFields[path];
  return field !== undefined && fits(field, value);
};

const engineOf = (root: JsonObject, id: string): Engine => {
  const cylinders = fieldAt(root, "cylinders") as readonly string[];
  const word = <W extends string>(path: string, otherwise: W): W =>
    (fieldAt(root, path) as W | undefined) ?? otherwise;
  const homeAltitude = fieldAt(root, "homeAltitude_m");
  const oil = fieldAt(root, "wetTest.oil_ml");
  const wetSource = fieldAt(root, "wetTest.source");
  const lost = fieldAt(root, "limits.leakDown.lost");
  const leakSource = fieldAt(root, "limits.leakDown.source");
  const heldSource = fieldAt(root, "leakDownTest.source");
  const cooling = fieldAt(root, "cooling");
  const prices = pricesOf(root);
  const ownership = fieldAt(root, "ownership");
  const ownedFor = typeof ownership === "string" ? ownedForOf(ownership) : undefined;
  const renewed = fieldAt(root, "renewed");
  const yearsLeft = fieldAt(root, "yearsLeft");
  const meter = fieldAt(root, "meter");
  return {
    id,
    name: word("name", id),
    use: word("use", "other"),
    remote: fieldAt(root, "remote") === true,
    cylinders,
    banks: (fieldAt(root, "banks") as readonly (readonly string[])[] | undefined) ?? [],
    sharedGasket: fieldAt(root, "sharedGasket") !== false,
    firingOrder: (fieldAt(root, "firingOrder") as readonly string[] | undefined) ?? [],
    cycle: word("cycle", "four-stroke"),
    porting: word("porting", fieldAt(root, "cycle") === "two-stroke" ? "ports" : "valves"),
    ignition: word("ignition", "unknown"),
    ...(cooling === undefined ? {} : { cooling: cooling as "liquid" | "air" }),
    ...(meter === undefined ? {} : { meter: meter as "h" | "km" | "mi" }),
    ...(homeAltitude === undefined ? {} : { homeAltitude: length(Number(homeAltitude)) }),
    compressionRelease: word("compressionRelease", "unknown"),
    ...(fieldAt(root, "wetTest.allowed") === undefined
      ? {}
      : {
          wetTest: {
            allowed: fieldAt(root, "wetTest.allowed") === true,
            ...(oil === undefined ? {} : { oil: volume(Number(oil) * 1e-6) }),
            ...(typeof wetSource === "string" ? { source: wetSource } : {}),
          },
        }),
    ...(fieldAt(root, "leakDownTest.allowed") === undefined
      ? {}
      : {
          leakDownTest: {
            allowed: fieldAt(root, "leakDownTest.allowed") === true,
            ...(typeof heldSource === "string" ? { source: heldSource } : {}),
          },
        }),
    geometry: geometryOf(root),
    crankingCurves: curvesOf(fieldAt(root, "crankingCurve")),
    correction: correctionOf(root),
    compressionLimits: compressionLimits(root),
    clearances: [],
    offered: {},
    layout: {},
    leakDownLimits: {
      ...(typeof lost === "number" ? { lost } : {}),
      ...(typeof leakSource === "string" ? { source: leakSource } : {}),
    },
    ...(prices === undefined ? {} : { prices }),
    ...(ownedFor === undefined ? {} : { ownedFor }),
    ...(typeof renewed === "string" ? { renewed } : {}),
    ...(typeof yearsLeft === "number" ? { yearsLeft } : {}),
  };
};

const correctionOf = (root: JsonObject): CorrectionChoice => {
  const basis = fieldAt(root, "correction.basis");
  const exponent = fieldAt(root, "correction.temperatureExponent");
  return {
    ...(basis === "pressure" || basis === "density" ? { basis } : {}),
    ...(typeof exponent === "number" ? { temperatureExponent: exponent } : {}),
  };
};

/** Of a range its geometric middle. @source handbook/cranking.md I.5 */
const speedOf = (written: unknown): CompressionLimits => {
  const range = typeof written === "string" ? readRange(written, "speed") : undefined;
  if (typeof written !== "string" || range === undefined) return {};
  const middle = { speed: speed(Math.sqrt(range.least * range.most)) };
  return range.least === range.most
    ? { speed: speed(range.least) }
    : { ...middle, speedRange: written.trim() };
};

const compressionLimits = (root: JsonObject): CompressionLimits => {
  const field = (name: string): unknown => fieldAt(root, `limits.compression.${name}`);
  const pressure = (name: "new" | "minimum" | "difference"): CompressionLimits => {
    const written = field(name);
    const reading = typeof written === "string" ? readQuantity(written, "pressure") : undefined;
    return reading?.ok === true ? { [name]: gaugePressure(reading.si) } : {};
  };
  const ratio = field("lowestToHighest");
  const source = field("source");
  return {
    ...pressure("new"),
    ...pressure("minimum"),
    ...pressure("difference"),
    ...(typeof ratio === "number" ? { lowestToHighest: ratio } : {}),
    ...speedOf(field("speed")),
    ...(typeof source === "string" ? { source } : {}),
  };
};
