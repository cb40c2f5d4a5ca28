// The chart of the years: a strip a cylinder on one scale, so that an eye compares their shapes; works and limit marked,
// gauges told apart by the shape of their marks. Black on white: nothing is said by colour.

import { type Markup, html, none } from "./html.ts";
import type { Strip, StripsBlock } from "./page-model.ts";
import { axisOf, cornersPath, linePath, markPath, mostMarks, px } from "./plot.ts";
import {
  crossAt,
  legendOf,
  legendTall,
  markerKey,
  strokeAt,
  stripsLeft as left,
  stripsWide as wide,
} from "./strips-signs.ts";
import { type Frame, type StripFrame, scaleOf, stripsRight as right, wordsBeside } from "./strips-edges.ts";
import { descriptionOf, letterOf } from "./strips-words.ts";
import { yearFraction } from "../dates.ts";
import { dateTicks } from "../ticks.ts";

const top = 4;
const axisTall = 14;
/** Of a strip: few share what an eye can use, many what a page has left. */
const stripTall = { few: 120, many: 290, least: 15, usual: 24, most: 70 };
/** From so many tests on their marks are smaller. */
const dense = 30;
/** Less than this between lowest and highest is noise and shall not fill a strip. */
const leastSpan = 0.1;

export const stripsSvg = (chart: StripsBlock): Markup => {
  const { cylinders, tests, id, caption } = chart;
  const frame = frameOf(chart);
  const size = tests.length > dense ? "7" : "10";
  const bottom = top + frame.tall * cylinders.length;
  const shapes = [...new Set(tests.map(({ gauge }) => Math.min(gauge, mostMarks - 1)))].sort((a, b) => a - b);
  return html`<svg
    viewBox="0 0 ${px(wide)} ${px(bottom + lettersTall(chart) + axisTall + legendTall(chart))}"
    role="img"
    aria-labelledby="${id}-t ${id}-d"
  >
    <title id="${id}-t">${caption}</title>
    <desc id="${id}-d">${descriptionOf(chart)}</desc>
    <defs>
      ${shapes.flatMap((shape) => (["yes", "no"] as const).map((counts) => markerOf(markerKey(id, shape, counts), shape, size)))}
    </defs>
    ${gridOf(chart, frame)}${worksOf(chart, frame, bottom)}${cylinders.map((one, i) => stripOf(chart, one, { ...frame, from: top + i * frame.tall }))}${axisMarks(frame, bottom + lettersTall(chart))}${legendOf(chart, bottom + lettersTall(chart) + axisTall + 8)}
  </svg>`;
};

const frameOf = ({ cylinders, tests, limit, quantity }: StripsBlock): Frame => {
  const years = tests.map(({ date }) => yearFraction(date));
  const [from, to] = [Math.min(...years), Math.max(...years)];
  const edge = Math.max(0.02 * (to - from), 0.05);
  const values = cylinders.flatMap((one) => one.values.flatMap((value) => value ?? []));
  const [lowest, highest] = [Math.min(...values), Math.max(...values)];
  const middle = (lowest + highest) / 2;
  const least = leastSpan * (quantity === "pressure" ? highest : 1);
  const low = Math.min(lowest, middle - least / 2, limit?.value ?? Infinity);
  const high = Math.max(highest, middle + least / 2);
  const n = cylinders.length;
  const tall = Math.max(
    stripTall.least,
    Math.min(stripTall.usual, stripTall.many / n),
    Math.min(stripTall.most, stripTall.few / n),
  );
  const inner = Math.min(4, tall / 5);
  return {
    x: axisOf([from - edge, to + edge], [left, right]),
    y: axisOf([low, high], [tall - inner, inner]),
    tall,
  };
};

/** @param size - in units of the drawing */
const markerOf = (key: string, shape: number, size: string): Markup =>
  html`<marker
    id="${key}"
    viewBox="-5 -5 10 10"
    markerWidth="${size}"
    markerHeight="${size}"
    markerUnits="userSpaceOnUse"
    ><path class="${key.endsWith("h") ? "hollow" : "ink"}" d="${markPath(shape)}"
  /></marker>`;

