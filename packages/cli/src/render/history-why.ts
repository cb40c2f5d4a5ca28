// The detail behind the screen of `history`: what each word rests on.

import type { CylinderHistory, HistoryAssessment, KindHistory } from "@sealtrend/core";
import { dateOf, perText } from "./history-sentences.ts";
import { counted, percent, signedPercent } from "./words.ts";

/** Paragraphs, not wrapped. */
export const historyWhy = ({ repeatability }: HistoryAssessment, kind: KindHistory): readonly string[] => {
  const { result } = kind;
  const { kind: axis, unit } = result.axis;
  const repeats = `From ${String(repeatability.df)} repeats beyond the first`;
  return [
    `Axis: ${axis === "dates" ? "dates" : `the meter, in ${unit}`}. One reading against the others scatters by about ${percent(result.scatter.s, 1)}.`,
    ...(kind.kind === "dry" && repeatability.df > 0
      ? [`${repeats}: one reading repeats within ${percent(repeatability.s, 1)} (standard deviation).`]
      : []),
    ...result.cylinders.map((cylinder) => cylinderText(cylinder, kind)),
  ];
};

const alarmWords = {
  "no-compression": "the last reading held nothing",
  "early-change": "low twice running against the first tests",
  "two-below-baseline": "both last readings below the first three",
  slope: "slope beyond chance",
  "engine-wide": "the engine loses as a whole",
} as const;

const cylinderText = (cylinder: CylinderHistory, kind: KindHistory): string => {
  const { label, count, since, theilSen, alarms, lossBound } = cylinder;
  const scale = kind.result.axis.perYear ?? 1;
  const number = (slope: number): string => signedPercent(Math.expm1(slope * scale), 2);
  const from = since === undefined ? "" : ` since ${dateOf(kind, since)}`;
  const { slope, low, high, coverage } = theilSen ?? {};
  const interval =
    low === undefined || high === undefined || coverage === undefined
      ? ""
      : ` (${number(low)} to ${number(high)} %, ${percent(coverage, 1)} sure)`;
  const rate = slope === undefined ? "" : `, ${number(slope)} % ${perText(kind)}${interval}`;
  const bound =
    lossBound === undefined
      ? ""
      : `; at most ${percent(Math.max(0, -Math.expm1(-lossBound * scale)), 2)} lost ${perText(kind)}`;
  const rules = alarms.map((rule) => alarmWords[rule]);
  return `${label}: ${counted(count, "test")}${from}${rate}${bound}; ${rules.length === 0 ? "no alarm" : `alarm: ${rules.join(", ")}`}.`;
};
