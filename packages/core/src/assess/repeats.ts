// Repeats of one cylinder: whether they agree, and if not, whether each of them says the same by itself. A mean of two
// readings that contradict each other is no reading.

import type { EngineRecord, Test } from "../record/index.ts";
import type { PressureValue } from "./assessment.ts";
import { type EngineFigures, scatterBeside } from "./figures.ts";
import { isFlaggedAlone } from "./flags.ts";
import { type RepeatsWord, isApart } from "./values/repeats-apart.ts";
import { valuesOf } from "./values/values.ts";

/** Of the dry readings, in the engine's order; undefined where a cylinder was read once or not at all. */
export const repeatsOf = (
  record: EngineRecord,
  test: Test,
  figures: EngineFigures,
): readonly (RepeatsWord | undefined)[] => {
  const values = valuesOf(test, "dry");
  const scatter = scatterBeside(test, figures);
  return record.engine.cylinders.map((_, i) => {
    const cell = values?.cells[i];
    if (values === undefined || cell === undefined || cell.readings.length < 2) return undefined;
    if (!isApart(cell.readings, scatter)) return "agree";
    // where the highest is flagged by itself, every other would be
    const alone = { values, cylinder: i, reading: Math.max(...cell.readings) };
    return isFlaggedAlone(record, test, { what: "dry", ...alone, figures }) ? "each-low" : "contradict";
  });
};

/** The same value as if the highest of its repeats were the mean. */
export const highestOf = (value: PressureValue): PressureValue => {
  const { readings, read, corrected, even, full } = value;
  const up = read > 0 ? Math.max(...readings) / read : 1;
  return {
    ...value,
    corrected: corrected * up,
    ...(even === undefined ? {} : { even: even * up }),
    ...(full === undefined ? {} : { full: { ...full, corrected: full.corrected * up } }),
  };
};
