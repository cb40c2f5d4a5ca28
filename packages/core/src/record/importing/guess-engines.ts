// The engines that a sheet names, each with an id to be and the cylinders that it has readings of.

import { nearest } from "../../problem/index.ts";
import { bareName, engineOneLetterAway, engineSpelled } from "./engine-alike.ts";
import { type NamedEngine, enginesIn } from "./engines-in-sheet.ts";
import { type Guess, asked, joined, placeIn, quotedCell, settled } from "./guess-parts.ts";
import type { EngineOfSheet, ImportMap } from "./import-map.ts";
import type { ImportHints, Sheet } from "./imported.ts";
import { plainText } from "./sheet-words.ts";
import { isEngineId, suggestEngineId } from "./suggest-engine-id.ts";

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
  const owns = ownEngines(named, known);
  // Names that stand beside each other in one sheet are different engines.
  const beside = new Set([...owns.values()].map(({ id }) => id));
  const others = known.map(({ id }) => id).filter((id) => !beside.has(id));
  const taken = new Set(known.map(({ id }) => id));
  const entries: EngineOfSheet[] = [];
  /** The first engine of the sheet by its id and by each of its spellings. */
  const before = new Map<string, string>();
  const doubts: Guess[] = [];
  for (const one of named) {
    const suggested = suggestEngineId(one.name);
    const own = owns.get(one);
    const engine = own?.id ?? suggestEngineId(one.name, taken);
    const twin = own === undefined && engine !== suggested ? suggested : undefined;
    const other = own === undefined ? (alike(one, known, before) ?? twin ?? near(one, others)) : undefined;
    const first = named.find((two) => two.isApart && entries.some(isOf(two, other)));
    if (other !== undefined)
      doubts.push(
        doubt(sheet, one, { engine, other: { id: other, called: called(other, known, entries) }, first }),
      );
    if (one.fires.length > 1 && own === undefined) doubts.push(twoWays(sheet, one, engine));
    taken.add(engine);
    const [fires = "unknown", ...rest] = one.fires;
    const entry = {
      engine,
      // where nothing says which cylinder a reading is of, the list is left to be filled from the sheet
      cylinders: own?.cylinders ?? (map.cylinder === undefined ? [] : one.cylinders),
      ...(own === undefined ? { ignition: rest.length === 0 ? fires : ("unknown" as const) } : {}),
    };
    const spellings = one.isApart ? one.spellings : [one.name];
    entries.push(...spellings.map((name) => ({ sheet: name, ...entry })));
    for (const key of [engine, ...spellings].map(bareName)) if (!before.has(key)) before.set(key, engine);
  }
  const bare = { map: { engines: entries }, open: [], why: [] };
  const known_ = owns.size;
  const says =
    entries.length === 0
      ? bare
      : settled(
          { engines: entries },
          "engines",
          `${String(named.length)} ${named.length === 1 ? "engine" : "engines"}, ${String(known_)} of them in the logbook; look through the list engines of the map`,
        );
  return joined([says, ...doubts]);
};

type Known = NonNullable<ImportHints["known"]>;

/** The engine that a name is but for its spelling: one of the logbook before one of the sheet, and before one a letter away. */
const alike = (
  { name }: NamedEngine,
  known: Known,
  before: ReadonlyMap<string, string>,
): string | undefined =>
  engineSpelled(name, known)?.id ?? before.get(bareName(name)) ?? engineOneLetterAway(name, known)?.id;

const near = (one: NamedEngine, others: readonly string[]): string | undefined =>
  nearest(suggestEngineId(one.name), others).find((id) => isSlip(one, id));

/** As it is called in a question: by its name too, where that is another; one that is new with this sheet by its name there. */
const called = (id: string, known: Known, entries: readonly EngineOfSheet[]): string => {
  const own = known.find((one) => one.id === id);
  const name = own === undefined ? entries.find(({ engine }) => engine === id)?.sheet : own.name;
  return name === undefined || name === id ? id : `${JSON.stringify(name)}, ${id},`;
};

