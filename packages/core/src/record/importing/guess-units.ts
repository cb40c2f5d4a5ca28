// Unit and kind of reading: only a word of the sheet or of the command line settles them, never the size of a number.

import {
  type Guess,
  type SheetText,
  asked,
  assumed,
  placeIn,
  quotedCell,
  settled,
  silent,
} from "./guess-parts.ts";
import { columnLetters } from "./columns.ts";
import { unitIn } from "./heading-text.ts";
import type { Source } from "./import-map.ts";
import type { ImportHints, SheetRow } from "./imported.ts";
import { type SheetUnit, sheetUnitNamed } from "./reading-text.ts";
import { kindNamed } from "./sheet-words.ts";
import { type Seen, isGap, otherwise } from "./typed-and-said.ts";

/** The row above the readings in which every one of their columns has a word of this kind. */
const rowOf = (
  { shape, columns }: Seen,
  isOne: (text: string) => boolean,
): { readonly row: SheetRow; readonly fill: boolean } | undefined => {
  const row = shape.block.find((one) => {
    const texts = columns.map((i) => one.cells[i]?.text ?? "");
    return (
      texts[0] !== "" &&
      texts.some((text) => text !== "") &&
      texts.every((text) => text === "" || isOne(text))
    );
  });
  if (row === undefined) return undefined;
  return { row, fill: columns.some((i) => (row.cells[i]?.text ?? "") === "") };
};

/** All different words of a kind in the headings, each with its first cell. */
const inHeadings = <T>({ shape }: Seen, read: (text: string) => T | undefined): ReadonlyMap<T, SheetText> => {
  const found = new Map<T, SheetText>();
  for (const row of shape.headings)
    row.cells.forEach(({ text }, column) => {
      const one = text === "" ? undefined : read(text);
      if (one !== undefined && !found.has(one)) found.set(one, { text, row, column });
    });
  return found;
};

const cellUnit = /[\d?]\s*([A-Za-z%][A-Za-z0-9/²]*)\s*\??$/;

/** The unit of the readings; one that was typed fills a gap, and goes before nothing that the sheet says. */
export const guessUnit = (seen: Seen, hints: ImportHints): Guess => {
  const told = hints.unit === undefined ? undefined : sheetUnitNamed(hints.unit);
  const said = saidUnit(seen, hints);
  if (told === undefined) return said;
  const isSame = (one: SheetUnit | undefined): boolean =>
    one === told || (one !== undefined && one.startsWith("%") && told.startsWith("%"));
  return isGap(seen, said.map.unit, { read: unitIn, isSame })
    ? settled({ unit: { fixed: told } }, "unit", `readings in ${told}, as you said`)
    : otherwise(seen, said, { entry: "unit", told });
};

const saidUnit = (seen: Seen, { what }: ImportHints): Guess => {
  const column = seen.shape.columns.find(({ role }) => role === "unit");
  if (column !== undefined)
    return settled(
      { unit: { column: columnLetters(column.index) } },
      "unit",
      `column ${columnLetters(column.index)} has the units`,
    );
  const named = inHeadings(seen, unitIn);
  const [first, ...others] = [...named];
  if (first !== undefined && others.length === 0) return percentOpen(seen, first);
  const above = rowOf(seen, (text) => unitIn(text) !== undefined);
  const over = new Set(seen.columns.map((i) => unitIn(above?.row.cells[i]?.text ?? "")));
  if (above !== undefined && [...named.keys()].every((one) => over.has(one)))
    return settled(
      { unit: { headerRow: above.row.row, ...(above.fill ? { fill: true } : {}) } },
      "unit",
      `row ${String(above.row.row)} has the units`,
    );
  const inCells = new Set(seen.cells.map(({ text }) => sheetUnitNamed(cellUnit.exec(text)?.[1] ?? "")));
  const [only] = inCells;
  const [cell] = seen.cells;
  if (first === undefined && only !== undefined && inCells.size === 1 && cell !== undefined)
    return percentOpen(seen, [only, cell]);
  const carried = [...inCells].filter((one) => one !== undefined);
  const isLeak = what?.startsWith("leak") === true || inHeadings(seen, kindNamed).has("leak-down");
  const percent: readonly SheetUnit[] = isLeak || carried.includes("%") ? ["%", "% held"] : [];
  const usual: readonly SheetUnit[] = ["psi", "bar", "kPa", "kgf/cm2"];
  const ways = others.length > 0 ? [...named.keys()] : [...new Set([...carried, ...percent, ...usual])];
  const bare = seen.cells.find(({ text }) => sheetUnitNamed(cellUnit.exec(text)?.[1] ?? "") === undefined);
  const open = carried.length > 0 ? (bare ?? cell) : cell;
  const text =
    others.length > 0
      ? `the headings name ${[...named.values()].map(quotedCell).join(" and ")}`
      : `nothing says in which unit ${open === undefined ? "the readings" : quotedCell(open)} was read`;
  return asked("unit", text, {
    entry: "unit",
    option: "--unit",
    ways: ways.map((one) => [
      one,
      `"unit": { "fixed": "${one}" }`,
      `--unit ${one.includes(" ") ? `"${one}"` : one}`,
    ]),
    ...(open === undefined ? {} : { place: placeIn(seen.sheet, open) }),
  });
};

