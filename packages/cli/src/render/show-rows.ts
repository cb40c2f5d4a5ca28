// The table of `show`: a row a kind of reading, a column a cylinder.

import {
  type PressureKind,
  type PressureUnit,
  type PressureValue,
  type Standing,
  type TestAssessment,
  writeNumber,
} from "@sealtrend/core";
import { type ColumnsRow, narrow } from "./table.ts";
import { placesRead } from "./units.ts";
import { count, fixed, joined, signedPercent, theOthers } from "./words.ts";

const names: Readonly<Record<PressureKind, string>> = {
  dry: "read",
  wet: "with oil",
  "first-stroke": "first stroke",
  running: "running",
  "snap-throttle": "snap throttle",
};

const kinds: readonly PressureKind[] = ["dry", "wet", "first-stroke", "running", "snap-throttle"];

/** The rows, in the order of the screen; those that nothing was recorded for are left out. */
export const showRows = (
  assessment: TestAssessment,
  { unit, width }: { readonly unit: PressureUnit; readonly width: number },
): readonly ColumnsRow[] => [
  ...readingRows(assessment, unit),
  ...correctedRow(assessment, unit),
  ...leakRow(assessment),
  ...(isManyFor(assessment, width) ? [] : standingRow(assessment)),
  ...sinceRows(assessment),
];

const readingRows = (assessment: TestAssessment, unit: PressureUnit): readonly ColumnsRow[] => {
  const places = placesRead(assessment, unit);
  const { cylinders } = assessment;
  const taken = kinds.filter((what) => cylinders.some(({ pressures }) => pressures[what] !== undefined));
  const cellOf = (value: Shown | undefined): string | undefined =>
    value === undefined
      ? undefined
      : `${value.pegged ? ">" : ""}${writeNumber(value.value, unit, places)}${value.doubtful ? "?" : ""}`;
  return taken.flatMap((what) => {
    const values = cylinders.map(({ pressures }) => pressures[what]);
    const compared = assessment.comparisons.filter((one) => one.what === what && one.unit !== "%");
    const [first] = compared;
    const counts = first === undefined ? {} : { gauge: first.counts ?? noName, tail: "(this gauge counts)" };
    return [
      { name: rowName(what, values, counts.gauge), unit, cells: values.map(cellOf), tail: counts.tail },
      ...compared.map(({ gauge = noName, cells }) => ({
        name: rowName(what, cells, gauge),
        unit,
        cells: cells.map(cellOf),
        tail: "(to compare only)",
      })),
    ];
  });
};

type Shown = Pick<PressureValue, "readings" | "value" | "doubtful" | "pegged">;

const noName = "no name";

/** `read by red, mean of 3`. */
const rowName = (what: PressureKind, values: readonly (Shown | undefined)[], gauge?: string): string =>
  `${names[what]}${gauge === undefined ? "" : ` by ${gauge}`}${meanOf(values)}`;

/** `, mean of 3` where readings were repeated. */
const meanOf = (values: readonly (Shown | undefined)[]): string => {
  const counts = values.flatMap((value) => value?.readings.length ?? []);
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

const leakRow = ({ cylinders, comparisons }: TestAssessment): readonly ColumnsRow[] => {
  if (cylinders.every(({ leakDown }) => leakDown === undefined)) return [];
  const cellOf = (lost: number | undefined): string | undefined =>
    lost === undefined ? undefined : fixed(lost * 100, 0);
  const compared = comparisons.filter(({ what }) => what === "leak-down");
  const [first] = compared;
  const counts = first === undefined ? undefined : ` by ${first.counts ?? noName}`;
  return [
    {
      name: `leak-down${counts ?? ""} lost`,
      unit: "%",
      cells: cylinders.map(({ leakDown }) => cellOf(leakDown?.lost)),
      tail: counts === undefined ? undefined : "(this tester counts)",
    },
    ...compared.map(({ gauge = noName, cells }) => ({
      name: `leak-down by ${gauge} lost`,
      unit: "%",
      cells: cells.map((cell) => cellOf(cell?.value)),
      tail: "(to compare only)",
    })),
  ];
};

const standingRow = ({ cylinders }: TestAssessment): readonly ColumnsRow[] =>
  cylinders.length < 2 || cylinders.every(({ standing }) => standing === undefined)
    ? []
    : [
        {
          name: `against ${theOthers(cylinders.length).replace("the ", "")}`,
          cells: cylinders.map(({ standing }) => (standing === "lagging" ? "lags" : standing)),
          sentence: "leads",
        },
      ];

/** From so many cylinders on a word for each would take a second screen. */
const many = 13;
const isManyFor = ({ cylinders }: TestAssessment, width: number): boolean =>
  cylinders.length >= many && width >= narrow;

/** `Against others: 27 suspect, the other 27 even.` where the row has no room. */
export const standingText = (assessment: TestAssessment, width: number): string => {
  const { cylinders } = assessment;
  const read = cylinders.filter(({ standing }) => standing !== undefined);
  if (!isManyFor(assessment, width) || read.length === 0) return "";
  const labels = (word: Standing): string[] =>
    read.filter(({ standing }) => standing === word).map(({ label }) => label);
  const [lag, suspect, even] = [labels("lagging"), labels("suspect"), labels("even")];
  const parts = [
    lag.length === 0 ? "" : `${joined(lag)} ${lag.length === 1 ? "lags" : "lag"}`,
    suspect.length === 0 ? "" : `${joined(suspect)} suspect`,
    even.length === 0 ? "" : `${even.length < read.length ? "the other" : "all"} ${count(even.length)} even`,
  ];
  return `Against others: ${parts.filter((part) => part !== "").join(", ")}.`;
};

/** How each has moved against the others since the first test of its history: a row for each such test. */
const sinceRows = ({ cylinders }: TestAssessment): readonly ColumnsRow[] => {
  const dates = [...new Set(cylinders.flatMap(({ sinceFirst }) => sinceFirst?.date.slice(0, 7) ?? []))];
  return dates.sort().map((date) => ({
    name: `since ${date}`,
    unit: "%",
    cells: cylinders.map(({ sinceFirst }) =>
      sinceFirst?.date.startsWith(date) === true ? signedPercent(sinceFirst.change) : undefined,
    ),
    tail: `(against ${theOthers(cylinders.length)})`,
  }));
};
