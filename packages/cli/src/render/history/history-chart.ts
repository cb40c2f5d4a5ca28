// One cylinder against its fellows, or alone by its own readings, drawn over time, with services and changes of gauge
// marked.

import type { CylinderHistory, EngineRecord, KindHistory, PressureUnit } from "@sealtrend/core";
import { type ChartPoint, chart } from "../chart.ts";
import { yearFraction } from "../dates.ts";
import { heldNothing } from "./history-nothing.ts";
import { isAlone, ownUnit, ownValue } from "./history-numbers.ts";
import { dateOf } from "./history-sentences.ts";
import { theOthers } from "../words.ts";

/** With the sentences above and below it fits one screen. */
const rows = 8;
/** A rise or fall below this is noise and shall not fill the chart, percent. */
const leastHeight = 10;

interface Drawn {
  readonly heading: string;
  readonly values: readonly (number | undefined)[];
  readonly others: readonly (number | undefined)[];
}

export const historyChart = (
  record: EngineRecord,
  kind: KindHistory,
  cylinder: CylinderHistory,
  options: { readonly width: number; readonly unicode: boolean; readonly unit: PressureUnit },
): readonly string[] => {
  const { result } = kind;
  const { width, unicode } = options;
  const { label } = cylinder;
  const x = result.tests.map((_, i) => yearFraction(dateOf(kind, i)));
  const { heading, values, others } = isAlone(kind)
    ? ownReadings(cylinder, kind, options.unit)
    : againstOthers(cylinder, kind);
  const nothing = new Set(heldNothing(cylinder, kind));
  const known = [...values, ...others].filter((value) => value !== undefined);
  const floor = Math.min(...known);
  const low = Math.min(floor, (floor + Math.max(...known) - leastHeight) / 2);
  // what held nothing lies below every scale, so the chart points down at it
  const pointsOf = (list: readonly (number | undefined)[], absent?: number): ChartPoint[] =>
    list.map((y, i) => ({ x: x[i] ?? 0, y: nothing.has(i) ? absent : y }));
  const services = record.services
    .filter(({ cylinders }) => cylinders.includes(label))
    .map(({ date, what }) => ({ x: yearFraction(date), text: what }));
  const gauges = result.tests.flatMap(({ gauge }, i) =>
    i > 0 && gauge !== result.tests[i - 1]?.gauge
      ? [{ x: x[i] ?? 0, text: `gauge ${gauge ?? "unknown"}` }]
      : [],
  );
  const one = { name: `cylinder ${label}`, points: pointsOf(values, floor - 1e6) };
  return [
    heading,
    ...chart({
      series: isAlone(kind)
        ? [one]
        : [one, { name: theOthers(result.cylinders.length), points: pointsOf(others) }],
      marks: [...services, ...gauges],
      height: rows,
      ...(known.length === 0 ? {} : { low }),
      width: Math.min(width, 100),
      unicode,
    }),
  ];
};

const ownReadings = ({ label, levels }: CylinderHistory, kind: KindHistory, unit: PressureUnit): Drawn => {
  return {
    heading: `Cylinder ${label}, ${ownUnit(kind, unit)}:`,
    values: levels.map((ln) => (ln === undefined ? undefined : ownValue(ln, kind, unit))),
    others: [],
  };
};

const againstOthers = ({ label, ratios }: CylinderHistory, { result }: KindHistory): Drawn => ({
  heading: `Cylinder ${label} against ${theOthers(result.cylinders.length)}, percent:`,
  values: ratios.map((ratio) => (ratio === undefined ? undefined : Math.expm1(ratio) * 100)),
  others: ratios.map((ratio) => (ratio === undefined ? undefined : 0)),
});
