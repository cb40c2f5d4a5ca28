// Which figures decide where one thing was measured in two ways, or a limit says what is wanted and not what may stay.

import type { Engine } from "../../record/index.ts";
import type { TeardownItem } from "../teardown.ts";

/** @param items - of parts as they are now, measured and derived */
export const decidingFigures = (
  items: readonly TeardownItem[],
  engine: Pick<Engine, "clearances">,
): readonly TeardownItem[] =>
  items.filter((item) => !isKnownBetter(item, items) && !isOnlyWanted(item, engine) && !isRaw(item));

/** A clearance by thread gives way to bearing less journal where that is known better, and the reverse. */
const isKnownBetter = (item: TeardownItem, items: readonly TeardownItem[]): boolean =>
  isOilClearance(item) &&
  items.some(
    (other) =>
      isOilClearance(other) &&
      other.part === item.part &&
      other.label === item.label &&
      other.quantity !== item.quantity &&
      other.waits === undefined &&
      (other.uncertainty < item.uncertainty || item.waits !== undefined),
  );

const isOilClearance = ({ part, quantity }: TeardownItem): boolean =>
  (part === "main bearing" || part === "rod bearing") &&
  (quantity === "clearance" || quantity === "thread clearance");

/** A bore past its new size is worn; whether it may stay is for the wear limits to say, where the maker gives any. */
const isOnlyWanted = (
  { part, quantity, state }: TeardownItem,
  { clearances }: Pick<Engine, "clearances">,
): boolean =>
  part === "bore" &&
  quantity === "diameter" &&
  state !== "new part" &&
  state !== "after machining" &&
  clearances.some((limit) => limit.part === "bore" && limit.wear !== undefined) &&
  !clearances.some(
    (limit) => limit.part === "bore" && limit.quantity === "diameter" && limit.wear !== undefined,
  );

/** What only serves to work out another figure: gaps of a face, what a stem rocks, the bore before it wore. */
const isRaw = ({ part, quantity, at }: TeardownItem): boolean =>
  ((part === "head" || part === "deck") && quantity === "gap") ||
  (part === "guide" && quantity === "rocking") ||
  at?.startsWith("unworn") === true;
