// The names of engines in a sheet as its rows have them, with the cylinders and the ignition that are said of each. One name in two
// spellings is one engine, unless their cylinders or their ignition say otherwise.

import { byKey, byText } from "../../problem/index.ts";
import { engineNamed } from "./engine-named.ts";
import { withoutUnitAndKind } from "./heading-text.ts";
import type { SheetText } from "./guess-parts.ts";
import type { EngineOfSheet, ImportMap } from "./import-map.ts";
import type { Sheet } from "./imported.ts";
import { rowKinds } from "./row-kinds.ts";
import { cylinderNamed, ignitionNamed, isSummary, plainText, sideNamed } from "./sheet-words.ts";
import { lookAt } from "./sources.ts";

type Ignition = "spark" | "compression";

export interface NamedEngine {
  /** Where it stands first; absent where it is fixed. */
  readonly cell: SheetText | undefined;
  /** As it stands there. */
  readonly name: string;
  /** Every spelling of it. */
  readonly spellings: readonly string[];
  /** The cylinders that it has readings of, and where they are only numbered those between. */
  readonly cylinders: readonly string[];
  /** What its rows say of how it fires. */
  readonly fires: readonly Ignition[];
  /** Whether another spelling of the name is taken for another engine. */
  readonly isApart: boolean;
}

interface Spelling {
  readonly cell: SheetText | undefined;
  readonly name: string;
  readonly labels: ReadonlySet<string>;
  readonly fires: ReadonlySet<Ignition>;
}

/** The engines that a sheet names under a map that says where. */
export const enginesIn = (
  sheet: Sheet,
  map: ImportMap,
  columns: readonly number[],
): readonly NamedEngine[] => {
  const byName = byKey(spellingsIn(sheet, map, columns), ({ name }) => plainText(name));
  return [...byName.values()].flatMap((spellings) => {
    const groups = groupsOf(spellings);
    return groups.map((group) => named(group, groups.length > 1));
  });
};

/** Spellings of one name, those together of which nothing says that they are two engines. */
const groupsOf = (spellings: readonly Spelling[]): readonly (readonly [Spelling, ...Spelling[]])[] => {
  const groups: [Spelling, ...Spelling[]][] = [];
  for (const one of spellings) {
    const own = groups.find((group) => group.every((other) => mayBeOne(one, other)));
    if (own === undefined) groups.push([one]);
    else own.push(one);
  }
  return groups;
};

const mayBeOne = (a: Spelling, b: Spelling): boolean => {
  const isOneSize = wholeSet(a.labels).length === wholeSet(b.labels).length;
  const isSaid = a.fires.size > 0 && b.fires.size > 0;
  return isOneSize && (!isSaid || [...a.fires].some((word) => b.fires.has(word)));
};

const named = (group: readonly [Spelling, ...Spelling[]], isApart: boolean): NamedEngine => ({
  cell: group[0].cell,
  name: group[0].name,
  spellings: group.map(({ name }) => name),
  cylinders: wholeSet(new Set(group.flatMap(({ labels }) => [...labels]))),
  fires: [...new Set(group.flatMap(({ fires }) => [...fires]))],
  isApart,
});

