// The table of `history`: a line a cylinder, drawn over time, with its first, its last and its yearly change. Of many
// cylinders only those that stand out get a line.

import type { CylinderHistory, KindHistory, PressureUnit } from "@sealtrend/core";
import { clean } from "../clean.ts";
import { hasMoved, isEither, isLow, isMirror } from "./history-headline.ts";
import { type RowNumbers, isAlone, numbersOf, ownUnit, scaleOf, sparkPoints } from "./history-numbers.ts";
import { hasDropped, heldAt, perText } from "./history-sentences.ts";
import { spark } from "../spark.ts";
import { prose } from "../prose.ts";
import { displayWidth, padEnd, padStart } from "../width.ts";
import { count, theOthers } from "../words.ts";

const numberColumns = 8;
const narrowest = 60;
/** More cylinders than this and the quiet ones share a line. */
const mostRows = 8;

export interface TableOptions {
  readonly width: number;
  readonly unicode: boolean;
  readonly detail: "short" | "why";
  /** Of the readings of a lone cylinder. */
  readonly unit: PressureUnit;
}

/** Lines of the table; below 60 columns a sentence a cylinder. */
export const historyTable = (kind: KindHistory, options: TableOptions): readonly string[] => {
  const { cylinders } = kind.result;
  const shown =
    options.detail === "why" || cylinders.length <= mostRows ? cylinders : standingOut(cylinders, kind);
  const rows = shown.map((cylinder) => ({ cylinder, numbers: numbersOf(cylinder, kind, options.unit) }));
  const lines =
    options.width < Math.max(narrowest, leastWidth(rows, kind))
      ? rows.flatMap((row) => prose(cylinderLine(row, kind), options.width))
      : wideTable(rows, kind, options);
  const quiet = cylinders.filter((cylinder) => !shown.includes(cylinder));
  return quiet.length === 0
    ? lines
    : [...lines, ...prose(quietText(quiet, kind, options.unit), options.width)];
};

interface Row {
  readonly cylinder: CylinderHistory;
  readonly numbers: RowNumbers;
}

/** Those that moved, dropped or stand low; else the lowest, so that an eye has something to hold. */
const standingOut = (
  cylinders: readonly CylinderHistory[],
  { result }: KindHistory,
): readonly CylinderHistory[] => {
  const out = cylinders.filter(
    (one) =>
      hasMoved(one) ||
      hasDropped(one) ||
      isLow(one) ||
      one.leaning === "down" ||
      one.noCompression.some((place) => result.tests[place]?.use !== "set-aside"),
  );
  if (out.length > 0) return out;
  return cylinders.toSorted((a, b) => (a.meanRatio ?? 0) - (b.meanRatio ?? 0)).slice(0, 1);
};

/** `the other 27: steady, -1.3 to 2.0 % at last`. */
const quietText = (quiet: readonly CylinderHistory[], kind: KindHistory, pressure: PressureUnit): string => {
  const lasts = quiet
    .map((cylinder) => numbersOf(cylinder, kind, pressure).last)
    .filter((last) => Number.isFinite(Number(last)))
    .toSorted((a, b) => Number(a) - Number(b));
  const [least] = lasts;
  const most = lasts.at(-1);
  const words = ["steady", "too-short-to-tell"].flatMap((course) => {
    const labels = quiet.filter((one) => one.course === course);
    const text = course === "steady" ? "steady" : "too short";
    return labels.length === 0
      ? []
      : [labels.length === quiet.length ? text : `${count(labels.length)} ${text}`];
  });
  const range = least === undefined || most === undefined ? "" : `, ${least} to ${most} % at last`;
  return `the other ${count(quiet.length)}: ${words.join(", ")}${range} (a line each: --why)`;
};

