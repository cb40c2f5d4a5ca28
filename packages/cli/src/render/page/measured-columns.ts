// The columns of a table of what was measured: the places of a part, then what was worked out of them, each in both units.

import { type LengthUnit, type TeardownItem } from "@sealtrend/core";
import { type Written, lengthNumber, lengthUnit, writtenIn } from "../teardown/teardown-length.ts";
import { numberOf } from "../teardown/teardown-table.ts";
import { figureName, ringOf } from "../teardown/teardown-words.ts";

export interface MeasuredColumn {
  readonly name: string;
  /** `places` are read off an instrument, `figures` follow from them. */
  readonly holds: "places" | "figures";
  readonly items: readonly TeardownItem[];
  readonly written: Written;
  readonly other: Written;
}

/** The places of what was measured in their order, then a column for each derived figure. @param units - value of --units */
export const measuredColumns = (
  items: readonly TeardownItem[],
  units: string | undefined,
): readonly MeasuredColumn[] => {
  const measured = items.filter(({ from }) => from === undefined);
  const derived = items.filter(({ from }) => from !== undefined);
  const isOneQuantity = new Set(measured.map(({ quantity }) => quantity)).size === 1;
  const nameOf = (item: TeardownItem): string => {
    if (item.from !== undefined) return figureName(item);
    const place = placeWords(item);
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
    return {
      name,
      holds: own.some(({ from }) => from === undefined) ? "places" : "figures",
      items: own,
      written: writtenIn(unit, values),
      other: otherOf(unit),
    };
  });
};

/** `top thrust`, `front 90°`, `at 15 mm`, `long1 at 100 mm`, `ring 1 bottom`. */
export const placeWords = (item: Pick<TeardownItem, "part" | "at">): string => {
  const [first = "", ...rest] = (item.at ?? "").split("/");
  const isAlong =
    item.part === "piston" || item.part === "head" || item.part === "deck" || item.part === "spring";
  const told = (word: string, place: number): string => {
    if (!/^\d+(\.\d+)?$/.test(word)) return word;
    if (isAlong) return `at ${word} mm`;
    return place > 0 ? `${word}°` : word;
  };
  return [ringOf(item) || told(first, 0), ...rest.map((word, i) => told(word, i + 1))]
    .filter((text) => text !== "")
    .join(" ");
};

/** What stands in brackets: the other system, to what an instrument of it carries. */
const otherOf = (unit: LengthUnit): Written =>
  unit === "in" || unit === "thou" ? { unit: "mm", places: 3 } : { unit: "in", places: 4 };

/** The number alone; of a feeler both leaves, `< 0.04` where the thinnest does not go. */
export const valueText = (item: TeardownItem, written: Written): string => {
  const number = (value: TeardownItem["value"]): string => lengthNumber(value, written);
  if (item.between !== undefined)
    return item.between.low === 0
      ? `< ${number(item.between.high)}`
      : `${number(item.between.low)}..${number(item.between.high)}`;
  return numberOf(item, written);
};

export const bracketText = (item: TeardownItem, other: Written): string =>
  `[${valueText(item, finer(item, other))}]`;

/** A figure of a few thousandths of a millimetre is not 0 in inches. */
const finer = ({ value }: TeardownItem, { unit, places }: Written): Written =>
  unit === "in" && value !== 0 && Math.abs(value) < 1e-5 ? { unit, places: places + 1 } : { unit, places };

/** What a row has for its places, in units of the drawing; verdict and places to write take the rest. */
const room = 470;
const letter = 4.4;

/** As many columns side by side as fit. */
export const fittingColumns = (
  columns: readonly MeasuredColumn[],
): readonly (readonly MeasuredColumn[])[] => {
  const parts: MeasuredColumn[][] = [[]];
  let used = 0;
  for (const column of columns) {
    const texts = column.items.map((item) => bracketText(item, column.other).length);
    const wide = 6 + letter * Math.max(4, ...texts);
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
