// The decision as the own file keeps it: the word, why, all evidence with its source, what was not seen, what would flip it.

import type { DecisionAssessment } from "@sealtrend/core";
import type { PageInput } from "./page-input.ts";
import type { PageBlock, PageSection } from "./page-model.ts";
import { left } from "./page-tables.ts";
import { speaksForWear } from "../decide/decide-evidence.ts";
import { flipText, flipsOf } from "../decide/decide-flips.ts";
import { guardTexts } from "../decide/decide-guards.ts";
import { headline } from "../decide/decide-headline.ts";
import { nextLines } from "../decide/decide-next.ts";
import { reasonText } from "../decide/decide-reason.ts";
import { decideWhy } from "../decide/decide-why.ts";

export const decisionSection = (input: PageInput, assessment: DecisionAssessment): PageSection => {
  const { unit } = input;
  const flips = flipsOf(assessment).map((flip) => flipText(flip, assessment, unit));
  const why = decideWhy(assessment, unit).filter((text) => text.trim() !== "");
  return {
    code: "decision",
    heading: "The decision",
    blocks: [
      { kind: "text", role: "lead", text: headline(assessment) },
      { kind: "text", text: reasonText(assessment, unit) },
      ...listed("", guardTexts(assessment)),
      ...evidenceBlocks(input, assessment),
      ...listed("It would turn at:", flips),
      ...listed("", [nextText(assessment)]),
      ...listed("Behind it:", why),
    ],
  };
};

const listed = (name: string, items: readonly string[]): readonly PageBlock[] =>
  items.length === 0
    ? []
    : [...(name === "" ? [] : [{ kind: "text", text: name } as const]), { kind: "list", items }];

/** What to do now and by when, without the marks of the screen. */
const nextText = (assessment: DecisionAssessment): string =>
  nextLines(assessment, 2000)
    .map((line) => line.trim().replace(/\s{2,}/g, " "))
    .join("; ");

/** Four columns of sentences are no table in a message. */
const evidenceBlocks = (
  { form }: Pick<PageInput, "form">,
  { evidence }: DecisionAssessment,
): readonly PageBlock[] => {
  if (evidence.length === 0) return [{ kind: "text", text: "No evidence for or against wear is on record." }];
  const caption =
    "Evidence; what is set aside waits until it was run warm, or gauge, throttle and battery were proved.";
  const rows = evidence.map((row) => ({
    text: row.text,
    speaks: row.use === "set-aside" ? "set aside" : speaksForWear(row) ? "for wear" : "against",
    from: row.from,
    source: row.source.startsWith(row.status) ? row.source : `${row.status}: ${row.source}`,
  }));
  if (form === "text")
    return [
      { kind: "text", text: caption },
      {
        kind: "list",
        items: rows.map(({ text, speaks, from, source }) => `${speaks}: ${text} (${from}; ${source})`),
      },
    ];
  return [
    {
      kind: "table",
      caption,
      columns: ["Found", "Speaks", "From", "Rests on"].map(left),
      rows: rows.map(({ text, speaks, from, source }) => ({ cells: [text, speaks, from, source] })),
    },
  ];
};
