// engine.json: what the engine is. Only cylinders and ignition are needed; all else may be unknown.

import type { Problem } from "../problem/index.ts";
import { problem } from "../problem/index.ts";
import { gaugePressure, length, readQuantity, speed, volume } from "../quantity/index.ts";
import { engineFields, expectation, fits } from "./engine-fields.ts";
import { type JsonObject, fieldAt, isObject, parseJsonObject, placeOfField } from "./json-view.ts";
import type { CompressionLimits, Engine } from "./types.ts";

/** Reads engine.json. @param id - the folder's name @returns undefined when it cannot serve at all */
export const readEngine = (
  text: string,
  file: string,
  id: string,
): { readonly engine: Engine | undefined; readonly problems: readonly Problem[] } => {
  const problems: Problem[] = [];
  const root = parseJsonObject(text, file, problems);
  if (root === undefined) return { engine: undefined, problems };
  checkFields(root, text, file, problems);
  for (const [field, example] of [["cylinders", '["1", "2", "3", "4"]'], ["ignition", '"spark"']] as const)
    if (fieldAt(root, field) === undefined) problems.push(problem("field-missing", { field, example }, { file, line: 1, column: 1 }));
  checkLabels(root, text, file, problems);
  if (problems.some(({ severity }) => severity === "error")) return { engine: undefined, problems };
  return { engine: engineOf(root, id), problems };
};

const groups = new Set(Object.keys(engineFields).flatMap((path) => path.split(".").slice(0, -1).map((_, i, parts) => parts.slice(0, i + 1).join("."))));

const checkFields = (value: JsonObject, text: string, file: string, problems: Problem[], prefix = ""): void => {
  for (const [name, inner] of Object.entries(value)) {
    const path = prefix + name;
    const field = engineFields[path];
    const place = placeOfField(text, file, path);
    if (field !== undefined) {
      if (!fits(field, inner)) problems.push(problem("field-bad", { field: path, text: JSON.stringify(inner), expected: expectation(field) }, place));
    } else if (groups.has(path) && isObject(inner)) checkFields(inner, text, file, problems, `${path}.`);
    else {
      const siblings = Object.keys(engineFields).filter((known) => known.startsWith(prefix)).map((known) => known.slice(prefix.length).split(".")[0] ?? "");
      problems.push(problem("field-unknown", { field: path, fields: [...new Set(siblings)] }, place, "caution"));
    }
  }
};

const checkLabels = (root: JsonObject, text: string, file: string, problems: Problem[]): void => {
  const labels = fieldAt(root, "cylinders");
  if (!Array.isArray(labels)) return;
  for (const path of ["banks", "firingOrder"]) {
    const value = fieldAt(root, path);
    const named = Array.isArray(value) ? (value as unknown[]).flat() : [];
    const complete = new Set(named).size === labels.length && named.length === labels.length && named.every((label) => labels.includes(label));
    if (value !== undefined && !complete)
      problems.push(problem("field-bad", { field: path, text: JSON.stringify(value), expected: `each of the cylinders ${labels.join(" ")} once` }, placeOfField(text, file, path)));
  }
};

const engineOf = (root: JsonObject, id: string): Engine => {
  const cylinders = fieldAt(root, "cylinders") as readonly string[];
  const word = <W extends string>(path: string, otherwise: W): W => (fieldAt(root, path) as W | undefined) ?? otherwise;
  const homeAltitude = fieldAt(root, "homeAltitude_m");
  const oil = fieldAt(root, "wetTest.oil_ml");
  const wetSource = fieldAt(root, "wetTest.source");
  const lost = fieldAt(root, "limits.leakDown.lost");
  const leakSource = fieldAt(root, "limits.leakDown.source");
  const cooling = fieldAt(root, "cooling");
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
    porting: word("porting", "valves"),
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
    compressionLimits: compressionLimits(root),
    leakDownLimits: {
      ...(typeof lost === "number" ? { lost } : {}),
      ...(typeof leakSource === "string" ? { source: leakSource } : {}),
    },
  };
};

const compressionLimits = (root: JsonObject): CompressionLimits => {
  const pressure = (name: string): { [key: string]: ReturnType<typeof gaugePressure> } => {
    const reading = readQuantity(String(fieldAt(root, `limits.compression.${name}`) ?? ""), "pressure");
    return reading.ok ? { [name]: gaugePressure(reading.si) } : {};
  };
  const at = readQuantity(String(fieldAt(root, "limits.compression.speed") ?? ""), "speed");
  const ratio = fieldAt(root, "limits.compression.lowestToHighest");
  const source = fieldAt(root, "limits.compression.source");
  return {
    ...pressure("new"),
    ...pressure("minimum"),
    ...pressure("difference"),
    ...(typeof ratio === "number" ? { lowestToHighest: ratio } : {}),
    ...(at.ok ? { speed: speed(at.si) } : {}),
    ...(typeof source === "string" ? { source } : {}),
  };
};
