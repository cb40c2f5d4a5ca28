// The page for the own file: everything that is on record of an engine and everything that follows from it, prices and
// private notes included.

import { decisionSection } from "./decision-section.ts";
import { engineSection } from "./engine-section.ts";
import { measuredSection } from "./measured-section.ts";
import { newestSection } from "./newest-section.ts";
import type { PageInput } from "./page-input.ts";
import type { Page, PageSection } from "./page-model.ts";
import { engineTitle, kept, underTitle } from "./page-words.ts";
import { readingsSection } from "./readings-section.ts";
import { changesSection, gaugesSection, notesSection, servicesSection } from "./record-sections.ts";
import { yearsSection } from "./years-section.ts";
import { sentence } from "../words.ts";
import { causesText } from "../show/show-causes.ts";

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
      ...(teardown === undefined ? [] : [measuredSection(input, teardown), workSection(input)]),
      readingsSection(input),
      servicesSection(input),
      notesSection(input),
      changesSection(input),
      gaugesSection(input),
      engineSection(input),
    ],
    foot: [
      "Printed from the owner's own logbook by sealtrend. It holds prices and private notes: for others there are pages without them.",
      ...(record.engine.use === "aircraft"
        ? ["Airworthiness is a licensed person's call by the maker's limits; this is not the aircraft's log."]
        : []),
    ],
  };
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
const workSection = ({ teardown }: PageInput): PageSection => ({
  code: "work",
  heading: "What the figures ask for",
  blocks: [
    {
      kind: "list",
      items: (teardown?.work ?? []).map(({ text, why, caution }) =>
        [sentence(kept(text)), kept(why), ...(caution === undefined ? [] : [`Care: ${caution}`])]
          .filter((part) => part !== "")
          .join(". ")
          .replace(/\.\./g, "."),
      ),
    },
  ],
});