/** Percent is lost or held; where the heading does not say which, it is asked. */
const percentOpen = (seen: Seen, [unit, cell]: readonly [SheetUnit, SheetText]): Guess => {
  const says = `readings in ${unit}: ${quotedCell(cell)}`;
  const isSaid = /lost|loss|leak|verlust|perte|perdita|fuga|fuite|lek|utsläpp|läck|held|retain/i.test(
    seen.shape.headings.flatMap(({ cells }) => cells.map(({ text }) => text)).join(" "),
  );
  if (unit !== "%" || isSaid) return settled({ unit: { fixed: unit } }, "unit", says);
  return asked("percent", `${quotedCell(cell)} does not say whether the percent are lost or held`, {
    entry: "unit",
    option: "--unit",
    ways: [
      ["lost: 0 is tight", '"unit": { "fixed": "%" }', "--unit %"],
      ["held: 100 is tight", '"unit": { "fixed": "% held" }', '--unit "% held"'],
    ],
    place: placeIn(seen.sheet, cell),
  });
};

/** The kind of reading; one that was typed fills a gap. @param unit - as it was guessed */
export const guessKind = (seen: Seen, unit: Guess, { what }: ImportHints): Guess => {
  const told = what === undefined ? undefined : kindNamed(what);
  const said = saidKind(seen, unit);
  if (told === undefined) return said;
  // "Compression" alone says nothing of oil or of how it was run; a leak-down may be one with oil.
  const read = (text: string): ReturnType<typeof kindNamed> =>
    kindNamed(text) === "dry" && !isDryByWord(text) && !told.startsWith("leak") ? undefined : kindNamed(text);
  const isSame = (one: ReturnType<typeof kindNamed>): boolean =>
    one === told || (one === "leak-down" && told.startsWith("leak"));
  const own = said.map.what;
  const heading = [...inHeadings(seen, read).keys()];
  const isFixed = own !== undefined && "fixed" in own;
  const isFit = isFixed ? heading.length === 0 || heading.some(isSame) : true;
  return isFit && isGap(seen, isFixed ? undefined : own, { read, isSame })
    ? settled({ what: { fixed: told } }, "what", `${told} readings, as you said`)
    : otherwise(seen, said, { entry: "what", told });
};

const isDryByWord = (text: string): boolean => /dry|trocken|sec|droog|sucho|torr/i.test(text);

const saidKind = (seen: Seen, { map: { unit }, open }: Guess): Guess => {
  const isPercent = open.some(({ code }) => code === "percent");
  const column = seen.shape.columns.find(
    ({ role, index }) =>
      role === "what" &&
      seen.shape.data.some(({ cells }) => kindNamed(cells[index]?.text ?? "") !== undefined),
  );
  if (column !== undefined)
    return settled(
      { what: { column: columnLetters(column.index) } },
      "what",
      `column ${columnLetters(column.index)} has the kinds of reading`,
    );
  const above = rowOf(seen, (text) => kindNamed(text) !== undefined);
  const kinds = inHeadings(seen, kindNamed);
  const specific = new Map([...kinds].filter(([kind]) => kind !== "dry" || kinds.size === 1));
  const [first, ...others] = [...(above === undefined ? specific : kinds)];
  if (above !== undefined && others.length > 0)
    return settled(
      { what: { headerRow: above.row.row, ...(above.fill ? { fill: true } : {}) } },
      "what",
      `row ${String(above.row.row)} has the kinds of reading`,
    );
  if (first !== undefined && others.length === 0) {
    const [kind, cell] = first;
    const plain = kind === "dry" && !isDryByWord(cell.text);
    const says = `${kind} readings: ${quotedCell(cell)}`;
    const guess = { what: { fixed: kind } };
    return plain
      ? assumed(guess, "what", `${says}, and nothing is said of oil`)
      : settled(guess, "what", says);
  }
  if (isPercent || (unit !== undefined && "fixed" in unit && unit.fixed.startsWith("%")))
    return assumed({ what: { fixed: "leak-down" } }, "what", "leak-down readings: only they are in percent");
  const [cell] = seen.cells;
  const ways = others.length > 0 ? [...kinds.keys()] : (["dry", "wet", "leak-down"] as const);
  const text =
    others.length > 0
      ? `the headings name ${[...kinds.values()].map(quotedCell).join(" and ")}`
      : "nothing says what kind of reading this is";
  return asked("what", text, {
    entry: "what",
    option: "--what",
    ways: ways.map((one) => [one, `"what": { "fixed": "${one}" }`, `--what ${one}`]),
    ...(cell === undefined ? {} : { place: placeIn(seen.sheet, cell) }),
  });
};

/** Columns that hold what may stand beside a reading. */
export const guessExtras = ({ shape, columns }: Seen, hints: ImportHints): Guess => {
  const free = shape.columns.filter(({ index }) => !columns.includes(index));
  const ofRole = (["take", "gauge", "meter", "by", "note"] as const).flatMap(
    (role): readonly (readonly [string, Source])[] => {
      const column = free.find((one) => one.role === role);
      const told = role === "gauge" || role === "by" ? hints[role] : undefined;
      if (told !== undefined) return [[role, { fixed: told }]];
      return column === undefined ? [] : [[role, { column: columnLetters(column.index) }]];
    },
  );
  const conditions = free.flatMap(({ condition, index }) =>
    condition !== undefined ? [[condition, { column: columnLetters(index) }] as const] : [],
  );
  if (ofRole.length + conditions.length === 0) return silent;
  return {
    map: {
      ...Object.fromEntries(ofRole),
      ...(conditions.length === 0 ? {} : { conditions: Object.fromEntries(conditions) }),
    },
    open: [],
    why: ofRole.flatMap(([entry, source]) =>
      "column" in source ? [{ entry, text: `column ${source.column} ${extraWords[entry] ?? ""}` }] : [],
    ),
  };
};

const extraWords: Readonly<Record<string, string>> = {
  take: "numbers the takes",
  gauge: "names the gauges",
  meter: "has the meter readings",
  by: "says who measured",
  note: "has the notes",
};
