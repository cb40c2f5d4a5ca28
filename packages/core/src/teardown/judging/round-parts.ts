// Taper, out-of-round and cylindricity of the bores and journals that were measured.

import { length } from "../../quantity/index.ts";
import { differenceUncertainty } from "../conformity/index.ts";
import {
  type Difference,
  type RoundReading,
  boreAxes,
  journalAxes,
  largestInSize,
  outsOfRound,
  tapers,
} from "../figures/index.ts";
import { type Made, byLabel, madeOf, sourceText, takenBy } from "./made.ts";
import type { Reading } from "./reading.ts";

/** One diameter with the reading that it is. */
interface Spot extends RoundReading {
  readonly reading: Reading;
}

const spotsOf = (readings: readonly Reading[]): readonly Spot[] =>
  readings.map((reading) => {
    const [along = "", across = ""] = (reading.item.at ?? "").split("/");
    return { along, across, diameter: reading.item.value, reading };
  });

/** Readings of ring travel: what was taken where nothing runs tells of the bore before it wore. */
export const isUnworn = ({ item }: Reading): boolean => item.at?.startsWith("unworn") === true;

/** Of each bore, main and pin; each figure the one largest in size, its sign kept. */
export const roundFigures = (readings: readonly Reading[]): readonly Made[] => [
  ...[...byLabel(readings, "bore", "diameter").values()].flatMap((own) => {
    const worn = own.filter((reading) => !isUnworn(reading));
    return [...differences(worn, boreAxes), ...cylindricityOf(worn)];
  }),
  ...(["main", "pin"] as const).flatMap((part) =>
    [...byLabel(readings, part, "diameter").values()].flatMap((own) => differences(own, journalAxes)),
  ),
  ...housingFigures(readings),
];

const differences = (readings: readonly Reading[], axes: typeof boreAxes): readonly Made[] => {
  const spots = spotsOf(readings);
  return [
    ...differenceOf("taper", spots, largestInSize(tapers(spots, axes))),
    ...differenceOf("out-of-round", spots, largestInSize(outsOfRound(spots, axes))),
  ];
};

const differenceOf = (
  quantity: string,
  spots: readonly Spot[],
  difference: Difference | undefined,
): readonly Made[] => {
  const [one, other] = (difference?.places ?? []).map((place) =>
    spots.find(({ along, across }) => `${along}/${across}` === place),
  );
  if (difference === undefined || one === undefined || other === undefined) return [];
  return [
    madeOf([one.reading, other.reading], {
      quantity,
      value: difference.value,
      uncertainty: differenceUncertainty(takenBy(one.reading), takenBy(other.reading)),
      ...(difference.at === "" ? {} : { at: difference.at }),
      from: lessText(one.reading, other.reading),
      kind: "difference",
    }),
  ];
};

const lessText = (one: Reading, other: Reading): string =>
  `${sourceText(one)} less ${sourceText(other, one.item.unit)}`;

/** Largest less smallest over the levels of one direction, the larger of the directions. @source Yanmar 3JH4E p. 198 */
const cylindricityOf = (readings: readonly Reading[]): readonly Made[] => {
  const spots = spotsOf(readings);
  const each = [...new Set(spots.map(({ across }) => across))].flatMap((direction) =>
    rangeOf(spots.filter(({ across }) => across === direction).map(({ reading }) => reading)),
  );
  const [largest] = each.toSorted((a, b) => widthOf(b) - widthOf(a));
  return largest === undefined ? [] : [rangeFigure("cylindricity", largest)];
};

interface Range {
  readonly largest: Reading;
  readonly smallest: Reading;
}

const widthOf = ({ largest, smallest }: Range): number => largest.item.value - smallest.item.value;

const rangeOf = (readings: readonly Reading[]): readonly Range[] => {
  const sorted = readings.toSorted((a, b) => b.item.value - a.item.value);
  const [largest, smallest] = [sorted.at(0), sorted.at(-1)];
  return largest === undefined || smallest === undefined || readings.length < 2
    ? []
    : [{ largest, smallest }];
};

const rangeFigure = (quantity: string, { largest, smallest }: Range): Made =>
  madeOf([largest, smallest], {
    quantity,
    value: length(largest.item.value - smallest.item.value),
    uncertainty: differenceUncertainty(takenBy(largest), takenBy(smallest)),
    from: lessText(largest, smallest),
    kind: "difference",
  });

/** A big end or a main housing over its angles. */
const housingFigures = (readings: readonly Reading[]): readonly Made[] =>
  [...byLabel(readings, "housing", "bore").values()].flatMap((own) =>
    ["main", "rod"].flatMap((which) =>
      rangeOf(own.filter(({ item }) => item.at?.split("/")[0] === which)).map((range) => {
        const made = rangeFigure("out-of-round", range);
        return { ...made, item: { ...made.item, at: which } };
      }),
    ),
  );
