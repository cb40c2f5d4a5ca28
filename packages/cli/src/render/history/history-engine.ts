// Sentences of `history` about the engine as a whole: what a look at one cylinder against another cannot show.

import type { KindHistory } from "@sealtrend/core";
import { againstText, isTooLittle, perText, yearly } from "./history-sentences.ts";
import { counted, cylinders as named } from "../words.ts";

export const engineSentence = (kind: KindHistory): string => {
  const { word, trend } = kind.result.common;
  if (word === "no-change-shown") return `The engine as a whole: no change shown (${basisText(kind)}).`;
  if (word === "too-short-to-tell" || trend === undefined) return "The engine as a whole: too short to tell.";
  return `The engine as a whole ${movingText(kind)}.`;
};

/** `is falling: 2.3 % a year, at least 1.8 % (two gauges, ten tests)`; a word that only just passes says so. */
const movingText = (kind: KindHistory): string => {
  const { word, trend } = kind.result.common;
  if (trend === undefined) return "";
  const { slope, p = 0, lossBound = 0, lossLeast = 0 } = trend;
  const little = isTooLittle(slope, kind) ? ", too little to matter" : "";
  const rate = `${yearly(slope, kind)} ${perText(kind)}${little}`;
  const chance = word === "falling" ? p : 1 - p;
  if (chance > barely)
    return `seems to be ${word}: ${rate} (about 1 in ${String(Math.round(1 / chance))} by chance; ${basisText(kind)})`;
  const least = word === "falling" ? -lossLeast : -lossBound;
  const atLeast = isTooLittle(least, kind) ? "" : `, at least ${yearly(least, kind)}`;
  return `is ${word}: ${rate}${atLeast} (${basisText(kind)})`;
};

/** Above it a word that passes at 1 in 20 only just passes; judgement. */
const barely = 0.01;

/** The first sentence of an engine with one cylinder. */
export const singleSentence = (kind: KindHistory): string => {
  const [only] = kind.result.cylinders;
  const { word, trend } = kind.result.common;
  if (only?.alarms.includes("no-compression") === true) return "The cylinder held nothing at the last test.";
  if (word === "falling" || word === "rising") return `The cylinder ${movingText(kind)}.`;
  if (word === "too-short-to-tell")
    return "One cylinder, so nothing to compare it with, and its own history is too short to tell.";
  const bound = Math.max(0, trend?.lossBound ?? 0);
  const most = `${isTooLittle(bound, kind) ? "" : "at most "}${yearly(bound, kind)}`;
  return only?.course === "steady"
    ? `The cylinder is steady: ${most} ${perText(kind)} lost (${basisText(kind)}).`
    : `One cylinder: no change shown, and too little yet to call it steady (${basisText(kind)}).`;
};

const basisText = ({ result }: KindHistory): string => {
  const full = result.tests.filter(({ use }) => use === "full");
  const gauges = new Set(full.map(({ gauge }) => gauge ?? "unknown"));
  const scales = new Set(full.map(({ gauge, countsAs }) => countsAs ?? gauge ?? "unknown"));
  const noun = scales.size === 1 && gauges.size > 1 ? "linked gauge" : "gauge";
  const some = scales.size > 1 && scales.size < gauges.size ? ", some linked" : "";
  const text =
    gauges.has("unknown") && gauges.size === 1
      ? "gauge not recorded"
      : `${counted(gauges.size, noun)}${some}`;
  return `${text}, ${counted(result.common.count, "test")}`;
};

/** One-sided chance below which a decline of one cylinder counts as shown. */
const shownChance = 0.05;

/** `No decline shown`, or which cylinders lean down without an alarm. */
const leaningText = (kind: KindHistory): string => {
  const { cylinders, common } = kind.result;
  const leaning = cylinders.filter(({ pooled }) => pooled !== undefined && pooled.p < shownChance);
  if (leaning.length > 0)
    return `${named(leaning.map(({ label }) => label))} ${leaning.length === 1 ? "leans" : "lean"} down, which chance alone does in one cylinder of 20`;
  const isMoving = common.word === "falling" || common.word === "rising";
  return isMoving ? `${againstText(kind)} no decline shown` : "No decline shown";
};

/** What this history would have shown: the honest side of "nothing shown". */
export const leastLossSentence = (kind: KindHistory): string[] => {
  const { cylinders, common } = kind.result;
  const moved = cylinders.some(({ alarms, change }) => alarms.length > 0 || change?.flagged === true);
  const least = cylinders.flatMap(({ leastLossShown }) => leastLossShown ?? []);
  const per = perText(kind);
  const one = least.length === 0 || moved ? undefined : yearly(-Math.max(...least), kind);
  const known = common.word === "no-change-shown" ? common.trend?.leastLossShown : undefined;
  const isDead = cylinders.length === 1 && cylinders[0]?.course === "stepped-down";
  const whole = known === undefined || isDead ? undefined : yearly(-known, kind);
  if (one === undefined)
    return whole === undefined
      ? []
      : [
          `Of the engine${cylinders.length === 1 ? "" : " as a whole"} a loss of ${whole} ${per} would have shown.`,
        ];
  const all = whole === undefined ? "" : `, ${whole} in all`;
  return [`${leaningText(kind)}; ${one} ${per} in one cylinder${all} would have shown.`];
};
