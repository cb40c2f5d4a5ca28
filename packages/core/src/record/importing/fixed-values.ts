// What may be fixed for a whole sheet: it is checked before the first reading, as no cell of the sheet could be blamed for it.

import { leakKinds } from "../test-rows.ts";
import { isIsoDate } from "../row-view.ts";
import type { ImportMap } from "./import-map.ts";
import { sheetUnitNamed } from "./reading-text.ts";
import { cylinderNamed, ignitionNamed, kindNamed, plainText } from "./sheet-words.ts";

interface Fixed {
  readonly fits: (text: string) => boolean;
  readonly expected: string;
}

const kinds: ReadonlyMap<string, Fixed> = new Map([
  [
    "unit",
    {
      fits: (text) => sheetUnitNamed(text) !== undefined,
      expected: "psi, kPa, bar, MPa, kgf/cm2, % or % held",
    },
  ],
  [
    "what",
    {
      fits: (text) => kindNamed(text) !== undefined,
      expected: "dry, wet, first-stroke, running, snap-throttle or leak-down",
    },
  ],
  ["ignition", { fits: (text) => ignitionNamed(text) !== undefined, expected: "spark or compression" }],
  ["date", { fits: isIsoDate, expected: "a day such as 2026-05-03" }],
  ["take", { fits: (text) => /^[1-9]\d?$/.test(text), expected: "1, 2, 3 …" }],
  [
    "cylinder",
    {
      fits: (text) => cylinderNamed(text) !== undefined || /^\w{1,4}$/.test(text),
      expected: "the label of a cylinder",
    },
  ],
]);

/** What should stand there; undefined where a text can be fixed for an attribute. */
export const fixedExpected = (attribute: string, text: string): string | undefined => {
  const kind = kinds.get(attribute);
  return kind === undefined || kind.fits(text.trim()) ? undefined : kind.expected;
};

/** The first fixed entry that does not go with the rest of its map, and what would. */
export const fixedMisfit = (
  map: ImportMap,
): { readonly field: string; readonly text: string; readonly expected: string } | undefined => {
  const fixed = (name: "engine" | "cylinder" | "what" | "unit"): string | undefined => {
    const source = map[name];
    return source !== undefined && "fixed" in source ? source.fixed : undefined;
  };
  const [engine, cylinder, what, unit] = [fixed("engine"), fixed("cylinder"), fixed("what"), fixed("unit")];
  const misfit = (field: string, text: string, expected: string) => ({
    field: `${field}.fixed`,
    text,
    expected,
  });
  if (engine !== undefined && !map.engines.some(({ sheet }) => plainText(sheet) === plainText(engine)))
    return misfit("engine", engine, "a name that stands in the list engines of the map");
  const without = map.engines.find(
    ({ engine: id, cylinders }) =>
      id !== "" && cylinder !== undefined && cylinders.length > 0 && !cylinders.includes(cylinder),
  );
  if (without !== undefined && cylinder !== undefined)
    return misfit(
      "cylinder",
      cylinder,
      `one of the cylinders of ${without.engine}: ${without.cylinders.join(", ")}`,
    );
  const kind = what === undefined ? undefined : kindNamed(what);
  const isPressure = kind !== undefined && !leakKinds.some((one) => one === kind);
  return isPressure && unit?.startsWith("%") === true
    ? misfit("unit", unit, `a pressure: only a leak-down is read in percent, and what is fixed as ${kind}`)
    : undefined;
};
