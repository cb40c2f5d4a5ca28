// `history --long`: one reading a row, nothing left out.

import { type KindHistory, type PressureUnit, pressureCorrection, writeNumber } from "@sealtrend/core";
import { grid } from "./table.ts";
import { percent } from "./words.ts";

/** A row a cylinder and test: as read, at sea level (cranking only), against the others. */
export const historyLong = (
  { kind, result, counted }: KindHistory,
  labels: readonly string[],
  { unit, width }: { readonly unit: PressureUnit; readonly width: number },
): readonly string[] => {
  const rows = counted.flatMap(({ test, values, use }) => {
    const index = result.tests.findIndex(({ ids }) => ids.includes(test.id));
    const { factor } = pressureCorrection(test.conditions);
    return labels.flatMap((label, i) => {
      const cell = values.cells[i];
      if (cell === undefined) return [];
      const ratio = result.cylinders[i]?.ratios[index];
      const pegged = cell.pegged ? ">" : "";
      const read = values.holds === "lost" ? `${percent(cell.value, 1)} lost` : writeNumber(cell.value, unit);
      const corrected = kind === "dry" ? [`${pegged}${writeNumber(cell.value * factor, unit)}`] : [];
      const against = ratio === undefined ? "-" : percent(Math.expm1(ratio), 1);
      return [
        [
          test.date,
          test.id,
          label,
          `${pegged}${read}`,
          ...corrected,
          against,
          values.gauge ?? "",
          use === "full" ? "" : use,
        ],
      ];
    });
  });
  const corrected = kind === "dry" ? ["sea level"] : [];
  const head = ["date", "test", "cyl", `read ${unit}`, ...corrected, "others", "gauge", ""];
  const align = head.map((name) => (/^(read|sea|others)/.test(name) ? "right" : "left"));
  return grid(rows, align, { head, width });
};
