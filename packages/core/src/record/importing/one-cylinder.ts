// Two different headings of one cylinder: what keeps them apart was not read, so the second is no repeat of the first.

import { unitIn, withoutUnitAndKind } from "./heading-text.ts";
import type { ImportMap } from "./import-map.ts";
import type { Sheet } from "./imported.ts";
import { labelIn } from "./label-in.ts";
import { cylinderNamed, kindNamed, plainText, sideNamed } from "./sheet-words.ts";
import { type Spot, lookAt } from "./sources.ts";

/** The first two headings that differ and name the same cylinder of the same engine, day, kind and take. */
export const oneCylinderTwice = (
  sheet: Sheet,
  map: ImportMap,
  columns: readonly number[],
): readonly [Spot, Spot] | undefined => {
  const { cylinder, firstRow } = map;
  if (cylinder === undefined || !("headerRow" in cylinder)) return undefined;
  const named = lookAt(sheet, cylinder, { columns, firstRow });
  const apart = headingsApart(sheet, map, columns);
  for (const labels of labelLists(map)) {
    const seen = new Map<string, Spot>();
    for (const column of columns) {
      const spot = named.spot(column);
      const label = labelNamed(spot.text, labels);
      if (label === undefined) continue;
      const key = [label, ...apart.map((read) => read(column))].join("\n");
      const first = seen.get(key) ?? spot;
      if (plainText(first.text) !== plainText(spot.text)) return [first, spot];
      seen.set(key, first);
    }
  }
  return undefined;
};

/** The same of a sheet with the cylinders in a column: two columns of readings with different headings, and no row that says what they are. */
export const repeatsUnsaid = (
  sheet: Sheet,
  map: ImportMap,
  columns: readonly number[],
): readonly [Spot, Spot] | undefined => {
  const { cylinder, firstRow } = map;
  if (cylinder === undefined || !("column" in cylinder)) return undefined;
  const heading = lookAt(sheet, { headerRow: firstRow - 1 }, { columns, firstRow });
  const apart = headingsApart(sheet, map, columns);
  const seen = new Map<string, Spot>();
  for (const column of columns) {
    const spot = heading.spot(column);
    const key = apart.map((read) => read(column)).join("\n");
    const first = seen.get(key) ?? spot;
    if (spot.text !== "" && first.text !== "" && unnumbered(first.text) !== unnumbered(spot.text))
      return [first, spot];
    seen.set(key, first);
  }
  return undefined;
};

/** A heading without the number that counts it: `Reading 1`, `2nd reading`. */
const unnumbered = (text: string): string =>
  plainText(text)
    .replace(/\b(?:\d+(?:st|nd|rd|th)?|first|second|third)\b/g, "")
    .trim();

/** What the rows above the readings say beside the cylinder, read for one column. */
const headingsApart = (
  sheet: Sheet,
  map: ImportMap,
  columns: readonly number[],
): readonly ((column: number) => string)[] =>
  [
    ...([map.engine, map.date, map.take, map.gauge, ...Object.values(map.conditions ?? {})] as const).map(
      (source) => [source, plainText] as const,
    ),
    [map.what, kindNamed] as const,
    [map.unit, unitIn] as const,
  ].flatMap(([source, read]) => {
    if (source === undefined || !("headerRow" in source)) return [];
    const look = lookAt(sheet, source, { columns, firstRow: map.firstRow });
    return [(column: number) => read(look.spot(column).text) ?? ""];
  });

const labelLists = ({ engines }: ImportMap): readonly (readonly string[])[] => {
  const lists = new Map(engines.map(({ cylinders }) => [cylinders.join("\n"), cylinders]));
  return [...lists.values(), []];
};

const labelNamed = (text: string, labels: readonly string[]): string | undefined => {
  const bare = withoutUnitAndKind(text);
  return labelIn(text, labels) ?? cylinderNamed(bare) ?? sideNamed(bare);
};
