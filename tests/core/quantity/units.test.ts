import {
  dimensionOf,
  fromSi,
  gaugeUnitNamed,
  gaugeUnits,
  toSi,
  type UnitName,
  unitNamed,
  unitsOf,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

const dimensions = [
  "pressure",
  "temperature",
  "length",
  "speed",
  "volume",
  "voltage",
  "area",
  "angle",
  "force",
] as const;
const all = dimensions.flatMap((dimension) => unitsOf(dimension));

test("every unit belongs to one dimension and is known by its own name, in any case but for mPa", () => {
  expect(new Set(all).size).toBe(all.length);
  for (const unit of all) {
    expect(unitsOf(dimensionOf(unit))).toContain(unit);
    expect(unitNamed(unit)).toBe(unit);
    expect(unitNamed(` ${unit.toUpperCase()} `)).toBe(unit);
  }
  expect(unitNamed("mPa")).toBeUndefined();
  expect(unitNamed("mpa")).toBe("MPa");
});

test.each([
  ["psig", "psi"],
  ["kg/cm²", "kgf/cm2"],
  ["°C", "C"],
  ["degF", "F"],
  ['"', "in"],
  ["'", "ft"],
  ["cc", "cm3"],
  ["1/min", "rpm"],
] as const)("%s is a usual spelling of %s", (spelling, unit) => {
  expect(unitNamed(spelling)).toBe(unit);
});

test.each(["", "lb", "psia", "constructor", "toString", "__proto__", "%"])("%j names no unit", (text) => {
  expect(unitNamed(text)).toBeUndefined();
});

test("a gauge is marked in psi, kPa, bar, MPa or kgf/cm2, with their usual spellings, and in no other unit", () => {
  expect(gaugeUnits).toEqual(["psi", "kPa", "bar", "MPa", "kgf/cm2"]);
  expect([
    gaugeUnitNamed("PSIG"),
    gaugeUnitNamed("kg/cm2"),
    gaugeUnitNamed("inHg"),
    gaugeUnitNamed("m"),
  ]).toEqual(["psi", "kgf/cm2", undefined, undefined]);
});

test("from a unit to SI and back nothing is lost but the last bits", () => {
  fc.assert(
    fc.property(
      fc.constantFrom<UnitName>(...all),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      (unit, value) => {
        // 4 roundings of 2^-53 each; an offset such as 273.15 sets the scale where the value is small
        expect(Math.abs(fromSi(toSi(value, unit), unit) - value)).toBeLessThanOrEqual(
          4 * 2 ** -53 * (Math.abs(value) + 500),
        );
      },
    ),
  );
});
