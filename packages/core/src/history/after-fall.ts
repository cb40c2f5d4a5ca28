// What followed a fall in the first tests, for which there are too few to tell a step from a line: it went on, or it came back.

import type { CylinderHistory, HistoryTestUsed } from "./result.ts";

/** Part of the fall that the last test has to read lower again, and part that it may still be low where it came back;
 *  judgement. */
const [again, left] = [1 / 3, 1 / 2];

type Fall = Pick<CylinderHistory, "course" | "alarms" | "early"> & {
  readonly shape?: CylinderHistory["shape"] | undefined;
};

export type AfterFall = Pick<CylinderHistory, "wentOn" | "cameBack">;

/** Neither where it stayed as low, or nothing fell.
 *  @param ratiosOf - its ratios, by test; asked for where they matter */
export const afterFall = (
  { course, alarms, early, shape }: Fall,
  tests: readonly Pick<HistoryTestUsed, "use">[],
  ratiosOf: () => CylinderHistory["ratios"],
): AfterFall => {
  if (course !== "stepped-down" || early === undefined || alarms.includes("no-compression")) return {};
  const ratios = ratiosOf();
  const counts = (ratio: number | undefined, i: number): boolean =>
    ratio !== undefined && tests[i]?.use === "full";
  const before = ratios.findLast((ratio, i) => i < early.test && counts(ratio, i));
  const counted = ratios.findLastIndex(counts);
  const now = ratios[counted];
  if (before !== undefined && now !== undefined && now - before > early.change * left)
    return { cameBack: counted };
  const place = ratios.findLastIndex((ratio) => ratio !== undefined);
  const [first, last] = [ratios[early.test], ratios[place]];
  if (shape !== undefined || first === undefined || last === undefined) return {};
  return first - last < Math.abs(early.change) * again ? {} : { wentOn: place };
};