const spellingsIn = (sheet: Sheet, map: ImportMap, columns: readonly number[]): readonly Spelling[] => {
  const { engine, cylinder, ignition, firstRow } = map;
  if (engine === undefined) return [];
  const where = { columns, firstRow };
  const [engines, cylinders, ignitions] = [engine, cylinder, ignition].map((source) =>
    source === undefined ? undefined : lookAt(sheet, source, where),
  );
  const isBlank = (text: string): boolean => text === "";
  const kindOf = rowKinds(sheet, map, { columns, isBlank });
  const found = new Map<string, Spelling & { readonly labels: Set<string>; readonly fires: Set<Ignition> }>();
  for (const row of sheet.rows) {
    if (row.row < firstRow) continue;
    const kind = kindOf(row).kind;
    if (kind === "header" || kind === "summary") continue;
    for (const look of [engines, cylinders, ignitions]) look?.enter(row);
    if (kind !== "readings") continue;
    for (const column of columns) {
      if ((row.cells[column]?.text ?? "") === "") continue;
      const spot = engines?.spot(column);
      if (spot === undefined || spot.text === "" || isSummary(spot.text)) continue;
      const cell = spot.at === undefined ? undefined : { ...spot.at, text: spot.text };
      const one = found.get(spot.text) ?? { cell, name: spot.text, labels: new Set(), fires: new Set() };
      found.set(spot.text, one);
      const text = withoutUnitAndKind(cylinders?.spot(column).text ?? "");
      const label = cylinderNamed(text) ?? sideNamed(text);
      if (label !== undefined) one.labels.add(label);
      const fires = ignitionNamed(ignitions?.spot(column).text ?? "");
      if (fires !== undefined) one.fires.add(fires);
    }
  }
  return [...found.values()];
};

/** The cylinders that each name of an engine has readings of, by the name as plain text. */
export const labelsByName = (
  sheet: Sheet,
  map: ImportMap,
  columns: readonly number[],
): ReadonlyMap<string, readonly string[]> => {
  const labels = new Map<string, Set<string>>();
  for (const { name, labels: own } of spellingsIn(sheet, map, columns))
    labels.set(plainText(name), new Set([...(labels.get(plainText(name)) ?? []), ...own]));
  return new Map([...labels].map(([name, all]) => [name, wholeSet(all)]));
};

/** The map with the cylinders of the sheet for each engine that it lists with none; names of one engine share them. */
export const withCylinders = (sheet: Sheet, map: ImportMap, columns: readonly number[]): ImportMap => {
  const isOpen = ({ engine, cylinders }: EngineOfSheet): boolean => engine !== "" && cylinders.length === 0;
  if (!map.engines.some(isOpen)) return map;
  const ofEngine = spellingsByEngine(sheet, map, columns);
  const labelsOf = (id: string): readonly string[] =>
    wholeSet(new Set(ofEngine(id).flatMap(({ labels }) => [...labels])));
  const engines = map.engines.map((one) => (isOpen(one) ? { ...one, cylinders: labelsOf(one.engine) } : one));
  return { ...map, engines };
};

/** The list of the map with the ignition that the rows of an engine agree on, where it says none. */
export const withIgnition = (
  sheet: Sheet,
  map: ImportMap,
  columns: readonly number[],
): readonly EngineOfSheet[] => {
  if (map.ignition === undefined) return map.engines;
  const ofEngine = spellingsByEngine(sheet, map, columns);
  return map.engines.map((one) => {
    if ((one.ignition ?? "unknown") !== "unknown") return one;
    const [fires, other] = new Set(ofEngine(one.engine).flatMap((spelling) => [...spelling.fires]));
    return fires === undefined || other !== undefined ? one : { ...one, ignition: fires };
  });
};

const spellingsByEngine = (
  sheet: Sheet,
  map: ImportMap,
  columns: readonly number[],
): ((id: string) => readonly Spelling[]) => {
  const entryOf = engineNamed(map.engines);
  const all = spellingsIn(sheet, map, columns).filter(({ name }) => entryOf(name) !== undefined);
  const found = byKey(all, ({ name }) => entryOf(name)?.engine ?? "");
  return (id) => found.get(id) ?? [];
};

/** The cylinders that have readings, and where they are only numbered those between. */
const wholeSet = (labels: ReadonlySet<string>): readonly string[] => {
  const numbers = [...labels].map(Number);
  const most = Math.max(0, ...numbers);
  if (numbers.every(Number.isInteger) && most > 0 && most <= mostCylinders)
    return Array.from({ length: most }, (_, i) => String(i + 1));
  return labels.size === 0 ? ["1"] : [...labels].sort((a, b) => a.length - b.length || byText(a, b));
};
const mostCylinders = 28;
