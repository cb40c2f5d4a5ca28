// The line that takes the place of a figure, ready to be typed: `rod bearing 2 instead: 1.5th`. With its unit, for another one may hold by
// then.

import { lengthNumber } from "../length-text.ts";
import { atNamed, partNamed } from "../places.ts";
import type { TeardownItem } from "../teardown.ts";
import { usualQuantity } from "./part-words.ts";
import { nameOfUnit } from "./units.ts";

type Figure = Pick<TeardownItem, "part" | "label" | "at" | "quantity" | "unit" | "between">;

/** @param value - what it should have been [m]; absent: it has to be measured first, as between two leaves */
export const insteadLine = (item: Figure, value?: number): string => {
  const { unit, between } = item;
  const figure =
    value === undefined || between !== undefined ? "" : ` ${lengthNumber(value, unit)}${nameOfUnit(unit)}`;
  return `${headOf(item)} instead:${figure}`;
};

/** As short as it is understood: `bore 3 top/thrust`, `end play`, `rod bearing 2 bore front/0`. */
const headOf = ({ part, label, at, quantity }: Figure): string => {
  const named = partNamed({ part, ...(label === undefined ? {} : { label }) });
  const which = usualQuantity(part)?.name === quantity ? "" : quantity;
  const place = atNamed({ part, ...(at === undefined ? {} : { at }) });
  const words = part === "crank" ? [quantity, label, place] : [named, which, place];
  return words.filter((word) => word !== undefined && word !== "").join(" ");
};