const stripOf = (chart: StripsBlock, strip: Strip, frame: StripFrame): Markup => {
  const { label, values, nothing, anew } = strip;
  const { tests, id } = chart;
  const { x, y, tall, from } = frame;
  const middle = px(from + tall / 2 + 3.5);
  const round = tests.length > dense ? Math.round : (own: number): number => own;
  const at = tests.map(({ date }) => round(x.place(yearFraction(date))));
  const place = (value: number): number => from + y.place(value);
  const counted = tests.flatMap(({ counts }, i) => {
    const [value, own] = [values[i], at[i]];
    if (own === undefined || counts !== "yes") return [];
    const gap = anew.includes(i) ? [{ x: own }] : [];
    return [...gap, { x: own, ...(value === undefined ? {} : { y: place(value) }) }];
  });
  const crosses = [
    ...nothing.flatMap((i) => {
      const own = at[i];
      return own === undefined ? [] : [crossAt(own, from + tall - 4)];
    }),
    ...tests.flatMap(({ counts }, i) => {
      const [value, own] = [values[i], at[i]];
      return counts !== "aside" || value === undefined || own === undefined
        ? []
        : [strokeAt(own, place(value))];
    }),
  ];
  return html`<text x="0" y="${middle}" class="name">${label}</text
    >${scaleOf(chart, frame)}${marksOf(chart, values, { at, place, id, line: linePath(counted) })}${crosses.length === 0 ? none : html`<path class="cross" d="${crosses.join("")}" />`}${wordsBeside(strip, frame)}`;
};

/** Under each strip its edge, in it its level and its limit: a path a kind, for there may be many strips. */
const gridOf = ({ cylinders, limit, quantity }: StripsBlock, { y, tall }: Frame): readonly Markup[] => {
  const across = (value: number, end: number): string =>
    cylinders.map((_, i) => `M${px(left)},${px(top + i * tall + value)}H${px(end)}`).join("");
  return [
    html`<path class="edge" d="${across(tall, wide)}" />`,
    ...(quantity === "against-others" ? [html`<path class="level" d="${across(y.place(0), right)}" />`] : []),
    ...(limit === undefined ? [] : [html`<path class="limit" d="${across(y.place(limit.value), right)}" />`]),
  ];
};

interface Places {
  readonly at: readonly number[];
  readonly place: (value: number) => number;
  readonly id: string;
  readonly line: string;
}

/** The line, and one path a gauge whose corners are the readings: small, and every mark the same. Where one gauge read all of
 *  it the line bears the marks itself, which halves a long chart. */
const marksOf = (
  { tests }: StripsBlock,
  values: Strip["values"],
  { at, place, id, line }: Places,
): readonly Markup[] => {
  const keys = tests.map(({ gauge, counts }) => markerKey(id, gauge, counts));
  const paths = [...new Set(keys)].flatMap((key) => {
    const points = values.flatMap((value, i) => {
      const x = at[i];
      return value === undefined || x === undefined || keys[i] !== key ? [] : [{ x, y: place(value) }];
    });
    return points.length === 0 ? [] : [{ key, corners: cornersPath(points), isOne: points.length === 1 }];
  });
  const isMarked = paths.some(({ corners }) => corners === line);
  return [
    ...(isMarked ? [] : [html`<path class="line" d="${line}" />`]),
    ...paths.map(({ key, corners, isOne }) => {
      const mark = `url(#${key})`;
      const drawn = corners === line ? html` class="line"` : html` class="marks"`;
      return html`<path${drawn}
        d="${corners}"
        marker-start="${mark}"
        marker-mid="${mark}"
        marker-end="${isOne ? "none" : mark}"
      />`;
    }),
  ];
};

/** What was done: a letter under the axis, and a dotted line through the strips it touched. */
const worksOf = ({ works, cylinders }: StripsBlock, { x, tall }: Frame, bottom: number): Markup => {
  const letters = works.map(({ date }, i) => {
    const own = x.place(yearFraction(date));
    return html`<path class="edge" d="M${px(own)},${px(bottom)}v3" /><text
        x="${px(own)}"
        y="${px(bottom + 11)}"
        class="mid"
        >${letterOf(i)}</text
      >`;
  });
  const lines = works.flatMap(({ date, cylinders: touched }) => {
    const own = px(x.place(yearFraction(date)));
    return cylinders.flatMap(({ label }, i) =>
      touched.includes(label) ? [`M${own},${px(top + i * tall)}v${px(tall)}`] : [],
    );
  });
  return html`<path class="work" d="${lines.join("")}" />${letters}`;
};

/** Letters of works need a line of their own. */
const lettersTall = ({ works }: StripsBlock): number => (works.length === 0 ? 0 : 12);

const axisMarks = ({ x }: Frame, bottom: number): readonly Markup[] =>
  dateTicks(x.low, x.high, 56).map(({ x: year, text }) => {
    const own = px(x.place(year));
    return html`<path class="edge" d="M${own},${px(bottom)}v3" /><text
        x="${own}"
        y="${px(bottom + 12)}"
        class="mid"
        >${text}</text
      >`;
  });
