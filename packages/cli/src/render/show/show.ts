// The screen of `show`: the answer first, then the numbers that carry it under their cylinders, then what to do next.

import type { PressureUnit, TestAssessment } from "@sealtrend/core";
import { ruleLine } from "../rule-words.ts";
import { buildUpText } from "./show-build-up.ts";
import { causesText } from "./show-causes.ts";
import { heardText, levelText, pairText } from "./show-evidence.ts";
import { isInHeadline, showHeadline } from "./show-headline.ts";
import { leakText } from "./show-leak.ts";
import { nextLines } from "./show-next.ts";
import { notALeakText } from "./show-not-a-leak.ts";
import { oilText } from "./show-oil.ts";
import { unexplainedText } from "./show-unexplained.ts";
import { showRows, standingText } from "./show-rows.ts";
import { speedText } from "./show-speed.ts";
import { whyText } from "./show-why.ts";
import { prose } from "../prose.ts";
import { columns } from "../table.ts";
import { counted, joined, sentence } from "../words.ts";

export interface ShowOptions {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly detail: "short" | "why";
  /** Lines that the screen should not exceed. */
  readonly rows: number;
}

/** The whole screen, lines without line ends. Where it would be longer than a screen, less of what is not known is listed:
 *  `--why` holds it all. */
export const showScreen = (assessment: TestAssessment, options: ShowOptions): readonly string[] => {
  const whole = { gaps: assessment.missing.length, steps: "all" } as const;
  if (options.detail === "why") return screenOf(assessment, options, whole);
  const screens = brevities.map((brevity) => screenOf(assessment, options, brevity));
  return screens.find(({ length }) => length <= options.rows) ?? screens.at(-1) ?? [];
};

interface Brevity {
  /** How many things that are not known are named. */
  readonly gaps: number;
  readonly steps: "all" | "best";
}

const brevities: readonly Brevity[] = [
  { gaps: 2, steps: "all" },
  { gaps: 1, steps: "all" },
  { gaps: 0, steps: "all" },
  { gaps: 0, steps: "best" },
];

const screenOf = (
  assessment: TestAssessment,
  options: ShowOptions,
  { gaps, steps }: Brevity,
): readonly string[] => {
  const { width, unit, detail } = options;
  const { record, test } = assessment;
  return [
    ...prose(showHeadline(assessment), width),
    ...paragraph(workAfterText(assessment), width),
    "",
    ...columns({
      head: `${record.engine.id} ${test.id}`,
      labels: record.engine.cylinders,
      rows: showRows(assessment, { unit, width }),
      width,
    }),
    ...paragraph(standingText(assessment, width), width),
    ...paragraph(speedText(assessment, unit), width),
    ...[
      heardText,
      leakText,
      notALeakText,
      oilText,
      buildUpText,
      pairText,
      levelText,
      unexplainedText,
      causesText,
    ].flatMap((text) => paragraph(text(assessment), width)),
    "",
    ...prose(rulesText(assessment, unit), width),
    ...prose(trustText(assessment, gaps), width),
    ...(detail === "why" ? ["", ...whyText(assessment, unit).flatMap((line) => prose(line, width))] : []),
    ...nextLines(assessment, { width, steps }),
    ...assessment.cautions.slice(0, 1).flatMap((text) => prose(text, width, "CARE   ")),
    ...(record.engine.use === "aircraft"
      ? prose(
          "Airworthiness is a licensed person's call by the maker's limits; this is not the aircraft's log.",
          width,
        )
      : []),
  ].filter((line, i, all) => line !== "" || (all[i - 1] ?? "") !== "");
};

/** What was read before the work says nothing of what it renewed. */
const workAfterText = ({ workAfter, cylinders }: TestAssessment): string =>
  workAfter === undefined
    ? ""
    : workAfter.newBaseline.length === cylinders.length
      ? `${sentence(workAfter.what)} on ${workAfter.date} came after this test: it speaks of before.`
      : `${sentence(workAfter.what)} of ${joined(workAfter.newBaseline)} on ${workAfter.date} came after this test: of ${workAfter.newBaseline.length === 1 ? "that" : "those"} it speaks of before.`;

const paragraph = (text: string, width: number): readonly string[] => (text === "" ? [] : prose(text, width));

const rulesText = ({ rules, trust }: TestAssessment, unit: PressureUnit): string =>
  rules
    .filter(
      ({ id, tester }) =>
        trust.code !== "void" || (trust.voids === "leak-down" && id !== "master" && tester === undefined),
    )
    .map((rule) => ruleLine(rule, unit))
    .join(" · ");

/** Reasons that stand in the headline are not said again. */
const trustText = ({ trust, missing }: TestAssessment, gaps: number): string => {
  const doubts = trust.reasons
    .filter((reason) => !isInHeadline(reason))
    .map(({ text, mend }) => `${text} (${mend})`);
  const doubtful = doubts.length === 0 ? "Doubtful, as said above. " : `Doubtful: ${doubts.join("; ")}. `;
  const said = {
    void: trust.voids === "all" || doubts.length === 0 ? "" : doubtful,
    trusted: "Trusted. ",
    doubtful,
  }[trust.code];
  const shown = missing.slice(0, gaps);
  const more = missing.length - shown.length;
  const rest =
    more === 0
      ? []
      : [
          shown.length === 0
            ? `${counted(more, "thing")} that would help (--why)`
            : `and ${String(more)} more (--why)`,
        ];
  const unknown = missing.length === 0 ? "" : `Not known: ${[...shown, ...rest].join("; ")}.`;
  return sentence(`${said}${unknown}`.trim());
};
