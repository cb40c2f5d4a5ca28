import { readQuantity, writeNumber, writeQuantity } from "@sealtrend/core";
import fc from "fast-check";
import { expect, test } from "vitest";

test.each([
  // exact by definition: 1 in = 25.4 mm, 0 °C = 273.15 K, 1 bar = 100 kPa
  ["86mm", "length", 0.086],
  ["0.040in", "length", 0.001016],
  [".040in", "length", 0.001016],
  [".5 in", "length", 0.0127],
  [".086m", "length", 0.086],
  ["-.5C", "temperature", 272.65],
  ["0,5 in", "length", 0.0127],
  ["-5C", "temperature", 268.15],
  ["26 bar", "pressure", 2_600_000],
  ["  350 m ", "length", 350],
  ["5 ft", "length", 1.524],
] as const)("%s is a %s of %d in SI", (text, dimension, si) => {
  const reading = readQuantity(text, dimension);
  expect(reading.ok && Math.abs(reading.si / si - 1) < 1e-12).toBe(true);
});

test.each([
  ["", "length", "empty"],
  ["mm", "length", "number"],
  [".", "length", "number"],
  [".mm", "length", "number"],
  ["1.2.3mm", "length", "number"],
  ["86.mm", "length", "number"],
  [",5in", "length", "number"],
  ["1e3m", "length", "number"],
  ["1.234,5mm", "length", "number"],
  ["350", "length", "unit-missing"],
  ["350 yards", "length", "unit-unknown"],
  ["350psi", "length", "unit-wrong"],
  ["1,200m", "length", "two-ways"],
] as const)("%j is no %s: %s", (text, dimension, fault) => {
  expect(readQuantity(text, dimension)).toMatchObject({ ok: false, fault });
});

test("a point before three digits is decimal: 1.234in is no thousand inches", () => {
  expect(readQuantity("1.234in", "length")).toMatchObject({ ok: true, value: 1.234 });
});

test("a bare number takes the unit that is the only one possible", () => {
  expect(readQuantity("230", "speed", "rpm")).toMatchObject({ ok: true, value: 230, unit: "rpm" });
});

test("a number is written as its gauge is read: whole psi, tenths of a bar, and never minus nothing", () => {
  // 1 psi = 6894.757… Pa: 903 213 Pa are 131.0 psi
  expect(writeQuantity(903_213, "psi")).toBe("131 psi");
  expect(writeQuantity(903_213, "bar")).toBe("9.0 bar");
  expect(writeNumber(-3, "psi")).toBe("0");
  expect(writeNumber(-0.0001, "V")).toBe("0.0");
});

test("what is written with enough places is read back", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -999_999_999, max: 999_999_999 }),
      fc.constantFrom("psi", "kPa", "bar", "MPa", "kgf/cm2", "inHg" as const),
      (thousandths, unit) => {
        const text = `${String(thousandths / 10_000)} ${unit}`;
        const reading = readQuantity(text, "pressure");
        expect(reading.ok && writeQuantity(reading.si, reading.unit, 4)).toBe(
          `${(thousandths / 10_000).toFixed(4)} ${unit}`,
        );
      },
    ),
  );
});
