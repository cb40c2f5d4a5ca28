// What stands at the edges of a strip: to the left the values of its level and its limit, to the right the first and the last
// value and the course.

import { shownUnit, shownValue } from "./chart-values.ts";
import { type Markup, html, none } from "./html.ts";
import type { Strip, StripsBlock } from "./page-model.ts";
import { type Axis, axisOf, px } from "./plot.ts";
import { stripsLeft as left } from "./strips-signs.ts";
import { fixed } from "../words.ts";

/** Where the strips end and the words begin. */
export const stripsRight = 488;

export interface Frame {
  readonly x: Axis;
  readonly y: Axis;
  readonly tall: number;
}

export interface StripFrame extends Frame {
  /** Upper edge of the strip. */
  readonly from: number;
}

/** From here on a strip has room for two lines of words, and for more than its two levels. */
const twoLines = 24;
const tallScale = 50;
/** Values at the left edge: level and limit; in a tall strip round values too. */
export const scaleOf = (chart: StripsBlock, { y, from, tall }: StripFrame): readonly Markup[] => {
  const { limit } = chart;
  const levels = [
    ...(chart.quantity === "against-others" ? [0] : []),
    ...(limit === undefined ? [] : [limit.value]),
  ];
  const unit = shownValue(1, chart);
  const round = axisOf([y.low * unit, y.high * unit], [0, 1]).ticks(tall > tallScale ? 4 : 2);
  const shown =
    chart.quantity === "against-others" && tall <= tallScale
      ? levels
      : [...levels, ...round.map((value) => value / unit)];
  const apart = shown.filter((value, i) =>
    shown.slice(0, i).every((one) => Math.abs(y.place(one) - y.place(value)) > 8),
  );
  return apart.map(
    (value) =>
      html`<text x="${px(left - 4)}" y="${px(from + y.place(value) + 2.5)}" class="tick"
        >${scaleText(value, chart)}</text
      >`,
  );
};

/** `-25 %`, `120`. */
const scaleText = (value: number, chart: StripsBlock): string => {
  const shown = shownValue(value, chart);
  const isWhole = Number.isInteger(Number(shown.toFixed(6)));
  return `${fixed(shown, isWhole || Math.abs(shown) >= 20 ? 0 : 1)} ${shownUnit(chart)}`;
};

/** First and last value, and the course: in two lines where there is room. */
export const wordsBeside = ({ ends, before, course, word }: Strip, { from, tall }: StripFrame): Markup => {
  const now =
    ends === undefined ? [] : [ends.first === ends.last ? ends.last : `${ends.first} to ${ends.last}`];
  const said = [...now, ...(before === undefined ? [] : [`before the work ${before}`])].join("; ");
  const at = (text: string, y: number): Markup =>
    text === "" ? none : html`<text x="${px(stripsRight + 8)}" y="${px(y)}">${text}</text>`;
  const middle = from + tall / 2;
  if (tall < twoLines) return at(said === "" ? course : `${said}, ${word}`, middle + 3.5);
  return said === "" ? at(course, middle + 3.5) : html`${at(said, middle - 2)}${at(course, middle + 9)}`;
};
