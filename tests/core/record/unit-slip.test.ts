// A row whose unit may be another. The bounds are this project's own: nothing cranks above 70 bar, nothing starts below
// 1.5 bar; 1 bar is 14.5 psi and 100 kPa (exact definitions: tests/published/units.test.ts).

import { type PressureUnit, unitSlip } from "@sealtrend/core/parts";
import { expect, test } from "vitest";

const row = (values: readonly number[], lasts: readonly number[] = []) =>
  values.map((value, i) => ({ value, last: lasts[i] }));

test.each<[readonly number[], PressureUnit, string, readonly PressureUnit[]]>([
  [[150, 148], "bar", "impossible", ["psi"]],
  [[1050, 1030], "bar", "impossible", ["kPa"]],
  [[10.3, 10.1], "psi", "too-low", ["bar", "kgf/cm2"]],
  [[131, 129], "kPa", "too-low", ["psi"]],
])("%j %s is %s; %j would be usual", (values, unit, kind, meant) => {
  expect(unitSlip(row(values), unit)).toEqual({ kind, meant });
});

test("a row nowhere near its last ones is questioned, with the unit that makes it like them", () => {
  // 1000 kPa is 145 psi
  expect(unitSlip(row([1000, 990], [145, 143]), "psi")).toMatchObject({
    kind: "unlike-last",
    meant: ["kPa"],
  });
  expect(unitSlip(row([1310, 1300], [131, 130]), "psi")).toEqual({
    kind: "unlike-last",
    meant: [],
    times: 10,
  });
});

test.each<[readonly number[], PressureUnit, readonly number[]]>([
  [[0, 0], "psi", []],
  [[150, 148], "psi", []],
  [[30, 0, 31], "psi", []],
  [[30, 31], "bar", []],
  // every cylinder at two fifths: valve timing that jumped makes that
  [[52, 51], "psi", [131, 130]],
  // one is as it was: it is no unit
  [[1000, 143], "psi", [145, 143]],
])("%j %s after %j is taken", (values, unit, lasts) => {
  expect(unitSlip(row(values, lasts), unit)).toBeUndefined();
});
