// The band of `restate`: both ends on the other tester, beside the reading they come from.

import { type LeakAnswer, type LeakQuestion, type PressureUnit, fromSi, writeNumber } from "@sealtrend/core";
import { held } from "./restate-words.ts";
import { columns } from "../table.ts";
import { fixed, percent } from "../words.ts";

export interface RestateShown {
  readonly answer: LeakAnswer;
  readonly question: LeakQuestion;
  readonly assumed: readonly string[];
}

export interface RestateOptions {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly detail: "short" | "why";
}

/** Decimals that a standard uncertainty leaves. */
export const placesFor = (uncertainty: number): number =>
  Math.min(3, Math.max(0, Math.ceil(-Math.log10(uncertainty))));

/** A pressure as it was typed. */
export const plain = (pascals: number, unit: PressureUnit): string =>
  String(Number(fromSi(pascals, unit).toPrecision(4)));

const span = (a: string, b: string): string => (a === b ? a : `${a}-${b}`);

/** Both ends on the other tester, to what dials and bores leave. */
export const cells = ({ answer, question }: RestateShown, unit: PressureUnit) => {
  const { restated, reading } = answer;
  if (restated === undefined) return { reads: "", lost: "" };
  const supply = question.other?.supply ?? reading?.supply ?? 0;
  const [low = 0, high = 0] = [restated.reading.lost, restated.laminarLost].sort((a, b) => a - b);
  const places = placesFor(restated.uLost * fromSi(supply, unit));
  const lostPlaces = placesFor(100 * restated.uLost);
  const pressure = (lost: number): string => writeNumber(supply * (1 - lost), unit, places);
  return {
    reads: span(pressure(high), pressure(low)),
    lost: span(fixed(100 * low, lostPlaces), fixed(100 * high, lostPlaces)),
  };
};

export const table = (shown: RestateShown, { unit, width }: RestateOptions): readonly string[] => {
  const { answer, question } = shown;
  const { restated, refused, reading, figures } = answer;
  if (restated === undefined || refused !== undefined || reading === undefined) return [];
  const { reads, lost } = cells(shown, unit);
  const { restrictor, other } = question;
  const there = other?.restrictor ?? restrictor;
  const size = (one: typeof restrictor): string | undefined =>
    one.bore === undefined ? undefined : String(Number(fromSi(one.bore, "mm").toPrecision(4)));
  const bores = [size(restrictor), size(there)];
  return columns({
    labels: ["as read", "there"],
    width,
    rows: [
      {
        name: "supply",
        unit,
        cells: [plain(reading.supply, unit), plain(other?.supply ?? reading.supply, unit)],
      },
      ...(bores.every((one) => one === undefined) ? [] : [{ name: "restrictor", unit: "mm", cells: bores }]),
      { name: "reads", unit, cells: [plain(reading.cylinder, unit), reads] },
      {
        name: "lost",
        unit: "%",
        cells: [fixed(100 * answer.lost, placesFor(100 * (figures?.uLost ?? 1))), lost],
      },
    ],
  });
};

/** Which end holds for which leak. */
export const bandLines = ({ answer, question }: RestateShown, width: number): readonly string[] => {
  const { restated, refused } = answer;
  if (restated === undefined || refused !== undefined) return [];
  const places = placesFor(100 * restated.uLost);
  const [hole, gap] = [restated.reading.lost, restated.laminarLost].map((lost) => percent(lost, places));
  const doubt = `give or take ${fixed(100 * restated.uLost, places)} for ${question.other?.restrictor === undefined ? "the dials" : "dials and bores"}`;
  return held(
    hole === gap
      ? `${String(hole)} whatever the shape of the leak, ${doubt}.`
      : `${String(hole)} if the leak is a hole, ${String(gap)} if it is a long thin gap, ${doubt}.`,
    width,
  );
};
