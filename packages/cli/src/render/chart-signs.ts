// The signs of a chart, drawn or plain ASCII, and what each of them says.

import { clean } from "./clean.ts";

export interface Signs {
  readonly markers: readonly string[];
  readonly both: string;
  readonly above: string;
  readonly below: string;
  /** asciichart's ten signs, for the first series and for the others. */
  readonly lines: readonly (readonly string[])[];
  /** Upright, upright with a label, corner, level, level with a tick. */
  readonly axis: readonly [string, string, string, string, string];
}

export const drawn: Signs = {
  markers: [..."●○◆◇■□"],
  both: "◉",
  above: "▲",
  below: "▼",
  lines: [[..."┼┤╶╴─╰╭╮╯│"], [..."┼┤╶╴┄╰╭╮╯┆"]],
  axis: ["│", "┤", "└", "─", "┬"],
};
export const typed: Signs = {
  markers: [..."*o#x%="],
  both: "@",
  above: "^",
  below: "v",
  lines: [[..."+|---`..'|"], [..."+|--.:::::"]],
  axis: ["|", "+", "+", "-", "+"],
};

/** The legend in words; `names` in the order of the markers, `used` the signs that stand in the chart. */
export const legend = (names: readonly string[], used: ReadonlySet<string>, signs: Signs): string => {
  const own = names.map((name, i) => {
    const marker = signs.markers[i] ?? "";
    return used.has(marker) || used.has(signs.both) ? `${marker}\u00a0${clean(name, 80)}` : "";
  });
  const more = [
    [signs.both, "both on one spot"],
    [signs.above, "above the scale"],
    [signs.below, "below the scale"],
  ].map(([sign = "", text = ""]) => (used.has(sign) ? `${sign}\u00a0${text}` : ""));
  return [...own, ...more].filter((text) => text !== "").join("; ");
};
