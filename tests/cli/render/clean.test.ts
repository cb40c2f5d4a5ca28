import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { clean } from "../../../packages/cli/src/render/clean.ts";
import { displayWidth } from "../../../packages/cli/src/render/width.ts";

// The list of the security section of the handbook, as ranges: what may never reach a terminal raw.
const forbidden: readonly (readonly [number, number])[] = [
  [0x00, 0x1f],
  [0x7f, 0x9f],
  [0x061c, 0x061c],
  [0x200b, 0x200f],
  [0x2028, 0x202e],
  [0x2060, 0x2069],
  [0xd800, 0xdfff],
  [0xfeff, 0xfeff],
  [0xe0000, 0xe007f],
];
const isForbidden = (character: string): boolean => {
  const code = character.codePointAt(0) ?? 0;
  return forbidden.some(([from, to]) => code >= from && code <= to);
};

const hostile = fc.string({
  unit: fc.oneof(
    fc.constantFrom("\x1b", "\x07", "\b", "\r", "\n", "\t", "\x7f", "\x9b", "\x90", "\x9d"),
    fc.constantFrom(
      "\u202e",
      "\u2066",
      "\u2069",
      "\u200e",
      "\u061c",
      "\u200b",
      "\u200d",
      "\ufeff",
      "\ud800",
      "\udc00",
    ),
    fc.constantFrom(
      "]52;c;",
      "[2J",
      "[1A",
      "]8;;",
      "P+q",
      "\\u{1b}",
      "漢",
      "🔧",
      "é",
      "e\u0301",
      "ب",
      "ש",
      "я",
    ),
    fc.string({ unit: "binary", minLength: 1, maxLength: 1 }),
  ),
  maxLength: 300,
});

describe("cleaning text of a file for the terminal", () => {
  test("nothing that steers a terminal or hides itself gets past, whatever the text (20,000 texts)", () => {
    fc.assert(
      fc.property(hostile, (text) => ![...clean(text)].some(isForbidden)),
      { numRuns: 20_000 },
    );
  });

  test("cleaning twice changes nothing more", () => {
    fc.assert(
      fc.property(hostile, fc.integer({ min: 1, max: 250 }), (text, most) => {
        const once = clean(text, most);
        expect(clean(once, most)).toBe(once);
      }),
      { numRuns: 2000 },
    );
  });

  test("the result keeps to its length, in columns and in characters", () => {
    fc.assert(
      fc.property(hostile, fc.integer({ min: 1, max: 250 }), (text, most) => {
        const cleaned = clean(text, most);
        expect(displayWidth(cleaned)).toBeLessThanOrEqual(most);
        expect([...cleaned].length).toBeLessThanOrEqual(most);
      }),
      { numRuns: 2000 },
    );
  });

  test.each([
    ["window title", "\x1b]0;owned\x07", "\\u{1b}]0;owned\\u{7}"],
    ["clipboard", "\x1b]52;c;cm0=\x07", "\\u{1b}]52;c;cm0=\\u{7}"],
    ["link", "\x1b]8;;x\x1b\\here", "\\u{1b}]8;;x\\u{1b}\\here"],
    ["clear screen", "\x1b[2J", "\\u{1b}[2J"],
    ["one-byte CSI", "\x9b2J", "\\u{9b}2J"],
    ["device control string", "\x90+q\x9c", "\\u{90}+q\\u{9c}"],
    ["overwriting by carriage return", "bad\rgood", "bad\\u{d}good"],
    ["overwriting by backspace", "bad\b\b\bok", "bad\\u{8}\\u{8}\\u{8}ok"],
    ["right-to-left override", "a\u202eb", "a\\u{202e}b"],
    ["isolate", "a\u2066b", "a\\u{2066}b"],
    ["zero-width space", "14\u200b0", "14\\u{200b}0"],
    ["byte order mark inside", "a\ufeffb", "a\\u{feff}b"],
    ["half a surrogate pair", "a\ud83d", "a\\u{d83d}"],
    ["tag letters", "a\u{e0041}", "a\\u{e0041}"],
    ["a letter that shows as nothing", "a\u3164b", "a\\u{3164}b"],
    ["a second line", "a\nb\u2028c", "a\\u{a}b\\u{2028}c"],
  ])("%s is written out", (_, text, shown) => {
    expect(clean(text)).toBe(shown);
  });

  test.each([
    "Bewässerungspumpe",
    "насос",
    "泵浦",
    "ポンプ",
    "펌프",
    "مضخة",
    "משאבה",
    "पंप",
    "ปั๊ม",
    "e\u0301",
    "🔧",
    "±0.5 µm, 350 °C",
  ])("letters of all scripts stay: %s", (text) => {
    expect(clean(text)).toBe(text);
  });

  test("a longer text is cut and says so", () => {
    expect(clean("a".repeat(200))).toBe("a".repeat(200));
    expect(clean("a".repeat(201))).toBe(`${"a".repeat(199)}…`);
    expect(clean("漢字漢字", 5)).toBe("漢字…");
    // an escape is not cut in two: \u{1b} takes 6 columns
    expect(clean("ab\x1bcdef", 8)).toBe("ab…");
  });

  test("a pile of combining marks counts as its length, so it cannot flood the screen", () => {
    expect([...clean(`a${"\u0301".repeat(1000)}`)].length).toBe(200);
  });
});
