// What the owner measured, for the shop: a table a part, what was seen, what was not measured, what contradicts.

import type { MeasuredPart, TeardownAssessment } from "@sealtrend/core";
import { measuredTables } from "./measured-table.ts";
import type { PageInput } from "./page-input.ts";
import type { PageBlock, PageSection, TableBlock } from "./page-model.ts";
import { kept } from "./page-words.ts";
import { partNamed } from "../teardown/teardown-words.ts";
import { joined } from "../words.ts";

/** What stops the job first, then bores, crank, head. */
const order: readonly MeasuredPart[] = [
  "crack",
  "bore",
  "piston",
  "ring",
  "main",
  "pin",
  "main bearing",
  "rod bearing",
  "rod",
  "crank",
  "housing",
  "deck",
  "head",
  "guide",
  "stem",
  "seat",
  "valve",
  "spring",
  "chamber",
  "crown",
];

/** Tables of so few columns stand side by side. */
const mostNarrow = 6;

export const measuredSection = (input: PageInput, teardown: TeardownAssessment): PageSection => {
  const { engine, measurements } = input.record;
  const own = measurements.filter((one) => one.teardown === teardown.teardown);
  const who = [...new Set(own.flatMap(({ by }) => (by === undefined ? [] : [kept(by)])))];
  const when = teardown.from === teardown.to ? teardown.from : `${teardown.from} to ${teardown.to}`;
  return {
    code: "measured",
    heading: `Measured as found, ${when}${who.length === 0 ? ", by whom not recorded" : `, by ${joined(who)}`}`,
    blocks: [
      ...foundBlocks(teardown),
      ...sideBySide(tablesOf(input, teardown, engine.cylinders)),
      {
        kind: "text",
        role: "small",
        text: "Owner's figures. U is twice the standard uncertainty. Please measure again before cutting, and say if yours differ by more than U.",
      },
      ...gapsOf(teardown),
    ],
  };
};

const tablesOf = (
  { units }: PageInput,
  { items, derived, counts }: TeardownAssessment,
  cylinders: readonly string[],
): readonly TableBlock[] => {
  const current = [...items, ...derived].filter(({ superseded }) => superseded === undefined);
  return order.flatMap((part) => {
    const own = current.filter((item) => item.part === part);
    if (own.length === 0) return [];
    const missing = counts.filter((one) => one.part === part).flatMap((one) => one.missing);
    const labels = [...new Set([...own.map(({ label = "" }) => label), ...missing])];
    const place = (label: string): number => {
      if (label === "") return -1;
      const at = cylinders.findIndex(
        (cylinder) => label === cylinder || /^(in|ex)\d*$/.test(label.replace(cylinder, "")),
      );
      return at >= 0 ? at : cylinders.length + (Number.parseInt(label, 10) || 0);
    };
    return measuredTables(
      part,
      own,
      labels.toSorted((a, b) => place(a) - place(b)),
      { units },
    );
  });
};

const sideBySide = (tables: readonly TableBlock[]): readonly PageBlock[] => {
  const blocks: PageBlock[] = [];
  let waiting: TableBlock | undefined;
  for (const table of tables) {
    if (table.columns.length > mostNarrow) blocks.push(table);
    else if (waiting === undefined) waiting = table;
    else {
      blocks.push({ kind: "beside", blocks: [waiting, table] });
      waiting = undefined;
    }
  }
  return waiting === undefined ? blocks : [...blocks, waiting];
};

/** Seen, not measured; a crack first. */
const foundBlocks = ({ findings }: TeardownAssessment): readonly PageBlock[] => {
  const sorted = findings.toSorted((a, b) => Number(b.part === "crack") - Number(a.part === "crack"));
  const items = sorted.map(({ part, label, at, quantity, word, note }) => {
    const where = [partNamed(part, label === undefined ? [] : [label]), (at ?? "").replaceAll("/", " ")]
      .filter((text) => text !== "")
      .join(", ");
    return `${where}: ${quantity} ${word}${note === undefined ? "" : ` (${kept(note)})`}`;
  });
  return items.length === 0 ? [] : [{ kind: "text", text: `Seen: ${items.join("; ")}.` }];
};

const gapsOf = ({ counts, conflicts, items }: TeardownAssessment): readonly PageBlock[] => {
  const missing = counts.flatMap(({ part, quantity = "", missing: labels }) =>
    labels.length === 0 ? [] : [`${part} ${joined(labels)} ${quantity}`.replace(/ {2,}/g, " ")],
  );
  const measured = new Set(items.map(({ part }) => part));
  const never = (["bore", "ring", "main", "pin", "crank", "head", "deck"] as const).filter(
    (part) => !measured.has(part),
  );
  const unmeasured = [...missing, ...never.map((part) => partNamed(part, []))];
  const lines = [
    ...(unmeasured.length === 0 ? [] : [`Not measured: ${unmeasured.join("; ")}.`]),
    ...conflicts.map(({ text, mend }) => `Does not fit: ${kept(text)}. ${kept(mend)}`),
  ];
  return lines.length === 0 ? [] : [{ kind: "list", items: lines }];
};
