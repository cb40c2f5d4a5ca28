// A note in words, and what it stands beside.

import { type Engine, type Note, burnsOil, readNumber } from "@sealtrend/core/parts";
import { clean } from "./clean.ts";
import { wrapText } from "./table.ts";
import { cylinders } from "./words.ts";

/** `oil use 0.4 L/1000km, cylinder 3`. */
export const noteWords = ({ what, value, unit, cylinders: labels }: Note): string => {
  const said = [what, value, unit].flatMap((part) => (part === undefined ? [] : [clean(part)])).join(" ");
  return labels.length === 0 ? said : `${said}, ${cylinders(labels).toLowerCase()}`;
};

const byDesign =
  "Kept, but no sign of wear here: a two-stroke that gets its oil with the fuel, or injected, burns it by design.";

/** The last note of the same kind before it, or how a first figure becomes a trend; lines without line ends. */
export const noteLines = (
  note: Note,
  earlier: readonly Note[],
  engine: Engine,
  width: number,
): readonly string[] => {
  const same = earlier.filter(
    ({ what, date, cylinders: labels }) =>
      what === note.what && date <= note.date && labels.join(" ") === note.cylinders.join(" "),
  );
  const before = same.at(-1);
  if (burnsOil(engine) && (note.what === "oil use" || (note.what === "smoke" && note.value === "blue")))
    return ["", ...wrapText(byDesign, width)];
  if (before !== undefined) return ["", ...wrapText(`before, ${before.date}: ${noteWords(before)}`, width)];
  if (note.value === undefined || !readNumber(note.value).ok) return [];
  const next = `the same figure in a year shows whether it grows: sealtrend note ${engine.id} --what "${note.what}"`;
  return ["", ...wrapText(next, width, "next   ")];
};
