// The hose of a gauge on an engine whose chamber is known. Engine of handbook/cranking.md D.1, hose of its row H 36
// (computed): 4 cm3 leave .921 of the reading. Readings and gauges invented.

import { expect, test } from "vitest";
import { assessed } from "./records.ts";

const geometry = { bore: "86mm", stroke: "86mm", rod: "143mm", compressionRatio: 10, intakeCloses: "60deg" };
const limits = { compression: { minimum: "100psi", source: "manual, invented" } };

const withGauge = (valveEnd: string, hose: string, engine: object = { geometry }) =>
  assessed({
    engine: { ...engine, limits },
    gauges: `gauge,kind,unit,valve_end,hose_cm3\nred,compression,psi,${valveEnd},${hose}\n`,
    tests: [{ test: "2026-05-02a", cells: "118 119 118 119", gauge: "red", altitude_m: "0" }],
  });

test("a valve at the gauge makes the hose part of the chamber", () => {
  const { gaugeHose } = withGauge("gauge", "4");
  expect(gaugeHose).toMatchObject({ gauge: "red", valveEnd: "gauge" });
  expect(Math.abs((gaugeHose?.loss ?? 0) - (1 - 0.921))).toBeLessThan(0.002);
  expect(gaugeHose?.uncertainty).toBeGreaterThan(0);
  expect(gaugeHose?.uncertainty).toBeLessThan(0.01);
});

test("with the valve at the plug, without a hose, or with a chamber not known, nothing is said", () => {
  for (const found of [withGauge("plug", "4"), withGauge("gauge", ""), withGauge("gauge", "4", {})])
    expect(found.gaugeHose).toBeUndefined();
});

test("without rod and closing of the intake the loss is nearly the same", () => {
  const { rod: _rod, intakeCloses: _closes, ...sizes } = geometry;
  const near = withGauge("gauge", "4", { geometry: sizes }).gaugeHose?.loss ?? 0;
  expect(Math.abs(near - (1 - 0.921))).toBeLessThan(0.005);
});

test("a hose ahead of the valve widens the doubt about the maker's limit, one behind it does not", () => {
  const verdict = (valveEnd: string) =>
    withGauge(valveEnd, "10").rules.find(({ status }) => status === "engine record")?.verdict;
  expect([verdict("plug"), verdict(""), verdict("gauge")]).toEqual(["met", "met", "near"]);
});
