// What stands over a table of a part: with what it was measured, its doubt and its limits once, whose limits, what was noted.

import { type MeasuredPart, type Measurement, type TeardownItem, length } from "@sealtrend/core";
import { type MeasuredColumn, placeWords } from "./measured-columns.ts";
import { kept } from "./page-words.ts";
import { type Written, spreadText, writtenIn } from "../teardown/teardown-length.ts";
import { limitValues, limitsText, sourcesOf } from "../teardown/teardown-limits.ts";
import { partNamed, partsName } from "../teardown/teardown-words.ts";
import { joined, sentence } from "../words.ts";

/** `Bores, diameter, mm [in]: bore gauge 0.01 mm; cleaned. Diameter: U 0.013 [0.0005], wear up to 86.20 [3.3937].` */
export const measuredHead = (
  part: MeasuredPart,
  items: readonly TeardownItem[],
  columns: readonly MeasuredColumn[],
): string => {
  const measured = items.filter(({ from }) => from === undefined);
  const tools = [
    ...new Set(measured.map(({ uncertaintyFrom }) => uncertaintyFrom.replace(/, \d+ readings?$/, ""))),
  ];
  const states = [...new Set(measured.map(({ state }) => state))];
  const quantities = [...new Set(measured.map(({ quantity }) => quantity))];
  const [first] = columns;
  const what = `${sentence(partsName(part))}${quantities.length === 1 ? `, ${quantities[0] ?? ""}` : ""}`;
  const units = first === undefined ? "" : `, ${first.written.unit} [${first.other.unit}]`;
  const sources = sourcesOf(items).map((text) => kept(text));
  const by = sources.length === 0 ? "" : `; limits: ${sources.join("; ")}`;
  return `${what}${units}: ${joined(tools.slice(0, 3).map((text) => kept(text)))}; ${joined(states)}${by}. ${boundsOf(columns)}`;
};

/** Doubt and limits of each quantity, once. */
const boundsOf = (columns: readonly MeasuredColumn[]): string => {
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

/** What was written beside the figures, such as the setting standard and the temperature; each note once, with its places. */
export const measuredNotes = (measurements: readonly Measurement[]): string => {
  const sized = measurements.filter(({ value, note }) => value.kind !== "word" && note !== undefined);
  const notes = [...new Set(sized.map(({ note }) => kept(note)))].filter((note) => note !== "");
  return notes
    .map((note) => {
      const places = sized.filter((one) => kept(one.note) === note).map(placeNamed);
      const shown = [...new Set(places)];
      const where = shown.length > 3 ? `${shown.slice(0, 2).join(", ")} and others` : joined(shown);
      return `${where}: ${note}`;
    })
    .join("; ");
};

const placeNamed = (one: Measurement): string =>
  [partNamed(one.part, one.label === undefined ? [] : [kept(one.label)]), placeWords(one)]
    .filter((text) => text !== "")
    .join(" ");
