// The pressure of a cylinder itself, against the maker's minimum. Wear of all cylinders alike shows here and nowhere in
// the contrasts.

import { studentCdf, studentQuantile } from "../statistics/index.ts";
import type { AbsoluteCourse } from "./absolute-course.ts";
import { at } from "./at.ts";
import { chancesOf } from "./chances.ts";
import { ownVariance, sharedRows } from "./covariance.ts";
import { crossingOn } from "./forecast.ts";
import { type DependentPlaces, type GeneralisedLine, dependentPlaces } from "./generalised-line.ts";
import type { HistoryCell } from "./input.ts";
import type { Layout } from "./layout.ts";
import { onAxis } from "./limit-of-cylinder.ts";
import { distinctPlaces } from "./series.ts";

/** The line through the cylinder's own readings in its current epoch, a_t + contrast, with the covariance of the
 *  engine-wide channel for one cylinder read (v_1 = 1) and its check of the assumed sizes; where it meets the minimum as
 *  for any limit. The doubt about the gauge is part of it.
 *  @returns for a cylinder by place, undefined where it was not read in the epoch  @source handbook/statistics.md L.7, C.7 */
export const levelOfCylinder = (
  layout: Layout,
  minimum: number,
): ((cylinder: number) => AbsoluteCourse | undefined) => {
  const placesOfRead = placesByReading(layout);
  return (cylinder) => {
    const read = readOf(layout, cylinder);
    const last = read.at(-1);
    if (last === undefined) return undefined;
    const known = { minimum, last: last.cell.ln, test: last.place };
    const x = read.map((one) => one.x);
    if (read.length < 4 || distinctPlaces(x, 0.02) < 3) return known;
    const line = placesOfRead(read).lineThrough(read.map(({ cell }) => cell.ln));
    return line === undefined ? known : { ...known, ...trendOf(line, layout, { x, minimum }) };
  };
};

/** One reading of a cylinder: in which of the tests that count, and that test's place among all. */
interface Read {
  readonly row: number;
  readonly place: number;
  readonly x: number;
  readonly cell: Extract<HistoryCell, { kind: "read" }>;
}

const readOf = ({ tests, rows, columns, current, x }: Layout, cylinder: number): readonly Read[] => {
  const { from } = at(columns, at(current, cylinder));
  return rows.flatMap((place, row) => {
    const cell = at(at(tests, place).cells, cylinder);
    return place >= from && cell.kind === "read" ? [{ row, place, x: at(x, place), cell }] : [];
  });
};

/** The places of a cylinder's readings with their covariance. Cylinders read in the same tests, as often in each, have one
 *  covariance: as a rule it is worked out once for the whole engine. */
const placesByReading = ({ tests, rows, noise }: Layout): ((read: readonly Read[]) => DependentPlaces) => {
  const shared = rows.map((place) => at(tests, place)).map(sharedRows(noise));
  const known: { readonly read: readonly Read[]; readonly places: DependentPlaces }[] = [];
  return (read) => {
    const found = known.find((one) => isReadAlike(one.read, read));
    if (found !== undefined) return found.places;
    const places = dependentPlaces();
    read.forEach(({ row, place, x, cell }, i) => {
      const all = at(shared, row);
      const own = new Float64Array(i + 1);
      for (let k = 0; k <= i; k += 1) own[k] = at(all, at(read, k).row);
      own[i] = at(own, i) + ownVariance({ ...at(tests, place), cells: [cell] }, noise);
      places.add(x, own);
    });
    known.push({ read, places });
    return places;
  };
};

const isReadAlike = (one: readonly Read[], other: readonly Read[]): boolean =>
  one.length === other.length &&
  one.every(({ row, cell }, i) => row === other[i]?.row && cell.repeats === other[i].cell.repeats);

const trendOf = (
  line: GeneralisedLine,
  { rows, x: axis, slopePer, perYear }: Layout,
  { x, minimum }: { readonly x: readonly number[]; readonly minimum: number },
): Pick<AbsoluteCourse, "trend" | "stays"> => {
  const df = 8 + x.length - 2;
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
  const span = { first: at(x, 0), last: at(x, x.length - 1) };
  const crossing = crossingOn(own, {
    limit: minimum,
    x: span,
    decline: p < 0.05 ? "shown" : "not-shown",
    leastLossShown: studentQuantile(0.95, df) * standardError,
  });
  const now = at(axis, at(rows, rows.length - 1));
  return {
    trend: { slope: line.slope, standardError, df, p, ...onAxis(crossing, slopePer) },
    stays: chancesOf(own, { limit: minimum, x: { ...span, now }, perYear }),
  };
};
