// The chart of the years in words: for who cannot see it, and for the page as text.

import { shownUnit, valueText } from "./chart-values.ts";
import type { Strip, StripsBlock } from "./page-model.ts";

/** The chart in words, for who cannot see it. */
export const descriptionOf = (chart: StripsBlock): string =>
  chart.cylinders.map((one) => `${one.label}: ${stripWords(one, chart)}`).join("; ");

/** `0.0 % on 2014-10-04, -20.3 % on 2026-10-03, falling`. Only tests that count tell the course; what was before a work stands
 *  before it, and what does not count behind. */
export const stripWords = (strip: Strip, chart: StripsBlock): string => {
  const { values, course, nothing, anew } = strip;
  const unit = shownUnit(chart);
  const told = (i: number): string => {
    const value = values[i];
    const date = chart.tests[i]?.date ?? "";
    return value === undefined ? "" : `${valueText(value, chart)} ${unit} on ${date}`;
  };
  const places = (counts: "yes" | "no" | "aside"): readonly number[] =>
    chart.tests.flatMap((test, i) => (test.counts === counts && values[i] !== undefined ? [i] : []));
  const spans = [0, ...anew].map((from, k, all) => {
    const own = places("yes").filter((i) => i >= from && i < (all[k + 1] ?? Infinity));
    return [...new Set([own.at(0), own.at(-1)])]
      .flatMap((i) => (i === undefined ? [] : [told(i)]))
      .join(", ");
  });
  const counted = spans.filter((text) => text !== "");
  const zeros = nothing.map((i) => `held nothing on ${chart.tests[i]?.date ?? ""}`);
  const others = [
    ...places("no").map((i) => `not counted ${told(i)}`),
    ...places("aside").map((i) => `set aside ${told(i)}`),
  ];
  return [counted.join("; then anew "), ...zeros, ...others, course].filter((text) => text !== "").join(", ");
};

/** A work's letter under the axis: a … z, then two letters. */
export const letterOf = (place: number): string => {
  const letter = String.fromCharCode(97 + (place % 26));
  return place < 26 ? letter : letterOf(Math.floor(place / 26) - 1) + letter;
};
