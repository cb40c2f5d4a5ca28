// An engine.json from its entries.

import { readEngine } from "@sealtrend/core/parts";

export const least = { cylinders: ["1", "2", "3", "4"], ignition: "compression" };
export const read = (entries: object) => readEngine(JSON.stringify(entries, null, 2), "engine.json", "pump");

/** An object with one value at a dotted path, among those that are needed. */
export const withField = (path: string, value: unknown): object => {
  const nested = path.split(".").reduceRight<unknown>((inner, name) => ({ [name]: inner }), value);
  return { ...least, ...(nested as object) };
};

/** Where a name stands in text that holds it once: line and column from 1. */
export const placeOf = (text: string, name: string) => {
  const before = text.slice(0, text.indexOf(`"${name}":`)).split("\n");
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
};
