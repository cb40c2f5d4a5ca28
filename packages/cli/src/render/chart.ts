// One cylinder against its fellows over the years. The only importer of asciichart, which draws the curves; the
// scale, the time axis and the marks are ours, because it plots null as 0, dies of NaN and of wide ranges, labels
// a level series wrongly, and knows neither dates nor gaps.

import { plot } from "asciichart";
import { drawn, legend, typed, type Signs } from "./chart-signs.ts";
import { clean } from "./clean.ts";
import { columnOf, extent, type Span } from "./place.ts";
import { wrapText } from "./table.ts";
import { dateTicks, decimalsOf, meterTicks, scaleOf, type Scale, type Tick } from "./ticks.ts";
import { axisLabels, axisLine, axisMarks } from "./time-axis.ts";
import { displayWidth, padStart } from "./width.ts";

export interface ChartPoint {
  /** Year with fraction, or meter reading; a point whose x is not finite or beyond ± 10⁹ is dropped. */
  readonly x: number;
  /** Absent (or not finite) = not measured: the line breaks there. Clipped to ± 10⁹. */
  readonly y: number | null | undefined;
}

export interface ChartSeries {
  readonly name: string;
  readonly points: readonly ChartPoint[];
}

/** Something that happened: a service, a change of gauge. Stands as a letter under the axis and in the key. */
export type ChartMark = Tick;

export interface ChartOptions {
  /** 1 … 6; the first lies on top. */
  readonly series: readonly ChartSeries[];
  readonly marks?: readonly ChartMark[] | undefined;
  /** `dates` (x in years) unless said otherwise. */
  readonly axis?: "dates" | "meter" | undefined;
  /** Replaces the labels of the time axis. */
  readonly xTicks?: readonly Tick[] | undefined;
  /** Unit of the values, above the axis. */
  readonly unit?: string | undefined;
  /** Rows of the plot, 2 … 40; 12 unless said otherwise. */
  readonly height?: number | undefined;
  /** Columns of everything, 40 … 200. */
  readonly width: number;
  /** Ends of the value scale; a value beyond them stands at the edge as an arrow. */
  readonly low?: number | undefined;
  readonly high?: number | undefined;
  readonly unicode: boolean;
}

const bound = 1e9;

const known = (y: number | null | undefined): y is number => typeof y === "number" && Number.isFinite(y);
const clip = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** A point on the canvas; `row` counts from the lowest and need not be whole; undefined = the line breaks. */
interface Spot {
  readonly column: number;
  readonly row: number | undefined;
}

type Canvas = string[][];

const check = ({ series, height = 12, width, low = -bound, high = bound }: ChartOptions): void => {
  const within = (name: string, value: number, least: number, most: number): void => {
    if (!Number.isInteger(value) || value < least || value > most)
      throw new RangeError(
        `chart: ${name} must be a whole number within ${String(least)} … ${String(most)}, got ${String(value)}`,
      );
  };
  within("height", height, 2, 40);
  within("width", width, 40, 200);
  within("the number of series", series.length, 1, 6);
  if (!(low < high && low >= -bound && high <= bound))
    throw new RangeError(
      `chart: low must be below high, both within ± 1e9, got ${String(low)} and ${String(high)}`,
    );
};

const runsOf = (spots: readonly Spot[]): { column: number; row: number }[][] => {
  const runs: { column: number; row: number }[][] = [[]];
  for (const { column, row } of spots) {
    if (row === undefined) runs.push([]);
    else runs.at(-1)?.push({ column, row });
  }
  return runs.filter((run) => run.length > 1);
};

// asciichart wants one value a column: between two tests the line runs straight; of two in one column the later counts.
const everyColumn = (run: readonly { column: number; row: number }[]): number[] => {
  const values: number[] = [];
  const start = run[0]?.column ?? 0;
  run.forEach(({ column, row }, i) => {
    const before = run[i - 1] ?? { column, row };
    const steps = Math.max(1, column - before.column);
    for (let k = 1; k < steps; k += 1)
      values[before.column - start + k] = before.row + ((row - before.row) * k) / steps;
    values[column - start] = row;
  });
  return values;
};

// Rows are handed over as 0 … h on a scale of h rows, so that asciichart's rounding is exact. It draws the steps between
// values, so the last column stays free for its marker.
const drawLine = (canvas: Canvas, spots: readonly Spot[], symbols: readonly string[]): void => {
  const top = canvas.length - 1;
  for (const run of runsOf(spots)) {
    const values = everyColumn(run).map((row) => clip(row, 0, top));
    const text = plot(values, {
      min: 0,
      max: top,
      height: top,
      offset: 1,
      format: () => " ",
      symbols,
    });
    const start = run[0]?.column ?? 0;
    text.split("\n").forEach((line, fromTop) => {
      [...line].slice(1).forEach((sign, i) => {
        const row = canvas[top - fromTop];
        if (row !== undefined && sign !== " ") row[start + i] = sign;
      });
    });
  }
};

