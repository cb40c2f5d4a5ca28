// The leak-down readings of one test: the part lost, and each cylinder among its fellows.

import type { EngineRecord, Test } from "../record/index.ts";
import { type Standing, standing } from "../spread/index.ts";
import { earlierFlags, forwardOf } from "./flags.ts";
import type { EngineFigures } from "./trust.ts";
import { fractionLost, supplyOf, valuesOf } from "./values.ts";

export interface LeakValue {
  /** Supply [Pa gauge]; absent on a dial in percent. */
  readonly regulated?: number;
  /** Cylinder side, each take [Pa gauge]; absent on a dial in percent. */
  readonly readings?: readonly number[];
  /** Fraction lost, 0 … 1. */
  readonly lost: number;
  readonly standing?: Standing;
  readonly t?: number;
}

/** In the engine's order; undefined where a cylinder was not read or its supply is not known. */
export const assessLeakDown = (record: EngineRecord, test: Test, figures: EngineFigures): readonly (LeakValue | undefined)[] => {
  const values = valuesOf(test, "leak-down");
  if (values === undefined) return record.engine.cylinders.map(() => undefined);
  const forward = forwardOf(record, test, "leak-down", figures);
  const earlier = earlierFlags(record, test, "leak-down", figures);
  const limit = record.engine.leakDownLimits.lost;
  return record.engine.cylinders.map((_, i): LeakValue | undefined => {
    const cell = values.cells[i];
    const regulated = values.holds === "pressure" ? supplyOf(test, i) : undefined;
    const lost = cell === undefined ? undefined : fractionLost(values.holds, cell.value, regulated);
    const verdict = forward?.cylinders[i];
    if (cell === undefined || lost === undefined || verdict === undefined) return undefined;
    const belowLimit = limit !== undefined && lost > limit;
    const word = standing({ verdict, repeats: cell.readings.length + (earlier[i]?.sameDayRepeats ?? 0), flaggedBefore: earlier[i]?.flaggedBefore === true, belowLimit });
    return {
      ...(regulated === undefined ? {} : { regulated, readings: cell.readings }),
      lost,
      ...(word === undefined ? {} : { standing: word }),
      ...(verdict.kind === "read" && verdict.t !== undefined ? { t: verdict.t } : {}),
    };
  });
};
