// Sentences about one cylinder's course and its rate.

import type { CylinderHistory, KindHistory } from "@sealtrend/core";
import {
  carryingPlaces,
  cylinders as named,
  isBelowTenth,
  isRateShown,
  percent,
  theOthers,
  yearlyText,
} from "../words.ts";

/** `a year`, or `each 1000 h` where the tests span less than a year. */
export const perText = ({ result: { axis } }: KindHistory): string =>
  axis.perYear === undefined ? `each ${String(axis.slopePer)} ${axis.unit}` : "a year";

/** A slope in percent of that, without its sign: to a tenth, and where years are not known with the digits that carry it, for
 *  nobody knows how often 1000 h come. */
export const yearly = (slope: number, kind: KindHistory): string => {
  const part = partOf(slope, kind);
  return kind.result.axis.perYear === undefined ? percent(part, carryingPlaces(part)) : yearlyText(part);
};

/** The same as a part. */
const partOf = (slope: number, kind: KindHistory): number => Math.abs(signedPart(slope, kind));

const signedPart = (slope: number, { result: { axis } }: KindHistory): number =>
  Math.expm1(slope * (axis.perYear ?? 1));

/** Whether nothing is left of a slope in tenths of a percent a year: twenty years of it are 2 %, about what one reading is off
 *  by (judgement). What is called steady may lose that much each year.  @source handbook/statistics.md L.9 (2 %) */
export const isTooLittle = (slope: number, kind: KindHistory): boolean =>
  kind.result.axis.perYear !== undefined && isBelowTenth(partOf(slope, kind));

export const othersOf = ({ result }: KindHistory): string => theOthers(result.cylinders.length);

export const againstText = ({ result }: KindHistory): string =>
  result.cylinders.length === 2 ? "Against each other" : "Against one another";

/** What a cylinder did that is neither steady nor too short to tell. */
export const courseSentence = (cylinder: CylinderHistory, kind: KindHistory): string => {
  const { course, label, alarms, shape, early } = cylinder;
  const who = named([label]);
  if (alarms.includes("no-compression")) return `${who} held nothing at the last test.`;
  const rate = rateOf(cylinder, kind);
  const isLittle = rate !== undefined && isTooLittle(cylinder.theilSen?.slope ?? 0, kind);
  const moving = `${rate === undefined ? "" : `: ${rate}`} against ${othersOf(kind)}${sinceText(cylinder, kind)}`;
  const little = isLittle ? ", too little to matter" : "";
  const [size = 0, firstAfter] =
    early === undefined || shape?.shape === "sudden"
      ? [shape?.fall, shape?.firstAfter]
      : [early.change, early.test];
  const when = firstAfter === undefined ? "" : betweenText(cylinder, kind, firstAfter);
  if (course === "falling") return `${who} is falling${moving}${shapeText(cylinder)}${little}.`;
  if (course === "rising" && shape?.shape === "sudden" && firstAfter !== undefined)
    return `${who} rose about ${percent(Math.expm1(Math.abs(size)))} against ${othersOf(kind)}${when}: was there a service that is not written down?`;
  if (course === "rising")
    return `${who} is rising${moving}${little}. Carbon, oil in the chamber or rings bedding in raise a reading; it is no sign of health.`;
  if (course === "stepped-up")
    return `${who} stepped up by about ${percent(Math.expm1(Math.abs(size)))}${when}: was there a service that is not written down?`;
  if (cylinder.cameBack !== undefined) return backSentence(cylinder, kind);
  const { lowAgain } = cylinder;
  const down = `${who} stepped down by about ${percent(-Math.expm1(-Math.abs(size)))}${when}`;
  if (lowAgain !== undefined)
    return `${down}, read as before in between, and lower again from ${dateOf(kind, lowAgain)} on.`;
  return cylinder.wentOn === undefined
    ? `${down}.${seenText(cylinder, kind)}${partText(cylinder, kind)}`
    : `${down}${wentOnText(cylinder, cylinder.wentOn, kind)}.`;
};

