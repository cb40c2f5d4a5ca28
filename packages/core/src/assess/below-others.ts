// How far one cylinder reads below its fellows, dry.

import { median } from "../statistics/index.ts";
import { type CylinderPressures, comparedPressure, isCompared } from "./values/pressure-values.ts";

/** 1 - reading / median of the other cylinders that hold something. */
export const belowOthers = (
  pressures: readonly CylinderPressures[],
  cylinder: number,
): number | undefined => {
  const own = pressures[cylinder]?.dry;
  const others = pressures.flatMap(({ dry }, i) =>
    i !== cylinder && isCompared(dry) && dry.value > 0 ? [comparedPressure(dry)] : [],
  );
  return isCompared(own) && others.length > 0 ? 1 - comparedPressure(own) / median(others) : undefined;
};
