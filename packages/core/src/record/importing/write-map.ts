// A map as a person edits it: an entry a line, lists and sources on one line.

import type { ImportMap } from "./import-map.ts";
import { mapEntries } from "./map-entries.ts";

/** The JSON of a map; `readImportMap` reads the same map from it. */
export const writeImportMap = (map: ImportMap): string => {
  const entries = mapEntries.flatMap(({ name: key }) => {
    const value = map[key];
    if (value === undefined) return [];
    return [`  ${JSON.stringify(key)}: ${key === "engines" ? engineLines(map.engines) : onOneLine(value)}`];
  });
  return `{\n${entries.join(",\n")}\n}\n`;
};

const engineLines = (engines: ImportMap["engines"]): string =>
  engines.length === 0 ? "[]" : `[\n${engines.map((one) => `    ${onOneLine(one)}`).join(",\n")}\n  ]`;

/** JSON with a blank behind each comma and colon, as people write it. */
const onOneLine = (value: unknown): string => {
  if (Array.isArray(value)) return `[${value.map(onOneLine).join(", ")}]`;
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  const entries = Object.entries(value)
    .filter(([, inner]) => inner !== undefined)
    .map(([key, inner]) => `${JSON.stringify(key)}: ${onOneLine(inner)}`);
  return entries.length === 0 ? "{}" : `{ ${entries.join(", ")} }`;
};