/** Two low readings that did not stay: read wrongly, or mended without a word. */
const backSentence = (cylinder: CylinderHistory, kind: KindHistory): string => {
  const { early, label, lowAgain, cameBack = 0 } = cylinder;
  const fall = percent(-Math.expm1(-Math.abs(early?.change ?? 0)));
  const again =
    lowAgain === undefined ? "" : `, after a while as before again from ${dateOf(kind, lowAgain)} on`;
  return `${named([label])} read about ${fall} lower from ${dateOf(kind, early?.test ?? 0)} on${again}, and came back on ${dateOf(kind, cameBack)}: were the low ones read right, or was there a service that is not written down?`;
};

/** How far a step at the last reading is borne out. */
const seenText = ({ shape, ratios }: CylinderHistory, kind: KindHistory): string => {
  if (shape?.seenIn === "last-reading-only")
    return " Only the last reading shows it: a second one, or another kind of test, has to bear it out.";
  const before = ratios.findLastIndex((ratio, i) => ratio !== undefined && i < (shape?.firstAfter ?? 0));
  const ratio = ratios[before];
  return shape?.seenIn === "last-two" && ratio !== undefined && ratio < 0
    ? ` It was low before that: ${percent(-Math.expm1(ratio))} under ${othersOf(kind)} on ${dateOf(kind, before)}.`
    : "";
};

/** Part of an early fall by which one has to read higher since for that to be told; judgement. */
const regained = 1 / 3;

/** Higher since, and yet not as before. */
const partText = ({ early, shape, ratios }: CylinderHistory, kind: KindHistory): string => {
  if (early === undefined || shape?.shape === "sudden") return "";
  const place = ratios.findLastIndex(
    (ratio, i) => ratio !== undefined && kind.result.tests[i]?.use === "full",
  );
  const [last = 0, first = 0] = [ratios[place], ratios[early.test]];
  if (last >= 0 || last - first < Math.abs(early.change) * regained) return "";
  return ` It read ${percent(-Math.expm1(last))} under ${othersOf(kind)} on ${dateOf(kind, place)}.`;
};

/** Lower again since: then no step is claimed to be all. */
const wentOnText = ({ ratios }: CylinderHistory, place: number, kind: KindHistory): string => {
  const down = percent(-Math.expm1(ratios[place] ?? 0));
  return `, and read ${down} under ${othersOf(kind)} on ${dateOf(kind, place)}: a step or a steady loss, that cannot be told yet`;
};

/** A single low reading against the earlier ones: no alarm, only a wish to see it again. */
export const dropSentence = (cylinder: CylinderHistory, kind: KindHistory): string => {
  const { label, change, course } = cylinder;
  const size = percent(-Math.expm1(change?.change ?? 0));
  const other = kind.result.cylinders.find((one) => one !== cylinder)?.label ?? "";
  const steady = course === "steady" ? " Until then it was steady." : "";
  // of two, one test cannot tell, whatever the engine as a whole did over the years
  return kind.result.cylinders.length === 2
    ? `Cylinder ${label} has dropped about ${size} against ${other} since the earlier tests, or ${other} has gained: read both again before you believe it.`
    : `${named([label])} has dropped about ${size} against ${othersOf(kind)} since the earlier tests: read it again before you believe it.${steady}`;
};

/** Whether the last test alone speaks against a cylinder. */
export const hasDropped = ({ alarms, change }: CylinderHistory): boolean =>
  alarms.length === 0 && change?.flagged === true && change.change < 0;

/** Two cylinders of which one has lost or the other has gained. */
export const pairSentence = (kind: KindHistory): string => {
  const [low, high] = kind.result.cylinders.toSorted((a, b) => lean(a) - lean(b));
  if (low === undefined || high === undefined) return "";
  const { early, cameBack } = low;
  if (early !== undefined && cameBack !== undefined)
    return `Cylinder ${low.label} read about ${percent(-Math.expm1(early.change))} lower against ${high.label} from ${dateOf(kind, early.test)} on, or ${high.label} read higher, and that was over on ${dateOf(kind, cameBack)}: two cylinders cannot tell which.`;
  const rate = rateOf(low, kind);
  return `Cylinder ${low.label} has lost against ${high.label}, or ${high.label} has gained${rate === undefined ? "" : `, ${rate}`}: two cylinders cannot tell which.`;
};

