// What stands below the table or chart of `history`: services, limits, what would have shown, what does not count.

import {
  type CylinderHistory,
  type KindHistory,
  type NextTest,
  type PressureUnit,
  type TestAssessment,
  dayNumber,
  daysInYear,
} from "@sealtrend/core/parts";
import { chanceSentence } from "./history-chance.ts";
import { leastLossSentence } from "./history-engine.ts";
import { gaugeSentences } from "./history-gauge.ts";
import { isEither } from "./history-headline.ts";
import { crankedSentence } from "./history-speed.ts";
import { heldNothing, nothingSentences } from "./history-nothing.ts";
import {
  isUnderRatio,
  limitSentence,
  minimumSentence,
  reachesMinimum,
  underSentence,
} from "./history-outlook.ts";
import { dateOf } from "./history-sentences.ts";
import { serviceSentences } from "./history-services.ts";
import { testerSentences } from "./history-testers.ts";
import { prose } from "../prose.ts";
import { count, joined } from "../words.ts";

export interface HistoryOptions {
  readonly width: number;
  readonly unicode: boolean;
  readonly today: string;
  readonly unit: PressureUnit;
  readonly detail: "short" | "why";
  /** The test that `show` tells of; absent where there is none. */
  readonly newest?: TestAssessment;
  /** What `show` names first of the newest test. */
  readonly step?: Pick<NextTest, "text" | "minutes">;
}

/** @param shown - the cylinders that the screen is about */
export const afterLines = (
  kind: KindHistory,
  shown: readonly CylinderHistory[],
  options: HistoryOptions,
): string[] => {
  const { width, today } = options;
  const limits = shown
    .filter((cylinder) => cylinder.course === "falling" && !isEither(cylinder) && !isUnderRatio(cylinder))
    .flatMap((cylinder) => limitSentence(cylinder, kind, today) ?? []);
  const minimum = minimumSentence(shown, kind, options);
  const foretold = limits.length > 0 || shown.some(reachesMinimum);
  const chance = chanceSentence(shown, kind, { today, limits: foretold ? "named" : "new" });
  const wear = "Wear only: a valve, a gasket or a ring can fail without notice.";
  const labels = shown.map(({ label }) => label);
  const sentences = [
    ...nothingSentences(shown.filter(notYetNamed(kind)), kind),
    ...kind.result.services.flatMap((service) =>
      serviceSentences(service, kind, { shown: labels, unit: options.unit }),
    ),
    ...testerSentences(kind, labels),
    ...gaugeSentences(shown, kind),
    ...underSentence(shown, kind),
    ...limits,
    ...(minimum === undefined ? [] : [minimum]),
    ...(chance ?? (foretold ? [wear] : [])),
    ...(shown.length === kind.result.cylinders.length
      ? [...leastLossSentence(kind), ...crankedSentence(kind)]
      : []),
    ...lastReadSentence(shown, kind),
    ...unusedSentence(kind),
  ];
  return sentences.length === 0 ? [] : ["", ...sentences.flatMap((text) => prose(text, width))];
};

/** The first sentence names a cylinder that held nothing at the last test; what it held before is for here. */
const notYetNamed =
  (kind: KindHistory) =>
  (cylinder: CylinderHistory): boolean => {
    const full = kind.result.tests.filter(({ use }) => use === "full").length;
    return full < 2 || !cylinder.alarms.includes("no-compression") || heldNothing(cylinder, kind).length > 1;
  };

const useWords = { full: "", "run-in": "running in", seller: "seller's sheet", "set-aside": "void" } as const;

const unusedSentence = ({ counted }: KindHistory): string[] => {
  const unused = counted
    .filter(({ use }) => use !== "full")
    .map(({ test, use }) => `${test.id} (${test.setAside === undefined ? useWords[use] : "set aside"})`);
  return unused.length === 0 ? [] : [`Shown but not counted: ${unused.join(", ")}.`];
};

/** Cylinders without a reading in the last test that counts: what is said of them is of then. */
const lastReadSentence = (shown: readonly CylinderHistory[], kind: KindHistory): string[] => {
  const last = kind.result.tests.findLastIndex(({ use }) => use === "full");
  const missed = shown.flatMap(({ label, levels, noCompression }) => {
    const at = levels.findLastIndex((ln, i) => ln !== undefined && kind.result.tests[i]?.use === "full");
    return at === -1 || at === last || noCompression.includes(last)
      ? []
      : [`${label} (last ${dateOf(kind, at)})`];
  });
  return missed.length === 0 ? [] : [`Without a reading that counts in the last test: ${joined(missed)}.`];
};

/** From two years on: what was measured then need not hold today. */
export const ageSentence = ({ counted }: KindHistory, today: string): string[] => {
  const last = counted.at(-1)?.test.date ?? today;
  const years = (dayNumber(today) - dayNumber(last)) / daysInYear;
  return years < 2 ? [] : [`The last test is ${count(Math.floor(years))} years old.`];
};
