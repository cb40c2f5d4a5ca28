import { describe, expect, test } from "vitest";
import { shortDate, yearFraction } from "../../../packages/cli/src/render/dates.ts";

describe("dates as places on an axis", () => {
  test("1 January is a whole year, 2 July of a common year its middle", () => {
    expect(yearFraction("2026-01-01")).toBe(2026);
    // 2 July is day 183 of 365: 182 days have gone by at its start
    expect(yearFraction("2026-07-02")).toBeCloseTo(2026 + 182 / 365, 12);
    expect(yearFraction("2024-12-31")).toBeCloseTo(2024 + 365 / 366, 12);
  });

  test("a date is shortened to its month", () => {
    expect(shortDate("2026-05-02")).toBe("2026-05");
  });

  test("the time zone of the machine moves no date", () => {
    const before = process.env.TZ;
    try {
      for (const zone of ["America/New_York", "Pacific/Kiritimati", "UTC"]) {
        process.env.TZ = zone;
        expect(yearFraction("2026-01-01")).toBe(2026);
        expect(shortDate("2026-12-01")).toBe("2026-12");
      }
    } finally {
      if (before === undefined) delete process.env.TZ;
      else process.env.TZ = before;
    }
  });

  test.each(["2026-02-30", "11/12/2026", "2026-05", ""])("%j is refused as a date", (text) => {
    expect(() => yearFraction(text)).toThrow(RangeError);
    expect(() => shortDate(text)).toThrow(RangeError);
  });
});
