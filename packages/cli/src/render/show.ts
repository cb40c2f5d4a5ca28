// The screen of `show`: the answer first, then the numbers that carry it under their cylinders, then what to do next.

import { type PressureKind, type PressureUnit, type RuleFinding, type TestAssessment, writeNumber } from "@sealtrend/core";
import { ruleLine } from "./rule-words.ts";
import { showHeadline } from "./show-headline.ts";
import { type ColumnsRow, columns, wrapText } from "./table.ts";
import { placesRead } from "./units.ts";
import { percent, sentence } from "./words.ts";

export interface ShowOptions {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly detail: "short" | "why";
}

/** The whole screen, lines without line ends. */
export const showScreen = (assessment: TestAssessment, options: ShowOptions): readonly string[] => {
  const { width } = options;
  const { record, test } = assessment;
  const meter = test.meter === undefined ? "" : `, ${String(test.meter)} ${record.engine.meter ?? "on the meter"}`;
  return [
    ...wrapText(showHeadline(assessment), width),
    "",
    ...columns({ head: `${record.engine.id} ${test.id}`, labels: record.engine.cylinders, rows: rowsOf(assessment, options), width }),
    "",
    ...wrapText(rulesText(assessment.rules, options), width),
    ...wrapText(trustText(assessment, options), width),
    ...(options.detail === "why" ? ["", ...wrapText(`${test.date}${meter}`, width), ...whyLines(assessment, options)] : []),
    ...nextLines(assessment, width),
    ...(record.engine.use === "aircraft"
      ? wrapText("Airworthiness is a licensed person's call by the maker's limits; this is not the aircraft's log.", width)
      : []),
  ].filter((line, i, all) => line !== "" || all[i - 1] !== "");
};

const names: Readonly<Record<PressureKind, string>> = {
  dry: "read",
  wet: "with oil",
  "first-stroke": "first stroke",
  running: "running",
  "snap-throttle": "snap throttle",
};

const rowsOf = (assessment: TestAssessment, { unit }: ShowOptions): readonly ColumnsRow[] => {
  const places = placesRead(assessment, unit);
  const { cylinders, correction } = assessment;
  const number = (pascals: number | undefined): string | undefined => (pascals === undefined ? undefined : writeNumber(pascals, unit, places));
  const kinds = Object.keys(names) as PressureKind[];
  const taken = kinds.filter((what) => cylinders.some(({ pressures }) => pressures[what] !== undefined));
  const readings = taken.map((what): ColumnsRow => {
    const most = Math.max(...cylinders.map(({ pressures }) => pressures[what]?.readings.length ?? 0));
    return {
      name: most > 1 ? `${names[what]}, mean of ${String(most)}` : names[what],
      unit,
      cells: cylinders.map(({ pressures }) => {
        const value = pressures[what];
        const text = number(value?.value);
        return text === undefined ? undefined : `${value?.pegged === true ? ">" : ""}${text}${value?.doubtful === true ? "?" : ""}`;
      }),
    };
  });
  const corrected: ColumnsRow[] =
    correction.factor === 1 || !taken.includes("dry")
      ? []
      : [{ name: "at sea level", unit, cells: cylinders.map(({ pressures }) => number(pressures.dry?.corrected)), tail: factorText(assessment) }];
  const leak: ColumnsRow[] = cylinders.some(({ leakDown }) => leakDown !== undefined)
    ? [{ name: "leak-down lost", unit: "%", cells: cylinders.map(({ leakDown }) => (leakDown === undefined ? undefined : (leakDown.lost * 100).toFixed(0))) }]
    : [];
  const heard: ColumnsRow[] = cylinders.some((cylinder) => cylinder.heard !== undefined)
    ? [{ name: "air heard at", cells: cylinders.map(({ heard: places_ }) => places_?.map(({ place, faint }) => (faint ? `(${place})` : place)).join("+")) }]
    : [];
  const standing: ColumnsRow = {
    name: "against others",
    cells: cylinders.map((cylinder) => (cylinder.standing === "lagging" ? "lags" : cylinder.standing)),
  };
  return [...readings, ...corrected, ...leak, ...heard, ...(cylinders.length > 1 ? [standing] : [])];
};