const spanOf = (xs: readonly number[], axis: "dates" | "meter"): Span => {
  const { from, to } = extent(xs);
  const least = axis === "dates" ? 0.5 : 2;
  const missing = Math.max(0, least - (to - from)) / 2;
  return { from: from - missing, to: to + missing };
};

const valueScale = ({ low, high }: ChartOptions, ys: readonly number[], height: number): Scale => {
  const { from, to } = extent(ys);
  const bottom = low ?? Math.min(high ?? from, from);
  return scaleOf(bottom, high ?? Math.max(bottom, to), height);
};

const drawMarkers = (canvas: Canvas, curves: readonly (readonly Spot[])[], signs: Signs): Set<string> => {
  const top = canvas.length - 1;
  const owners = new Map<string, number>();
  const used = new Set<string>();
  curves.forEach((spots, owner) => {
    for (const { column, row } of spots) {
      if (row === undefined) continue;
      const nearest = Math.round(row);
      const shown = clip(nearest, 0, top);
      const place = `${String(shown)}:${String(column)}`;
      const own = signs.markers[owner] ?? "";
      const met = (owners.get(place) ?? owner) === owner ? own : signs.both;
      const sign = nearest > top ? signs.above : nearest < 0 ? signs.below : met;
      owners.set(place, owner);
      used.add(sign);
      const line = canvas[shown];
      if (line !== undefined) line[column] = sign;
    }
  });
  return used;
};

/** Lines of a chart, each at most `width` columns: values with labels at the left, true-to-time axis below, marks,
 *  and a legend in words; nothing hangs on colour.
 *  @throws RangeError for a height, width, number of series or scale outside its range */
export const chart = (options: ChartOptions): readonly string[] => {
  check(options);
  const { series, marks = [], axis = "dates", unit, height = 12, width, unicode } = options;
  const signs = unicode ? drawn : typed;
  const onAxis = ({ x }: { readonly x: number }): boolean => Math.abs(x) <= bound;
  const lists = series.map(({ points }) => points.filter(onAxis).toSorted((a, b) => a.x - b.x));
  const points = lists.flat();
  const ys = points.flatMap(({ y }) => (known(y) ? [clip(y, -bound, bound)] : []));
  if (ys.length === 0) return ["No chart: nothing was measured here."];

  const events = marks.filter(onAxis).toSorted((a, b) => a.x - b.x);
  const scale = valueScale(options, ys, height);
  const decimals = decimalsOf(scale.step);
  const every = height > 10 ? 2 : 1;
  const labels = Array.from({ length: height }, (_, row) =>
    row % every === 0 ? ((scale.first + row) * scale.step).toFixed(decimals) : "",
  );
  const above = unit === undefined ? [] : [clean(unit, 12)];
  const labelWidth = Math.max(4, ...above.map(displayWidth), ...labels.map((label) => label.length));
  const columns = width - labelWidth - 2;
  const span = spanOf(
    [...points, ...events].map(({ x }) => x),
    axis,
  );
  const canvas: Canvas = Array.from({ length: height }, () => Array.from({ length: columns }, () => " "));
  const curves = lists.map((list) =>
    list.map(({ x, y }) => ({
      column: columnOf(x, span, columns),
      row: known(y) ? clip(y, -bound, bound) / scale.step - scale.first : undefined,
    })),
  );
  curves
    .toReversed()
    .forEach((spots, i) => drawLine(canvas, spots, signs.lines[i === curves.length - 1 ? 0 : 1] ?? []));
  const used = drawMarkers(canvas, curves, signs);

  const given = options.xTicks?.filter(({ x }) => x >= span.from && x <= span.to);
  const ticks = given ?? (axis === "dates" ? dateTicks : meterTicks)(span.from, span.to, columns);
  const [upright, labelled, corner, level, tick] = signs.axis;
  const left = " ".repeat(labelWidth + 2);
  const plotted = canvas.map((line, row) => {
    const label = labels[row] ?? "";
    return `${padStart(label, labelWidth)} ${label === "" ? upright : labelled}${line.join("")}`.trimEnd();
  });
  const happened = axisMarks(events, span, columns);
  return [
    ...above.map((text) => padStart(text, labelWidth)),
    ...plotted.toReversed(),
    `${" ".repeat(labelWidth + 1)}${corner}${axisLine(ticks, span, columns, level, tick)}`,
    left + axisLabels(ticks, span, columns),
    ...(events.length === 0 ? [] : [left + happened.line]),
    ...wrapText(
      legend(
        series.map(({ name }) => name),
        used,
        signs,
      ),
      width,
      left,
    ),
    ...(events.length === 0 ? [] : wrapText(happened.key, width, left)),
  ];
};
