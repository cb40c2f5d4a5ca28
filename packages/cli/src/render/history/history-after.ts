// What stands below the table or chart of `history`: services, limits, what would have shown, what does not count.

import {
  type CylinderHistory,
  type KindHistory,
  type NextTest,
  type PressureUnit,
  type ServiceResult,
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
import { testerSentences } from "./history-testers.ts";
import { prose } from "../prose.ts";
import { count, cylinders as named, joined, percent, sentence } from "../words.ts";

export interface HistoryOptions {
  readonly width: number;
  readonly unicode: boolean;
  readonly today: string;
  readonly unit: PressureUnit;
  readonly detail: "short" | "why";
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
    ...kind.result.services.flatMap((service) => serviceSentences(service, kind, labels)),
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

const testsText = (n: number, side: "before" | "after"): string =>
  n === 1 ? `test ${side}` : `${count(n)} tests ${side}`;

/** @param shown - labels of the cylinders that the screen is about */
const serviceSentences = (
  { why, against, before, steps }: ServiceResult,
  kind: KindHistory,
  shown: readonly string[],
): string[] => {
  if (against === "nothing")
    return [
      `${sentence(why)} from ${dateOf(kind, before)} on: it reads otherwise, so the leak-down begins anew there and nothing is compared across.`,
    ];
  return steps
    .filter(({ labels }) => labels.some((label) => shown.includes(label)))
    .map(({ labels, step = 0, verdict, before: tests, after, shownFrom }) => {
      const who =
        labels.length === kind.result.cylinders.length && labels.length > 2
          ? `all ${count(labels.length)} cylinders`
          : named(labels).toLowerCase();
      const size = percent(Math.abs(Math.expm1(step)));
      if (verdict === "rose") return sentence(`${why}: ${who} rose ${size}.`);
      // the tests of each side lie years apart, so a slow fall is in the difference too
      if (verdict === "fell")
        return sentence(
          `${why}: ${who} fell ${size} from the ${testsText(tests, "before")} to the ${testsText(after, "after")}; wear of those years is in it.`,
        );
      if (verdict === "cannot-tell")
        return sentence(`${why}: no test ${tests === 0 ? "before" : "after"} it to compare ${who} with.`);
      const least =
        shownFrom === undefined
          ? ""
          : `; a change under ${percent(Math.expm1(shownFrom))} would not have shown`;
      return sentence(`${why}: no change shown in ${who}${least}.`);
    });
};
