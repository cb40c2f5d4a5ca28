// The unit an answer is written in: what was asked for, else what the logbook prefers, else what was read.

import { type LogbookFacts, type PressureUnit, type TestAssessment, fromSi } from "@sealtrend/core";

const families: Readonly<Record<string, PressureUnit>> = { us: "psi", metric: "kPa" };

/** @param asked - the value of --units */
export const pressureUnit = (
  asked: string | undefined,
  facts: LogbookFacts,
  read: PressureUnit | undefined,
): PressureUnit => {
  const wanted = asked ?? facts.units;
  if (wanted === undefined) return read ?? "kPa";
  return families[wanted] ?? (wanted as PressureUnit);
};

/** The unit most rows of pressure in this test were typed in. */
export const unitRead = ({ test }: TestAssessment): PressureUnit | undefined =>
  test.rows.map(({ unit }) => unit).find((unit): unit is PressureUnit => unit !== "%");

/** Decimals that the gauge carried, where the answer is in the unit that was typed; undefined = the unit's usual ones. */
export const placesRead = (
  { test }: Pick<TestAssessment, "test">,
  unit: PressureUnit,
): number | undefined => {
  const texts = test.rows
    .filter((row) => row.unit === unit)
    .flatMap(({ cells }) => cells.flatMap((cell) => (cell.kind === "reading" ? [cell.text] : [])));
  if (texts.length === 0) return undefined;
  return Math.min(3, Math.max(...texts.map((text) => /[.,](\d+)/.exec(text)?.[1]?.length ?? 0)));
};

/** Full digits in kPa, for JSON. */
export const kPa = (pascals: number): number => fromSi(pascals, "kPa");
