// What a heading says beside its own word: a unit, a kind of reading.

import { remembered } from "./remembered.ts";
import { type SheetUnit, sheetUnitNamed } from "./reading-text.ts";

/** A heading such as `Dry 1 (psi)` without what it says beside the cylinder. */
export const withoutUnitAndKind = remembered((text: string): string =>
  text
    .replace(/[([].*?[)\]]/g, " ")
    .replace(
      /(?<![\p{L}\d])(?:psi|psig|kpa|bar|mpa|kgf?\/cm[2²]|%|dry|wet|trocken|nass|leak[ -]?down|leak|compression|comp|kompression)(?![\p{L}\d])/giu,
      " ",
    )
    .trim(),
);

const supply = /(?:\bat|@) ?(\d{1,3}(?:[.,]\d{1,2})?) ?(psi|kpa|bar)g?(?![\p{L}\d])/iu;

/** The supply that a heading such as `Leak-down % at 80 psi` names, by its column of tests.csv. */
export const supplyIn = (text: string): { readonly column: string; readonly text: string } | undefined => {
  const [, figure = "", named = ""] = supply.exec(text) ?? [];
  const unit = sheetUnitNamed(named);
  return unit === undefined ? undefined : { column: `regulated_${unit}`, text: figure.replace(",", ".") };
};

/** The unit that a heading names: alone, in brackets, or as a word of its own; not that of a supply. */
export const unitIn = remembered((heading: string): SheetUnit | undefined => {
  const text = heading.replace(supply, " ").trim();
  const whole = sheetUnitNamed(text);
  if (whole !== undefined) return whole;
  if (/%|percent|pct/i.test(text)) return /held|retain|left/i.test(text) ? "% held" : "%";
  const inside = [
    ...text.slice(0, 200).matchAll(/(?<![\p{L}\d])(psig?|kpa|bar|mpa|kgf?\/cm[2²])(?![\p{L}\d])/giu),
  ];
  const units = new Set(inside.map(([, word = ""]) => sheetUnitNamed(word)));
  return units.size === 1 ? [...units][0] : undefined;
});
