// The facts of the day that a sheet states: meter, person, conditions. What cannot be read is left alone and noted; the
// readings beside it are taken.

import { type Facts, type Problem, type ProblemCode, problem } from "../../problem/index.ts";
import { numberColumns, wordColumns } from "../conditions.ts";
import { type Bounds, checkNumber } from "../row-view.ts";
import type { ImportMap } from "./import-map.ts";
import type { LeftList } from "./left-out.ts";
import { plainText } from "./sheet-words.ts";
import type { Spot } from "./sources.ts";

const meterBounds: Bounds = { of: "a meter reading", least: 0, most: 9_999_999 };
const meterUnit = /\s*(?:h|hrs?|hours?|km|mi|miles|std|uur|ore|horas|heures|timmar|mth)\.?$/i;

/** The cell of tests.csv for a fact as a sheet states it; "" where nothing stands or nothing can be read.
 *  @param name - `meter` or a condition column */
export type FactReader = (name: string, spot: Spot) => string;

/** Reads facts as the map has its numbers. */
export const factReader = (map: ImportMap, left: LeftList): FactReader => {
  const known = new Map<string, string>();
  const read = (name: string, { text, at }: Spot): string | undefined => {
    if (text === "" || map.notTaken.some((word) => plainText(word) === plainText(text))) return "";
    const noted = (fault: Problem): undefined => {
      if (at !== undefined) left.found(at.row, at.column, fault, 0);
    };
    if (Object.hasOwn(wordColumns, name)) {
      const words = Object.entries(wordColumns).find(([column]) => column === name)?.[1] ?? [];
      const word = words.find((one) => one === plainText(text).replace(" ", "-"));
      return word ?? noted(problem("word-unknown", { column: name, text, words }));
    }
    const bounds = name === "meter" ? meterBounds : numberColumns[name]?.bounds;
    if (bounds === undefined) return "";
    const bare = name === "meter" ? text.replace(meterUnit, "") : text;
    const figure = withoutThousands(bare, map.decimal);
    const marks = figure.match(/[.,]/g) ?? [];
    if (marks.length === 1 && marks[0] !== map.decimal)
      return noted(problem("import-decimal", { text, mark: map.decimal }));
    // A meter of "1,234" is 1234 hours at least as often as 1.234, whatever the readings have before their decimals.
    const [, thousands = "", hundreds = ""] = /^([1-9]\d{0,2})[.,](\d{3})$/.exec(figure) ?? [];
    if (name === "meter" && thousands !== "") {
      const [small, large] = [Number(`${thousands}.${hundreds}`), Number(`${thousands}${hundreds}`)];
      return noted(problem("number-two-ways", { text: figure, small, large }));
    }
    const pointed = marks.length === 1 ? figure.replace(/[.,]/, ".") : figure;
    const report = <C extends ProblemCode>(code: C, facts: Facts<C>): undefined => {
      noted(problem(code, facts));
    };
    return checkNumber(pointed, bounds, ",", report, name) === undefined ? undefined : pointed;
  };
  return (name, spot) => {
    const key = `${name}\n${spot.text}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const value = read(name, spot);
    if (value === undefined) return "";
    if (known.size >= mostRemembered) known.clear();
    known.set(key, value);
    return value;
  };
};

/** `1,377.5` where the point is the decimal mark: two different marks leave no doubt. */
const withoutThousands = (text: string, decimal: ImportMap["decimal"]): string =>
  decimal === "." && /^[1-9]\d{0,2}(?:,\d{3})+\.\d+$/.test(text)
    ? text.replaceAll(",", "")
    : decimal === "," && /^[1-9]\d{0,2}(?:\.\d{3})+,\d+$/.test(text)
      ? text.replaceAll(".", "")
      : text;

const mostRemembered = 10_000;
