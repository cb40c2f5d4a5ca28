import { readNumber } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";

// The grammar once more, by counting and not by a pattern, so that one checks the other:
// an optional sign, 1 to 9 digits, and optionally one mark with 1 to 6 digits behind it; a point may stand first; blanks around
// it do not count.
const isDigit = (sign: string): boolean => sign >= "0" && sign <= "9" && sign.length === 1;
const isNumber = (text: string): boolean => {
  let signs = [...text];
  while (signs[0] === " ") signs = signs.slice(1);
  while (signs.at(-1) === " ") signs = signs.slice(0, -1);
  if (signs[0] === "+" || signs[0] === "-") signs = signs.slice(1);
  const marks = signs.flatMap((sign, at) => (sign === "." || sign === "," ? [at] : []));
  if (marks.length > 1 || signs.some((sign, at) => !isDigit(sign) && !marks.includes(at))) return false;
  const whole = marks[0] ?? signs.length;
  const decimals = marks[0] === undefined ? undefined : signs.length - whole - 1;
  const pointFirst = signs[0] === ".";
  return (
    (whole >= 1 || pointFirst) && whole <= 9 && (decimals === undefined || (decimals >= 1 && decimals <= 6))
  );
};

const alphabet = [..."0123456789-.,+ex "];

/** All texts of up to `most` signs of the alphabet. */
const texts = (most: number): readonly string[] => {
  let longest = [""];
  const all = [...longest];
  for (let length = 1; length <= most; length += 1) {
    longest = longest.flatMap((text) => alphabet.map((sign) => text + sign));
    all.push(...longest);
  }
  return all;
};

/** The digits of a text without leading zeros before its mark and closing zeros behind it. */
const digitsOf = (text: string): string => {
  const [whole = "", decimals = ""] = text.replace(/[+\s-]/g, "").split(/[.,]/);
  const kept = decimals.replace(/0+$/, "");
  return `${whole.replace(/^0+(?=\d)/, "") || "0"}${kept === "" ? "" : `.${kept}`}`;
};

test("of all texts of up to four signs, those and only those of the grammar are numbers, and no digit is lost", () => {
  const all = texts(4);
  // 17 signs: 1 + 17 + 17² + 17³ + 17⁴
  expect(all).toHaveLength(88_741);
  const wronglyRead = all.filter((text) => readNumber(text).ok !== isNumber(text));
  expect(wronglyRead).toEqual([]);
  const lossy = all.filter((text) => {
    const reading = readNumber(text);
    return reading.ok && digitsOf(String(Math.abs(reading.value))) !== digitsOf(text);
  });
  expect(lossy).toEqual([]);
});

test("a minus sign is kept, but for nothing", () => {
  expect(readNumber("-5")).toEqual({ ok: true, value: -5 });
  expect(readNumber("-0,5")).toEqual({ ok: true, value: -0.5 });
});

test.each([
  [".040", 0.04],
  [".5", 0.5],
  ["-.5", -0.5],
  ["+.086", 0.086],
  [".500", 0.5],
])("%s is read with the zero that was left out, and can only be decimal", (text, value) => {
  expect(readNumber(text)).toEqual({ ok: true, value });
});

describe("a mark before three digits could stand for thousands", () => {
  test.each([
    ["1,234", 1.234, ",", 1234],
    ["12.500", 12.5, ".", 12_500],
    ["-999,999", -999.999, ",", -999_999],
  ])("%s is read as %d, with the other reading beside it", (text, value, mark, other) => {
    expect(readNumber(text)).toEqual({ ok: true, value, thousands: { mark, value: other } });
  });

  test.each(["0,850", "1234,567", "1,23", "1,2345", "01,234"])("%s can only be decimal", (text) => {
    expect(readNumber(text)).not.toHaveProperty("thousands");
    expect(readNumber(text).ok).toBe(true);
  });
});

test.each([
  ["", "empty"],
  ["   ", "empty"],
  ["abc", "not-a-number"],
  ["O", "not-a-number"],
  ["0x10", "not-a-number"],
  ["Infinity", "not-a-number"],
  ["NaN", "not-a-number"],
  ["1 234", "not-a-number"],
  ["--5", "not-a-number"],
  ["131abc", "not-a-number"],
  ["1.234,5", "two-marks"],
  ["1,234,567", "two-marks"],
  ["1..5", "two-marks"],
  [",5", "mark-at-end"],
  [".", "not-a-number"],
  ["5.", "mark-at-end"],
  ["1.2.3", "two-marks"],
  [".1.2", "two-marks"],
  [".5psi", "unit-inside"],
  [".5e3", "exponent"],
  [".1234567", "too-long"],
  ["5,", "mark-at-end"],
  ["14O", "letter-o"],
  ["1o,5", "letter-o"],
  ["１３１", "full-width"],
  ["131psi", "unit-inside"],
  ["9.1 kgf/cm2", "unit-inside"],
  ["18 %", "unit-inside"],
  ["1e3", "exponent"],
  ["1,5E+02", "exponent"],
  ["74/80", "pair"],
  ["74 / 80,5", "pair"],
  ["1234567890", "too-long"],
  ["1.1234567", "too-long"],
] as const)("%j is no number, and why is said: %s", (text, fault) => {
  expect(readNumber(text)).toEqual({ ok: false, fault });
});
