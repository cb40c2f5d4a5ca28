// The chart of the years: a strip a cylinder on one scale, so that an eye compares their shapes; works and limit marked,
// gauges told apart by the shape of their marks. Black on white: nothing is said by colour.

import { type Markup, html, none } from "./html.ts";
import type { Strip, StripsBlock } from "./page-model.ts";
import { type Axis, axisOf, cornersPath, linePath, markPath, mostMarks, px } from "./plot.ts";
import { legendOf, legendTall, markerKey, stripsLeft as left, stripsWide as wide } from "./strips-signs.ts";
import { descriptionOf, letterOf } from "./strips-words.ts";
import { yearFraction } from "../dates.ts";
import { dateTicks } from "../ticks.ts";

const right = 488;
const top = 4;
const axisTall = 14;
/** Of a strip: few share what an eye can use, many what a page has left. */
const strip = { few: 100, many: 440, least: 15, usual: 25, most: 60 };
/** From so many tests on their marks are smaller. */
const dense = 30;
/** Less than this between lowest and highest is noise and shall not fill a strip. */
const leastSpan = 0.1;

interface Frame {
  readonly x: Axis;
  readonly y: Axis;
  readonly tall: number;
}

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
    ${worksOf(chart, frame, bottom)}${cylinders.map((one, i) => stripOf(chart, one, { ...frame, from: top + i * frame.tall }))}${axisMarks(frame, bottom + lettersTall(chart))}${legendOf(chart, bottom + lettersTall(chart) + axisTall + 8)}
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
    strip.least,
    Math.min(strip.usual, strip.many / n),
    Math.min(strip.most, strip.few / n),
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

interface StripFrame extends Frame {
  /** Upper edge of the strip. */
  readonly from: number;
}

const stripOf = (
  chart: StripsBlock,
  { label, values, nothing, anew, course }: Strip,
  frame: StripFrame,
): Markup => {
  const { tests, limit, id } = chart;
  const { x, y, tall, from } = frame;
  const middle = px(from + tall / 2 + 3.5);
  const at = tests.map(({ date }) => x.place(yearFraction(date)));
  const place = (value: number): number => from + y.place(value);
  const level =
    chart.quantity === "against-others"
      ? html`<path class="level" d="M${px(left)},${px(place(0))}H${px(right)}" />`
      : none;
  const floor =
    limit === undefined
      ? none
      : html`<path class="limit" d="M${px(left)},${px(place(limit.value))}H${px(right)}" />`;
  const counted = tests.flatMap(({ counts }, i) => {
    const [value, own] = [values[i], at[i]];
    if (own === undefined || counts === "no") return [];
    const gap = anew.includes(i) ? [{ x: own }] : [];
    return [...gap, { x: own, ...(value === undefined ? {} : { y: place(value) }) }];
  });
  const zeros = nothing.flatMap((i) => {
    const own = at[i];
    return own === undefined ? [] : [`M${px(own - 3)},${px(from + tall - 7)}l6,6m0,-6l-6,6`];
  });
  return html`<text x="0" y="${middle}" class="name">${label}</text
    ><path class="edge" d="M${px(left)},${px(from + tall)}H${px(wide)}" />${level}${floor}<path
      class="line"
      d="${linePath(counted)}"
    />${marksOf(chart, values, { at, place, id })}${zeros.length === 0 ? none : html`<path class="cross" d="${zeros.join("")}" />`}<text
      x="${px(right + 8)}"
      y="${middle}"
      >${course}</text
    >`;
};

/** One path a gauge, its corners the readings: small, and every mark the same. */
const marksOf = (
  { tests }: StripsBlock,
  values: Strip["values"],
  {
    at,
    place,
    id,
  }: { readonly at: readonly number[]; readonly place: (value: number) => number; readonly id: string },
): readonly Markup[] => {
  const keys = tests.map(({ gauge, counts }) => markerKey(id, gauge, counts));
  return [...new Set(keys)].flatMap((key) => {
    const points = values.flatMap((value, i) => {
      const x = at[i];
      return value === undefined || x === undefined || keys[i] !== key ? [] : [{ x, y: place(value) }];
    });
    const mark = `url(#${key})`;
    return points.length === 0
      ? []
      : [
          html`<path
            class="marks"
            d="${cornersPath(points)}"
            marker-start="${mark}"
            marker-mid="${mark}"
            marker-end="${points.length === 1 ? "none" : mark}"
          />`,
        ];
  });
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
