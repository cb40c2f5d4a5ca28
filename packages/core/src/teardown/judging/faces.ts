// Flatness of heads and decks from the gaps under a straightedge.

import { length, toSi } from "../../quantity/index.ts";
import type { MeasuredPart } from "../../record/index.ts";
import { type FaceFlatness, type FlatLine, type FlatPoint, faceFlatness } from "../figures/index.ts";
import type { LimitVerdict, TeardownItem } from "../teardown.ts";
import { type Made, byLabel, madeOf, sourceText } from "./made.ts";
import type { Reading } from "./reading.ts";

/** A head or a deck; `label` where there are several. */
export interface Face {
  readonly part: "deck" | "head";
  readonly label: string;
  readonly flatness: FaceFlatness;
  readonly figures: readonly Made[];
}

interface Spot extends FlatPoint {
  readonly reading: Reading;
}

export const facesOf = (readings: readonly Reading[]): readonly Face[] =>
  (["deck", "head"] as const satisfies readonly MeasuredPart[]).flatMap((part) =>
    [...byLabel(readings, part, "gap")].map(([label, own]): Face => {
      const lines = linesOf(own);
      const flatness = faceFlatness(lines);
      return { part, label, flatness, figures: figuresOf(lines, flatness) };
    }),
  );

interface Line extends FlatLine {
  readonly points: readonly Spot[];
}

const linesOf = (readings: readonly Reading[]): readonly Line[] => {
  const names = [...new Set(readings.map((reading) => placeOf(reading).line))];
  return names.map((name) => ({
    name,
    points: readings
      .filter((reading) => placeOf(reading).line === name)
      .map((reading) => ({ at: placeOf(reading).along, gap: reading.item.value, reading })),
  }));
};

/** `long1/75`: the line, and how far along it in millimetres. */
const placeOf = ({ item: { at = "" } }: Reading) => {
  const [line = "", along = "0"] = at.split("/");
  const distance = Number(along);
  return { line, along: length(toSi(Number.isFinite(distance) ? distance : 0, "mm")) };
};

const figuresOf = (lines: readonly Line[], { overall, local }: FaceFlatness): readonly Made[] => {
  const spotAt = (line: string, place: number): Spot | undefined =>
    lines.find(({ name }) => name === line)?.points.find(({ at }) => at === place);
  const deepest = overall === undefined ? undefined : spotAt(overall.line, overall.at)?.reading;
  const middle = local === undefined ? undefined : spotAt(local.line, local.at)?.reading;
  return [
    ...(deepest === undefined ? [] : [overallFigure(deepest)]),
    ...(local === undefined || middle === undefined
      ? []
      : [
          madeOf([middle], {
            quantity: "flatness 150",
            value: local.gap,
            uncertainty: length(local.factor * middle.item.uncertainty),
            ...(middle.item.at === undefined ? {} : { at: middle.item.at }),
            from: `${local.line}, under a chord from ${millimetres(local.from)} to ${millimetres(local.to)} mm`,
            kind: "reading",
          }),
        ]),
  ];
};

/** The deepest gap is a reading itself, by feeler or not. */
const overallFigure = (reading: Reading): Made => {
  const { at, value, uncertainty, between } = reading.item;
  const made = madeOf([reading], {
    quantity: "flatness",
    value,
    uncertainty,
    ...(at === undefined ? {} : { at }),
    from: `the deepest gap, ${sourceText(reading)}`,
    kind: "reading",
  });
  return between === undefined ? made : { ...made, item: { ...made.item, between } };
};

const millimetres = (metres: number): string => (metres * 1000).toFixed(0);

/** `inside` needs both diagonals: a twist has straight long and cross lines and shows on them alone. `outside` stands without. */
export const withDiagonals = (item: TeardownItem, faces: readonly Face[]): TeardownItem => {
  const face = faces.find(({ part, label }) => part === item.part && label === (item.label ?? ""));
  if (face === undefined || face.flatness.missingDiagonals.length === 0 || item.quantity !== "flatness")
    return item;
  const verdicts = item.verdicts.map((one): LimitVerdict =>
    one.verdict === "inside"
      ? {
          ...one,
          verdict: "too-close-to-tell",
          settlement: {
            needed: item.uncertainty,
            text: "straightedge along both diagonals: a twist shows on them alone",
          },
        }
      : one,
  );
  return { ...item, verdicts };
};
