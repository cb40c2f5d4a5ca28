// `history --long`: one reading a row, nothing left out.

import { type KindHistory, type PressureUnit, pressureCorrection, writeNumber } from "@sealtrend/core";
import { grid } from "./table.ts";

/** A row a cylinder and test: as read, at sea level, against the others. */
export const historyLong = (kind: KindHistory, labels: readonly string[], unit: PressureUnit, width: number): readonly string[] => {
  const { result, counted } = kind;
  const rows = counted.flatMap(({ test, values, use }) => {
    const index = result.tests.findIndex(({ ids }) => ids.includes(test.id));
    const { factor } = pressureCorrection(test.conditions);
    return labels.flatMap((label, i) => {
      const cell = values.cells[i];
      if (cell === undefined) return [];
      const ratio = result.cylinders[i]?.ratios[index];
      const lost = values.holds === "lost";
      const read = lost ? `${(cell.value * 100).toFixed(1)} %` : writeNumber(cell.value, unit);
      const corrected = lost ? "" : writeNumber(cell.value * factor, unit);
      return [[test.date, test.id, label, read, corrected, ratio === undefined ? "-" : `${(Math.expm1(ratio) * 100).toFixed(1)} %`, values.gauge ?? "", use === "full" ? "" : use]];
    });
  });
  return grid(rows, ["left", "left", "left", "right", "right", "right", "left", "left"], { head: ["date", "test", "cyl", `read ${unit}`, "sea level", "others", "gauge", ""], width });
};
