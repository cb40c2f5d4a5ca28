// Headings of the conditions of a test that can mean nothing else. Common words, no source.

import { isConditionColumn, wordColumns } from "../conditions.ts";
import { remembered } from "./remembered.ts";
import { plainText } from "./sheet-words.ts";

/** A heading without its brackets and signs of degree, and the column of tests.csv that it is. A speed or a voltage counts only
 *  where it says that it was read while cranking. */
const shapes: readonly (readonly [RegExp, string])[] = [
  [/^(?:air|ambient|outside|outdoor) ?temp(?:erature)? c$/, "air_temp_C"],
  [/^(?:air|ambient|outside|outdoor) ?temp(?:erature)? f$/, "air_temp_F"],
  [/^(?:lufttemperatur|aussentemperatur) c$/, "air_temp_C"],
  [/^(?:engine|oil|motor) ?temp(?:erature)? c$/, "engine_temp_C"],
  [/^(?:engine|oil|motor) ?temp(?:erature)? f$/, "engine_temp_F"],
  [/^(?:altitude|elevation|field elevation) m$/, "altitude_m"],
  [/^(?:altitude|elevation|field elevation) (?:ft|feet)$/, "altitude_ft"],
  [/^qnh(?: hpa| mbar| mb)$/, "qnh_hPa"],
  [/^(?:qnh|altimeter setting|altimeter) inhg$/, "qnh_inHg"],
  [/^crank(?:ing)? (?:rpm|speed|speed rpm)$/, "crank_rpm"],
  [/^crank(?:ing)? (?:v|volt|volts|voltage|voltage v)$/, "crank_V"],
];

/** The condition column of tests.csv that a heading is; undefined where it is none, or could be something else. */
export const conditionNamed = remembered((heading: string): string | undefined => {
  if (isConditionColumn(heading)) return heading;
  const plain = plainText(heading.replace(/[()[\]°º,]/g, " ")).replace(/ {2,}/g, " ");
  return shapes.find(([shape]) => shape.test(plain))?.[1];
});

const states = new Set<string>(wordColumns.engine_temp);

/** Whether a column under "engine" says how warm it was, not which one. */
export const isEngineState = (texts: readonly string[]): boolean =>
  texts.length > 0 && texts.every((text) => states.has(plainText(text).replace(" ", "-")));