/** The engine of the logbook that each name is: by the name to the letter, else by the name or the id whatever its case and
 *  blanks; of spellings that are kept apart only the first that has as many cylinders. */
const ownEngines = (named: readonly NamedEngine[], known: Known): ReadonlyMap<NamedEngine, Known[number]> => {
  const owns = new Map<NamedEngine, Known[number]>();
  for (const one of named.filter(({ isApart }) => isApart)) {
    const own = known.find(({ name }) => name !== undefined && one.spellings.includes(name));
    if (own !== undefined) owns.set(one, own);
  }
  const claimed = new Set([...owns.values()]);
  for (const one of named.filter((any) => !owns.has(any))) {
    const plain = plainText(one.name);
    const own = known.find(
      ({ id, name = id }) => id === suggestEngineId(one.name) || plainText(name) === plain,
    );
    const isOther =
      own === undefined ||
      (one.isApart && (claimed.has(own) || own.cylinders.length !== one.cylinders.length));
    if (isOther) continue;
    owns.set(one, own);
    if (one.isApart) claimed.add(own);
  }
  return owns;
};

const isOf =
  ({ spellings }: NamedEngine, id: string | undefined) =>
  ({ sheet, engine }: EngineOfSheet): boolean =>
    engine === id && spellings.includes(sheet);

/** An id that was typed and cannot be one is never changed without a word. */
const badId = ({ engine }: ImportMap, known: Known): Guess | undefined => {
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
const isSlip = ({ cell, name }: NamedEngine, id: string): boolean =>
  cell !== undefined || name.replace(/\D/g, "") === id.replace(/\D/g, "");

const doubt = (
  sheet: Sheet,
  one: NamedEngine,
  {
    engine,
    other,
    first,
  }: {
    readonly engine: string;
    readonly other: { readonly id: string; readonly called: string };
    /** Another spelling of the name, which the other one is. */
    readonly first: NamedEngine | undefined;
  },
): Guess => {
  const { cell, name, spellings } = one;
  const [own, its] = first === undefined ? ["", ""] : [` (${kindOf(one)})`, ` (${kindOf(first)})`];
  const entry = (id: string): string =>
    spellings.map((spelling) => `"sheet": ${JSON.stringify(spelling)}, "engine": "${id}"`).join("; ");
  return asked(
    "engine-name",
    `${cell === undefined ? JSON.stringify(name) : quotedCell(cell)}${own} may be ${first === undefined ? other.called : other.id}${its} or an engine of its own`,
    cell === undefined
      ? {
          entry: "engine",
          option: "--engine",
          ways: [
            [`it is ${other.id}`, `"engine": { "fixed": "${other.id}" }`, `--engine ${other.id}`],
            [`it is another`, `sealtrend engine add ${engine} first`],
          ],
        }
      : {
          entry: "engines",
          ways: [
            [`it is ${other.id}`, entry(other.id)],
            [`it is another: ${engine}`, entry(engine)],
          ],
          place: placeIn(sheet, cell),
        },
  );
};

const kindOf = ({ cylinders, fires }: NamedEngine): string =>
  [`${String(cylinders.length)} cylinder${cylinders.length === 1 ? "" : "s"}`, ...fires].join(", ");

/** Rows of one engine that say two ignitions. */
const twoWays = (sheet: Sheet, { cell, name, fires }: NamedEngine, engine: string): Guess =>
  asked(
    "engine-name",
    `the rows of ${cell === undefined ? JSON.stringify(name) : quotedCell(cell)} say ${fires.join(" and ")}`,
    {
      entry: "engines",
      ways: fires.map(
        (word) =>
          [
            `it fires by ${word}`,
            `"sheet": ${JSON.stringify(name)}, "engine": "${engine}", "ignition": "${word}"`,
          ] as const,
      ),
      ...(cell === undefined ? {} : { place: placeIn(sheet, cell) }),
    },
  );
