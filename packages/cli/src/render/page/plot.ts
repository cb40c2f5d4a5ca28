// Numbers of a drawing: where a value stands, a line through points, the marks of gauges. The only importer of d3-scale and
// d3-shape.

import { scaleLinear } from "d3-scale";
import {
  line,
  symbol,
  symbolCircle,
  symbolCross,
  symbolDiamond,
  symbolSquare,
  symbolStar,
  symbolTriangle,
  symbolWye,
} from "d3-shape";

/** One decimal of a drawing unit: a quarter of a millimetre on paper, so that a page stays small and the same every time. */
export const px = (value: number): string => String(Number(value.toFixed(1)));

export interface Axis {
  place(value: number): number;
  readonly low: number;
  readonly high: number;
  /** Round values, about so many. */
  ticks(count: number): readonly number[];
}

/** @param domain - values at the two ends  @param range - places of the two ends */
export const axisOf = (
  domain: readonly [number, number],
  range: readonly [number, number],
  ends: "as-they-are" | "round" = "as-they-are",
): Axis => {
  const exact = scaleLinear(domain, range);
  const scale = ends === "round" ? exact.nice(5) : exact;
  const [low = 0, high = 1] = scale.domain();
  return { place: (value) => scale(value), low, high, ticks: (count) => scale.ticks(count) };
};

export interface PlotPoint {
  readonly x: number;
  /** Absent: a gap. */
  readonly y?: number;
}

/** The path through the points, broken at gaps. */
export const linePath = (points: readonly PlotPoint[]): string =>
  line<PlotPoint>()
    .defined(({ y }) => y !== undefined)
    .x(({ x }) => x)
    .y(({ y = 0 }) => y)
    .digits(1)([...points]) ?? "";

/** A path whose corners are the points: nothing but its marks is drawn. */
export const cornersPath = (points: readonly PlotPoint[]): string =>
  points
    .flatMap(({ x, y }) => (y === undefined ? [] : [`${px(x)},${px(y)}`]))
    .map((corner, i, all) => `${i === 0 ? "M" : "L"}${corner}${all.length === 1 ? "h0" : ""}`)
    .join("");

const shapes = [
  symbolCircle,
  symbolSquare,
  symbolTriangle,
  symbolDiamond,
  symbolStar,
  symbolCross,
  symbolWye,
];

/** So many gauges are told apart. */
export const mostMarks = shapes.length;

/** The outline of a mark about the origin, some 7 units wide. @param place - 0 … mostMarks - 1; any beyond shares the last */
export const markPath = (place: number): string =>
  symbol(shapes[Math.min(place, shapes.length - 1)], place === 0 ? 26 : 24).digits(1)() ?? "";
