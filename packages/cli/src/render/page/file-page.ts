// The page for the own file: everything that is on record of an engine and everything that follows from it, prices and
// private notes included.

import type { TeardownAssessment } from "@sealtrend/core";
import { decisionSection } from "./decision-section.ts";
import { engineSection } from "./engine-section.ts";
import { measuredSection } from "./measured-section.ts";
import { newestSection } from "./newest-section.ts";
import type { PageInput } from "./page-input.ts";
import type { Page, PageSection } from "./page-model.ts";
import { engineTitle, kept, underTitle } from "./page-words.ts";
import { readingsSection } from "./readings-section.ts";
import { changesSection, gaugesSection, notesSection, servicesSection } from "./record-sections.ts";
import { workText } from "./work-text.ts";
import { yearsSection } from "./years-section.ts";
import { causesText } from "../show/show-causes.ts";
import { joined } from "../words.ts";

export const filePage = (input: PageInput): Page => {
  const { record, decision, teardown } = input;
  return {
    title: `Engine file: ${engineTitle(record.engine)}`,
    under: underTitle(input),
    sections: [
      ...(decision === undefined ? [] : [decisionSection(input, decision)]),
      newestSection(input),
      ...causesSection(input),
      yearsSection(input),
      ...(teardown === undefined ? [] : [measuredSection(input, teardown, "no"), workSection(teardown.now)]),
      readingsSection(input),
      servicesSection(input),
      notesSection(input),
      changesSection(input),
      gaugesSection(input),
      engineSection(input),
    ],
    foot: [
      `Printed from the owner's own logbook by sealtrend.${privateText(input)}`,
      ...(record.engine.use === "aircraft"
        ? ["Airworthiness is a licensed person's call by the maker's limits; this is not the aircraft's log."]
        : []),
    ],
  };
};

/** Only what is there. */
const privateText = ({ record, fields = [] }: PageInput): string => {
  const { tests, services, notes, measurements } = record;
  const isNoted = [...services, ...notes, ...measurements].some(({ note }) => note !== undefined);
  const held = [
    ...(fields.some(({ name }) => name.startsWith("prices.")) ? ["prices"] : []),
    ...(isNoted || tests.some((test) => test.notes.length > 0) ? ["private notes"] : []),
  ];
  return held.length === 0 ? "" : ` It holds ${joined(held)}: for others there are pages without them.`;
};

const causesSection = ({ newest }: PageInput): readonly PageSection[] => {
  if (newest === undefined) return [];
  const causes = causesText(newest);
  const steps = newest.nextTests.map(({ text, minutes }) => `${text}, ${String(minutes)} minutes`);
  if (causes === "" && steps.length === 0) return [];
  return [
    {
      code: "causes",
      heading: "What it may be, and what to test next",
      blocks: [
        ...(causes === "" ? [] : [{ kind: "text", text: causes } as const]),
        ...(steps.length === 0 ? [] : [{ kind: "list", items: steps } as const]),
        ...newest.cautions.map((text) => ({ kind: "text", text: `Care: ${text}` }) as const),
      ],
    },
  ];
};

/** The work that the figures ask for, in the order of asking. */
const workSection = (teardown: TeardownAssessment): PageSection => ({
  code: "work",
  heading: "What the figures ask for",
  blocks: [
    teardown.work.length === 0
      ? { kind: "text", text: "Nothing, as far as it was measured." }
      : {
          kind: "list",
          items: [
            ...new Set(
              teardown.work.map((line) =>
                [
                  workText(line, teardown),
                  kept(line.why),
                  ...(line.caution === undefined ? [] : [`Care: ${line.caution}`]),
                ]
                  .filter((part) => part !== "")
                  .join(". ")
                  .replace(/([.?])\./g, "$1"),
              ),
            ),
          ],
        },
  ],
});
