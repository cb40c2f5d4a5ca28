// Invented readings in the form that the history takes, written as a paper sheet has them.

import type { HistoryCell, HistoryInput, HistoryTest } from "../../../packages/core/src/history/index.ts";

/** `-` not read, `x` no compression, a number otherwise. */
const cellsOf = (row: string, ln: (value: number) => number): readonly HistoryCell[] =>
  row
    .trim()
    .split(/\s+/)
    .map((text): HistoryCell => {
      if (text === "-") return { kind: "not-read" };
      if (text === "x") return { kind: "no-compression" };
      return { kind: "read", ln: ln(Number(text)), repeats: 1 };
    });

export const testsOf = (
  rows: readonly string[],
  x: readonly number[] = rows.map((_, k) => k),
  ln: (value: number) => number = Math.log,
): readonly HistoryTest[] =>
  rows.map((row, k) => ({
    id: `t${String(k + 1)}`,
    x: x[k] ?? NaN,
    years: x[k] ?? NaN,
    use: "full",
    correctionUncertainty: 0,
    cells: cellsOf(row, ln),
  }));

export const historyOf = (tests: readonly HistoryTest[], more: Partial<HistoryInput> = {}): HistoryInput => ({
  kind: "cranking",
  labels: (tests[0]?.cells ?? []).map((_, i) => String(i + 1)),
  axis: { kind: "dates", unit: "year" },
  tests,
  services: [],
  ...more,
});

/** The reference history of handbook/statistics.md C.10: invented readings, psi. */
export const h1 = {
  x: [0, 0.5, 1, 1.5, 2.5, 3, 4, 4.5],
  rows: [
    "172 169 171 174",
    "168 166 166 171",
    "176 172 171 178",
    "165 163 157 167",
    "174 170 160 175",
    "167 164 150 169",
    "161 158 141 163",
    "172 168 147 173",
  ],
};

/** The first tests of it, up to test `count`. */
export const h1Until = (count: number): HistoryInput =>
  historyOf(testsOf(h1.rows.slice(0, count), h1.x.slice(0, count)));

/** The service of handbook/statistics.md L.11 example 5: work on cylinder 3 after four tests. */
export const repaired = [
  "150 152 149 151",
  "147 148 140 147",
  "155 157 143 155",
  "149 151 133 150",
  "151 153 150 152",
  "148 150 149 149",
];

/** L.11 example 6: leak-down, percent lost. */
export const leaking = ["8 7 9 8", "6 6 17 7", "10 9 18 10", "7 6 19 8"];
export const kept = (percent: number): number => Math.log(1 - percent / 100);
