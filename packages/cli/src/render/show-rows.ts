// The table of `show`: a row a kind of reading, a column a cylinder.

import {
  type CylinderAssessment,
  type PressureKind,
  type PressureUnit,
  type TestAssessment,
  writeNumber,
} from "@sealtrend/core";
import type { ColumnsRow } from "./table.ts";
import { placesRead } from "./units.ts";
import { fixed, joined, signedPercent } from "./words.ts";

const names: Readonly<Record<PressureKind, string>> = {
  dry: "read",
  wet: "with oil",
  "first-stroke": "first stroke",
  running: "running",
  "snap-throttle": "snap throttle",
};

const kinds: readonly PressureKind[] = ["dry", "wet", "first-stroke", "running", "snap-throttle"];

/** The rows, in the order of the screen; those that nothing was recorded for are left out. */
export const showRows = (assessment: TestAssessment, unit: PressureUnit): readonly ColumnsRow[] => [
  ...readingRows(assessment, unit),
  ...correctedRow(assessment, unit),
  ...leakRow(assessment),
  ...standingRow(assessment),
  ...sinceRow(assessment),
];

const readingRows = (assessment: TestAssessment, unit: PressureUnit): readonly ColumnsRow[] => {
  const places = placesRead(assessment, unit);
  const { cylinders } = assessment;
  const taken = kinds.filter((what) => cylinders.some(({ pressures }) => pressures[what] !== undefined));
  return taken.map((what) => ({
    name: `${names[what]}${meanOf(cylinders, what)}`,
    unit,
    cells: cylinders.map(({ pressures }) => {
      const value = pressures[what];
      if (value === undefined) return undefined;
      const text = writeNumber(value.value, unit, places);
      return `${value.pegged ? ">" : ""}${text}${value.doubtful ? "?" : ""}`;
    }),
  }));
};

/** `, mean of 3` where readings were repeated. */
const meanOf = (cylinders: readonly CylinderAssessment[], what: PressureKind): string => {
  const counts = cylinders.flatMap(({ pressures }) => pressures[what]?.readings.length ?? []);
  const [least, most] = [Math.min(...counts), Math.max(...counts)];
  return most < 2 ? "" : `, mean of ${least === most ? "" : `${String(least)} to `}${String(most)}`;
};

const correctedRow = (assessment: TestAssessment, unit: PressureUnit): readonly ColumnsRow[] => {
  const { cylinders, correction } = assessment;
  if (correction.factor === 1 || cylinders.every(({ pressures }) => pressures.dry === undefined)) return [];
  const places = placesRead(assessment, unit);
  const cells = cylinders.map(({ pressures: { dry } }) =>
    dry === undefined ? undefined : `${dry.pegged ? ">" : ""}${writeNumber(dry.corrected, unit, places)}`,
  );
  return [{ name: "at sea level", unit, cells, tail: factorText(assessment) }];
};

const factorText = ({ correction: { from, factor }, test: { conditions } }: TestAssessment): string => {
  const height = conditions.altitude === undefined ? "" : `${conditions.altitude.toFixed(0)} m`;
  const where = { station: "barometer", qnh: `${height} and weather report`, altitude: height, assumed: "" }[
    from
  ];
  return `(${where}: x ${factor.toFixed(3)})`;
};

const leakRow = ({ cylinders }: TestAssessment): readonly ColumnsRow[] =>
  cylinders.every(({ leakDown }) => leakDown === undefined)
    ? []
    : [
        {
          name: "leak-down lost",
          unit: "%",
          cells: cylinders.map(({ leakDown }) =>
            leakDown === undefined ? undefined : fixed(leakDown.lost * 100, 0),
          ),
        },
      ];

const standingRow = ({ cylinders }: TestAssessment): readonly ColumnsRow[] =>
  cylinders.length < 2 || cylinders.every(({ standing }) => standing === undefined)
    ? []
    : [
        {
          name: "against others",
          cells: cylinders.map(({ standing }) => (standing === "lagging" ? "lags" : standing)),
        },
      ];

/** How each has moved against the others since the first test of its history. */
const sinceRow = ({ cylinders }: TestAssessment): readonly ColumnsRow[] => {
  const dates = new Set(cylinders.flatMap(({ sinceFirst }) => sinceFirst?.date.slice(0, 7) ?? []));
  if (dates.size === 0) return [];
  const [only = ""] = dates;
  return [
    {
      name: dates.size === 1 ? `since ${only}` : "since first",
      unit: "%",
      cells: cylinders.map(({ sinceFirst }) =>
        sinceFirst === undefined ? undefined : signedPercent(sinceFirst.change),
      ),
    },
  ];
};

/** `Air heard: exhaust in 5; crankcase, faint, in 1 and 3; none in 2.`, or nothing. */
export const heardText = ({ cylinders }: TestAssessment): string => {
  const places = new Map<string, string[]>();
  for (const { label, heard = [] } of cylinders)
    for (const { place, faint, neighbour } of heard) {
      const where = `${place === "none" ? "nowhere" : place}${neighbour === undefined ? "" : ` ${neighbour}`}${faint ? ", faint," : ""}`;
      places.set(where, [...(places.get(where) ?? []), label]);
    }
  const parts = [...places].map(([where, labels]) => `${where} in ${joined(labels)}`);
  return parts.length === 0 ? "" : `Air heard: ${parts.join("; ")}.`;
};
