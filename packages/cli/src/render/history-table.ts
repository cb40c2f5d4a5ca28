// The table of `history`: a line a cylinder, drawn over time, with its first, its last and its yearly change.

import type { CylinderHistory, KindHistory } from "@sealtrend/core";
import { clean } from "./clean.ts";
import { isEither, isMirror } from "./history-headline.ts";
import { perText } from "./history-sentences.ts";
import { spark } from "./spark.ts";
import { prose } from "./prose.ts";
import { displayWidth, padEnd, padStart } from "./width.ts";
import { fixed, signedPercent, theOthers } from "./words.ts";

const numberColumns = 8;
const narrowest = 60;

interface TableOptions {
  readonly width: number;
  readonly unicode: boolean;
}

/** Lines of the table; below 60 columns a sentence a cylinder. */
export const historyTable = (kind: KindHistory, options: TableOptions): readonly string[] =>
  options.width < narrowest
    ? kind.result.cylinders.flatMap((cylinder) => prose(cylinderLine(cylinder, kind), options.width))
    : wideTable(kind, options);

const cylinderLine = (cylinder: CylinderHistory, kind: KindHistory): string => {
  const { first, last, slope } = numbersOf(cylinder, kind);
  const rate = slope === "-" ? "" : `, ${slope} % ${perText(kind)}`;
  return `${cylinder.label}: ${courseText(cylinder, kind)}; against ${theOthers(kind.result.cylinders.length)} ${first} % at first, ${last} % at last${rate}`;
};

const wideTable = (kind: KindHistory, { width, unicode }: TableOptions): string[] => {
  const { tests, cylinders } = kind.result;
  const labels = Math.max(2, ...cylinders.map(({ label }) => label.length));
  const courses = Math.max(...cylinders.map((cylinder) => courseText(cylinder, kind).length));
  const columns = Math.max(8, Math.min(40, width - labels - 3 * numberColumns - courses - 8));
  const indent = " ".repeat(labels + 2);
  const per = perText(kind) === "a year" ? "a year" : `/1000 ${kind.result.axis.unit}`;
  const from = kind.start.slice(0, 4);
  const to = (kind.counted.at(-1)?.test.date ?? kind.start).slice(0, 4);
  const years = from === to ? padEnd(from, columns) : `${padEnd(from, columns - 4)}${to}`;
  const head = `${indent}${years}${padStart("first", numberColumns)}${padStart("last", numberColumns)}${padStart(per, numberColumns + 2)}   course`;
  const scale = scaleOf(kind);
  const rows = cylinders.map((cylinder) => {
    const points = tests.map(({ years: x }, i) => ({ x, y: cylinder.ratios[i] }));
    const { first, last, slope } = numbersOf(cylinder, kind);
    const line = spark({ points, ...scale, columns, unicode });
    return `${padEnd(cylinder.label, labels)}  ${line}${padStart(first, numberColumns)}${padStart(last, numberColumns)}${padStart(slope, numberColumns + 2)}   ${courseText(cylinder, kind)}`;
  });
  return [head, ...rows, `${indent}${gaugeLine(kind, width - labels - 2)}`];
};

/** One scale for all cylinders, never finer than 10 % over the whole height: noise shall not look like a course. */
const scaleOf = ({ result: { tests, cylinders } }: KindHistory) => {
  const years = tests.map(({ years: year }) => year);
  const all = cylinders.flatMap(({ ratios }) => ratios.filter((ratio) => ratio !== undefined));
  return {
    from: Math.min(...years),
    to: Math.max(...years),
    low: Math.min(-0.05, ...all),
    high: Math.max(0.05, ...all),
  };
};

/** First and last reading against the others, of the tests that count, and the change. */
const numbersOf = ({ ratios, theilSen }: CylinderHistory, { result }: KindHistory) => {
  const read = ratios.filter((ratio, i) => ratio !== undefined && result.tests[i]?.use === "full");
  const change = (ratio: number | undefined): string =>
    ratio === undefined ? "-" : fixed(Math.expm1(ratio) * 100, 1);
  const scale = result.axis.perYear ?? 1;
  const slope = theilSen === undefined ? "-" : signedPercent(Math.expm1(theilSen.slope * scale), 1);
  return { first: change(read[0]), last: change(read.at(-1)), slope };
};

const courseText = (cylinder: CylinderHistory, kind: KindHistory): string => {
  const { course, leaning } = cylinder;
  if (isMirror(cylinder, kind)) return "mirrors the other";
  if (isEither(cylinder)) return "one of the two";
  const text = course === "too-short-to-tell" ? "too short" : course.replaceAll("-", " ");
  return leaning === "down" ? `${text}, leaning down` : text;
};

/** What the numbers are, and which gauge made them. */
const gaugeLine = ({ result }: KindHistory, width: number): string => {
  const gauges = [...new Set(result.tests.map(({ gauge }) => gauge))];
  const known = gauges.filter((gauge) => gauge !== undefined);
  const unknown = gauges.length > known.length ? " and unknown" : "";
  const against = `% against ${theOthers(result.cylinders.length)}`;
  const text = `${against}; gauge ${known.length === 0 ? "not recorded" : `${known.join(", ")}${unknown}`}`;
  const safe = clean(text);
  return displayWidth(safe) > width ? against : safe;
};
