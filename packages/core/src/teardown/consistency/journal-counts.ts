// How many mains, pins and big ends to expect of this engine: as its owner counted, else as its banks let expect.

import type { Engine } from "../../record/index.ts";
import { type Journals, type Layout, usualJournals } from "./usual-journals.ts";

export interface ExpectedJournals extends Journals {
  readonly bigEnds: number;
  readonly mainsFrom: "layout" | "usual for the layout";
  readonly pinsFrom: "layout" | "usual for the layout";
  /** Other counts that engines with such banks have; empty where they leave no doubt. */
  readonly otherMains: readonly number[];
  readonly otherPins: readonly number[];
}

type Shaped = Pick<Engine, "banks" | "cylinders" | "layout" | "use">;

/** Two banks may be a V or flat, and a V may have its pins split: the usual one stands first, the others beside it. */
export const expectedJournals = (engine: Shaped): ExpectedJournals => {
  const [first, ...others] = possible(engine);
  const { mains, pins } = engine.layout;
  const rest = (of: keyof Journals): readonly number[] => [
    ...new Set(others.map((one) => one[of]).filter((count) => count !== first[of])),
  ];
  return {
    mains: mains ?? first.mains,
    pins: pins ?? first.pins,
    mainsFrom: mains === undefined ? "usual for the layout" : "layout",
    pinsFrom: pins === undefined ? "usual for the layout" : "layout",
    otherMains: mains === undefined ? rest("mains") : [],
    otherPins: pins === undefined ? rest("pins") : [],
    bigEnds: bigEnds(engine),
  };
};

/** The pin that a cylinder's rod sits on, by their numbers; undefined where the banks do not tell. Rods in pairs: the first of
 *  each bank on pin 1, and so on. */
export const pinOf = (engine: Shaped, label: string): string | undefined => {
  const { pins } = expectedJournals(engine);
  if (pins === engine.cylinders.length) return label;
  if (engine.banks.length !== 2 || pins * 2 !== engine.cylinders.length) return undefined;
  const at = engine.banks.map((bank) => bank.indexOf(label)).find((place) => place >= 0);
  return at === undefined ? undefined : String(at + 1);
};

const possible = (engine: Shaped): readonly [Journals, ...Journals[]] => {
  const n = engine.cylinders.length;
  const rows = engine.banks.length;
  const of = (layout: Layout): Journals => usualJournals(layout, n, rows);
  if (rows <= 1) return [of("inline")];
  if (isRadial(engine)) return [of("radial")];
  // three rows and more that are no radial: rods side by side on as many pins as a row is long
  if (rows > 2) return [usualJournals("inline", Math.max(...engine.banks.map((bank) => bank.length)))];
  // of two banks most with eight cylinders and more are a V with rods in pairs, those of aircraft and of four are flat (judgement)
  if (engine.use === "aircraft" || n === 4) return [of("flat"), of("v")];
  if (n >= 8) return [of("v")];
  return [of("v"), of("v-own-pins"), of("flat")];
};

/** Rows of an odd number each, three or more of them; one or two such rows cannot be told from an inline or a V engine. */
const isRadial = ({ banks }: Pick<Shaped, "banks">): boolean =>
  banks.length >= 3 && banks.every(({ length }) => length >= 3 && length % 2 === 1);

/** A rod has a big end; of a radial only the master rod of each row. Fewer pins than half of the cylinders, by the owner's
 *  count, are those of a radial too. */
const bigEnds = ({ layout: { pins }, ...engine }: Shaped): number => {
  if (pins !== undefined && pins * 2 < engine.cylinders.length) return pins;
  return isRadial(engine) ? engine.banks.length : engine.cylinders.length;
};