const factorText = ({ correction, test }: TestAssessment): string => {
  const { from, factor } = correction;
  const altitude = test.conditions.altitude;
  const where =
    from === "station" ? "barometer" : altitude === undefined ? "" : `${altitude.toFixed(0)} m${from === "qnh" ? " and weather report" : ""}`;
  return `(${where}: x ${factor.toFixed(3)})`;
};

const rulesText = (rules: readonly RuleFinding[], options: ShowOptions): string => {
  const lines = rules.map((rule) => ruleLine(rule, options.unit));
  return lines.length === 0 ? "" : lines.join(" · ");
};

const trustText = ({ trust, missing }: TestAssessment, { detail }: ShowOptions): string => {
  const doubts = trust.reasons.filter(({ weight }) => weight === "doubtful" || trust.code !== "void");
  const said = trust.code === "void" ? "" : trust.code === "trusted" ? "Trusted. " : `Doubtful: ${doubts.map(({ text }) => text).join("; ")}. `;
  const shown = detail === "why" ? missing : missing.slice(0, 2);
  const more = missing.length - shown.length;
  const gaps = shown.length === 0 ? "" : `Not recorded: ${shown.join("; ")}${more > 0 ? `; and ${String(more)} more (--why)` : ""}.`;
  return sentence(`${said}${gaps}`);
};

const nextLines = ({ nextTests, record }: TestAssessment, width: number): readonly string[] => {
  const kinds: Readonly<Record<string, string>> = { wet: "wet", "leak-down-and-listen": "leak-down", cranking: "dry", conditions: "dry", repeat: "dry" };
  const lines = nextTests.slice(0, 3).map(({ text, minutes }) => `${text}, ${String(minutes)} minutes`);
  const how = nextTests.map(({ code }) => kinds[code]).find((kind) => kind !== undefined);
  return [
    ...(lines.length > 0 ? [""] : []),
    ...lines.flatMap((line, i) => wrapText(line, width, i === 0 ? "next   " : "       ")),
    ...(how === undefined ? [] : wrapText(`steps and cautions: sealtrend how ${how} ${record.engine.id}`, width, "       ")),
  ];
};

const whyLines = (assessment: TestAssessment, { unit, width }: ShowOptions): readonly string[] => {
  const { cylinders, correction, spread, trust, rules } = assessment;
  const places = placesRead(assessment, unit);
  const lines = cylinders.flatMap(({ label, pressures, t, belowOthers }) => {
    const dry = pressures.dry;
    if (dry === undefined) return [];
    const takes = dry.readings.map((value) => writeNumber(value, unit, places)).join(" ");
    const doubt = dry.uncertainty === undefined ? "" : ` ± ${writeNumber(dry.uncertainty, unit, Math.max(1, places ?? 1))}`;
    const far = t === undefined ? "in the upper half" : `t ${t.toFixed(2)}`;
    const under = belowOthers === undefined ? "" : `, ${percent(belowOthers, 1)} under the others`;
    return [`${label}: ${takes} read, ${writeNumber(dry.corrected, unit, places)}${doubt} ${unit} at sea level, ${far}${under}`];
  });
  const air = `Air ${(correction.station / 100).toFixed(0)} hPa (${correction.from}), brought to 1013 hPa by ${correction.basis}: x ${correction.factor.toFixed(4)} ± ${percent(correction.uncertainty, 1)}. Speed is not corrected.`;
  const together =
    spread === undefined ? [] : [`Lowest/highest ${spread.ratio.toFixed(3)}, middle ${writeNumber(spread.median, unit, places)} ${unit}${spread.cv === undefined ? "" : `, scatter ${percent(spread.cv, 1)}`}.`];
  const mends = trust.reasons.map(({ text, mend }) => `${sentence(text)}: ${mend}.`);
  const sources = rules.map(({ text, source, status }) => `${text} (${source}; ${status})`);
  return [...lines, ...together, air, ...mends, ...sources].flatMap((line) => wrapText(line, width));
};
