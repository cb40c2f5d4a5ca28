// The newest test: each cylinder as read (hollow) beside corrected (filled), with twice the doubt of the reading.

import { shownUnit, shownValue, valueText } from "./chart-values.ts";
import { type Markup, html, none } from "./html.ts";
import type { DotSeries, DotsBlock } from "./page-model.ts";
import { dotsWords } from "./dots-words.ts";
import { type Axis, axisOf, px } from "./plot.ts";
import { fixed } from "../words.ts";

/** Few cylinders stand beside a table, many take the paper's width. */
const widths = { few: 350, many: 700 } as const;
const mostFew = 6;
const left = 38;
const top = 8;
const bottom = 67;
const labelsTall = 16;
const legendTall = { beside: 14, below: 26 } as const;
/** A limit so far below the readings is named, not drawn: it would press them flat. */
const nearest = 0.6;

export const dotsSvg = (chart: DotsBlock): Markup => {
  const { id, labels, series, caption } = chart;
  const axis = scaleOf(chart);
  const wide = widthOf(chart);
  const right = wide - 4;
  const step = (right - left) / labels.length;
  const apart = Math.min(14, step / 2.5);
  const middles = labels.map((_, i) => left + (i + 0.5) * step);
  const y = (value: number): number => axis.place(shownValue(value, chart));
  const drawn = series.map((one, i) =>
    seriesOf(one, { x: middles.map((x) => x + (i - (series.length - 1) / 2) * apart), y }),
  );
  const names = labels.map(
    (label, i) =>
      html`<text x="${px(middles[i] ?? 0)}" y="${px(bottom + 14)}" class="name mid">${label}</text>`,
  );
  const limit = limitOf(chart, axis, right);
  return html`<svg
    viewBox="0 0 ${px(wide)} ${px(bottom + labelsTall + legendTall[limitStands(chart, limit !== none)])}"
    role="img"
    aria-labelledby="${id}-t ${id}-d"
  >
    <title id="${id}-t">${caption}</title>
    <desc id="${id}-d">${dotsWords(chart)}</desc>
    ${gridOf(axis, right)}${limit}${drawn}${names}${legendOf(chart, limit !== none)}
  </svg>`;
};

const scaleOf = (chart: DotsBlock): Axis => {
  const values = chart.series.flatMap(({ values: own, doubt }) =>
    own.flatMap((value, i) =>
      value === undefined ? [] : [value - (doubt?.[i] ?? 0), value + (doubt?.[i] ?? 0)],
    ),
  );
  const [lowest, highest] = [Math.min(...values), Math.max(...values)];
  const { limit } = chart;
  const drawn = limit !== undefined && isNear(limit.value, lowest) ? [limit.value] : [];
  const low = Math.min(lowest, ...drawn);
  const high = Math.max(highest, ...drawn);
  const least = 0.1 * Math.max(Math.abs(high), 1e-9);
  const room = Math.max(0, least - (high - low)) / 2;
  return axisOf(
    [shownValue(Math.max(0, low - room), chart), shownValue(high + room, chart)],
    [bottom, top],
    "round",
  );
};

const isNear = (limit: number, lowest: number): boolean => limit > nearest * lowest;

const gridOf = (y: Axis, right: number): readonly Markup[] =>
  y.ticks(4).map((value) => {
    const place = y.place(value);
    return html`<path class="level" d="M${px(left)},${px(place)}H${px(right)}" /><text
        x="${px(left - 6)}"
        y="${px(place + 3.5)}"
        class="end"
        >${fixed(value, Number.isInteger(value) ? 0 : 1)}</text
      >`;
  });

const limitOf = (chart: DotsBlock, y: Axis, right: number): Markup => {
  if (chart.limit === undefined) return none;
  const value = shownValue(chart.limit.value, chart);
  if (value < y.low || value > y.high) return none;
  return html`<path class="limit" d="M${px(left)},${px(y.place(value))}H${px(right)}" />`;
};

interface Places {
  readonly x: readonly number[];
  readonly y: (value: number) => number;
}

const seriesOf = ({ values, doubt, mark }: DotSeries, { x, y }: Places): Markup => {
  const drawn = values.flatMap((value, i) => {
    const own = x[i];
    return value === undefined || own === undefined ? [] : [{ x: own, value, doubt: doubt?.[i] ?? 0 }];
  });
  const bars = drawn
    .filter((one) => one.doubt > 0)
    .map((one) => `M${px(one.x)},${px(y(one.value - one.doubt))}V${px(y(one.value + one.doubt))}`)
    .join("");
  const dots = drawn.map((one) => html`<circle cx="${px(one.x)}" cy="${px(y(one.value))}" r="3" />`);
  return html`<path class="line" d="${bars}" /><g class="${mark === "filled" ? "ink" : "hollow"}"
      >${dots}</g
    >`;
};

/** Signs side by side; the limit goes to a line of its own where there is no room beside the others. */
const legendOf = (chart: DotsBlock, drawn: boolean): readonly Markup[] => {
  const y = bottom + labelsTall + 10;
  let from = left;
  const marks = chart.series.map(({ name, mark, doubt }) => {
    const x = from;
    const text = signText({ name, doubt });
    from += signWide(text);
    return html`<circle
        class="${mark === "filled" ? "ink" : "hollow"}"
        cx="${px(x)}"
        cy="${px(y - 3)}"
        r="3"
      /><text x="${px(x + 8)}" y="${px(y)}">${text}</text>`;
  });
  if (chart.limit === undefined) return marks;
  const text = limitWords(chart, drawn);
  const [x, at] = limitStands(chart, drawn) === "beside" ? [from, y] : [left, y + 12];
  const line = drawn ? html`<path class="limit" d="M${px(x)},${px(at - 3)}h22" />` : none;
  return [...marks, html`${line}<text x="${px(drawn ? x + 27 : x)}" y="${px(at)}">${text}</text>`];
};

const signText = ({
  name,
  doubt,
}: Pick<DotSeries, "name"> & { readonly doubt: DotSeries["doubt"] | undefined }): string =>
  doubt === undefined ? name : `${name} ± U`;
const signWide = (text: string): number => 18 + 4.9 * text.length;

/** Whether the limit has room beside the other signs. */
const limitStands = (chart: DotsBlock, drawn: boolean): keyof typeof legendTall => {
  const signs = chart.series.reduce((so, { name, doubt }) => so + signWide(signText({ name, doubt })), left);
  return signs + 27 + 4.9 * limitWords(chart, drawn).length <= widthOf(chart) ? "beside" : "below";
};

const limitWords = (chart: DotsBlock, drawn: boolean): string => {
  const { limit } = chart;
  if (limit === undefined) return "";
  return `${limit.text} ${valueText(limit.value, chart)} ${shownUnit(chart)}${drawn ? "" : ", beyond the chart"}`;
};

const widthOf = ({ labels }: DotsBlock): number => widths[labels.length <= mostFew ? "few" : "many"];
