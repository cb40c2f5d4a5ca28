// Reads a drawn chart back: what the tests of the chart share.

import { chart, type ChartOptions, type ChartPoint } from "../../../packages/cli/src/render/chart.ts";

export const points = (...pairs: readonly (readonly [number, number | null | undefined])[]): ChartPoint[] =>
  pairs.map(([x, y]) => ({ x, y }));
export const draw = (list: readonly ChartPoint[], more: Partial<ChartOptions> = {}): readonly string[] =>
  chart({ series: [{ name: "cylinder 3", points: list }], width: 72, height: 9, unicode: true, ...more });

/** The rows of the plot: label (undefined where the row has none) and what is drawn, from the top. */
export const rowsOf = (lines: readonly string[]) =>
  lines.flatMap((line) => {
    const [whole, label, labelled, plain] = /^ *(?:(-?[\d.]+) [┤+](.*)|[│|](.*))$/.exec(line) ?? [];
    if (whole === undefined) return [];
    return [{ label: label === undefined ? undefined : Number(label), plot: labelled ?? plain ?? "" }];
  });
export const markersIn = (lines: readonly string[]): number =>
  rowsOf(lines).reduce((sum, { plot }) => sum + [...plot].filter((sign) => sign === "●").length, 0);
export const labelAt = (lines: readonly string[], sign = "●"): number | undefined =>
  rowsOf(lines).find(({ plot }) => plot.includes(sign))?.label;
