// Wear that the chance of need says nothing of, for that is the chance of a cranking limit.

import { placesIn } from "../evidence/scores.ts";
import type { WornPlace } from "../words.ts";
import type { Grounds } from "./grounds.ts";

/** Developing places that no cranking reading follows: bores and bearings always, valves and rings where only other
 *  evidence speaks of them. None where the engine is closed: what is open can be measured.  (our judgement) */
export const unseenPlaces = ({ input, evidence: { scores } }: Grounds): readonly WornPlace[] => {
  const isOpen = input.done.includes("headOff") || input.done.includes("bottomOpen");
  return isOpen
    ? placesIn(scores, "developing").filter(
        (place) =>
          place === "bore" ||
          place === "bottom" ||
          !scores[place].linesFor.some((line) => line === "cranking"),
      )
    : [];
};
