// engine.json: what the engine is. Only cylinders and ignition are needed; all else may be unknown.

import { type Problem, byPlace, problem } from "../problem/index.ts";
import { gaugePressure, length, readQuantity, speed, volume } from "../quantity/index.ts";
import { clearancesOf } from "./clearances.ts";
import { curvesOf } from "./cranking-curves.ts";
import { checkFields, checkLabels } from "./engine-checks.ts";
import { checkGeometry, geometryOf } from "./engine-geometry.ts";
import { offeredOf } from "./offered.ts";
import { ownedForOf } from "./ownership.ts";
import { pricesOf } from "./prices.ts";
import { readRange } from "./quantity-range.ts";
import { type JsonObject, type JsonView, fieldAt, viewJson } from "./json-view.ts";
import type { CompressionLimits, CorrectionChoice, Engine } from "./engine-types.ts";
import type { CrankLayout } from "./measurement-types.ts";

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
  return { engine: engineOf(view, id), problems };
};

const engineOf = (view: JsonView, id: string): Engine => {
  const { root } = view;
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
    clearances: clearancesOf(view),
    offered: offeredOf(root),
    layout: layoutOf(root),
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

const layoutOf = (root: JsonObject): CrankLayout => {
  const [mains, pins, numberedFrom] = ["mains", "pins", "numberedFrom"].map((name) =>
    fieldAt(root, `layout.${name}`),
  );
  return {
    ...(typeof mains === "number" ? { mains } : {}),
    ...(typeof pins === "number" ? { pins } : {}),
    ...(typeof numberedFrom === "string" ? { numberedFrom } : {}),
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
