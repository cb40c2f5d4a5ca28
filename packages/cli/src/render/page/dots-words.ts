// The chart of the newest test in words: for who cannot see it, and for the page as text.

import { shownUnit, valueText } from "./chart-values.ts";
import type { DotsBlock } from "./page-model.ts";

export const dotsWords = (chart: DotsBlock): string =>
  chart.labels
    .map((label, i) => {
      const said = chart.series.flatMap(({ name, values }) => {
        const value = values[i];
        return value === undefined ? [] : [`${name} ${valueText(value, chart)} ${shownUnit(chart)}`];
      });
      return `${label}: ${said.length === 0 ? "not read" : said.join(", ")}`;
    })
    .join("; ");
