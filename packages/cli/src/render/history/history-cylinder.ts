// `history --cylinder`: one cylinder on one screen, its sentence, its chart, and what can be foreseen of it.

import type { CylinderHistory, HistoryAssessment, KindHistory } from "@sealtrend/core";
import { historyChart } from "./history-chart.ts";
import { singleSentence } from "./history-engine.ts";
import { hasMoved, isEither, isMirror } from "./history-headline.ts";
import { isAlone } from "./history-numbers.ts";
import { type HistoryOptions, afterLines, ageSentence } from "./history-after.ts";
import {
  courseSentence,
  dropSentence,
  hasDropped,
  othersOf,
  pairSentence,
  perText,
} from "./history-sentences.ts";
import { prose } from "../prose.ts";
import { percent, signedPercent } from "../words.ts";

/** Lines without line ends. */
export const cylinderScreen = (
  { record }: HistoryAssessment,
  kind: KindHistory,
  cylinder: CylinderHistory,
  options: HistoryOptions,
): readonly string[] => [
  ...prose([sentenceOf(cylinder, kind), ...ageSentence(kind, options.today)].join(" "), options.width),
  ...(kind.result.tests.length === 1 ? [] : ["", ...historyChart(record, kind, cylinder, options)]),
  ...afterLines(kind, [cylinder], options),
];

/** ` (-0.6 to +0.5 % a year)`: where its slope lies, 19 chances in 20. */
const rateText = ({ theilSen }: CylinderHistory, kind: KindHistory): string => {
  const { low, high } = theilSen ?? {};
  if (low === undefined || high === undefined) return "";
  const scale = kind.result.axis.perYear ?? 1;
  const [from = "", to = ""] = [low, high].map((slope) => signedPercent(Math.expm1(slope * scale), 1));
  return ` (${from} to ${to} % ${perText(kind)})`;
};

const sentenceOf = (cylinder: CylinderHistory, kind: KindHistory): string => {
  const { label, course, meanRatio = 0 } = cylinder;
  const full = kind.result.tests.filter(({ use }) => use === "full").length;
  if (full < 2)
    return `Cylinder ${label}: ${full === 1 ? "one test counts" : "no test counts"}, so no course yet.`;
  if (isAlone(kind)) return singleSentence(kind);
  if (isEither(cylinder)) return pairSentence(kind);
  if (isMirror(cylinder, kind)) return `Cylinder ${label} only mirrors the other.`;
  if (hasMoved(cylinder)) return courseSentence(cylinder, kind);
  if (hasDropped(cylinder)) return dropSentence(cylinder, kind);
  const rate = rateText(cylinder, kind);
  if (course === "too-short-to-tell") return `Cylinder ${label}: too short to tell${rate}.`;
  const side = meanRatio < 0 ? "under" : "over";
  return `Cylinder ${label} is steady${rate}, ${percent(Math.abs(Math.expm1(meanRatio)), 1)} ${side} ${othersOf(kind)} on average.`;
};
