// A cylinder that fell as another gauge came: what the gauge itself may have done to it.

import type { CylinderHistory, KindHistory } from "@sealtrend/core";
import { hasDropped } from "./history-sentences.ts";
import { cylinders as named } from "../words.ts";

/** A gauge that reads a fixed amount too low or too high shifts a low cylinder against the others, whatever factor it has.
 *  Cranking only: leak-down testers have sentences of their own. */
export const gaugeSentences = (shown: readonly CylinderHistory[], kind: KindHistory): readonly string[] => {
  if (kind.kind !== "dry") return [];
  const { tests } = kind.result;
  return shown.flatMap((cylinder) => {
    const place = fellAt(cylinder);
    if (place === undefined) return [];
    const before = tests.findLast(({ use }, i) => i < place && use === "full")?.gauge;
    const now = tests[place]?.gauge;
    if (before === now) return [];
    const came = now === undefined ? "a gauge without a name" : `gauge ${now}`;
    return [
      `${named([cylinder.label])} fell as ${came} came; a needle that does not start at zero can make a part of that: read it once more with ${before ?? "the gauge of before"}.`,
    ];
  });
};

/** Place of the test in which a fall first showed, where it came between two tests. */
const fellAt = (cylinder: CylinderHistory): number | undefined => {
  const { course, shape, early, change, alarms } = cylinder;
  if (alarms.includes("no-compression")) return undefined;
  if (hasDropped(cylinder)) return change?.test;
  if (course !== "stepped-down" && course !== "falling") return undefined;
  return shape?.shape === "gradual" ? undefined : (early?.test ?? shape?.firstAfter);
};
