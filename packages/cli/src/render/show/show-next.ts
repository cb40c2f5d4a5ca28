// What to do next: what spoils the day first, then the quickest test and the one that tells most.

import {
  type NextTest,
  type TestAssessment,
  beforeOpening,
  howPageOf,
  isWorthExplaining,
  shownTests,
} from "@sealtrend/core/parts";
import { prose } from "../prose.ts";

/** @param steps - `best` where the screen has no room for more than the first and the one that tells most */
export const nextLines = (
  assessment: TestAssessment,
  { width, steps }: { readonly width: number; readonly steps: "all" | "best" },
): readonly string[] => {
  const { record, nextTests } = assessment;
  const all = shownTests(nextTests);
  const shown = steps === "all" ? all : all.filter((next, i) => i === 0 || tellsMost(next));
  if (shown.length === 0) return enoughLines(assessment, width);
  const page = pageOf(assessment, shown);
  const lines = shown.map(
    (next) =>
      `${next.text}, ${String(next.minutes)} minutes${shown.length > 1 && tellsMost(next) ? " (tells most)" : ""}`,
  );
  return [
    "",
    ...lines.flatMap((line, i) => prose(line, width, i === 0 ? "next   " : "       ")),
    ...(page === undefined
      ? []
      : prose(`steps and cautions: sealtrend how ${page} ${record.engine.id}`, width, "       ")),
    ...heldLines(assessment, width),
  ];
};

/** Why the test that tells most as a rule is not among them. */
const heldLines = (assessment: TestAssessment, width: number): readonly string[] => {
  const { leakDownTest } = assessment.record.engine;
  if (leakDownTest?.allowed !== false || !isWorthExplaining(assessment)) return [];
  return prose(
    `no leak-down: not for this engine (${leakDownTest.source ?? "engine.json"})`,
    width,
    "       ",
  );
};

const tellsMost = ({ rank }: NextTest): boolean => rank === "most-telling" || rank === "both";

/** Of one that blows air in, which can hurt; else of the step that tells most; else of the first that has a page. */
const pageOf = (assessment: TestAssessment, shown: readonly NextTest[]): string | undefined => {
  const named = [...shown.filter(tellsMost), ...shown].flatMap((next) => howPageOf(assessment, next) ?? []);
  return named.find((kind) => kind === "leak-down") ?? named[0];
};

/** Of an older test nobody asks what comes next, and one set aside says nothing of it. */
const isAsOfNow = ({ record, test, trust }: TestAssessment): boolean =>
  trust.code === "trusted" && test.setAside === undefined && record.tests.at(-1)?.id === test.id;

/** Knowing enough is an answer, but never from a cranking gauge alone; what is cheaper than the head goes before it. */
const enoughLines = (assessment: TestAssessment, width: number): readonly string[] => {
  const { diagnosis, cylinders, record } = assessment;
  if (diagnosis?.enough !== true || diagnosis.capped || !isWorthExplaining(assessment))
    return isAsOfNow(assessment)
      ? [
          "",
          ...prose(
            `nothing from this test; when to test again: sealtrend decide ${record.engine.id}`,
            width,
            "next   ",
          ),
        ]
      : [];
  const label = cylinders[diagnosis.target]?.label ?? "";
  const spare = beforeOpening(assessment);
  return [
    "",
    ...prose(`no test left would change what to do about ${label}: you know enough`, width, "next   "),
    ...(spare === undefined ? [] : prose(spare.text, width, "       ")),
  ];
};
