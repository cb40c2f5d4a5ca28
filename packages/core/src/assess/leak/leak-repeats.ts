// Repeats of one leak-down reading: how far apart they lie, and whether each of them says the same by itself. The mean of
// two that contradict each other is no reading.

import type { EngineRecord, Test } from "../../record/index.ts";
import type { EngineFigures } from "../figures.ts";
import { isFlaggedAlone } from "../flags.ts";
import type { RepeatsWord } from "../values/repeats-apart.ts";
import { valuesOf } from "../values/values.ts";
import { areTakesApart, takesLost } from "./leak-takes.ts";

/** How the takes of each cylinder stand to each other. */
export interface LeakRepeats {
  readonly word: RepeatsWord;
  /** The take with the least leak. */
  readonly best: number;
  /** They contradict each other, and one of them would be flagged by itself: the mean may hide it. */
  readonly isHidden: boolean;
}

/** In the engine's order; undefined where a cylinder was read once or not at all. */
export const leakRepeats = (
  record: EngineRecord,
  test: Test,
  figures: EngineFigures,
): readonly (LeakRepeats | undefined)[] => {
  const values = valuesOf(test, "leak-down");
  return record.engine.cylinders.map((_, cylinder): LeakRepeats | undefined => {
    const cell = values?.cells[cylinder];
    if (values === undefined || cell === undefined) return undefined;
    const takes = takesLost(test, { values, cylinder });
    const [least, most] = values.holds === "lost" ? [Math.min, Math.max] : [Math.max, Math.min];
    const best = least(...cell.readings);
    if (takes.length < 2) return undefined;
    if (!areTakesApart(takes)) return { word: "agree", best, isHidden: false };
    const flaggedBy = (reading: number): boolean =>
      isFlaggedAlone(record, test, { what: "leak-down", values, cylinder, reading, figures });
    return flaggedBy(best)
      ? { word: "each-low", best, isHidden: false }
      : { word: "contradict", best, isHidden: flaggedBy(most(...cell.readings)) };
  });
};
