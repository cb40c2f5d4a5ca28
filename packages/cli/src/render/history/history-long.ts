// `history --long`: one reading a row, every take by itself, nothing left out.

import {
  type KindHistory,
  type PressureUnit,
  type Test,
  median,
  trueReading,
  writeNumber,
} from "@sealtrend/core/parts";
import { grid } from "../table.ts";
import { percent } from "../words.ts";

type Row = Test["rows"][number];
type Reading = Extract<Row["cells"][number], { kind: "reading" }>;

/** A row a reading: as read, corrected as the history takes it (cranking only), against the others of the same take.
 *  @param labels - of the engine, in its order  @param only - leaves out all other cylinders */
export const historyLong = (
  { kind, counted, speeds }: KindHistory,
  { labels, only }: { readonly labels: readonly string[]; readonly only: string | undefined },
  { unit, width }: { readonly unit: PressureUnit; readonly width: number },
): readonly string[] => {
  const rows = counted.flatMap(({ test, use }, place) => {
    const { factor = 1, lnFactors = [] } = speeds[place] ?? {};
    return test.rows
      .filter(({ what }) => what === kind)
      .toSorted((a, b) => a.take - b.take)
      .flatMap((row) =>
        labels.flatMap((label, i) => {
          const cell = row.cells[i];
          if (cell?.kind !== "reading" || (only !== undefined && label !== only)) return [];
          const read = row.holds === "lost" ? percent(cell.value, 1) : writeNumber(cell.value, unit);
          const signs = (text: string): string =>
            `${cell.pegged ? ">" : ""}${text}${cell.doubtful ? "?" : ""}`;
          const value = trueReading(cell.value, row.readsHigh ?? 0) * factor * Math.exp(lnFactors[i] ?? 0);
          const corrected = kind === "dry" ? [signs(writeNumber(value, unit))] : [];
          const day = [test.id, String(row.take), label, signs(read), ...corrected];
          return [[...day, againstRow(row, i), row.gauge ?? "", use === "full" ? "" : use]];
        }),
      );
  });
  const what = rows.some((row) => row.some((text) => text.endsWith(" %"))) ? "lost" : `read ${unit}`;
  const corrected = kind === "dry" ? [correctedName(speeds)] : [];
  const head = ["test", "take", "cyl", what, ...corrected, "others %", "gauge", ""];
  const align = head.map((name) =>
    /^(take|read|lost|sea|at|corrected|others)/.test(name) ? "right" : "left",
  );
  return grid(rows, align, { head, width });
};

/** At sea level, and at one speed where that is so of all. */
const correctedName = (speeds: KindHistory["speeds"]): string => {
  const full = speeds.filter(({ counts }) => counts === "full");
  const to = full[0]?.speed?.to;
  if (to === undefined) return "sea level";
  return full.length === speeds.length ? `at ${to.toFixed(0)} rpm` : "corrected";
};

const isComparable = (cell: Row["cells"][number] | undefined): cell is Reading =>
  cell?.kind === "reading" && !cell.pegged;

/** Percent against the median of the other cylinders in the row; for a loss, of what is held. */
const againstRow = ({ cells, holds }: Row, place: number): string => {
  const kept = ({ value }: Reading): number => (holds === "lost" ? 1 - value : value);
  const own = cells[place];
  const others = cells.filter((cell, i): cell is Reading => i !== place && isComparable(cell)).map(kept);
  const middle = others.length === 0 ? 0 : median(others);
  return isComparable(own) && middle > 0 ? ((kept(own) / middle - 1) * 100).toFixed(1) : "-";
};
