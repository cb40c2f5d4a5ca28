// The unit of the readings: only a word of the sheet or of the command line settles it, never the size of a number.

import {
  type Guess,
  type SheetText,
  asked,
  joined,
  placeIn,
  quotedCell,
  settled,
  silent,
} from "./guess-parts.ts";
import { columnLetters } from "./columns.ts";
import { unitIn } from "./heading-text.ts";
import type { ImportHints } from "./imported.ts";
import { ownUnitOf } from "./own-units.ts";
import { type SheetUnit, sheetUnitNamed } from "./reading-text.ts";
import { inHeadings, kindColumn, rowOf } from "./seen-headings.ts";
import { kindNamed } from "./sheet-words.ts";
import { type Seen, isGap, otherwise } from "./typed-and-said.ts";

/** The unit that a reading names itself, in its cell or in the name of its kind. */
const ownUnit = ({ shape }: Seen): ((cell: SheetText) => SheetUnit | undefined) => {
  const kinds = kindColumn(shape)?.index ?? -1;
  return ({ text, row }) => ownUnitOf(text, row.cells[kinds]?.text ?? "");
};

/** The unit of the readings; one that was typed fills a gap, and goes before nothing that the sheet says. */
export const guessUnit = (seen: Seen, hints: ImportHints): Guess => {
  const told = hints.unit === undefined ? undefined : sheetUnitNamed(hints.unit);
  const said = saidUnit(seen, hints);
  if (told === undefined) return said;
  const isSame = (one: SheetUnit | undefined): boolean =>
    one === told || (one !== undefined && one.startsWith("%") && told.startsWith("%"));
  return isGap(seen, said.map.unit, { read: unitIn, isSame })
    ? joined([
        settled({ unit: { fixed: told } }, "unit", `readings in ${told}, as you said`),
        told.startsWith("%") ? silent : percentBeside(seen),
      ])
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
  const ownOf = ownUnit(seen);
  const inCells = new Set(seen.cells.map(ownOf));
  const [only] = inCells;
  const [cell] = seen.cells;
  const carried = [...inCells].filter((one) => one !== undefined);
  if (first === undefined && only !== undefined && inCells.size === 1 && cell !== undefined)
    return percentOpen(seen, [only, cell]);
  if (first === undefined && carried.length === inCells.size && cell !== undefined)
    return joined([
      settled({}, "unit", `each reading names its own unit: ${carried.join(", ")}`),
      percentBeside(seen),
    ]);
  const isLeak = what?.startsWith("leak") === true || inHeadings(seen, kindNamed).has("leak-down");
  const percent: readonly SheetUnit[] = isLeak ? ["%", "% held"] : [];
  const units = carried.filter((one) => !one.startsWith("%"));
  const usual: readonly SheetUnit[] = ["psi", "bar", "kPa", "kgf/cm2"];
  const ways = others.length > 0 ? [...named.keys()] : [...new Set([...units, ...percent, ...usual])];
  const open = seen.cells.find((one) => ownOf(one) === undefined) ?? cell;
  const rest = carried.length === 0 ? "" : `; ${carried.join(" and ")} stand beside others`;
  const text =
    others.length > 0
      ? `the headings name ${[...named.values()].map(quotedCell).join(" and ")}`
      : `nothing says in which unit ${open === undefined ? "the readings were" : `${quotedCell(open)} was`} read${rest}`;
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

const saysLost = /lost|loss|leak|verlust|perte|perdita|fuga|fuite|lek|utsläpp|läck|held|retain/i;

/** Whether a heading, or the name of a kind with its unit, says whether percent are lost or held. */
const isLostSaid = ({ shape }: Seen): boolean => {
  const kinds = kindColumn(shape)?.index ?? -1;
  const named = shape.data
    .map(({ cells }) => cells[kinds]?.text ?? "")
    .filter((text) => unitIn(text) !== undefined);
  return saysLost.test(
    [...shape.headings.flatMap(({ cells }) => cells.map(({ text }) => text)), ...named].join(" "),
  );
};

/** Percent beside readings in other units: only the sheet can say whether they are lost or held. */
const percentBeside = (seen: Seen): Guess => {
  const ownOf = ownUnit(seen);
  const cell = seen.cells.find((one) => ownOf(one) === "%");
  if (cell === undefined || isLostSaid(seen)) return silent;
  return asked("percent", `${quotedCell(cell)} does not say whether the percent are lost or held`, {
    entry: "unit",
    ways: [
      ["lost: 0 is tight", "write the kind of these readings as leak-down % lost in the sheet"],
      ["held: 100 is tight", "write the kind of these readings as leak-down % held in the sheet"],
    ],
    place: placeIn(seen.sheet, cell),
  });
};

/** Percent is lost or held; where the heading does not say which, it is asked. */
const percentOpen = (seen: Seen, [unit, cell]: readonly [SheetUnit, SheetText]): Guess => {
  const says = `readings in ${unit}: ${quotedCell(cell)}`;
  if (unit !== "%" || isLostSaid(seen)) return settled({ unit: { fixed: unit } }, "unit", says);
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
