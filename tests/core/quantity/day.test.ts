import { dateOfDay, dayNumber, yearsBetween } from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

test("days are counted from 1970-01-01, leap years as the Gregorian calendar has them", () => {
  expect(dayNumber("1970-01-01")).toBe(0);
  // 30 years of 365 days and the leap days of 1972, 76, 80, 84, 88, 92, 96: 10950 + 7
  expect(dayNumber("2000-01-01")).toBe(10_957);
  // 2000 is a leap year, 1900 is not: divisible by 400 against by 100 only
  expect(dayNumber("2000-03-01") - dayNumber("2000-02-28")).toBe(2);
  expect(dayNumber("1900-03-01") - dayNumber("1900-02-28")).toBe(1);
});

test("a difference is counted in years of 365.25 days", () => {
  // 2014-05-02 to 2026-05-02: 12 x 365 days and the leap days of 2016, 2020, 2024: 4383 = 12 x 365.25
  expect(yearsBetween("2014-05-02", "2026-05-02")).toBe(12);
  expect(yearsBetween("2026-05-02", "2014-05-02")).toBe(-12);
});

test("a day number and its date are the same day, in both directions", () => {
  fc.assert(
    fc.property(fc.integer({ min: -200_000, max: 200_000 }), (day) => {
      expect(dayNumber(dateOfDay(day))).toBe(day);
    }),
  );
  expect(dateOfDay(0.4)).toBe("1970-01-01");
});

test("a day beyond the calendar of four-digit years is a mistake of the caller", () => {
  expect(() => dateOfDay(3_000_000)).toThrow(RangeError);
  expect(() => dateOfDay(Number.NaN)).toThrow(RangeError);
});

test("the time zone of the machine moves no date", () => {
  const before = process.env.TZ;
  try {
    for (const zone of ["America/New_York", "Pacific/Kiritimati", "UTC"]) {
      process.env.TZ = zone;
      expect(dayNumber("2026-11-25") - dayNumber("2026-11-24")).toBe(1);
      expect(dateOfDay(dayNumber("2026-03-29"))).toBe("2026-03-29");
    }
  } finally {
    if (before === undefined) delete process.env.TZ;
    else process.env.TZ = before;
  }
});

test.each([
  "2026-02-30",
  "2026-13-01",
  "2026-5-2",
  "11/12/2026",
  "2026-05",
  "",
  "2026-05-02T10:00",
  "２026-05-02",
])("%j is refused as a date", (text) => {
  expect(() => dayNumber(text)).toThrow(RangeError);
});
