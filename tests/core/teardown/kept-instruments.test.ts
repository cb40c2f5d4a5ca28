// The instrument of a reading that stands instead of another. Figures invented.

import { judgeTeardown, readMeasurements } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { saw } from "./judge-samples.ts";

const header = "teardown,date,part,label,at,quantity,value,unit,instrument,resolution,state,instead";
const row = (value: string, tool: string, instead = ""): string =>
  `1,2026-03-02,guide,2in,top/thrust,bore,${value},mm,${tool},as found,${instead}`;
const standing = (...rows: readonly string[]) => {
  const { measurements, problems } = readMeasurements([header, ...rows].join("\n"), "m.csv", saw);
  expect(problems).toEqual([]);
  const items = judgeTeardown({ engine: saw, measurements })?.items ?? [];
  return items
    .filter(({ superseded }) => superseded !== true)
    .map(({ instrument, uncertaintyFrom, readings }) => [instrument, uncertaintyFrom, readings]);
};
const unnamed = [
  undefined,
  expect.stringContaining("instrument not named, taken as small-hole gauge") as string,
  1,
];

test("it keeps that of the one it takes the place of, with its division, and of one after the other", () => {
  const kept = [["bore-gauge", "bore gauge 0.01 mm", 1]];
  expect(standing(row("80.1", "bore-gauge,0.01"), row("8.01", ",", "yes"))).toEqual(kept);
  expect(standing(row("80.1", "bore-gauge,0.01"), row("80.2", ",", "yes"), row("8.01", ",", "yes"))).toEqual(
    kept,
  );
});

test("readings behind it that name none repeat it", () => {
  expect(standing(row("80.1", "bore-gauge,0.01"), row("8.01", ",", "yes"), row("8.02", ","))).toEqual([
    ["bore-gauge", "bore gauge 0.01 mm, 2 readings", 2],
  ]);
});

test("one that names its own has that", () => {
  expect(standing(row("80.1", "bore-gauge,0.01"), row("8.01", "caliper,0.02", "yes"))).toEqual([
    ["caliper", "caliper", 1],
  ]);
});

test("of several instruments before, or of none, nothing is kept", () => {
  expect(
    standing(row("80.1", "bore-gauge,0.01"), row("80.1", "caliper,0.02"), row("8.01", ",", "yes")),
  ).toEqual([unnamed]);
  expect(standing(row("80.1", ","), row("8.01", ",", "yes"))).toEqual([unnamed]);
});
