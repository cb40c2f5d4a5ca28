// What speaks for wear without being enough for work.

import type { DecisionAssessment } from "@sealtrend/core";
import { placeNames } from "./decide-words.ts";
import { joined } from "../words.ts";

/** `Something speaks for wear of crank or bearings (oil pressure), not enough for work.` */
export const developingText = ({ decision }: DecisionAssessment): string => {
  const places = (["top", "rings", "bore", "bottom"] as const).filter(
    (place) => decision.scores[place].state !== "not-shown",
  );
  const lines = [...new Set(places.flatMap((place) => decision.scores[place].linesFor))];
  return `Something speaks for wear of ${joined(places.map((place) => placeNames[place]))} (${joined(lines)}), not enough for work.`;
};
