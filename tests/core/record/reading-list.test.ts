// The forms of a typed line: handbook tooling.md A.2.

import { plainNumber, readNumber, splitLeakReadings, splitReadings } from "@sealtrend/core/parts";
import fc from "fast-check";
import { describe, expect, test } from "vitest";

describe("readings of one test, in the order of the cylinder numbers", () => {
  test.each([
    ["150 148 147 120", 4, ["150", "148", "147", "120"]],
    ["150/148/147/120", 4, ["150", "148", "147", "120"]],
    ["150,148,147,120", 4, ["150", "148", "147", "120"]],
    ["150, 148, 147, 120", 4, ["150", "148", "147", "120"]],
    ["10,5 10,4 10,6 9,8", 4, ["10,5", "10,4", "10,6", "9,8"]],
    ["10.5;10.4;10.6;9.8", 4, ["10.5", "10.4", "10.6", "9.8"]],
    ["10,5; 10,4 ;10,6;9,8", 4, ["10,5", "10,4", "10,6", "9,8"]],
    ["  150   148  ", 2, ["150", "148"]],
    ["150; 148;", 2, ["150", "148"]],
    ["150,148", 2, ["150", "148"]],
    ["10,5", 1, ["10,5"]],
    ["131", 1, ["131"]],
    ["150 x - ?", 4, ["150", "x", "-", "?"]],
    [">300 131? X +150", 4, [">300", "131?", "X", "+150"]],
    ["0,850 1.234", 2, ["0,850", "1.234"]],
    [".95 >.9 .88?", 3, [".95", ">.9", ".88?"]],
  ])("%j is %i readings", (line, count, cells) => {
    expect(splitReadings(line, count)).toEqual({ ok: true, cells });
  });

  test.each([
    ["1,234 1,230", 2, "1.234", "1234"],
    ["131,125", 1, "131.125", "131125"],
    [">1,234? 5", 2, ">1.234?", ">1234?"],
  ])("%j can be read two ways and is refused, with both readings shown", (line, count, small, large) => {
    const reading = splitReadings(line, count);
    expect(reading).toMatchObject({
      ok: false,
      found: expect.stringContaining(`can be read as ${small} or as ${large}`) as string,
      mend: expect.stringContaining(`write ${small} or ${large}`) as string,
    });
  });

  test.each([
    ["150 148 147", 4, '3 readings in "150 148 147", fewer than the 4 cylinders'],
    ["150,148,147", 4, '3 readings in "150,148,147", fewer than the 4 cylinders'],
    ["150 148", 1, '2 readings in "150 148", more than the 1 cylinder'],
    ["150", 2, '1 reading in "150", fewer than the 2 cylinders'],
    ["10,5,10,4", 2, '"10,5,10,4" is no reading'],
    ["5,6", 2, '1 reading in "5,6", fewer than the 2 cylinders'],
    ["150psi 148", 2, '"150psi" is no reading'],
    [". 148", 2, '"." is no reading'],
    ["5. 148", 2, '"5." is no reading'],
    ["1e3 148", 2, '"1e3" is no reading'],
    ["0x10 148", 2, '"0x10" is no reading'],
    ["-5 148", 2, '"-5" is no reading'],
    ["1.234,5 148", 2, '"1.234,5" is no reading'],
    ["123456 148", 2, '"123456" is no reading'],
    ["NaN Infinity", 2, '"NaN" is no reading'],
    ["74/80 72/80", 2, '"74/80" is no reading'],
    ["", 4, "nothing stands where a reading belongs"],
    ["150;;148;147", 3, "nothing stands where a reading belongs"],
    [", 150 148", 2, "nothing stands where a reading belongs"],
  ])("%j for %i cylinders is refused", (line, count, found) => {
    expect(splitReadings(line, count)).toMatchObject({ ok: false, found });
  });

  test("a letter O for a zero is pointed out", () => {
    expect(splitReadings("15O 148", 2)).toMatchObject({
      mend: "write 150; put a blank between the readings, x for one that was not taken",
    });
  });

  test("whatever is taken is one reading a cylinder, each a number or not taken, no digit lost", () => {
    const sign = fc.constantFrom(..."0123456789.,;/ x?>-+");
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 16 }), fc.integer({ min: 1, max: 4 }), (signs, count) => {
        const line = signs.join("");
        const reading = splitReadings(line, count);
        if (!reading.ok) return;
        expect(reading.cells).toHaveLength(count);
        for (const cell of reading.cells)
          if (!/^[xX?-]$/.test(cell))
            expect(readNumber(plainNumber(cell).replace(/^>/, "").replace(/\?$/, "")).ok).toBe(true);
        expect(reading.cells.join("").replace(/\D/g, "")).toBe(line.replace(/\D/g, ""));
      }),
      { numRuns: 2_000 },
    );
  });
});

describe("pairs of a leak-down, cylinder side first", () => {
  test.each([
    [
      "74/80 72/80",
      2,
      [
        { held: "74", supply: "80" },
        { held: "72", supply: "80" },
      ],
    ],
    [
      "74/80, 72/80",
      2,
      [
        { held: "74", supply: "80" },
        { held: "72", supply: "80" },
      ],
    ],
    ["74/80;x", 2, [{ held: "74", supply: "80" }, { held: "x" }]],
    [
      "5,1/5,5 5.0?/5.5",
      2,
      [
        { held: "5,1", supply: "5,5" },
        { held: "5.0?", supply: "5.5" },
      ],
    ],
    ["18 5 x 7", 4, [{ held: "18" }, { held: "5" }, { held: "x" }, { held: "7" }]],
  ])("%j", (line, count, cells) => {
    expect(splitLeakReadings(line, count)).toEqual({ ok: true, cells });
  });

  test.each([
    ["74/80 72", 2, '"72" is no pair of readings'],
    ["74/80,72/80", 2, '"74/80,72/80" is no pair of readings'],
    ["74/", 1, '"74/" is no pair of readings'],
    ["74/80/2 x", 2, '"74/80/2" is no pair of readings'],
    ["74/80", 2, "1 pair for 2 cylinders"],
    ["74/80 72/80", 1, "2 pairs for 1 cylinder"],
    ["1,234/80", 1, '"1,234" can be read as 1.234 or as 1234'],
    ["18 5", 4, '2 readings in "18 5", fewer than the 4 cylinders'],
  ])("%j for %i cylinders is refused", (line, count, found) => {
    expect(splitLeakReadings(line, count)).toMatchObject({ ok: false, found });
  });
});
