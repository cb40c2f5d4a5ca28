// What a buyer reads of an engine that was apart: what was seen, what is outside or cannot be told, with its limit; that the rest
// is inside; what was not measured. No work, no price.

import { type TeardownItem, currentFindings, spoiltParts } from "@sealtrend/core/parts";
import { placeWords, valueText } from "./measured-columns.ts";
import { verdictText } from "./measured-verdict.ts";
import type { PageInput, PageTeardown } from "./page-input.ts";
import type { PageBlock, PageSection, TableBlock } from "./page-model.ts";
import { left } from "./page-tables.ts";
import { kept, whoText } from "./page-words.ts";
import { conflictTexts, findingTexts, notMeasuredText, otherTimesText } from "./teardown-told.ts";
import { lengthUnit, writtenIn } from "../teardown/teardown-length.ts";
import { limitValues, limitsText, sourcesOf } from "../teardown/teardown-limits.ts";
import { deciding } from "../teardown/teardown-rows.ts";
import { figureName, partNamed, partsName } from "../teardown/teardown-words.ts";
import { joined, sentence } from "../words.ts";

/** A crack is said before anything else: no reading shows it. */
export const crackTexts = ({ teardown }: PageInput): readonly string[] => {
  if (teardown === undefined) return [];
  const { now } = teardown;
  const cracks = spoiltParts(now).filter(({ part }) => part === "crack");
  const sized = now.items.filter(({ part, superseded }) => part === "crack" && superseded === undefined);
  const found = now.findings.filter(({ part }) => part === "crack");
  if (cracks.length === 0 && sized.length === 0) return [];
  const where = [
    ...new Set([...found, ...sized].map(({ label, at }) => [label, at].filter(Boolean).join(", "))),
  ]
    .filter((text) => text !== "")
    .map(kept);
  const days = [...new Set(cracks.map(({ date }) => date))];
  return [
    `CRACK found${days.length === 0 ? "" : ` ${joined(days)}`}${where.length === 0 ? "" : ` (${where.join("; ")})`} when the engine was apart.`,
  ];
};

export const buyerTeardown = (input: PageInput, teardown: PageTeardown): PageSection => {
  const { now } = teardown;
  const own = input.record.measurements.filter((one) => one.teardown === now.teardown);
  const who = [...new Set(own.flatMap(({ by }) => (by === undefined ? [] : [whoText(by, input)])))];
  const current = [...now.items, ...now.derived].filter(({ superseded }) => superseded === undefined);
  const seen = findingTexts(currentFindings(now.findings, own), input.notes);
  const off = offTable(input, current);
  return {
    code: "teardown",
    heading: `Taken apart ${now.from === now.to ? `on ${now.from}` : `${now.from} to ${now.to}`}, measured by ${who.length === 0 ? "somebody not recorded" : joined(who)}`,
    blocks: [
      { kind: "text", text: answerText(current, seen) },
      ...(seen.length === 0 ? [] : [{ kind: "text", text: `Seen: ${seen.join("; ")}.` } as const]),
      ...off,
      ...listed([
        ...otherTimesText(teardown),
        ...conflictTexts(now, "without"),
        ...notMeasuredText(now, input.record.engine),
      ]),
    ],
  };
};

const listed = (items: readonly string[]): readonly PageBlock[] =>
  items.length === 0 ? [] : [{ kind: "list", items: [...new Set(items)] }];

const labelsOf = (items: readonly TeardownItem[]): readonly string[] => [
  ...new Set(items.flatMap(({ label }) => (label === undefined ? [] : [kept(label)]))),
];

/** `main 2, pins 1 and 2` of figures of one kind. */
const partsText = (items: readonly TeardownItem[]): string =>
  joined(
    [...new Set(items.map(({ part }) => part))].map((part) =>
      partNamed(part, labelsOf(items.filter((one) => one.part === part))),
    ),
  );

/** What is worst first; all parts that are inside are named by kind. */
const answerText = (items: readonly TeardownItem[], seen: readonly string[]): string => {
  const of = (...standings: readonly string[]) =>
    items.filter(({ standing }) => standing !== undefined && standings.includes(standing));
  const isIn = (some: readonly TeardownItem[], { part, label }: TeardownItem): boolean =>
    some.some((one) => one.part === part && one.label === label);
  const outside = of("outside");
  const close = of("too-close").filter((one) => !isIn(outside, one));
  const waits = of("waits").filter((one) => !isIn([...outside, ...close], one));
  const bad = [...outside, ...close, ...waits];
  const worn = of("worn").filter((one) => !isIn(bad, one));
  const judged = items.filter(({ standing }) => standing !== undefined);
  const fine = judged.filter((one) => !isIn([...bad, ...worn], one));
  const clauses = [
    ...(outside.length === 0 ? [] : [`outside its limit: ${partsText(outside)}`]),
    ...(close.length === 0 ? [] : [`too close to tell: ${partsText(close)}`]),
    ...(waits.length === 0 ? [] : [`figures that cannot all be right: ${partsText(waits)}`]),
    ...(worn.length === 0 ? [] : [`worn past new, inside the wear limit: ${partsText(worn)}`]),
  ];
  if (judged.length === 0)
    return seen.length === 0
      ? "Measured without a limit to hold it against."
      : "Nothing was held against a limit.";
  if (clauses.length === 0) return "Measured, all inside the limits that are on record.";
  const kinds = [...new Set(fine.map(({ part }) => partsName(part)))];
  const rest =
    kinds.length === 0 ? "" : ` Inside: ${joined(kinds)}${kinds.length > 0 ? " not named before" : ""}.`;
  return `${sentence(clauses.join("; "))}.${rest}`;
};

/** Each figure that is outside or cannot be told, the one place of a part that decides. */
const offTable = ({ units }: PageInput, items: readonly TeardownItem[]): readonly TableBlock[] => {
  const off = items.filter(({ standing }) => standing === "outside" || standing === "too-close");
  const keys = [...new Set(off.map(keyOf))];
  const rows = keys.flatMap((key) => {
    const item = deciding(off.filter((one) => keyOf(one) === key));
    if (item === undefined) return [];
    const unit = lengthUnit(units, [item.unit]);
    const between = item.between === undefined ? [item.value] : [item.between.low, item.between.high];
    const written = writtenIn(unit, between);
    const place = item.from === undefined && item.part !== "ring" ? placeWords(item) : "";
    return [
      {
        cells: [
          partNamed(item.part, item.label === undefined ? [] : [kept(item.label)]),
          [figureName(item), place].filter((text) => text !== "").join(", "),
          `${valueText(item, written)} ${unit}`,
          limitsText(item, writtenIn(unit, limitValues(item))),
          verdictText([item]),
          kept(sourcesOf([item]).join("; ")),
        ],
      },
    ];
  });
  return rows.length === 0
    ? []
    : [
        {
          kind: "table",
          caption: "Figures outside their limits, or too close to them to tell.",
          columns: ["Part", "Figure", "Measured", "Limits", "Verdict", "Whose limits"].map(left),
          rows,
        },
      ];
};

const keyOf = (item: TeardownItem): string => `${item.part}|${item.label ?? ""}|${figureName(item)}`;
