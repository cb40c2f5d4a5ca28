// What the owner measured: a table a part, what was seen, what was not measured, what contradicts, room for a sketch.

import { type MeasuredPart, type TeardownItem, spoiltParts } from "@sealtrend/core/parts";
import { type MeasuredSets, measuredTables } from "./measured-table.ts";
import type { PageInput, PageTeardown } from "./page-input.ts";
import type { PageBlock, PageSection, TableBlock } from "./page-model.ts";
import { whoText } from "./page-words.ts";
import { conflictTexts, findingTexts, notMeasuredText, otherTimesText } from "./teardown-told.ts";
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

/** @param toFillIn - whether the shop writes on it */
export const measuredSection = (
  input: PageInput,
  teardown: PageTeardown,
  toFillIn: "yes" | "no",
): PageSection => {
  const { now, found = now } = teardown;
  const own = input.record.measurements.filter((one) => one.teardown === now.teardown);
  const who = [...new Set(own.flatMap(({ by }) => (by === undefined ? [] : [whoText(by, input)])))];
  const when = found.from === found.to ? found.from : `${found.from} to ${found.to}`;
  const seen = findingTexts(now.findings);
  const later = own.filter(({ state }) => state === "new part" || state === "after machining");
  const days = [...new Set(later.map(({ date }) => date))].toSorted();
  const gaps = [...notMeasuredText(found, input.record.engine), ...conflictTexts(now)];
  return {
    code: "measured",
    heading: `Measured as found, ${when}${who.length === 0 ? ", by whom not recorded" : `, by ${joined(who)}`}`,
    blocks: [
      ...otherTimesText(teardown).map((text) => ({ kind: "text", role: "small", text }) as const),
      ...(seen.length === 0 ? [] : [{ kind: "text", text: `Seen: ${seen.join("; ")}.` } as const]),
      ...sideBySide(
        setsOf(input, teardown).flatMap((sets) => measuredTables(sets, { units: input.units, toFillIn })),
      ),
      {
        kind: "text",
        role: "small",
        text: `Owner's figures. U is twice the standard uncertainty.${days.length === 0 ? "" : ` New and finished parts measured ${joined(days)}.`}${toFillIn === "yes" ? " Please measure again before cutting, and say if yours differ by more than U." : ""}`,
      },
      ...(gaps.length === 0 ? [] : [{ kind: "list", items: gaps } as const]),
    ],
  };
};

const setsOf = (input: PageInput, { now, found }: PageTeardown): readonly MeasuredSets[] => {
  const { engine, measurements } = input.record;
  const rows = measurements.filter((one) => one.teardown === now.teardown);
  const late = [...now.items, ...now.derived].filter(isCurrent);
  const before = found === undefined ? [] : [...found.items, ...found.derived].filter(isCurrent);
  const spoilt = found === undefined ? [] : spoiltParts(found);
  return order.flatMap((part) => {
    const of = (items: readonly TeardownItem[]): readonly TeardownItem[] =>
      items.filter((item) => item.part === part);
    const [old, fresh] = [of(before), of(late)];
    const renewed = fresh.filter(({ state }) => state === "new part");
    // wear is what a bore lost as it ran: of a size that was cut it says nothing
    const finished = fresh.filter(
      ({ state, quantity }) => state === "after machining" && quantity !== "wear",
    );
    if (old.length + renewed.length + finished.length === 0) return [];
    const missing = now.counts.filter((one) => one.part === part).flatMap((one) => one.missing);
    const labels = [...old, ...renewed, ...finished].map(({ label = "" }) => label);
    return [
      {
        part,
        found: old,
        renewed,
        finished,
        labels: inOrder([...new Set([...labels, ...missing])], engine.cylinders),
        spoilt: spoilt.filter((one) => one.part === part && one.label !== undefined),
        rows: rows.filter((one) => one.part === part),
      },
    ];
  });
};

const isCurrent = ({ superseded }: TeardownItem): boolean => superseded === undefined;

/** Cylinders as the engine numbers them, journals by number, a valve after its cylinder. */
const inOrder = (labels: readonly string[], cylinders: readonly string[]): readonly string[] => {
  const place = (label: string): number => {
    if (label === "") return -1;
    const at = cylinders.findIndex(
      (cylinder) => label === cylinder || /^(in|ex)\d*$/.test(label.replace(cylinder, "")),
    );
    return at >= 0 ? at : cylinders.length + (Number.parseInt(label, 10) || 0);
  };
  return labels.toSorted((a, b) => place(a) - place(b));
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
