// The pressure of a cylinder itself, against the maker's minimum. Wear of all cylinders alike shows here and nowhere in
// the contrasts.

import { studentCdf, studentQuantile } from "../statistics/index.ts";
import type { AbsoluteCourse } from "./absolute-course.ts";
import { at } from "./at.ts";
import { chancesOf } from "./chances.ts";
import { covarianceOf } from "./engine-wide.ts";
import { crossingOn } from "./forecast.ts";
import { generalisedLine } from "./generalised-line.ts";
import type { Layout } from "./layout.ts";
import { onAxis } from "./limit-of-cylinder.ts";
import { distinctPlaces } from "./series.ts";

/** The line through the cylinder's own readings in its current epoch, a_t + contrast, with the covariance of the
 *  engine-wide channel for one cylinder read (v_1 = 1) and its check of the assumed sizes; where it meets the minimum as
 *  for any limit. The doubt about the gauge is part of it.
 *  @returns undefined where it was not read in the epoch  @source handbook/statistics.md L.7, C.7 */
export const levelOfCylinder = (
  { tests, rows, columns, current, x, noise, slopePer, perYear }: Layout,
  cylinder: number,
  minimum: number,
): AbsoluteCourse | undefined => {
  const { from } = at(columns, at(current, cylinder));
  const read = rows.flatMap((place) => {
    const test = at(tests, place);
    const cell = at(test.cells, cylinder);
    return place >= from && cell.kind === "read"
      ? [{ place, x: at(x, place), ln: cell.ln, alone: { ...test, cells: [cell] } }]
      : [];
  });
  const last = read.at(-1);
  if (last === undefined) return undefined;
  const known = { minimum, last: last.ln, test: last.place };
  const places = read.map((one) => one.x);
  if (read.length < 4 || distinctPlaces(places, 0.02) < 3) return known;
  const covariance = covarianceOf(
    read.map(({ alone }) => alone),
    noise,
  );
  const line = generalisedLine(
    places,
    read.map(({ ln }) => ln),
    covariance,
  );
  if (line === undefined) return known;
  const df = 8 + read.length - 2;
  const phi = (8 + line.misfit) / df;
  const standardError = line.standardError * Math.sqrt(phi);
  const p = studentCdf(line.slope / standardError, df);
  const own = {
    meanX: line.meanX,
    meanY: line.level,
    slope: line.slope,
    levelVariance: line.levelError ** 2 * phi,
    slopeVariance: standardError ** 2,
    df,
  };
  const span = { first: at(places, 0), last: last.x };
  const crossing = crossingOn(own, {
    limit: minimum,
    x: span,
    decline: p < 0.05 ? "shown" : "not-shown",
    leastLossShown: studentQuantile(0.95, df) * standardError,
  });
  const now = at(x, at(rows, rows.length - 1));
  return {
    ...known,
    trend: { slope: line.slope, standardError, df, p, ...onAxis(crossing, slopePer) },
    stays: chancesOf(own, { limit: minimum, x: { ...span, now }, perYear }),
  };
};
