// One cylinder against its fellows, drawn over time, with services and changes of gauge marked.

import type { EngineRecord, KindHistory } from "@sealtrend/core";
import { chart } from "./chart.ts";
import { yearFraction } from "./dates.ts";

/** Lines of the chart. @param label - a cylinder of the engine */
export const historyChart = (
  record: EngineRecord,
  kind: KindHistory,
  label: string,
  options: { readonly width: number; readonly unicode: boolean },
): readonly string[] => {
  const { result, counted } = kind;
  const cylinder = result.cylinders.find((one) => one.label === label);
  if (cylinder === undefined) return [];
  const dateOf = (i: number): string =>
    counted.find(({ test }) => test.id === result.tests[i]?.ids[0])?.test.date ?? kind.start;
  const x = result.tests.map((_, i) => yearFraction(dateOf(i)));
  const points = result.tests.map((_, i) => ({ x: x[i] ?? 0, y: percentOf(cylinder.ratios[i]) }));
  const others = result.tests.map((_, i) => ({
    x: x[i] ?? 0,
    y: cylinder.ratios[i] === undefined ? undefined : 0,
  }));
  const services = record.services
    .filter(({ cylinders }) => cylinders.includes(label))
    .map(({ date, what }) => ({ x: yearFraction(date), text: what }));
  const gauges = result.tests.flatMap(({ gauge }, i) =>
    i > 0 && gauge !== result.tests[i - 1]?.gauge
      ? [{ x: x[i] ?? 0, text: `gauge ${gauge ?? "unknown"}` }]
      : [],
  );
  const heading = `Cylinder ${label} against the others, percent:`;
  return [
    heading,
    ...chart({
      series: [
        { name: `cylinder ${label}`, points },
        { name: "the others", points: others },
      ],
      marks: [...services, ...gauges],
      unit: "%",
      height: 10,
      ...options,
    }),
  ];
};

const percentOf = (ratio: number | undefined): number | undefined =>
  ratio === undefined ? undefined : Math.expm1(ratio) * 100;
