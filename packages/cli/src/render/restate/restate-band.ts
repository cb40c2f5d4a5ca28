// The band of `restate`: both ends on the other tester, beside the reading they come from.

import { type PressureUnit, fromSi, writeNumber } from "@sealtrend/core";
import { columns } from "../table.ts";
import { fixed, percent } from "../words.ts";
import type { RestateOptions, RestateShown } from "./restate-shown.ts";
import { held, plain } from "./restate-words.ts";

/** Decimals that a standard uncertainty leaves. */
export const placesFor = (uncertainty: number): number =>
  Math.min(3, Math.max(0, Math.ceil(-Math.log10(uncertainty))));

const span = (a: string, b: string): string => (a === b ? a : `${a}-${b}`);

/** The supply of the other tester. */
export const supplyThere = ({ answer, question }: RestateShown): number =>
  question.other?.supply ?? answer.reading?.supply ?? 0;

/** Both ends on the other tester, to what dials and bores leave. */
export const cells = (shown: RestateShown, unit: PressureUnit) => {
  const { restated } = shown.answer;
  if (restated === undefined) return { reads: "", lost: "" };
  const supply = supplyThere(shown);
  const [low = 0, high = 0] = [restated.reading.lost, restated.laminarLost].sort((a, b) => a - b);
  const places = placesFor(restated.uLost * fromSi(supply, unit));
  const lostPlaces = placesFor(100 * restated.uLost);
  const pressure = (lost: number): string => writeNumber(supply * (1 - lost), unit, places);
  return {
    reads: span(pressure(high), pressure(low)),
    lost: span(fixed(100 * low, lostPlaces), fixed(100 * high, lostPlaces)),
  };
};

/** Whether there are two testers to show side by side. */
const isBand = ({ answer: { restated, refused, unchanged } }: RestateShown): boolean =>
  restated !== undefined && refused === undefined && unchanged === undefined;

export const table = (shown: RestateShown, { unit, width }: RestateOptions): readonly string[] => {
  const { answer, question, boreUnit } = shown;
  if (!isBand(shown)) return [];
  const { reads, lost } = cells(shown, unit);
  const { restrictor, other, typed } = question;
  const there = other?.restrictor ?? restrictor;
  const size = (one: typeof restrictor): string | undefined =>
    one.bore === undefined ? undefined : String(Number(fromSi(one.bore, boreUnit).toPrecision(4)));
  const bores = [size(restrictor), size(there)];
  const cylinder = answer.reading?.cylinder ?? (typed.kind === "pressure" ? typed.cylinder : undefined);
  const uLost = answer.figures?.uLost ?? answer.restated?.uLost ?? 1;
  const pressure = (value: number | undefined): string | undefined =>
    value === undefined ? undefined : plain(value, unit);
  return columns({
    labels: ["as read", "there"],
    width,
    rows: [
      {
        name: "supply",
        unit,
        cells: [pressure(answer.reading?.supply), plain(supplyThere(shown), unit)],
      },
      ...(bores.every((one) => one === undefined)
        ? []
        : [{ name: "restrictor", unit: boreUnit, cells: bores }]),
      { name: "reads", unit, cells: [pressure(cylinder), reads] },
      {
        name: "lost",
        unit: "%",
        cells: [
          answer.lost === undefined ? undefined : fixed(100 * answer.lost, placesFor(100 * uLost)),
          lost,
        ],
      },
    ],
  });
};

/** Which end holds for which leak. */
export const bandLines = (shown: RestateShown, width: number): readonly string[] => {
  const { answer, question } = shown;
  const { restated } = answer;
  if (restated === undefined || !isBand(shown)) return [];
  const places = placesFor(100 * restated.uLost);
  const [hole, gap] = [restated.reading.lost, restated.laminarLost].map((lost) => percent(lost, places));
  const doubt = `± ${fixed(100 * restated.uLost, places)} ${doubtOf(question)}`;
  return held(
    hole === gap
      ? `${String(hole)} whatever the shape of the leak, ${doubt}.`
      : `${String(hole)} if the leak is a hole, ${String(gap)} if it is a long thin gap, ${doubt}.`,
    width,
  );
};

/** What the doubt is made of: the same restrictor has no part in it. */
const doubtOf = ({ other, knownHoles, restrictor }: RestateShown["question"]): string => {
  if (other?.compared !== undefined) return "for the dials and the comparison of the testers";
  if (other?.restrictor === undefined) return "for the dials";
  return restrictor.bore === undefined && knownHoles !== undefined
    ? "for dials, holes and bore"
    : "for dials and bores";
};
