// The key of the chart of the years: which mark is which gauge, what is hollow, what the dashes are.

import { type Markup, html } from "./html.ts";
import type { StripsBlock } from "./page-model.ts";
import { mostMarks, px } from "./plot.ts";

/** Width of the chart, and where its strips begin. */
export const stripsWide = 700;
export const stripsLeft = 34;

/** Name of the marker of a gauge; hollow where the test does not count. */
export const markerKey = (id: string, gauge: number, counts: "yes" | "no"): string =>
  `${id}-${String(Math.min(gauge, mostMarks - 1))}${counts === "yes" ? "" : "h"}`;

interface Sign {
  readonly text: string;
  /** Of a marker; absent: the line of the limit. */
  readonly key?: string;
}

const signsOf = ({ gauges, tests, id, limit }: StripsBlock): readonly Sign[] => {
  const used = gauges.flatMap((text, place) =>
    tests.some(({ gauge }) => gauge === place) ? [{ key: markerKey(id, place, "yes"), text }] : [],
  );
  const hollow = tests.find(({ counts }) => counts === "no");
  return [
    ...used,
    ...(hollow === undefined
      ? []
      : [{ key: markerKey(id, hollow.gauge, "no"), text: "hollow: not counted" }]),
    ...(limit === undefined ? [] : [{ text: limit.text }]),
  ];
};

/** Signs side by side, in as many lines as they need. A sign takes about 5 units a letter. */
const placedSigns = (
  chart: StripsBlock,
): readonly (Sign & { readonly x: number; readonly line: number })[] => {
  let x = stripsLeft;
  let line = 0;
  return signsOf(chart).map((sign) => {
    const long = (sign.key === undefined ? 44 : 26) + 5 * [...sign.text].length;
    if (x > stripsLeft && x + long > stripsWide) [x, line] = [stripsLeft, line + 1];
    const placed = { ...sign, x, line };
    x += long;
    return placed;
  });
};

const lineTall = 12;
export const legendTall = (chart: StripsBlock): number =>
  4 + lineTall * (1 + (placedSigns(chart).at(-1)?.line ?? 0));

export const legendOf = (chart: StripsBlock, top: number): readonly Markup[] =>
  placedSigns(chart).map(({ x, line, text, key }) => {
    const y = top + line * lineTall;
    return key === undefined
      ? html`<path class="limit" d="M${px(x)},${px(y - 3)}h22" /><text x="${px(x + 27)}" y="${px(y)}"
            >${text}</text
          >`
      : html`<path class="marks" d="M${px(x)},${px(y - 3)}h0" marker-start="url(#${key})" /><text
            x="${px(x + 8)}"
            y="${px(y)}"
            >${text}</text
          >`;
  });
