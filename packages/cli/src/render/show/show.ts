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
import { showRows, standingText } from "./show-rows.ts";
import { speedText } from "./show-speed.ts";
import { whyText } from "./show-why.ts";
import { prose } from "../prose.ts";
import { columns } from "../table.ts";
import { sentence } from "../words.ts";

export interface ShowOptions {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly detail: "short" | "why";
}

/** The whole screen, lines without line ends. */
export const showScreen = (assessment: TestAssessment, options: ShowOptions): readonly string[] => {
  const { width, unit, detail } = options;
  const { record, test } = assessment;
  return [
    ...prose(showHeadline(assessment), width),
    "",
    ...columns({
      head: `${record.engine.id} ${test.id}`,
      labels: record.engine.cylinders,
      rows: showRows(assessment, { unit, width }),
      width,
    }),
    ...paragraph(standingText(assessment, width), width),
    ...paragraph(speedText(assessment, unit), width),
    ...[heardText, leakText, notALeakText, oilText, buildUpText, pairText, levelText, causesText].flatMap(
      (text) => paragraph(text(assessment), width),
    ),
    "",
    ...prose(rulesText(assessment, unit), width),
    ...prose(trustText(assessment, detail), width),
    ...(detail === "why" ? ["", ...whyText(assessment, unit).flatMap((line) => prose(line, width))] : []),
    ...nextLines(assessment, width),
    ...assessment.cautions.slice(0, 1).flatMap((text) => prose(text, width, "CARE   ")),
    ...(record.engine.use === "aircraft"
      ? prose(
          "Airworthiness is a licensed person's call by the maker's limits; this is not the aircraft's log.",
          width,
        )
      : []),
  ].filter((line, i, all) => line !== "" || (all[i - 1] ?? "") !== "");
};

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
const trustText = ({ trust, missing }: TestAssessment, detail: ShowOptions["detail"]): string => {
  const doubts = trust.reasons
    .filter((reason) => !isInHeadline(reason))
    .map(({ text, mend }) => `${text} (${mend})`);
  const doubtful = doubts.length === 0 ? "Doubtful, as said above. " : `Doubtful: ${doubts.join("; ")}. `;
  const said = {
    void: trust.voids === "all" || doubts.length === 0 ? "" : doubtful,
    trusted: "Trusted. ",
    doubtful,
  }[trust.code];
  const shown = detail === "why" ? missing : missing.slice(0, 2);
  const more = missing.length - shown.length;
  const rest = more > 0 ? `; and ${String(more)} more (--why)` : "";
  const gaps = shown.length === 0 ? "" : `Not known: ${shown.join("; ")}${rest}.`;
  return sentence(`${said}${gaps}`.trim());
};
