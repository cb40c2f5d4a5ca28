// The short ways of a fleet's reading: what they answer is what the general way answers.

import fc from "fast-check";
import { expect, test } from "vitest";
import { dayNumber, digitsValue, isPlainDay, readNumber } from "../../../packages/core/src/quantity/index.ts";

const nearNumber = fc.string({ unit: fc.constantFrom(..."0123456789.,-+ xe\u0661"), maxLength: 12 });

test("a text of digits alone has the value that the number grammar gives it, any other text has none here", () => {
  fc.assert(
    fc.property(fc.oneof(nearNumber, fc.nat().map(String)), (text) => {
      const reading = readNumber(text);
      if (/^[0-9]{1,9}$/.test(text)) expect(reading).toEqual({ ok: true, value: digitsValue(text) });
      else expect(digitsValue(text)).toBeNaN();
    }),
  );
});

test("a plain day is one that every calendar has, and its number is that of the calendar", () => {
  for (let day = Date.UTC(1890, 0, 1); day < Date.UTC(2110, 0, 1); day += 86_400_000) {
    const text = new Date(day).toISOString().slice(0, 10);
    const [year = "", , dayOfMonth] = text.split("-");
    expect(isPlainDay(text)).toBe(year >= "1900" && year <= "2100" && Number(dayOfMonth) <= 28);
    if (isPlainDay(text)) expect(dayNumber(text)).toBe(day / 86_400_000);
  }
});

test("a text that is no day is no plain day", () => {
  for (const text of ["", "2014-05", "2014-13-01", "2014-00-01", "2014-05-00", "2014-05-29", "2014/05/02"])
    expect(isPlainDay(text)).toBe(false);
  for (const text of ["2o14-05-02", "2014-05-0x", "2014-05-02 ", " 2014-5-02", "x2014-05-02"])
    expect(isPlainDay(text)).toBe(false);
});
