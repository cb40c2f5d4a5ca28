// The cranking readings of one cylinder as evidence: all of them in the values that cylinders are compared by, so that dry,
// oiled and first stroke stand on one footing. What is doubtful, pegged or more than it can be is left out; a tenth of the others
// is not, for a cylinder next to dead reads so.

import type { CylinderEvidence } from "../../diagnosis/index.ts";
import type { PressureKind, Test } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import type { PressureValue } from "../assessment.ts";
import { mostOfEngine } from "../values/most-of-engine.ts";
import { comparedPressure } from "../values/pressure-values.ts";
import { trueReading, valuesOf } from "../values/values.ts";
import type { Assessed } from "./assessed.ts";

type Readings = Pick<CylinderEvidence, "dry" | "wet" | "firstStroke" | "running">;

/** In the engine's order. Where nothing held anything the gauge may never have moved: there is nothing to compare. */
export const crankingEvidence = (assessed: Assessed): readonly Readings[] => {
  const { test, cylinders, buildUp } = assessed;
  const most = mostIn(assessed);
  const oiled = oiledAlike(assessed);
  const isMoved = cylinders.some(({ pressures: { dry } }) => dry !== undefined && dry.value > 0);
  return cylinders.map(({ label, pressures }, i): Readings => {
    const { dry, running } = pressures;
    const level = dry === undefined || !isMoved ? [] : takesOf(test, i, { dry, most });
    const wet = oiled.includes(label) ? likeDry(pressures.wet, dry) : undefined;
    const first = buildUp === undefined ? undefined : likeDry(pressures["first-stroke"], dry);
    return {
      ...(level.length === 0 ? {} : { dry: level }),
      ...(wet === undefined || level.length === 0 ? {} : { wet }),
      // strokes add to what a gauge holds: one above the last reading was mixed up with it
      ...(first === undefined || level.length === 0 || first > Math.max(...level)
        ? {}
        : { firstStroke: first }),
      ...(running === undefined || !isSure(running) ? {} : { running: running.corrected }),
    };
  });
};

/** Above it a reading is no evidence [Pa gauge]; all are where the middle one lies above, as in a wrong unit, which shifts none
 *  against another. */
const mostIn = ({ record, cylinders }: Assessed): number => {
  const most = mostOfEngine[record.engine.ignition];
  const read = cylinders.flatMap(({ pressures: { dry } }) => (dry === undefined ? [] : [dry.read]));
  return read.length > 0 && median(read) <= most ? most : Infinity;
};

const isSure = ({ doubtful, pegged, slip }: PressureValue): boolean =>
  !doubtful && !pegged && slip === undefined;

/** Each sound take of the gauge that counts, corrected as their mean is. */
const takesOf = (
  test: Test,
  cylinder: number,
  { dry, most }: { readonly dry: PressureValue; readonly most: number },
): readonly number[] => {
  const values = valuesOf(test, "dry");
  if (values === undefined || dry.slip?.kind === "high" || dry.pegged) return [];
  const scale = dry.value > 0 ? comparedPressure(dry) / dry.value : 1;
  return test.rows.flatMap(({ what, gauge, cells }) => {
    const cell = what === "dry" && gauge === values.gauge ? cells[cylinder] : undefined;
    return cell?.kind === "reading" && !cell.doubtful && cell.value <= most
      ? [trueReading(cell.value, values.readsHigh ?? 0) * scale]
      : [];
  });
};

/** In reference air, and at the speed that the dry reading of the cylinder was brought to. */
const likeDry = (value: PressureValue | undefined, dry: PressureValue | undefined): number | undefined => {
  if (value === undefined || dry === undefined || !isSure(value)) return undefined;
  return value.corrected * (dry.corrected > 0 ? comparedPressure(dry) / dry.corrected : 1);
};

/** Amounts of oil further apart than this do not compare; judgement, as for the control. */
const sameAmount = 0.2;

/** Cylinders whose oil tells: by the gauge of the dry readings, no reading that fell, room left in the chamber, and as much
 *  oil as in the lowest of them. */
const oiledAlike = ({ test, cylinders, oil }: Assessed): readonly string[] => {
  if (oil === undefined || !isSameGauge(test, "wet")) return [];
  const telling = oil.cylinders.filter(
    ({ doubts, amount }) => amount !== "too-much" && !doubts.includes("fell"),
  );
  const lowest = telling.toSorted((a, b) => readingOf(cylinders, a.label) - readingOf(cylinders, b.label))[0]
    ?.oil;
  return telling
    .filter(
      (one) =>
        lowest === undefined ||
        one.oil === undefined ||
        Math.abs(one.oil - lowest) <= sameAmount * Math.max(one.oil, lowest),
    )
    .map(({ label }) => label);
};

const readingOf = (cylinders: Assessed["cylinders"], label: string): number =>
  cylinders.find((one) => one.label === label)?.pressures.dry?.value ?? Infinity;

const isSameGauge = (test: Test, what: PressureKind): boolean =>
  valuesOf(test, what)?.gauge === valuesOf(test, "dry")?.gauge;
