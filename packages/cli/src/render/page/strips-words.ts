// The chart of the years in words: for who cannot see it, and for the page as text.

import { shownUnit, valueText } from "./chart-values.ts";
import type { Strip, StripsBlock } from "./page-model.ts";

/** The chart in words, for who cannot see it. */
export const descriptionOf = (chart: StripsBlock): string =>
  chart.cylinders.map((one) => `${one.label}: ${stripWords(one, chart)}`).join("; ");

/** `0.0 % on 2014-10-04, -20.3 % on 2026-10-03, falling`. */
export const stripWords = ({ values, course, nothing }: Strip, chart: StripsBlock): string => {
  const unit = shownUnit(chart);
  const ends = [
    values.findIndex((value) => value !== undefined),
    values.findLastIndex((value) => value !== undefined),
  ];
  const said = [...new Set(ends)].flatMap((i) => {
    const value = values[i];
    return value === undefined ? [] : [`${valueText(value, chart)} ${unit} on ${chart.tests[i]?.date ?? ""}`];
  });
  const zeros = nothing.map((i) => `held nothing on ${chart.tests[i]?.date ?? ""}`);
  return [...said, ...zeros, course].filter((text) => text !== "").join(", ");
};

/** A work's letter under the axis: a … z, then two letters. */
export const letterOf = (place: number): string => {
  const letter = String.fromCharCode(97 + (place % 26));
  return place < 26 ? letter : letterOf(Math.floor(place / 26) - 1) + letter;
};
