// The engines that a sheet names, each with an id to be and the cylinders that it has readings of.

import { byText, nearest } from "../../problem/index.ts";
import { withoutUnitAndKind } from "./heading-text.ts";
import { type Guess, type SheetText, asked, joined, placeIn, quotedCell, settled } from "./guess-parts.ts";
import type { EngineOfSheet, ImportMap } from "./import-map.ts";
import type { ImportHints, Sheet } from "./imported.ts";
import { rowKinds } from "./row-kinds.ts";
import { cylinderNamed, isSummary, plainText, sideNamed } from "./sheet-words.ts";
import { lookAt } from "./sources.ts";
import { isEngineId, suggestEngineId } from "./suggest-engine-id.ts";

interface Named {
  readonly cell: SheetText | undefined;
  readonly name: string;
  readonly labels: Set<string>;
}

/** The engines of the sheet under a map that says where they and their cylinders stand. */
export const guessEngines = (
  sheet: Sheet,
  map: ImportMap,
  columns: readonly number[],
  { known = [] }: ImportHints,
): Guess => {
  const named = enginesIn(sheet, map, columns);
  const wrong = badId(map, known);
  if (wrong !== undefined) return wrong;
  const ownOf = (name: string) => {
    const plain = plainText(name);
    return known.find(({ id, name: own = id }) => id === suggestEngineId(name) || plainText(own) === plain);
  };
  // Names that stand beside each other in one sheet are different engines.
  const beside = new Set(named.flatMap(({ name }) => ownOf(name)?.id ?? []));
  const others = known.map(({ id }) => id).filter((id) => !beside.has(id));
  const taken = new Set<string>();
  const entries: EngineOfSheet[] = [];
  const doubts: Guess[] = [];
  for (const one of named) {
    const suggested = suggestEngineId(one.name);
    const own = ownOf(one.name);
    const engine = own?.id ?? suggestEngineId(one.name, taken);
    const twin = own === undefined && engine !== suggested ? suggested : undefined;
    const [near] = own === undefined ? nearest(suggested, others).filter((id) => isSlip(one, id)) : [];
    const other = twin ?? near;
    if (other !== undefined) doubts.push(doubt(sheet, one, { engine, other }));
    taken.add(engine);
    entries.push({
      sheet: one.name,
      engine,
      // where nothing says which cylinder a reading is of, the list is left to be filled from the sheet
      cylinders: own?.cylinders ?? (map.cylinder === undefined ? [] : wholeSet(one.labels)),
      ...(own === undefined ? { ignition: "unknown" as const } : {}),
    });
  }
  const bare = { map: { engines: entries }, open: [], why: [] };
  const known_ = entries.filter(({ ignition }) => ignition === undefined).length;
  const says =
    entries.length === 0
      ? bare
      : settled(
          { engines: entries },
          "engines",
          `${String(entries.length)} ${entries.length === 1 ? "engine" : "engines"}, ${String(known_)} of them in the logbook; look through the list engines of the map`,
        );
  return joined([says, ...doubts]);
};

/** An id that was typed and cannot be one is never changed without a word. */
const badId = ({ engine }: ImportMap, known: NonNullable<ImportHints["known"]>): Guess | undefined => {
  if (engine === undefined || !("fixed" in engine)) return undefined;
  const { fixed } = engine;
  const isKnown = known.some(({ id, name }) => [id, name].includes(fixed));
  if (isKnown || isEngineId(fixed)) return undefined;
  const id = suggestEngineId(fixed);
  const text = `${JSON.stringify(fixed)} cannot be the id of an engine: small letters and digits, two letters first`;
  return asked("engine-name", text, {
    entry: "engine",
    option: "--engine",
    ways: [[`call it ${id}`, `"engine": { "fixed": "${id}" }`, `--engine ${id}`]],
  });
};