/** Below 0 for the one that lost. */
const lean = ({ theilSen, early, change, cameBack }: CylinderHistory): number => {
  if (cameBack !== undefined) return -Infinity;
  return theilSen?.slope ?? (early === undefined ? change?.change : early.change) ?? 0;
};

const sinceText = ({ since }: CylinderHistory, kind: KindHistory): string =>
  since === undefined ? "" : ` since ${dateOf(kind, since).slice(0, 4)}`;

const shapeText = ({ shape }: CylinderHistory): string =>
  shape?.shape === "gradual"
    ? ", gradually"
    : shape?.shape === "cannot-tell"
      ? "; suddenly or gradually cannot be told yet"
      : "";

/** `1.0 % a year (0.9 to 1.1 %)`, by the line through all pairs; undefined where the interval touches 0 or it went in
 *  one step, since a rate would claim more than that. */
const rateOf = (cylinder: CylinderHistory, kind: KindHistory): string | undefined => {
  const { theilSen: { slope, low, high } = {} } = cylinder;
  if (slope === undefined || !hasRate(cylinder, kind)) return undefined;
  const ends = [low, high].flatMap((end) => end ?? []);
  const [near = slope, far = slope] = ends.toSorted((a, b) => Math.abs(a) - Math.abs(b));
  const [rate, from, to] = [slope, near, far].map((one) => yearly(one, kind));
  const between = from === to ? "" : ` (${from?.replace(" %", "") ?? ""} to ${to ?? ""})`;
  return `${rate ?? ""} ${perText(kind)}${isTooLittle(slope, kind) ? "" : between}`;
};

/** Whether a rate says what the years show, and no step. */
export const hasRate = ({ theilSen, shape }: CylinderHistory, kind: KindHistory): boolean => {
  if (theilSen?.low === undefined || theilSen.high === undefined || shape?.shape === "sudden") return false;
  const { slope, low, high } = theilSen;
  return isRateShown(signedPart(slope, kind), [signedPart(low, kind), signedPart(high, kind)]);
};

/** The date of a test, by its place in the result. */
export const dateOf = ({ result, counted }: KindHistory, place: number): string => {
  const id = result.tests[place]?.ids[0];
  return counted.find(({ test }) => test.id === id)?.test.date ?? "";
};

/** ` between 2016-05-03 and 2017-05-03`: from the cylinder's reading before the one at `place`; when in between nobody
 *  knows. */
const betweenText = ({ ratios }: CylinderHistory, kind: KindHistory, place: number): string => {
  const before = ratios.findLastIndex(
    (ratio, i) => i < place && ratio !== undefined && kind.result.tests[i]?.use === "full",
  );
  return ` between ${dateOf(kind, before)} and ${dateOf(kind, place)}`;
};

/** ` at sea level`, ` at 260 rpm` or both, where height or cranking speed stand in the number. */
export const heldAt = ({ kind, result, counted, speeds }: KindHistory, place: number): string => {
  const id = result.tests[place]?.ids[0];
  const own = counted.findIndex(({ test }) => test.id === id);
  const altitude = counted[own]?.test.conditions.altitude ?? 0;
  const { counts, speed } = speeds[own] ?? {};
  const moved =
    counts === "full" && speed?.to !== undefined && speed.from?.toFixed(0) !== speed.to.toFixed(0)
      ? [`${speed.to.toFixed(0)} rpm`]
      : [];
  const said = [...(altitude === 0 || kind !== "dry" ? [] : ["sea level"]), ...moved];
  return said.length === 0 ? "" : ` at ${said.join(" and ")}`;
};
