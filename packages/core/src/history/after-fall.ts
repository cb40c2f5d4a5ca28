// What followed a fall in the first tests, for which there are too few to tell a step from a line: it went on, or it came back.

import { at } from "./at.ts";
import type { CylinderHistory } from "./result.ts";
import { returnOf } from "./return-of.ts";
import type { Series } from "./series.ts";

/** Part of the fall that the last test has to read lower again; judgement. */
const further = 1 / 3;

type Fall = Pick<CylinderHistory, "course" | "alarms" | "early"> & {
  readonly shape?: CylinderHistory["shape"] | undefined;
};

export type AfterFall = Pick<CylinderHistory, "wentOn" | "cameBack" | "lowAgain">;

/** Neither where it stayed as low, or nothing fell. Tests that are shown but do not count say nothing of it.
 *  @param cell - s0^2 of one cell */
export const afterFall = (
  { course, alarms, early, shape }: Fall,
  series: Series,
  cell: number,
): AfterFall => {
  if (course !== "stepped-down" || early === undefined || alarms.includes("no-compression")) return {};
  const { tests, contrasts } = series;
  const { back, again } = returnOf(series, early, cell);
  const lowAgain = again === undefined ? {} : { lowAgain: again };
  if (back !== undefined) return { ...lowAgain, cameBack: back };
  const last = tests.length - 1;
  if (again !== undefined || shape?.shape === "sudden") return lowAgain;
  const fallen = at(contrasts, tests.indexOf(early.test)) - at(contrasts, last);
  return fallen < Math.abs(early.change) * further ? {} : { wentOn: at(tests, last) };
};
