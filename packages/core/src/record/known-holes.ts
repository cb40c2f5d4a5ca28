// The cell known_holes of gauges.csv: open holes of known size on a tester's hose, and what it read with each.

import { length, readNumber, readQuantity, toSi } from "../quantity/index.ts";
import { holesFault } from "./known-hole-checks.ts";
import type { RowView } from "./row-view.ts";
import type { Gauge, KnownHole } from "./gauge-types.ts";

/** The holes of a row; undefined where the cell is empty, or after a fault. @param gauge - what else the row says */
export const knownHolesIn = (row: RowView, gauge: Gauge): readonly KnownHole[] | undefined => {
  const text = row.text("known_holes");
  if (text === "") return undefined;
  const percent = percentOf(gauge);
  const holes: KnownHole[] = [];
  for (const part of text.split(/\s+/)) {
    const hole = readKnownHole(part, percent);
    if (hole === undefined)
      return row.fault("known_holes", "known-hole-bad", { text: part, mended: mendedHoles(text, gauge) });
    holes.push(hole);
  }
  const fault = holesFault(holes, gauge);
  return fault === undefined ? holes : row.fault("known_holes", "known-holes-contradict", fault);
};

/** What percents on the dial of this tester count. */
export const percentOf = ({ dial }: Pick<Gauge, "dial">): "percent-lost" | "percent-held" =>
  dial === "percent-held" ? "percent-held" : "percent-lost";

/** Reads `0.80mm:74psi`, or `1.0mm:35%`. @param percent - what the dial's percent counts
 *  @returns undefined for anything else, and for a hole outside 0.1 … 10 mm */
export const readKnownHole = (
  text: string,
  percent: "percent-lost" | "percent-held",
): KnownHole | undefined => {
  const [, size = "", reads = ""] = /^([^:]+):([^:]+)$/.exec(text.trim()) ?? [];
  const hole = readQuantity(size, "length");
  if (!hole.ok || hole.si < 0.0001 || hole.si > 0.01) return undefined;
  const written = { text: text.trim(), hole: length(hole.si) };
  if (reads.endsWith("%")) {
    const share = readNumber(reads.slice(0, -1));
    if (!share.ok || share.value < 0 || share.value > 100) return undefined;
    const fraction = share.value / 100;
    return { ...written, reads: percent === "percent-held" ? 1 - fraction : fraction, holds: "lost" };
  }
  const pressure = readQuantity(reads, "pressure");
  if (!pressure.ok || pressure.si < 0 || pressure.si > mostSupply) return undefined;
  return { ...written, reads: pressure.si, holds: "pressure" };
};

/** No tester of this kind is fed with more than 20 bar [Pa]. */
const mostSupply = toSi(20, "bar");

const loosePair =
  /([\d.,]+)\s*(mm|in|um|"|)[\s:;=/]+([\d.,]+)\s*(psi|kPa|bar|MPa|kgf\/cm2|%|)(?=[\s;,]|$)[\s;,]*/giy;

/** The cell as it was probably meant: `1.0mm 55psi` as `1.0mm:55psi`, sizes without a unit in mm, readings without one in
 *  that of the dial.  @returns undefined where that is not plain */
const mendedHoles = (text: string, { unit, dial }: Gauge): string | undefined => {
  const ofDial = dial === "percent-lost" || dial === "percent-held" ? "%" : (unit ?? "");
  const pairs = [...text.matchAll(loosePair)];
  const isWhole = pairs.reduce((sum, [all]) => sum + all.length, 0) === text.length;
  const mended = pairs.map(
    ([, size = "", of = "", reads = "", in_ = ""]) => `${size}${of || "mm"}:${reads}${in_ || ofDial}`,
  );
  const isRead = mended.every(
    (part) => readKnownHole(part, percentOf({ ...(dial && { dial }) })) !== undefined,
  );
  return isWhole && isRead && pairs.length > 0 ? mended.join(" ") : undefined;
};
