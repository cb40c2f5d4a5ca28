// Known holes that cannot all be right: a larger hole loses more, and an open hole loses some of the air, never all of it.

import type { HolesFault } from "../problem/index.ts";
import { type PressureUnit, fromSi } from "../quantity/index.ts";
import type { Gauge, KnownHole } from "./gauge-types.ts";

/** Holes nearer to each other than this are one [m]: no drill is better. */
const sameSize = 0.000005;

/** Whether two sizes are those of one hole. */
export const isSameHole = (a: KnownHole, b: KnownHole): boolean => Math.abs(a.hole - b.hole) < sameSize;

type Facts = Pick<Gauge, "unit" | "fullScale" | "dial" | "readsHigh" | "regulated">;

/** The first thing that does not go together; undefined where all do. @param gauge - what else is known of the tester */
export const holesFault = (holes: readonly KnownHole[], gauge: Facts): HolesFault | undefined => {
  const bySize = holes.toSorted((a, b) => a.hole - b.hole);
  return (
    first(bySize, (hole) => faultOf(hole, gauge)) ?? first(bySize, (hole, i) => beside(bySize[i - 1], hole))
  );
};

const first = (
  holes: readonly KnownHole[],
  look: (hole: KnownHole, i: number) => HolesFault | undefined,
): HolesFault | undefined => holes.flatMap((hole, i) => look(hole, i) ?? [])[0];

const faultOf = (
  { text, reads, holds }: KnownHole,
  { unit = "kPa", fullScale, dial, readsHigh, regulated }: Facts,
): HolesFault | undefined => {
  if (holds === "lost")
    return reads <= 0 ? { why: "nothing", hole: text } : reads >= 1 ? { why: "all", hole: text } : undefined;
  if (dial === "percent-lost" || dial === "percent-held") return { why: "percent-dial", hole: text };
  if (fullScale !== undefined && reads > fullScale * hair)
    return { why: "over-scale", hole: text, other: inUnit(fullScale, unit) };
  const shown = reads - (readsHigh ?? 0);
  if (shown <= 0) return { why: "all", hole: text };
  return regulated !== undefined && shown >= regulated
    ? { why: "supply", hole: text, other: inUnit(regulated, unit) }
    : undefined;
};

/** @param before - the next smaller hole */
const beside = (before: KnownHole | undefined, hole: KnownHole): HolesFault | undefined => {
  if (before === undefined) return undefined;
  const both = { hole: before.text, other: hole.text };
  if (before.holds !== hole.holds) return { why: "mixed", ...both };
  if (isSameHole(before, hole)) return { why: "twice", ...both };
  const losesMore = hole.holds === "lost" ? hole.reads > before.reads : hole.reads < before.reads;
  return losesMore ? undefined : { why: "larger-lost-less", ...both };
};

/** What a conversion of units may add to a figure that is the same. */
const hair = 1 + 1e-4;

const inUnit = (pressure: number, unit: PressureUnit): string =>
  `${String(Number(fromSi(pressure, unit).toPrecision(5)))} ${unit}`;
