// A crank that was ground before it came apart: every journal of a kind lies where an undersize puts it, and none where the
// maker made it.

import { type Length, length } from "../../quantity/index.ts";
import type { Engine, LengthUnit, LimitPair } from "../../record/index.ts";
import { standardSize } from "../standard-size.ts";
import { isFresh } from "./limits.ts";
import type { Reading } from "./reading.ts";

export type Journal = "main" | "pin";

export interface GroundBefore {
  readonly part: Journal;
  /** Below 0. [m] */
  readonly size: Length;
  readonly unit: LengthUnit;
  /** How many diameters say so. */
  readonly readings: number;
}

/** So much may all journals of a crank wear, and no undersize is looked for in it: 0.1 mm (judgement). */
const wornAllOver = 0.1e-3;

/** Standard uncertainties that a figure may lie outside of its range (judgement). */
const play = 2;

/** Undefined too where an undersize and a crank that is worn all over could not be told apart.
 *  @param readings - of the parts as they are now, without those that contradict each other
 *  @source undersize ranges shift: TM 5-3805-262-34 p. 4-24; the rest judgement */
export const groundBefore = (
  part: Journal,
  readings: readonly Reading[],
  engine: Pick<Engine, "clearances" | "offered">,
): GroundBefore | undefined => {
  const own = readings
    .map(({ item }) => item)
    .filter((item) => item.part === part && item.quantity === "diameter" && !isFresh(item));
  const range = rangeOf(part, engine);
  const [first] = own;
  if (first === undefined || range === undefined) return undefined;
  const { low, high, sound } = range;
  const size = (engine.offered[part]?.sizes ?? [])
    .filter((one) => high - one < Math.min(low, sound - wornAllOver))
    .toSorted((a, b) => a - b)
    .find((one) =>
      own.every(
        ({ value, uncertainty }) =>
          value >= low - one - play * uncertainty && value <= high - one + play * uncertainty,
      ),
    );
  return size === undefined
    ? undefined
    : { part, size: length(-1 * size), unit: first.unit, readings: own.length };
};

interface Range {
  /** By the wear limit where there is one. [m] */
  readonly low: number;
  readonly high: number;
  /** Low end of the new limit. [m] */
  readonly sound: number;
}

const rangeOf = (part: Journal, { clearances }: Pick<Engine, "clearances">): Range | undefined => {
  const own = clearances.filter((limit) => limit.part === part && limit.quantity === "diameter");
  const [sound, high] = ends(standardSize(part, { clearances }));
  if (sound === undefined || high === undefined) return undefined;
  const wear = own.find((limit) => limit.wear?.low !== undefined)?.wear?.low;
  return { low: Math.min(wear ?? sound, sound), high, sound };
};

const ends = (pair: LimitPair | undefined) => [pair?.low ?? pair?.high, pair?.high ?? pair?.low] as const;
