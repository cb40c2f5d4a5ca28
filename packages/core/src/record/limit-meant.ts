// What a typed limit that cannot be read may have meant, with the figures that were typed.

import { wearsSmaller } from "./limit-slip.ts";
import type { LimitPlace } from "./typed-limit.ts";
import { readTypedLimit } from "./typed-limit.ts";

/** Ready to type: one text, or one for each unit where none was typed; none where the figures cannot be told. */
export const limitMeant = (text: string, place: LimitPlace): readonly string[] => {
  const ways = [bracketed(text), text, text.replace(/\s*\([^)]*\)/g, "")].map(ranged);
  return ways.map((way) => meantBy(way, place)).find((meant) => meant.length > 0) ?? [];
};

const meantBy = (text: string, place: LimitPlace): readonly string[] => {
  const [, figures = "", source = ""] = /^(.*?)(\s*[,;]\s+\S.*)?$/.exec(text) ?? [];
  const word = place.kind === "wear" && wearsSmaller(place) ? "from" : "up to";
  const read = [[""], ["in", "mm"]].map((units) => units.flatMap((unit) => firstRead(figures + unit, word)));
  const meant = read.find((texts) => texts.length > 0) ?? [];
  return meant.map((one) => one + (isQuantity(source) ? "" : source));
};

/** `up to 0.002in, 0.05mm` with the second unit in brackets. */
const bracketed = (text: string): string =>
  text.replace(/^(.*?)\s*[,;]\s+([^,;]*\d\s*[A-Za-zµμ"″]+)(?=$|\s*[,;]\s)/, "$1 ($2)");

/** With `to` for the stroke between two figures. */
const ranged = (text: string): string => text.trim().replace(/^(\d[\d.,]*)\s*[-–—]\s*(?=\d)/, "$1 to ");

const firstRead = (text: string, word: string): readonly string[] =>
  [text, `${word} ${text}`].filter((one) => readTypedLimit(one) !== undefined).slice(0, 1);

/** The same limit in a second unit is no source. */
const isQuantity = (source: string): boolean =>
  readTypedLimit(`up to ${source.replace(/^[\s,;]+/, "")}`) !== undefined;
