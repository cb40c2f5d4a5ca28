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
  [/^(?:supply|regulated|regulator|reg|input)(?: pressure| gauge)? psig?$/, "regulated_psi"],
  [/^(?:supply|regulated|regulator|reg|input)(?: pressure| gauge)? kpa$/, "regulated_kPa"],
  [/^(?:supply|regulated|regulator|reg|input)(?: pressure| gauge)? bar$/, "regulated_bar"],
  [/^master(?: pressure| gauge)? psig?$/, "master_psi"],
  [/^master(?: pressure| gauge)? kpa$/, "master_kPa"],
  [/^master(?: pressure| gauge)? bar$/, "master_bar"],
  [/^crank(?:ing)? (?:rpm|speed|speed rpm)$/, "crank_rpm"],
  [/^crank(?:ing)? (?:v|volt|volts|voltage|voltage v)$/, "crank_V"],
];

/** The condition column of tests.csv that a heading is; undefined where it is none, or could be something else. */
export const conditionNamed = remembered((heading: string): string | undefined => {
  if (isConditionColumn(heading)) return heading;
  const plain = plainText(heading.replace(/[()[\]°º,]/g, " ")).replace(/ {2,}/g, " ");
  return shapes.find(([shape]) => shape.test(plain))?.[1];
});

/** Whether a heading is that of a supply, which is no reading of a cylinder in whatever unit. */
export const isSupply = remembered((heading: string): boolean =>
  /^(?:(?:supply|regulated|regulator|reg|input|master)(?: pressure| gauge)?(?: (?:psig?|kpa|bar|mpa|%))?|in)$/.test(
    plainText(heading.replace(/[()[\],]/g, " ")).replace(/ {2,}/g, " "),
  ),
);

const states = new Set<string>(wordColumns.engine_temp);

/** Whether a column under "engine" says how warm it was, not which one. */
export const isEngineState = (texts: readonly string[]): boolean =>
  texts.length > 0 && texts.every((text) => states.has(plainText(text).replace(" ", "-")));
