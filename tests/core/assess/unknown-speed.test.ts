// A slower starter looks like a worn engine. What the speed may have done to readings that stand as cranked, in the history
// and beside an earlier test. Readings invented from the form of handbook/cranking.md I.1; the doubt of a speed that is not
// known is its I.5, 70/(250 + 35)·0.16 (computed there from a cycle model; no published figure).

import { assessHistory } from "@sealtrend/core";
import { expect, test } from "vitest";
import { type Row, assessed, recordOf } from "./records.ts";

const years = [2016, 2018, 2020, 2022, 2024, 2026];
const speeds = [260, 240, 225, 210, 195, 180];
const at = (rpm: number): number => 1690 / (1 + 70 / (2 * rpm)) ** 2;
const cells = (level: number): string => [3, -2, 1, -4].map((away) => (level + away).toFixed(0)).join(" ");
const day = (year: number, level: number, rpm: number | undefined): Row => ({
  test: `${String(year)}-05-02a`,
  unit: "kPa",
  gauge: "red",
  station_pressure_hPa: "1013.25",
  air_temp_C: "15",
  cells: cells(level),
  ...(rpm === undefined ? {} : { crank_rpm: String(rpm) }),
});
/** One P_0 all along, cranked ever slower. */
const slowing = (blank: readonly number[]): readonly Row[] =>
  years.map((year, i) => day(year, at(speeds[i] ?? 0), blank.includes(year) ? undefined : speeds[i]));
const engine = {
  geometry: { bore: "86mm", stroke: "86mm" },
  limits: { compression: { speed: "260rpm", minimum: "900kPa" } },
};
const history = (tests: readonly Row[], more: object = {}) => {
  const { cranking } = assessHistory(recordOf({ engine: { ...engine, ...more }, tests }));
  if (cranking === undefined) throw new Error("no cranking history");
  return cranking;
};

test.each([
  ["with every speed recorded", []],
  ["with one blank in the middle", [2020]],
  ["with the last one blank", [2026]],
  ["with none recorded", years],
])("an engine that is only cranked ever slower is not said to fall, %s", (_, blank) => {
  const { result } = history(slowing(blank));
  expect(result.common.word).toBe("no-change-shown");
  for (const { absolute } of result.cylinders) expect(absolute?.trend?.p).toBeGreaterThan(0.05);
});

test("nor where the P_0 that was kept is too low to correct by", () => {
  const { result, speeds: own } = history(slowing([]), { crankingCurve: [{ P0: "1000kPa", u_ln: 0.05 }] });
  expect(own.map(({ speed }) => speed?.refused?.code)).toContain("loss-free-too-low");
  expect(result.common.word).toBe("no-change-shown");
});

test("a fall that is larger than a slower starter makes is shown without any speed", () => {
  const falling = years.map((year, i) => day(year, 1300 * (1 - 0.05 * i), undefined));
  expect(history(falling).result.common.word).toBe("falling");
});

test("one blank speed never makes the doubt of the slope smaller, and leaves the cylinders' contrasts alone", () => {
  const [all, one] = [history(slowing([])), history(slowing([2020]))];
  expect(one.result.common.trend?.standardError).toBeGreaterThan(
    all.result.common.trend?.standardError ?? Infinity,
  );
  expect(one.result.cylinders.map(({ alarms }) => alarms)).toEqual([[], [], [], []]);
});

test("an unknown speed is doubted by 0.0393, and by as much again from the middle of the years to their ends", () => {
  const { speeds: own } = history(years.map((year) => day(year, 1200, undefined)));
  const doubt = (70.02 / (250 + 35.01)) * 0.16;
  for (const { uncertainty } of own) expect(uncertainty).toBeCloseTo(doubt, 4);
  const along = own.map(({ shared }) => shared["speed over the years"] ?? NaN);
  expect(along[0]).toBeCloseTo(-doubt, 4);
  expect(along.at(-1)).toBeCloseTo(doubt, 4);
});

test("speeds that are known and all the same leave no doubt, corrected or not", () => {
  const same = years.map((year) => day(year, 1200, 260));
  for (const { uncertainty, shared } of history(same, { cycle: "two-stroke" }).speeds) {
    expect(uncertainty).toBe(0);
    expect(shared.speed).toBeCloseTo(0, 12);
  }
});

test("a known speed that is not corrected is one doubt over the years: what the usual loss makes of it", () => {
  const { speeds: own } = history(slowing([]), { cycle: "two-stroke" });
  // 2 ln((1 + 70/520)/(1 + 70/360))
  expect(own.at(-1)?.shared.speed).toBeCloseTo(2 * Math.log((1 + 70.02 / 520) / (1 + 70.02 / 360)), 4);
});

test("one test beside an earlier one, far slower: no fall is told unless it is more than twice what the speed may do", () => {
  const pair = (level: number) =>
    assessed({ engine, tests: [day(2016, at(260), 260), day(2026, level, 145)] }).levelSince;
  // 1097 beside 1313 kPa: 17 % lower, and 145 is too far from 260 rpm to be corrected
  expect(pair(at(145))).toBeUndefined();
  const level = pair(800);
  expect(level?.speeds).toEqual({ before: 260, after: 145 });
  expect(level?.uncertainty).toBeGreaterThan(2 * Math.log((1 + 70.02 / 290) / (1 + 70.02 / 520)));
});
