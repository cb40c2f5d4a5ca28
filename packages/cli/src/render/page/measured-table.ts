// What was measured of one kind of part as a table for the shop: a row a part, its places and derived figures across, the
// doubt and the limit of each column beneath them, and an empty column to measure again.

import { type LengthUnit, type MeasuredPart, type TeardownItem, length } from "@sealtrend/core";
import type { PageCell, PageColumn, PageRow, TableBlock } from "./page-model.ts";
import { kept } from "./page-words.ts";
import {
  type Written,
  lengthNumber,
  lengthUnit,
  signedNumber,
  spreadText,
  writtenIn,
} from "../teardown/teardown-length.ts";
import { limitValues, limitsText, sourcesOf } from "../teardown/teardown-limits.ts";
import { deciding } from "../teardown/teardown-rows.ts";
import { type Standing, standingOf, worst } from "../teardown/teardown-standing.ts";
import { figureName, isSigned, partsName, ringOf } from "../teardown/teardown-words.ts";
import { joined, sentence } from "../words.ts";

export interface ShopUnits {
  /** The value of --units: the shop's own unit stands first. */
  readonly units: string | undefined;
}

interface Column {
  readonly name: string;
  readonly items: readonly TeardownItem[];
  readonly written: Written;
  readonly other: Written;
}

/** One table, or several where the places are too many for the paper; the last one holds verdict and places to write.
 *  @param items - all figures of the part, measured and derived, that nothing took the place of */
export const measuredTables = (
  part: MeasuredPart,
  items: readonly TeardownItem[],
  labels: readonly string[],
  options: ShopUnits,
): readonly TableBlock[] => {
  const columns = columnsOf(items, options);
  const judged = items.some(({ verdicts }) => verdicts.length > 0);
  const parts = fitting(columns);
  return parts.map((own, i) => {
    const ends =
      i === parts.length - 1
        ? { judged, written: "here" as const }
        : { judged: false, written: "later" as const };
    return {
      kind: "table",
      caption:
        i === 0
          ? `${headOf(part, items, columns)} ${boundsOf(columns)}`
          : `${sentence(partsName(part))}, continued.`,
      columns: [
        { name: sentence(part), align: "left" },
        ...own.map(({ name }): PageColumn => ({ name, align: "right" })),
        ...(ends.judged ? [{ name: "Verdict", align: "left" } as const] : []),
        ...(ends.written === "here"
          ? [{ name: "Again", align: "left" } as const, { name: "Finished", align: "left" } as const]
          : []),
      ],
      rows: labels.map((label) => labelRow(label, own, { ...ends, all: items })),
    };
  });
};

/** What a row has for its places, in units of the drawing; verdict and places to write take the rest. */
const room = 470;
const letter = 4.4;

/** As many columns side by side as fit. */
const fitting = (columns: readonly Column[]): readonly (readonly Column[])[] => {
  const parts: Column[][] = [[]];
  let used = 0;
  for (const column of columns) {
    const wide = 6 + letter * Math.max(4, ...column.items.map((item) => bracket(item, column.other).length));
    const last = parts.at(-1);
    if (last === undefined || (used + wide > room && last.length > 0)) {
      parts.push([column]);
      used = wide;
    } else {
      last.push(column);
      used += wide;
    }
  }
  return parts;
};

const bracket = (item: TeardownItem, other: Written): string => `[${valueText(item, finer(item, other))}]`;

/** The places of what was measured in their order, then a column for each derived figure. */
const columnsOf = (items: readonly TeardownItem[], { units }: ShopUnits): readonly Column[] => {
  const measured = items.filter(({ from }) => from === undefined);
  const derived = items.filter(({ from }) => from !== undefined);
  const isOneQuantity = new Set(measured.map(({ quantity }) => quantity)).size === 1;
  const nameOf = (item: TeardownItem): string => {
    if (item.from !== undefined) return figureName(item);
    const [first = "", ...rest] = (item.at ?? "").split("/");
    const place = [ringOf(item) || first, ...rest].filter((text) => text !== "").join(" ");
    return [place, place === "" || !isOneQuantity ? item.quantity : ""]
      .filter((text) => text !== "")
      .join(" ");
  };
  const all = [...measured, ...derived];
  return [...new Set(all.map(nameOf))].map((name) => {
    const own = all.filter((item) => nameOf(item) === name);
    const unit = lengthUnit(
      units,
      own.map((item) => item.unit),
    );
    const values = own.flatMap(({ value, between }) =>
      between === undefined ? [value] : [between.low, between.high],
    );
    return { name, items: own, written: writtenIn(unit, values), other: otherOf(unit) };
  });
};

/** What stands in brackets: the other system, to what an instrument of it carries. */
const otherOf = (unit: LengthUnit): Written =>
  unit === "in" || unit === "thou" ? { unit: "mm", places: 3 } : { unit: "in", places: 4 };

interface RowEnds {
  readonly judged: boolean;
  readonly written: "here" | "later";
  readonly all: readonly TeardownItem[];
}

