// The kind of reading: only a word of the sheet or of the command line settles it, or cells that can be nothing else.

import { type Guess, asked, assumed, placeIn, quotedCell, settled } from "./guess-parts.ts";
import { columnLetters } from "./columns.ts";
import type { ImportHints } from "./imported.ts";
import { inHeadings, kindBesideNone, kindColumn, rowOf } from "./seen-headings.ts";
import { kindNamed } from "./sheet-words.ts";
import { type Seen, isGap, otherwise } from "./typed-and-said.ts";

/** The kind of reading; one that was typed fills a gap. @param unit - as it was guessed */
export const guessKind = (seen: Seen, unit: Guess, { what }: ImportHints): Guess => {
  const told = what === undefined ? undefined : kindNamed(what);
  const mixed = kindBesideNone(seen);
  const hasColumn = kindColumn(seen.shape) !== undefined;
  if (mixed !== undefined && !hasColumn && rowOf(seen, (text) => kindNamed(text) !== undefined) === undefined)
    return mixedKinds(seen, mixed);
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

/** What stands beside a kind without one is most likely dry; which, only its owner can write. */
const mixedKinds = ({ sheet }: Seen, { kind, none }: NonNullable<ReturnType<typeof kindBesideNone>>): Guess =>
  asked("what", `${quotedCell(kind)} says its kind, and ${quotedCell(none)} does not`, {
    entry: "what",
    ways: [
      ["those without are dry", `write dry in each of them: ${JSON.stringify(`${none.text} dry`)}`],
      ["they are of the same kind", `write it in each of them, as in ${JSON.stringify(kind.text)}`],
    ],
    place: placeIn(sheet, none),
  });

const isDryByWord = (text: string): boolean => /dry|trocken|sec|droog|sucho|torr/i.test(text);

const saidKind = (seen: Seen, { map: { unit }, open }: Guess): Guess => {
  const isPercent = open.some(({ code }) => code === "percent");
  const column = kindColumn(seen.shape);
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
  const isPairs = seen.cells.length > 0 && seen.cells.every(({ text }) => text.includes("/"));
  const supplies = new Set(seen.cells.map(({ text }) => text.replace(/^[^/]*/, "")));
  if (others.length === 0 && isPairs && supplies.size === 1 && seen.cells.length > 2 && cell !== undefined)
    return assumed(
      { what: { fixed: "leak-down" } },
      "what",
      `leak-down readings: ${quotedCell(cell)} is what was held of a supply that is the same in each`,
    );
  const usual = isPairs
    ? (["leak-down", "leak-down-oiled"] as const)
    : (["dry", "wet", "leak-down"] as const);
  const ways = others.length > 0 ? [...kinds.keys()] : usual;
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
