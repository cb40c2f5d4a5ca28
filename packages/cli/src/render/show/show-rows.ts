// The table of `show`: a row a kind of reading, a column a cylinder.

import {
  type CylinderAssessment,
  type PressureKind,
  type PressureUnit,
  type PressureValue,
  type TestAssessment,
  writeNumber,
} from "@sealtrend/core";
import { speedRow } from "./show-speed.ts";
import { isByLimitAlone, standingWord } from "./show-lags.ts";
import { leakRows } from "./show-leak.ts";
import { type ColumnsRow, narrow } from "../table.ts";
import { placesRead } from "../units.ts";
import { count, joined, percent, signedPercent, theOthers } from "../words.ts";

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
  ...gaugeErrorRow(assessment, unit),
  ...correctedRow(assessment, unit),
  ...speedRow(assessment, unit),
  ...leakRows(assessment),
  ...(isManyFor(assessment, width) ? [] : standingRow(assessment)),
  ...sinceRows(assessment),
];

const readingRows = (assessment: TestAssessment, unit: PressureUnit): readonly ColumnsRow[] => {
  const places = placesRead(assessment, unit);
  const { cylinders } = assessment;
  const taken = kinds.filter((what) => cylinders.some(({ pressures }) => pressures[what] !== undefined));
  const written = (pressure: number): string => writeNumber(pressure, unit, places);
  const cellOf = (value: Shown | undefined): string | undefined =>
    value === undefined
      ? undefined
      : `${value.pegged ? `>${written(value.read).replace(/\.0+$/, "")}` : written(value.read)}${value.doubtful ? "?" : ""}`;
  const spanOf = ({ readings }: Shown): string =>
    `${written(Math.min(...readings))}-${written(Math.max(...readings))}`;
  return taken.flatMap((what) => {
    const values = cylinders.map(({ pressures }) => pressures[what]);
    const shown = cylinders.map(({ pressures: { [what]: value }, repeats }) =>
      value !== undefined && what === "dry" && isApart(repeats) ? spanOf(value) : cellOf(value),
    );
    const compared = assessment.comparisons.filter((one) => one.what === what && one.unit !== "%");
    const [first] = compared;
    const counts = first === undefined ? {} : { gauge: first.counts ?? noName, tail: "(this gauge counts)" };
    return [
      { name: rowName(what, values, counts.gauge), unit, cells: shown, tail: counts.tail },
      ...compared.map(({ gauge = noName, cells }) => ({
        name: rowName(what, cells, gauge),
        unit,
        cells: cells.map(cellOf),
        tail: "(to compare only)",
      })),
    ];
  });
};

/** A mean of such repeats would be no reading. */
const isApart = (repeats: CylinderAssessment["repeats"]): boolean =>
  repeats === "contradict" || repeats === "each-low";

type Shown = Pick<PressureValue, "readings" | "read" | "doubtful" | "pegged">;

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

/** The dry readings without what the gauge is known to read too high. */
const gaugeErrorRow = (assessment: TestAssessment, unit: PressureUnit): readonly ColumnsRow[] => {
  const { readsHigh = 0, cylinders } = assessment;
  if (readsHigh === 0) return [];
  const places = placesRead(assessment, unit);
  const cells = cylinders.map(({ pressures: { dry } }) =>
    dry === undefined ? undefined : `${dry.pegged ? ">" : ""}${writeNumber(dry.value, unit, places)}`,
  );
  const by = `${plainNumber(Math.abs(readsHigh), unit)} ${unit} ${readsHigh > 0 ? "high" : "low"}`;
  return [{ name: "gauge put right", unit, cells, tail: `(it reads ${by})` }];
};

const plainNumber = (si: number, unit: PressureUnit): string =>
  String(Number(writeNumber(si, unit, unit === "psi" || unit === "kPa" ? 1 : 2)));

const correctedRow = (assessment: TestAssessment, unit: PressureUnit): readonly ColumnsRow[] => {
  const { cylinders, correction } = assessment;
  if (correction.factor === 1 || cylinders.every(({ pressures }) => pressures.dry === undefined)) return [];
  const places = placesRead(assessment, unit);
  const cells = cylinders.map(({ pressures: { dry } }) =>
    dry === undefined ? undefined : `${dry.pegged ? ">" : ""}${writeNumber(dry.corrected, unit, places)}`,
  );
  return [{ name: "at sea level", unit, cells, tail: factorText(assessment) }];
};

const factorText = ({
  correction: { from, factor, temperatureExponent: share },
  test: { conditions },
}: TestAssessment): string => {
  const height = conditions.altitude === undefined ? "" : `${conditions.altitude.toFixed(0)} m`;
  const where = { station: "barometer", qnh: `${height} and weather report`, altitude: height, assumed: "" }[
    from
  ];
  const what = share === 1 ? "by density" : `${percent(share)} for air temperature`;
  const by = share === 0 ? "" : `${where === "" ? "" : ", "}${what}`;
  return `(${where}${by}: x ${factor.toFixed(3)})`;
};

/** One that stands out above all the rest does not pass as even. */
const wordOf = (cylinder: CylinderAssessment, { high }: TestAssessment): string | undefined =>
  high?.includes(cylinder.label) === true ? "high" : standingWord(cylinder);

const standingRow = (assessment: TestAssessment): readonly ColumnsRow[] => {
  const { cylinders } = assessment;
  if (cylinders.length < 2 || cylinders.every(({ standing }) => standing === undefined)) return [];
  const name = cylinders.some(isByLimitAlone)
    ? "standing"
    : `against ${theOthers(cylinders.length).replace("the ", "")}`;
  return [{ name, cells: cylinders.map((one) => wordOf(one, assessment)), sentence: "leads" }];
};

/** From so many cylinders on a word for each would take a second screen. */
const many = 13;
const isManyFor = ({ cylinders }: TestAssessment, width: number): boolean =>
  cylinders.length >= many && width >= narrow;

/** `Against others: 27 suspect, the other 27 even.` where the row has no room. */
export const standingText = (assessment: TestAssessment, width: number): string => {
  const { cylinders } = assessment;
  const read = cylinders.filter(({ standing }) => standing !== undefined);
  if (!isManyFor(assessment, width) || read.length === 0) return "";
  const labels = (word: string): string[] =>
    read.filter((cylinder) => wordOf(cylinder, assessment) === word).map(({ label }) => label);
  const [lag, suspect, even] = [labels("lags"), labels("suspect"), labels("even")];
  const byLimit = ["below limit", "over limit", "just below", "just over", "high"].flatMap((word) =>
    labels(word).length === 0
      ? []
      : [`${joined(labels(word))} ${word}${word.startsWith("just") ? " its limit" : ""}`],
  );
  const parts = [
    lag.length === 0 ? "" : `${joined(lag)} ${lag.length === 1 ? "lags" : "lag"}`,
    ...byLimit,
    suspect.length === 0 ? "" : `${joined(suspect)} suspect`,
    even.length === 0 ? "" : `${even.length < read.length ? "the other" : "all"} ${count(even.length)} even`,
  ];
  return `${read.some(isByLimitAlone) ? "Standing" : "Against others"}: ${parts.filter((part) => part !== "").join(", ")}.`;
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
