// What was understood of the readings while they are typed, and how far an entry had come.

import { type Engine, readNumber } from "@sealtrend/core/parts";
import { clean } from "../../render/clean.ts";
import { wrapText } from "../../render/table.ts";
import { displayWidth } from "../../render/width.ts";
import type { Typed } from "./cell-fault.ts";

/** `  1:150 2:148 psi   lowest/highest 0.99`, in lines. */
export const soFar = ({ cylinders }: Engine, typed: Typed, width: number): readonly string[] => {
  const cells = cellsText(cylinders, typed.cells);
  const numbers = [...typed.cells.values()].flatMap((cell) => {
    const reading = readNumber(cell.replace(/\?$/, ""));
    return reading.ok ? [reading.value] : [];
  });
  const share = Math.min(...numbers) / Math.max(...numbers);
  const ratio = numbers.length > 1 && share >= 0 ? `   lowest/highest ${share.toFixed(2)}` : "";
  const line = `  ${cells} ${typed.unit ?? ""}`.trimEnd() + ratio;
  return displayWidth(line) <= width ? [line] : wrapText(line, width, "  ");
};

/** `1:150 2:148`. */
export const cellsText = (cylinders: readonly string[], cells: ReadonlyMap<string, string>): string =>
  cylinders
    .flatMap((label) => {
      const cell = cells.get(label);
      return cell === undefined ? [] : [clean(`${label}:${cell}`)];
    })
    .join(" ");
