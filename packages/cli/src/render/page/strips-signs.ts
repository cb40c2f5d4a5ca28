// The key of the chart of the years: which mark is which gauge, what is hollow, what the dashes are.

import { type Markup, html } from "./html.ts";
import type { StripsBlock } from "./page-model.ts";
import { mostMarks, px } from "./plot.ts";

/** Width of the chart, and where its strips begin. */
export const stripsWide = 700;
export const stripsLeft = 64;

/** Name of the marker of a gauge; hollow where the test does not count. */
export const markerKey = (id: string, gauge: number, counts: "yes" | "no" | "aside"): string =>
  `${id}-${String(Math.min(gauge, mostMarks - 1))}${counts === "yes" ? "" : "h"}`;

interface Sign {
  readonly text: string;
  /** Of a marker. */
  readonly key?: string;
  /** Of what is no marker: the line of the limit, the cross of a reading of nothing, the stroke of a test set aside. */
  readonly drawn?: "limit" | "nothing" | "aside";
}

const signsOf = (chart: StripsBlock): readonly Sign[] => {
  const { gauges, tests, id, limit, cylinders } = chart;
  const used = gauges.flatMap((text, place) =>
    tests.some(({ gauge }) => gauge === place) ? [{ key: markerKey(id, place, "yes"), text }] : [],
  );
  const hollow = tests.find(({ counts }) => counts !== "yes");
  return [
    ...used,
    ...(hollow === undefined
      ? []
      : [{ key: markerKey(id, hollow.gauge, "no"), text: "hollow: not counted" }]),
    ...(tests.some(({ counts }) => counts === "aside")
      ? [{ text: "struck: set aside", drawn: "aside" } as const]
      : []),
    ...(cylinders.some(({ nothing }) => nothing.length > 0)
      ? [{ text: "held nothing", drawn: "nothing" } as const]
      : []),
    ...(limit === undefined ? [] : [{ text: limit.text, drawn: "limit" } as const]),
  ];
};

/** Signs side by side, in as many lines as they need. A sign takes about 5 units a letter. */
const placedSigns = (
  chart: StripsBlock,
): readonly (Sign & { readonly x: number; readonly line: number })[] => {
  let x = stripsLeft;
  let line = 0;
  return signsOf(chart).map((sign) => {
    const long = (sign.drawn === "limit" ? 44 : 26) + 5 * [...sign.text].length;
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
  placedSigns(chart).map(({ x, line, text, key, drawn }) => {
    const y = top + line * lineTall;
    if (drawn === "limit")
      return html`<path class="limit" d="M${px(x)},${px(y - 3)}h22" /><text x="${px(x + 27)}" y="${px(y)}"
          >${text}</text
        >`;
    const sign =
      key === undefined
        ? html`<path class="cross" d="${drawn === "aside" ? strokeAt(x, y - 3) : crossAt(x, y - 3)}" />`
        : html`<path class="marks" d="M${px(x)},${px(y - 3)}h0" marker-start="url(#${key})" />`;
    return html`${sign}<text x="${px(x + 8)}" y="${px(y)}">${text}</text>`;
  });

/** Of a reading of nothing. */
export const crossAt = (x: number, y: number): string => `M${px(x - 3)},${px(y - 3)}l6,6m0,-6l-6,6`;
/** Through the mark of a test that was set aside. */
export const strokeAt = (x: number, y: number): string => `M${px(x - 5)},${px(y + 5)}l10,-10`;
