// How likely the engine as a whole is to stay above its limits: its weakest cylinder, and what that says of all.

import { horizons, type EngineStay } from "./chances.ts";
import type { CylinderHistory } from "./result.ts";

/** The weakest cylinder at each horizon that every limit of every cylinder has, with the bounds of Frechet: contrasts
 *  depend on each other, so a product would claim too much.
 *  @returns nothing where a cylinder has no chance of its own, or where its line cannot be drawn on
 *  @source handbook/statistics.md E */
export const weakestCylinder = (cylinders: readonly CylinderHistory[]): readonly EngineStay[] => {
  if (cylinders.some((one) => !hasLine(one))) return [];
  const all = cylinders.flatMap(({ label, stays, absolute }) =>
    [stays, absolute?.stays ?? []]
      .filter((limit) => limit.length > 0)
      .map((limit) => ({ label, stays: limit })),
  );
  return horizons.flatMap((ahead) => {
    const then = all.flatMap(({ label, stays }) =>
      stays.flatMap(({ ahead: years, probability }) => (years === ahead ? [{ label, probability }] : [])),
    );
    const [weakest] = then.toSorted((a, b) => a.probability - b.probability);
    if (weakest === undefined || then.length < all.length) return [];
    const open = then.reduce((sum, { probability }) => sum + 1 - probability, 0);
    return [{ ahead, ...weakest, allAtLeast: Math.max(0, 1 - open) }];
  });
};

/** Whether it has a chance, did not go in one step and is not doubted by its last reading alone. */
const hasLine = ({ course, shape, alarms, change, stays, absolute }: CylinderHistory): boolean =>
  stays.length + (absolute?.stays?.length ?? 0) > 0 &&
  course !== "stepped-down" &&
  course !== "stepped-up" &&
  shape?.shape !== "sudden" &&
  !alarms.includes("no-compression") &&
  !(alarms.length === 0 && change?.flagged === true);
