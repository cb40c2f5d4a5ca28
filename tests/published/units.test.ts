// The unit table against two outside sources: exact and printed factors of NIST SP 811 (2008), Appendix B, and mathjs.

import { type Dimension, toSi, type UnitName, unitsOf } from "@sealtrend/core";
import { unit as mathjsUnit } from "mathjs";
import { expect, test } from "vitest";
import { relativeError } from "./statistics-reference.ts";

/** Of every dimension there is, or the types do not let it pass. */
const units: Readonly<Record<Dimension, readonly UnitName[]>> = {
  pressure: unitsOf("pressure"),
  temperature: unitsOf("temperature"),
  length: unitsOf("length"),
  speed: unitsOf("speed"),
  volume: unitsOf("volume"),
  voltage: unitsOf("voltage"),
  area: unitsOf("area"),
  angle: unitsOf("angle"),
  force: unitsOf("force"),
};

/** Half a unit of the last digit of a factor printed as d.dddddd: at most 5e-7 of the value. */
const half = 5e-7;

// "exact": NIST SP 811 prints the factor in bold, that is exact by definition.
const factors = [
  ["Pa", 1, "SI", 0],
  ["bar", 1e5, "exact", 0],
  ["kPa", 1e3, "SI prefix", 0],
  ["MPa", 1e6, "SI prefix", 0],
  ["hPa", 1e2, "SI prefix", 0],
  ["mbar", 1e2, "exact", 0],
  ["kgf/cm2", 98_066.5, "exact", 1e-15],
  ["psi", 6894.757, "printed 6.894 757 E+03", half],
  ["inHg", 3386.389, "conventional, printed 3.386 389 E+03", half],
  ["mmHg", 133.3224, "conventional, printed 1.333 224 E+02", half],
  ["K", 1, "SI", 0],
  ["m", 1, "SI", 0],
  ["cm", 0.01, "SI prefix", 0],
  ["mm", 0.001, "SI prefix", 0],
  ["in", 0.0254, "exact", 0],
  ["ft", 0.3048, "exact", 0],
  ["thou", 2.54e-5, "exact (mil)", 1e-15],
  ["um", 1e-6, "SI prefix", 0],
  ["m3", 1, "SI", 0],
  ["cm3", 1e-6, "SI prefix", 0],
  ["mm2", 1e-6, "SI prefix", 0],
  ["V", 1, "SI", 0],
  ["L", 1e-3, "exact", 0],
  ["ml", 1e-6, "SI prefix", 0],
  ["in3", 1.638706e-5, "exact, printed 1.638 706 E-05", half],
  ["N", 1, "SI", 0],
  ["kgf", 9.80665, "exact", 1e-15],
  ["lbf", 4.448222, "printed 4.448 222 E+00", half],
] as const;
test.each(factors)("one %s is %d in SI (NIST SP 811: %s)", (unit, factor, _, tolerance) => {
  expect(relativeError(toSi(1, unit), factor)).toBeLessThanOrEqual(tolerance);
});

test("no unit is without its published factor, but for degrees and revolutions a minute, which are kept as they are", () => {
  const scales: readonly UnitName[] = ["C", "F"];
  const kept: readonly UnitName[] = ["rpm", "deg"];
  expect(kept.map((unit) => toSi(1, unit))).toEqual([1, 1]);
  const checked = [...factors.map(([unit]) => unit), ...scales, ...kept];
  expect(checked.toSorted()).toEqual(Object.values(units).flat().toSorted());
});

test("a pound-force on a square inch follows from the exact pound, inch and standard gravity of NIST SP 811", () => {
  expect(relativeError(toSi(1, "psi"), (0.45359237 * 9.80665) / 0.0254 ** 2)).toBeLessThan(1e-15);
});

test("0 °C is 273.15 K, 32 °F is 0 °C, 212 °F is 100 °C (NIST SP 811, exact)", () => {
  expect(toSi(0, "C")).toBe(273.15);
  expect(toSi(32, "F")).toBeCloseTo(273.15, 12);
  expect(toSi(212, "F")).toBeCloseTo(373.15, 12);
});

// mathjs is a second table by other hands; its psi is 5.9e-11 low and its mmHg is rounded to 133.322.
const known: readonly (readonly [UnitName, string, string, number])[] = [
  ["bar", "bar", "Pa", 1e-9],
  ["kPa", "kPa", "Pa", 1e-9],
  ["MPa", "MPa", "Pa", 1e-9],
  ["kgf/cm2", "kgf/cm^2", "Pa", 1e-9],
  ["psi", "psi", "Pa", 1e-9],
  ["mmHg", "mmHg", "Pa", 1e-5],
  ["kgf", "kgf", "N", 1e-9],
  ["lbf", "lbf", "N", 1e-9],
  ["in", "inch", "m", 1e-9],
  ["ft", "foot", "m", 1e-9],
  ["C", "degC", "K", 1e-9],
  ["F", "degF", "K", 1e-9],
];
test.each(known)("%s agrees with the %s of mathjs", (ours, theirs, si, tolerance) => {
  for (const value of [1, 17.5, 212, 3000]) {
    const other =
      theirs === "kgf/cm^2"
        ? // mathjs has kgf as a force only: kgf over cm² as newtons over square metres
          mathjsUnit(value, "kgf").toNumber("N") / 1e-4
        : mathjsUnit(value, theirs).toNumber(si);
    expect(relativeError(toSi(value, ours), other)).toBeLessThan(tolerance);
  }
});