const cylinderLine = ({ cylinder, numbers }: Row, kind: KindHistory): string => {
  const { first, last, slope, unit } = numbers;
  const rate = slope === "-" ? "" : `, ${slope} % ${perText(kind)}`;
  const against = isAlone(kind) ? "" : `against ${theOthers(kind.result.cylinders.length)} `;
  return `${cylinder.label}: ${courseText(cylinder, kind)}; ${against}${first}${unit} at first, ${last}${unit} at last${rate}`;
};

const leastColumns = 8;

/** What a line takes beside its drawing: label, three numbers, the course and the gaps between them. */
const besideDrawing = (rows: readonly Row[], kind: KindHistory): number => {
  const labels = Math.max(2, ...rows.map(({ cylinder }) => cylinder.label.length));
  const courses = Math.max(...rows.map(({ cylinder }) => courseText(cylinder, kind).length));
  return labels + 3 * numberColumns + courses + 7;
};

const leastWidth = (rows: readonly Row[], kind: KindHistory): number =>
  besideDrawing(rows, kind) + leastColumns;

const wideTable = (
  rows: readonly Row[],
  kind: KindHistory,
  { width, unicode, unit }: TableOptions,
): string[] => {
  const labels = Math.max(2, ...rows.map(({ cylinder }) => cylinder.label.length));
  const columns = Math.max(leastColumns, Math.min(40, width - besideDrawing(rows, kind)));
  const indent = " ".repeat(labels + 2);
  const per = perText(kind) === "a year" ? "a year" : `/1000 ${kind.result.axis.unit}`;
  const from = kind.start.slice(0, 4);
  const to = (kind.counted.at(-1)?.test.date ?? kind.start).slice(0, 4);
  const years = from === to ? padEnd(from, columns) : `${padEnd(from, columns - 4)}${to}`;
  const head = `${indent}${years}${padStart("first", numberColumns)}${padStart("last", numberColumns)}${padStart(per, numberColumns + 2)}   course`;
  const scale = scaleOf(kind);
  const lines = rows.map(({ cylinder, numbers: { first, last, slope } }) => {
    const line = spark({ points: sparkPoints(cylinder, kind), ...scale, columns, unicode });
    return `${padEnd(cylinder.label, labels)}  ${line}${padStart(first, numberColumns)}${padStart(last, numberColumns)}${padStart(slope, numberColumns + 2)}   ${courseText(cylinder, kind)}`;
  });
  return [head, ...lines, `${indent}${gaugeLine(kind, unit, width - labels - 2)}`];
};

export const courseText = (cylinder: CylinderHistory, kind: KindHistory): string => {
  const { course, leaning, wentOn, cameBack } = cylinder;
  const { cylinders } = kind.result;
  if (cylinders.length === 2 && !cylinders.some(hasMoved) && cylinders.some(hasDropped))
    return "one of the two";
  if (isMirror(cylinder, kind)) return "mirrors the other";
  if (isEither(cylinder)) return "one of the two";
  if (cameBack !== undefined) return "low, and back";
  if (course === "steady" && hasDropped(cylinder)) return "steady, last low";
  if (wentOn !== undefined) return "step or loss";
  if (leaning === "down") return "leaning down";
  return course === "too-short-to-tell" ? "too short" : course.replaceAll("-", " ");
};

/** What the numbers are, and which gauge made them. */
const gaugeLine = (kind: KindHistory, unit: PressureUnit, width: number): string => {
  const { result } = kind;
  const gauges = [...new Set(result.tests.map(({ gauge }) => gauge))];
  const known = gauges.filter((gauge) => gauge !== undefined);
  const unknown = gauges.length > known.length ? " and unknown" : "";
  const against = isAlone(kind)
    ? `${ownUnit(kind, unit)}${heldAt(kind, result.tests.length - 1)}`
    : `% against ${theOthers(result.cylinders.length)}`;
  const text = `${against}; gauge ${known.length === 0 ? "not recorded" : `${known.join(", ")}${unknown}`}`;
  const safe = clean(text);
  return displayWidth(safe) > width ? against : safe;
};