/** Whether a name may be a slip for an engine: one that was typed is not, where its figures are others. */
const isSlip = ({ cell, name }: Named, id: string): boolean =>
  cell !== undefined || name.replace(/\D/g, "") === id.replace(/\D/g, "");

const doubt = (
  sheet: Sheet,
  { cell, name }: Named,
  { engine, other }: { readonly engine: string; readonly other: string },
): Guess =>
  asked(
    "engine-name",
    `${cell === undefined ? JSON.stringify(name) : quotedCell(cell)} may be ${other} or an engine of its own`,
    cell === undefined
      ? {
          entry: "engine",
          option: "--engine",
          ways: [
            [`it is ${other}`, `"engine": { "fixed": "${other}" }`, `--engine ${other}`],
            [`it is another`, `sealtrend engine add ${engine} first`],
          ],
        }
      : {
          entry: "engines",
          ways: [
            [`it is ${other}`, `"sheet": ${JSON.stringify(name)}, "engine": "${other}"`],
            [`it is another: ${engine}`, `"sheet": ${JSON.stringify(name)}, "engine": "${engine}"`],
          ],
          place: placeIn(sheet, cell),
        },
  );

const enginesIn = (sheet: Sheet, map: ImportMap, columns: readonly number[]): readonly Named[] => {
  const { engine, cylinder, firstRow } = map;
  if (engine === undefined) return [];
  const where = { columns, firstRow };
  const [engines, cylinders] = [engine, cylinder].map((source) =>
    source === undefined ? undefined : lookAt(sheet, source, where),
  );
  const isBlank = (text: string): boolean => text === "";
  const kindOf = rowKinds(sheet, map, { columns, isBlank });
  const found = new Map<string, Named>();
  for (const row of sheet.rows) {
    if (row.row < firstRow) continue;
    const kind = kindOf(row).kind;
    if (kind === "header" || kind === "summary") continue;
    engines?.enter(row);
    cylinders?.enter(row);
    if (kind !== "readings") continue;
    for (const column of columns) {
      if ((row.cells[column]?.text ?? "") === "") continue;
      const spot = engines?.spot(column);
      if (spot === undefined || spot.text === "" || isSummary(spot.text)) continue;
      const key = plainText(spot.text);
      const cell = spot.at === undefined ? undefined : { ...spot.at, text: spot.text };
      const one = found.get(key) ?? { cell, name: spot.text, labels: new Set<string>() };
      found.set(key, one);
      const named = withoutUnitAndKind(cylinders?.spot(column).text ?? "");
      const label = cylinderNamed(named) ?? sideNamed(named);
      if (label !== undefined) one.labels.add(label);
    }
  }
  return [...found.values()];
};

/** The cylinders that each name of an engine has readings of, by the name as plain text. */
export const labelsByName = (
  sheet: Sheet,
  map: ImportMap,
  columns: readonly number[],
): ReadonlyMap<string, readonly string[]> =>
  new Map(enginesIn(sheet, map, columns).map(({ name, labels }) => [plainText(name), wholeSet(labels)]));

/** The map with the cylinders of the sheet for each engine that it lists with none; names of one engine share them. */
export const withCylinders = (sheet: Sheet, map: ImportMap, columns: readonly number[]): ImportMap => {
  const isOpen = ({ engine, cylinders }: EngineOfSheet): boolean => engine !== "" && cylinders.length === 0;
  if (!map.engines.some(isOpen)) return map;
  const named = enginesIn(sheet, map, columns);
  const labelsOf = (id: string): readonly string[] => {
    const names = new Set(
      map.engines.filter(({ engine }) => engine === id).map((one) => plainText(one.sheet)),
    );
    const own = named.filter(({ name }) => names.has(plainText(name)));
    return wholeSet(new Set(own.flatMap(({ labels }) => [...labels])));
  };
  const engines = map.engines.map((one) => (isOpen(one) ? { ...one, cylinders: labelsOf(one.engine) } : one));
  return { ...map, engines };
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
