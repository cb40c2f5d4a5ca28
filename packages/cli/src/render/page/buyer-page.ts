// The page for a buyer: every reading with its doubt, and no word of what it is worth or what to do. Prices, decisions and
// private notes are not in it.

import type { KindHistory } from "@sealtrend/core";
import { buyerTeardown, crackTexts } from "./buyer-teardown.ts";
import type { PageInput } from "./page-input.ts";
import type { Page, PageSection } from "./page-model.ts";
import { newestSection } from "./newest-section.ts";
import { engineTitle, underTitle } from "./page-words.ts";
import { readingsSection } from "./readings-section.ts";
import { changesSection, gaugesSection, notesSection, servicesSection } from "./record-sections.ts";
import { yearsSection } from "./years-section.ts";
import { ageSentence } from "../history/history-after.ts";
import { joined } from "../words.ts";

export const buyerPage = (input: PageInput): Page => ({
  title: `Compression record: ${engineTitle(input.record.engine)}`,
  under: underTitle(input),
  sections: [
    ...firstSection(input),
    newestSection(input),
    ...(input.teardown === undefined ? [] : [buyerTeardown(input, input.teardown)]),
    yearsSection(input),
    readingsSection(input),
    servicesSection(input),
    gaugesSection(input),
    changesSection(input),
    ...(input.notes === "shown" ? [notesSection(input)] : []),
    notTestedSection(input),
    howToReadSection(input),
  ],
  foot: [
    `Printed from the owner's own logbook by sealtrend${input.notes === "shown" ? "" : "; private notes and prices are left out"}. A record, not an inspection: have the engine looked at before you pay.`,
    ...(input.record.engine.use === "aircraft"
      ? ["Airworthiness is a licensed person's call by the maker's limits; this is not the aircraft's log."]
      : []),
  ],
});

/** What nobody shall overlook: a crack, and that the readings are old. */
const firstSection = (input: PageInput): readonly PageSection[] => {
  const { cranking, leakDown } = input.history;
  const kinds = [cranking, leakDown].flatMap((kind) => kind ?? []);
  // the age of the engine's last test, of whatever kind
  const ages = kinds.map((kind) => ageSentence(kind, input.today));
  const isOld = ages.length > 0 && ages.every((age) => age.length > 0);
  const latest = kinds.toSorted((a, b) => lastDay(b).localeCompare(lastDay(a)))[0];
  const said = [
    ...crackTexts(input),
    ...(isOld && latest !== undefined ? ageSentence(latest, input.today) : []),
  ];
  return said.length === 0
    ? []
    : [
        {
          code: "first",
          heading: "",
          blocks: said.map((text) => ({ kind: "text", role: "lead", text }) as const),
        },
      ];
};

const lastDay = ({ counted }: KindHistory): string => counted.at(-1)?.test.date ?? "";

const kinds = [
  { what: "dry", name: "dry compression" },
  { what: "wet", name: "compression with oil" },
  { what: "leak-down", name: "leak-down" },
] as const;

/** What no page of readings would show by itself: what is not there. */
const notTestedSection = ({ record: { engine, tests } }: PageInput): PageSection => {
  const counted = tests.filter(({ setAside }) => setAside === undefined);
  const rows = counted.flatMap((test) => test.rows);
  const never = kinds.filter(({ what }) => rows.every((row) => row.what !== what)).map(({ name }) => name);
  const unheard = counted.every(({ heard }) => heard === undefined) ? ["where the air goes (heard)"] : [];
  const last = counted.findLast((test) => test.rows.length > 0);
  const unread = engine.cylinders.filter(
    (_, i) => last?.rows.every(({ cells }) => cells[i]?.kind !== "reading") ?? false,
  );
  return {
    code: "not-tested",
    heading: "What was not tested",
    room: "half",
    blocks: [
      {
        kind: "list",
        items: [
          ...(never.length + unheard.length === 0
            ? []
            : [`Never tested: ${joined([...never, ...unheard])}.`]),
          ...(unread.length === 0
            ? []
            : [
                `Not read in the newest test: ${unread.length === 1 ? "cylinder" : "cylinders"} ${joined(unread)}.`,
              ]),
          "No reading here shows bearings, oil pressure, cooling, gearbox, or a crack that seals when cold.",
        ],
      },
    ],
  };
};

const howToReadSection = ({ record: { engine } }: PageInput): PageSection => ({
  code: "how-to-read",
  heading: "How to read it",
  blocks: [
    {
      kind: "list",
      items: [
        "As read: what the needle showed, in the unit of that gauge. Corrected: the same in sea-level air and, where it can be, at one cranking speed, so that days and places compare. > off the scale, ? doubtful.",
        ...(engine.cylinders.length === 1
          ? []
          : [
              "Even: no further from the others than healthy cylinders lie. Suspect: flagged once. Lags: flagged and confirmed, or under a published limit.",
            ]),
        "A rate stands with the interval that holds it 19 times in 20 (with four tests 9 in 10). A course needs four tests.",
        "Two gauges differ by several percent; the shape of a mark tells the gauge. Wear shows over years; a valve, a gasket or a ring can fail without notice.",
      ],
    },
  ],
});
