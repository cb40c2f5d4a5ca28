// The detail behind the screen of `history`: what each word rests on.

import {
  type CylinderHistory,
  type HistoryAssessment,
  type KindHistory,
  type LinkedGauges,
  linkedGauges,
} from "@sealtrend/core/parts";
import { allText } from "./history-chance.ts";
import { isAlone } from "./history-numbers.ts";
import { wholeSentences } from "./history-plan.ts";
import { dateOf, perText } from "./history-sentences.ts";
import { counted, fixed, joined, percent, sentence, signedPercent } from "../words.ts";

/** Paragraphs, not wrapped. */
export const historyWhy = (
  { record, repeatability }: HistoryAssessment,
  kind: KindHistory,
  today: string,
): readonly string[] => {
  const { result } = kind;
  const { kind: axis, unit } = result.axis;
  return [
    `Axis: ${axis === "dates" ? "dates" : `the meter, in ${unit}`}.${isAlone(kind) ? "" : ` One reading against the others scatters by about ${percent(result.scatter.s, 1)}.`}`,
    ...(kind.kind === "dry" ? repeatsText(repeatability) : []),
    ...allText(kind, today),
    ...wholeSentences(kind),
    ...speedText(kind),
    ...linkedGauges(record.gauges, [kind]).map(linkText),
    ...(isAlone(kind) ? aloneText(kind) : result.cylinders.map((cylinder) => cylinderText(cylinder, kind))),
  ];
};

/** `Your own repeats lie 1.2 % apart (0.8 to 2.3 %), from 8 beyond the first of each.` */
const repeatsText = ({
  s,
  df,
  interval,
  limit,
  trend,
}: HistoryAssessment["repeatability"]): readonly string[] => {
  if (interval === undefined) return [];
  const range = `${percent(interval.low, 1).replace(" %", "")} to ${percent(interval.high, 1)}, 19 chances in 20`;
  return [
    `Your own repeats scatter by ${percent(s, 1)} (${range}), by ${counted(df, "repeat")} beyond the first of each. Two that lie more than ${percent(limit, 1)} apart happen once in 20: read again.${trendText(trend)}`,
  ];
};

const trendText = (trend: HistoryAssessment["repeatability"]["trend"]): string =>
  trend === "none"
    ? ""
    : ` They ${trend === "up" ? "rise" : "fall"} from the first to the last in every cylinder, as oil on the rings or a warming engine makes them: wait between them, or count them as one.`;

/** `black counts as red: its readings are divided by 1.031 (± 0.6 %, compared 2026-05-03).` */
const linkText = ({ gauge, counts, factor, uncertainty, dates }: LinkedGauges): string =>
  `${gauge} counts as ${counts}: what it reads is divided by ${fixed(factor, 3)} (± ${percent(uncertainty, 1)}, compared ${joined(dates)}).`;

/** At which speed the readings stand, or why at that of each day. */
const speedText = ({ counted: tests, speeds }: KindHistory): readonly string[] => {
  const full = speeds.filter(({ counts }) => counts === "full");
  const to = full.find(({ speed }) => speed?.to !== undefined)?.speed?.to;
  const refused = tests.flatMap(({ test, use }, i) => {
    const reason = speeds[i]?.speed?.refused;
    return use === "full" && reason !== undefined ? [`${test.id}: ${reason.text}`] : [];
  });
  if (full.length === speeds.length && to !== undefined)
    return [`All readings are brought to ${to.toFixed(0)} rpm.`];
  const some = speeds.some(({ speed }) => speed?.from !== undefined);
  if (!some) return [];
  const [first] = refused;
  const where =
    to === undefined
      ? "Readings stand at the cranking speed of each day, not at one"
      : `Readings are brought to ${to.toFixed(0)} rpm in ${counted(full.length, "test")} of ${String(speeds.length)}`;
  const rest = refused.length > 1 ? `; and ${counted(refused.length - 1, "test")} more` : "";
  return [first === undefined ? `${where}.` : `${where} (${first}${rest}).`];
};

const alarmWords = {
  "no-compression": "the last reading held nothing",
  "early-change": "low twice running against the first tests",
  "two-below-baseline": "both last readings below the first three",
  slope: "slope beyond chance",
  "engine-wide": "the engine loses as a whole",
} as const;

/** `Five tests since 2011-01-01, -0.21 % a year (-3.10 to +2.77 %, 90 % sure).` */
const aloneText = (kind: KindHistory): readonly string[] => {
  const { since, count, trend } = kind.result.common;
  const { slope, lossBound, lossLeast } = trend ?? {};
  const number = (value: number): string =>
    signedPercent(Math.expm1(value * (kind.result.axis.perYear ?? 1)), 2);
  const interval =
    lossBound === undefined || lossLeast === undefined
      ? ""
      : ` (${number(-lossBound)} to ${number(-lossLeast)} %, 90 % sure)`;
  // two tests are a change between them, not a course
  const rate =
    slope === undefined || interval === "" ? "" : `, ${number(slope)} % ${perText(kind)}${interval}`;
  return [`${sentence(counted(count, "test"))} since ${dateOf(kind, since)}${rate}.`];
};

/** `, -0.31 % each 1000 h`, beside a rate a year. */
const meterText = (slope: number, { result: { axis } }: KindHistory): string =>
  axis.kind === "dates" || axis.perYear === undefined
    ? ""
    : `, ${signedPercent(Math.expm1(slope), 2)} % each 1000 ${axis.unit}`;

const cylinderText = (cylinder: CylinderHistory, kind: KindHistory): string => {
  const { label, count, since, theilSen, alarms, lossBound } = cylinder;
  const scale = kind.result.axis.perYear ?? 1;
  const number = (slope: number): string => signedPercent(Math.expm1(slope * scale), 2);
  const from = since === undefined || count === 0 ? "" : ` since ${dateOf(kind, since)}`;
  const { slope, low, high, coverage } = theilSen ?? {};
  const interval =
    low === undefined || high === undefined || coverage === undefined
      ? ""
      : ` (${number(low)} to ${number(high)} %, ${percent(coverage, 1)} sure)`;
  const rate =
    slope === undefined ? "" : `, ${number(slope)} % ${perText(kind)}${interval}${meterText(slope, kind)}`;
  const bound =
    lossBound === undefined
      ? ""
      : `; at most ${percent(Math.max(0, -Math.expm1(-lossBound * scale)), 2)} lost ${perText(kind)}`;
  const rules = alarms.map((rule) => alarmWords[rule]);
  return `${label}: ${counted(count, "test")}${from}${rate}${bound}; ${rules.length === 0 ? "no alarm" : `alarm: ${rules.join(", ")}`}.`;
};
