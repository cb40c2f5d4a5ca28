// The over- or undersize that a part has: its limits are those of the standard part, shifted by it.

import { type Length, length } from "../../quantity/index.ts";
import type { Engine } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import { alreadyBored } from "../figures/index.ts";
import { standardSize } from "../standard-size.ts";
import type { TeardownItem } from "../teardown.ts";
import type { GroundBefore } from "./ground-before.ts";
import { isFresh } from "./limits.ts";
import type { Reading } from "./reading.ts";
import { isUnworn } from "./round-parts.ts";

/** Above 0: bored; below: ground. Undefined of a part of standard size. [m] */
export type SizeOf = (
  item: Pick<TeardownItem, "part" | "label" | "state" | "quantity">,
) => Length | undefined;

/** How near its range a machined part has to be to be of that size: 0.05 mm, judgement. */
const near = 0.05e-3;

/** A new or machined part tells its size by itself, else by its fellows; a worn bore, and its piston, by what never wore.
 *  A worn journal tells only together with all the others.
 *  @param readings - of all states
 *  @source undersize ranges shift: TM 5-3805-262-34 p. 4-24; bored already: handbook/teardown.md 2.2 (judgement) */
export const sizesOf =
  (readings: readonly Reading[], engine: Engine, ground: readonly GroundBefore[]): SizeOf =>
  (item) => {
    const { part, label, state, quantity } = item;
    if (
      quantity !== "diameter" ||
      (part !== "bore" && part !== "piston" && part !== "main" && part !== "pin")
    )
      return undefined;
    if (!isFresh(item))
      return part === "bore" || part === "piston"
        ? boredSize(readings, engine, label)
        : ground.find((one) => one.part === part)?.size;
    const fellows = readings.filter(
      (one) => one.item.part === part && one.item.quantity === quantity && one.item.state === state,
    );
    const own = fellows.filter((one) => one.item.label === label);
    return machinedSize(own, part, engine) ?? machinedSize(fellows, part, engine);
  };

type Machined = "bore" | "piston" | "main" | "pin";

/** Undefined for standard too: nearer to that than to any size. */
const machinedSize = (readings: readonly Reading[], part: Machined, engine: Engine): Length | undefined => {
  const standard = standardSize(part, engine);
  const [low, high] = [standard?.low ?? standard?.high, standard?.high ?? standard?.low];
  if (readings.length === 0 || low === undefined || high === undefined) return undefined;
  const value = median(readings.map(({ item }) => item.value));
  const sizes = engine.offered[part === "piston" ? "bore" : part]?.sizes ?? [];
  const sign = part === "main" || part === "pin" ? -1 : 1;
  const off = (shift: number): number => Math.max(0, low + shift - value, value - (high + shift));
  const [nearest = 0] = [0, ...sizes.map((size) => sign * size)].toSorted((a, b) => off(a) - off(b));
  return nearest === 0 || off(nearest) > near ? undefined : length(nearest);
};

/** What the unworn spot of this bore looks like, else those of the others. */
const boredSize = (
  readings: readonly Reading[],
  engine: Engine,
  label: string | undefined,
): Length | undefined => {
  const unworn = readings.filter(
    (reading) => reading.item.part === "bore" && isUnworn(reading) && !isFresh(reading.item),
  );
  const own = unworn.filter(({ item }) => item.label === label);
  const used = own.length > 0 ? own : unworn;
  const low = standardSize("bore", engine)?.low ?? engine.geometry.bore;
  const offered = engine.offered.bore;
  if (used.length === 0 || low === undefined || offered === undefined) return undefined;
  return alreadyBored(length(median(used.map(({ item }) => item.value))), low, offered.sizes);
};
