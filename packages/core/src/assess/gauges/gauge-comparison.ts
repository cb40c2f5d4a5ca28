// Two gauges on one warm engine: the readings of the one that does not count, kept beside those that do.

import type { PressureKind, PressureRow, Test } from "../../record/index.ts";
import {
  type CylinderValue,
  comparisonsOf,
  crankingKinds,
  fractionLost,
  supplyOf,
  valuesOf,
} from "../values/values.ts";

/** Readings of a second gauge, which do not count, beside those that do; taken as they were read. */
export interface GaugeComparison {
  readonly what: PressureKind | "leak-down";
  /** Absent where none was named. */
  readonly gauge?: string;
  /** The gauge whose readings count; absent where none was named. */
  readonly counts?: string;
  readonly unit: PressureRow["unit"];
  /** In the engine's order; undefined where not taken. */
  readonly cells: readonly (ComparedCell | undefined)[];
}

export interface ComparedCell extends Pick<CylinderValue, "readings" | "doubtful" | "pegged"> {
  /** Mean of the takes as read: gauge pressure [Pa], for a leak-down the fraction lost. */
  readonly read: number;
  /** The same without what the gauge is known to read too high. */
  readonly value: number;
}

/** In the order they are printed. */
export const comparedGauges = (test: Test): readonly GaugeComparison[] =>
  [...crankingKinds, "leak-down" as const].flatMap((what) => {
    const counts = valuesOf(test, what)?.gauge;
    return comparisonsOf(test, what).map(({ gauge, unit, holds, cells }): GaugeComparison => {
      const lost = (value: number, i: number): number | undefined =>
        what === "leak-down" ? fractionLost(holds, value, supplyOf(test, i, gauge)) : value;
      return {
        what,
        ...(gauge === undefined ? {} : { gauge }),
        ...(counts === undefined ? {} : { counts }),
        unit,
        cells: cells.map((cell, i): ComparedCell | undefined => {
          const value = cell === undefined ? undefined : lost(cell.value, i);
          const read = cell === undefined ? undefined : lost(cell.read, i);
          if (cell === undefined || value === undefined || read === undefined) return undefined;
          const { doubtful, pegged } = cell;
          const readings = cell.readings.flatMap((reading) => lost(reading, i) ?? []);
          return { readings, read, value, doubtful, pegged };
        }),
      };
    });
  });
