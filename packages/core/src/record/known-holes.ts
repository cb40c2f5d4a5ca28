// The cell known_holes of gauges.csv: open holes of known size on a tester's hose, and what it read with each.

import { length, readNumber, readQuantity, toSi } from "../quantity/index.ts";
import type { RowView } from "./row-view.ts";
import type { KnownHole } from "./gauge-types.ts";

/** The holes of a row; undefined where the cell is empty, or after a fault. */
export const knownHolesIn = (row: RowView): readonly KnownHole[] | undefined => {
  const text = row.text("known_holes");
  if (text === "") return undefined;
  const isHeld = row.text("dial").toLowerCase() === "percent-held";
  const holes: KnownHole[] = [];
  for (const part of text.split(/\s+/)) {
    const hole = readKnownHole(part, isHeld ? "percent-held" : "percent-lost");
    if (hole === undefined) return row.fault("known_holes", "known-hole-bad", { text: part });
    holes.push(hole);
  }
  return holes;
};

/** Reads `0.80mm:74psi`, or `1.0mm:35%`. @param percent - what the dial's percent counts
 *  @returns undefined for anything else, and for a hole outside 0.1 … 10 mm */
export const readKnownHole = (
  text: string,
  percent: "percent-lost" | "percent-held",
): KnownHole | undefined => {
  const [, size = "", reads = ""] = /^([^:]+):([^:]+)$/.exec(text.trim()) ?? [];
  const hole = readQuantity(size, "length");
  if (!hole.ok || hole.si < 0.0001 || hole.si > 0.01) return undefined;
  if (reads.endsWith("%")) {
    const share = readNumber(reads.slice(0, -1));
    if (!share.ok || share.value < 0 || share.value > 100) return undefined;
    const fraction = share.value / 100;
    return {
      hole: length(hole.si),
      reads: percent === "percent-held" ? 1 - fraction : fraction,
      holds: "lost",
    };
  }
  const pressure = readQuantity(reads, "pressure");
  if (!pressure.ok || pressure.si < 0 || pressure.si > mostSupply) return undefined;
  return { hole: length(hole.si), reads: pressure.si, holds: "pressure" };
};

/** No tester of this kind is fed with more than 20 bar [Pa]. */
const mostSupply = toSi(20, "bar");
