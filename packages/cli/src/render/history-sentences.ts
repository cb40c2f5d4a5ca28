// Sentences about one cylinder's course, its rate and where it leads.

import { type CylinderHistory, type KindHistory, placeText } from "@sealtrend/core";
import { cylinders as named, percent, theOthers } from "./words.ts";

/** `a year`, or `each 1000 h` where the tests span less than a year. */
export const perText = ({ result: { axis } }: KindHistory): string =>
  axis.perYear === undefined ? `each ${String(axis.slopePer)} ${axis.unit}` : "a year";

/** A slope in percent of that, without its sign. */
export const yearly = (slope: number, { result: { axis } }: KindHistory): string =>
  percent(Math.abs(Math.expm1(slope * (axis.perYear ?? 1))), 1);

/** What a cylinder did that is neither steady nor too short to tell. */
export const courseSentence = (cylinder: CylinderHistory, kind: KindHistory): string => {
  const { course, label, alarms } = cylinder;
  const who = named([label]);
  if (alarms.includes("no-compression")) return `${who} held nothing at the last test.`;
  if (course === "falling")
    return `${who} is falling: ${rateText(cylinder, kind)} against ${othersOf(kind)}${sinceText(cylinder, kind)}${shapeText(cylinder)}.`;
  if (course === "rising")
    return `${who} is rising: ${rateText(cylinder, kind)} against ${othersOf(kind)}${sinceText(cylinder, kind)}. Carbon, oil in the chamber or rings bedding in raise a reading; it is no sign of health.`;
  const { shape, early } = cylinder;
  const step = shape?.fall ?? Math.abs(early?.change ?? 0);
  const firstAfter = shape?.firstAfter ?? early?.test;
  const when = firstAfter === undefined ? "" : ` at the test of ${dateOf(kind, firstAfter)}`;
  if (course === "stepped-up")
    return `${who} stepped up by about ${percent(Math.expm1(step))}${when}: was there a service that is not written down?`;
  const repeat =
    shape?.seenIn === "last-reading-only"
      ? " Only the last reading shows it: repeat it before you believe it."
      : "";
  return `${who} stepped down by about ${percent(-Math.expm1(-step))}${when}.${repeat}`;
};

const othersOf = ({ result }: KindHistory): string => theOthers(result.cylinders.length);

/** A single low reading against the earlier ones: no alarm, only a wish to see it again. */
export const dropSentence = ({ label, change }: CylinderHistory, kind: KindHistory): string =>
  `${named([label])} has dropped about ${percent(-Math.expm1(change?.change ?? 0))} against ${othersOf(kind)} since the earlier tests: read it again before you believe it.`;

/** Two cylinders of which one has lost or the other has gained. */
export const pairSentence = (kind: KindHistory): string => {
  const [low, high] = kind.result.cylinders.toSorted((a, b) => lean(a) - lean(b));
  if (low === undefined || high === undefined) return "";
  const rate = low.theilSen === undefined ? "" : `, ${rateText(low, kind)}`;
  return `Cylinder ${low.label} has lost against ${high.label}, or ${high.label} has gained${rate}: two cylinders cannot tell which.`;
};

/** Below 0 for the one that lost. */
const lean = ({ theilSen, early, change }: CylinderHistory): number =>
  theilSen?.slope ?? (early === undefined ? change?.change : early.change) ?? 0;

const sinceText = ({ since }: CylinderHistory, kind: KindHistory): string =>
  since === undefined ? "" : ` since ${dateOf(kind, since).slice(0, 4)}`;

const shapeText = ({ shape }: CylinderHistory): string =>
  shape?.shape === "gradual"
    ? ", gradually"
    : shape?.shape === "cannot-tell"
      ? "; suddenly or gradually cannot be told yet"
      : "";

/** `1.0 % a year (0.9 to 1.1 %)`, by the line through all pairs; the interval only where it lies on one side of 0. */
const rateText = ({ theilSen }: CylinderHistory, kind: KindHistory): string => {
  if (theilSen === undefined) return "a rate cannot be given yet";
  const { slope, low, high } = theilSen;
  const ends = [low, high].flatMap((end) => end ?? []);
  const sided = ends.length === 2 && ends.every((end) => end < 0 === slope < 0);
  const [near, far] = ends.toSorted((a, b) => Math.abs(a) - Math.abs(b));
  const range =
    sided && near !== undefined && far !== undefined
      ? ` (${yearly(near, kind).replace(" %", "")} to ${yearly(far, kind)})`
      : "";
  return `${yearly(slope, kind)} ${perText(kind)}${range}`;
};

/** The date of a test, by its place in the result. */
export const dateOf = ({ result, counted }: KindHistory, place: number): string => {
  const id = result.tests[place]?.ids[0];
  return counted.find(({ test }) => test.id === id)?.test.date ?? "";
};

/** What the forecast allows to say of one cylinder; nothing where it has no limit. */
export const limitSentence = (
  { limit, label }: CylinderHistory,
  kind: KindHistory,
  today: string,
): string | undefined => {
  if (limit === undefined) return undefined;
  const text = (x: number): string => {
    const place = placeText(kind, x);
    return typeof place === "number" ? `${place.toFixed(0)} ${kind.result.axis.unit}` : place.slice(0, 7);
  };
  const level = `${limit.value.toFixed(2)} of ${othersOf(kind)}`;
  if (limit.crossing === undefined)
    return limit.notBefore === undefined
      ? undefined
      : `${label} does not reach ${level} before ${text(limit.notBefore)} (9 chances in 10).`;
  const { low, high } = limit;
  const until = high === undefined ? "no end in sight" : text(high);
  const range = low === undefined ? "" : ` (${text(low)} to ${until}, 8 chances in 10)`;
  const place = placeText(kind, limit.crossing);
  return typeof place === "string" && place <= today
    ? `By this line ${label} has reached ${level}${range}.`
    : `At this rate ${label} reaches ${level} about ${text(limit.crossing)}${range}.`;
};
