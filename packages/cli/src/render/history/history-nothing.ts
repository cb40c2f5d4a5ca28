// Readings of nothing: they stand in no average, so each is named instead.

import type { CylinderHistory, KindHistory } from "@sealtrend/core";
import { dateOf } from "./history-sentences.ts";
import { cylinders as named, joined } from "../words.ts";

/** `Cylinder 3 held nothing on 2024-05-03, which stands in no average and no slope.` */
export const nothingSentences = (
  cylinders: readonly CylinderHistory[],
  kind: KindHistory,
): readonly string[] =>
  cylinders.flatMap((cylinder) => {
    const places = heldNothing(cylinder, kind);
    if (places.length === 0) return [];
    const who = kind.result.cylinders.length === 1 ? "The cylinder" : named([cylinder.label]);
    return [
      `${who} held nothing on ${joined(places.map((place) => dateOf(kind, place)))}, which stands in no average and no slope.`,
    ];
  });

/** Places of the tests that count in which it held nothing. */
export const heldNothing = ({ noCompression }: CylinderHistory, { result }: KindHistory): readonly number[] =>
  noCompression.filter((place) => result.tests[place]?.use !== "set-aside");