const labelRow = (
  label: string,
  columns: readonly Column[],
  { judged, written: writes, all }: RowEnds,
): PageRow => {
  const cells = columns.map(({ items, written, other }): string | PageCell => {
    const item = deciding(items.filter((one) => (one.label ?? "") === label));
    return item === undefined ? "-" : { text: valueText(item, written), second: bracket(item, other) };
  });
  const own = all.filter((one) => (one.label ?? "") === label);
  const empty: PageCell = { text: "", role: "blank" };
  return {
    cells: [
      label === "" ? "whole" : kept(label),
      ...cells,
      ...(judged ? [verdictCell(own)] : []),
      ...(writes === "here" ? [empty, empty] : []),
    ],
  };
};

/** A figure of a few thousandths of a millimetre is not 0 in inches. */
const finer = ({ value }: TeardownItem, { unit, places }: Written): Written =>
  unit === "in" && Math.abs(value) < 1e-5 ? { unit, places: places + 1 } : { unit, places };

const valueText = (item: TeardownItem, written: Written): string => {
  if (item.between !== undefined)
    return `${lengthNumber(item.between.low, written)}..${lengthNumber(item.between.high, written)}`;
  return isSigned(item) ? signedNumber(item.value, written) : lengthNumber(item.value, written);
};

const words: Readonly<Record<Standing, string>> = {
  outside: "outside",
  close: "too close to tell",
  waits: "does not fit",
  worn: "worn, serviceable",
  near: "inside wear, too close as new",
  inside: "inside",
  "no-limit": "",
};

const verdictCell = (items: readonly TeardownItem[]): PageCell => {
  const text = verdictText(items);
  return { text, role: /^(inside|)$/.test(text) ? "plain" : "strong" };
};

/** `outside: wear; rest inside`: the word of each figure that has a limit, the worst first. */
const verdictText = (items: readonly TeardownItem[]): string => {
  const names = [...new Set(items.map(figureName))];
  const standingOfName = (name: string): Standing =>
    worst(items.filter((item) => figureName(item) === name).map(standingOf));
  const told = names.map((name) => ({ name, standing: standingOfName(name) }));
  const said = (["outside", "close", "waits", "worn", "near", "inside"] as const).flatMap((standing) => {
    const own = told.filter((one) => one.standing === standing).map(({ name }) => name);
    return own.length === 0 ? [] : [{ standing, own }];
  });
  const [only] = said;
  if (said.length === 1 && only !== undefined) return words[only.standing];
  return said
    .map(({ standing, own }) =>
      standing === "inside" ? "rest inside" : `${words[standing]}: ${own.join(", ")}`,
    )
    .join("; ");
};

/** `Bores, diameter, mm [in]: bore gauge 0.01 mm; cleaned.` */
const headOf = (part: MeasuredPart, items: readonly TeardownItem[], [first]: readonly Column[]): string => {
  const measured = items.filter(({ from }) => from === undefined);
  const tools = [
    ...new Set(measured.map(({ uncertaintyFrom }) => uncertaintyFrom.replace(/, \d+ readings?$/, ""))),
  ];
  const states = [...new Set(measured.map(({ state }) => state))];
  const quantities = [...new Set(measured.map(({ quantity }) => quantity))];
  const what = `${sentence(partsName(part))}${quantities.length === 1 ? `, ${quantities[0] ?? ""}` : ""}`;
  const units = first === undefined ? "" : `, ${first.written.unit} [${first.other.unit}]`;
  const sources = sourcesOf(items).map((text) => kept(text));
  return `${what}${units}: ${joined(tools.slice(0, 3).map((text) => kept(text)))}; ${joined(states)}${sources.length === 0 ? "" : `; limits: ${sources.join("; ")}`}.`;
};

/** Doubt and limits of each quantity, once: `diameter U 0.013 [0.0005], wear up to 86.20 [3.3937].` */
const boundsOf = (columns: readonly Column[]): string => {
  const all = columns.flatMap(({ items, ...rest }) => items.map((item) => ({ item, ...rest })));
  const names = [...new Set(all.map(({ item }) => item.quantity))];
  return names
    .map((name) => {
      const own = all.filter(({ item }) => item.quantity === name);
      const [first] = own;
      if (first === undefined) return "";
      const doubt = length(2 * Math.max(...own.map(({ item }) => item.uncertainty)));
      const { written, other } = first;
      const limits = [
        ...new Map(
          own
            .filter(({ item }) => item.verdicts.length > 0)
            .map(({ item }) => [limitsText(item, other), item]),
        ).values(),
      ];
      const told = limits.map(
        (item) => `${limitsText(item, withPlaces(item, written))} [${limitsText(item, other)}]`,
      );
      return `${name}: U ${spreadText(doubt, written.unit)} [${spreadText(doubt, other.unit)}], ${told.length === 0 ? "no limit" : told.join(" or ")}.`;
    })
    .map(sentence)
    .join(" ");
};

/** A limit may be printed finer than what was read. */
const withPlaces = (item: TeardownItem, { unit }: Written): Written => writtenIn(unit, limitValues(item));
