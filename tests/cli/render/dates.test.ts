import { describe, expect, test } from "vitest";
import { dayNumber, shortDate, yearFraction, yearsBetween } from "../../../packages/cli/src/render/dates.ts";

describe("dates as places on an axis", () => {
  test("days are counted from 1970-01-01, leap years as the Gregorian calendar has them", () => {
    expect(dayNumber("1970-01-01")).toBe(0);
    // 30 years of 365 days and the leap days of 1972, 76, 80, 84, 88, 92, 96: 10950 + 7
    expect(dayNumber("2000-01-01")).toBe(10_957);
    // 2000 is a leap year, 1900 is not: divisible by 400 against by 100 only
    expect(dayNumber("2000-03-01") - dayNumber("2000-02-28")).toBe(2);
    expect(dayNumber("1900-03-01") - dayNumber("1900-02-28")).toBe(1);
  });

  test("1 January is a whole year, 2 July of a common year its middle", () => {
    expect(yearFraction("2026-01-01")).toBe(2026);
    // 2 July is day 183 of 365: 182 days have gone by at its start
    expect(yearFraction("2026-07-02")).toBeCloseTo(2026 + 182 / 365, 12);
    expect(yearFraction("2024-12-31")).toBeCloseTo(2024 + 365 / 366, 12);
  });

  test("a difference is counted in years of 365.25 days", () => {
    // 2014-05-02 to 2026-05-02: 12 x 365 days and the leap days of 2016, 2020, 2024: 4383 = 12 x 365.25
    expect(yearsBetween("2014-05-02", "2026-05-02")).toBe(12);
    expect(yearsBetween("2026-05-02", "2014-05-02")).toBe(-12);
  });

  test("a date is shortened to its month", () => {
    expect(shortDate("2026-05-02")).toBe("2026-05");
  });

  test("the time zone of the machine moves no date", () => {
    const before = process.env.TZ;
    try {
      for (const zone of ["America/New_York", "Pacific/Kiritimati", "UTC"]) {
        process.env.TZ = zone;
        expect(dayNumber("2026-11-25") - dayNumber("2026-11-24")).toBe(1);
        expect(shortDate("2026-12-01")).toBe("2026-12");
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
    expect(() => yearFraction(text)).toThrow(RangeError);
    expect(() => shortDate(text)).toThrow(RangeError);
  });
});
