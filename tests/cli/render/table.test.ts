import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { columns, grid, wrapText } from "../../../packages/cli/src/render/table.ts";
import { displayWidth } from "../../../packages/cli/src/render/width.ts";

const labelled = (count: number) => Array.from({ length: count }, (_, i) => String(i + 1));
// An invented engine: cylinder n reads 100 + n psi.
const engine = (count: number, width: number) => ({
  labels: labelled(count),
  rows: [
    { name: "read", unit: "psi", cells: labelled(count).map((label) => String(100 + Number(label))) },
    { name: "against others", cells: labelled(count).map(() => "even") },
  ],
  width,
});
const endOf = (line: string, word: string): number =>
  (new RegExp(`\\b${word}\\b`).exec(line)?.index ?? NaN) + word.length;

describe("readings under the labels of their cylinders", () => {
  test("numbers stand right-aligned under the labels, the unit once a row, the remark at the end", () => {
    const lines = columns({
      labels: ["1", "2", "3", "4"],
      rows: [
        { name: "read", unit: "psi", cells: ["126", "95", "111", "127"] },
        { name: "at sea level", unit: "psi", cells: ["131", "99", "116", "132"], tail: "(350 m: x 1.043)" },
        { name: "against others", cells: ["even", "even", "lags", "even"] },
      ],
      width: 80,
    });
    // laid out by hand: name 14, unit 3, then per cylinder a space, 4 columns and a space for a doubt mark
    expect(lines).toEqual([
      "                      1     2     3     4",
      "read           psi  126    95   111   127",
      "at sea level   psi  131    99   116   132   (350 m: x 1.043)",
      "against others     even  even  lags  even",
    ]);
  });

  test("a doubtful reading keeps its digits in line, a missing one shows as a dash", () => {
    expect(
      columns({
        labels: ["1", "2", "3"],
        rows: [{ name: "read", unit: "psi", cells: ["126?", undefined, ">300"] }],
        width: 80,
      }),
    ).toEqual(["                      1     2     3", "read           psi  126?    -  >300"]);
  });

  describe.each([60, 80, 120])("at %i columns", (width) => {
    test.each([1, 2, 4, 8, 14, 28])(
      "%i cylinders each stand once, under their own label, within the width",
      (count) => {
        const lines = columns(engine(count, width));
        const found = new Map<string, string>();
        let labels = "";
        for (const line of lines) {
          expect(displayWidth(line)).toBeLessThanOrEqual(width);
          if (/^ +\d/.test(line)) labels = line;
          if (!line.startsWith("read")) continue;
          for (const label of labels.trim().split(/ +/)) {
            const value = String(100 + Number(label));
            expect(endOf(line, value)).toBe(endOf(labels, label));
            expect(found.has(label)).toBe(false);
            found.set(label, value);
          }
        }
        expect([...found.keys()]).toEqual(labelled(count));
      },
    );
  });

  test("14 cylinders at 80 columns stand in two blocks of seven", () => {
    const lines = columns(engine(14, 80));
    expect(lines).toHaveLength(7);
    expect(lines[0]?.trim().split(/ +/)).toEqual(["1", "2", "3", "4", "5", "6", "7"]);
    expect(lines[4]?.trim().split(/ +/)).toEqual(["8", "9", "10", "11", "12", "13", "14"]);
  });

  test.each([1, 2, 4, 8, 14, 28])("below 60 columns %i cylinders get a sentence each", (count) => {
    const lines = columns(engine(count, 40));
    const sentences = lines.filter((line) => /^ *\d+: /.test(line));
    expect(sentences).toHaveLength(count);
    for (const line of lines) expect(displayWidth(line)).toBeLessThanOrEqual(40);
    expect(sentences[0]?.trim()).toBe("1: read 101 psi, against others even");
  });

  test("in a sentence a missing reading is left out, and a cylinder without any says so", () => {
    expect(
      columns({
        labels: ["1", "2"],
        rows: [{ name: "read", unit: "psi", cells: ["126", undefined], tail: "black gauge" }],
        width: 50,
      }),
    ).toEqual(["1: read 126 psi", "2: not taken", "read: black gauge"]);
  });

  test("a remark that does not fit beside the row goes below it", () => {
    const tail = "corrected from 350 m to sea level by the barometer of the day";
    const lines = columns({
      labels: ["1", "2"],
      rows: [{ name: "read", unit: "psi", cells: ["126", "125"], tail }],
      width: 60,
    });
    expect(lines.slice(1)).toEqual([
      "read           psi  126   125",
      "  corrected from 350 m to sea level by the barometer of the",
      "  day",
    ]);
  });

  test("escapes in names, labels, cells and remarks are written out", () => {
    const bad = "\x1b[2J";
    for (const width of [40, 100]) {
      const text = columns({
        head: bad,
        labels: [bad],
        rows: [{ name: bad, unit: bad, cells: [bad], tail: bad }],
        width,
      }).join("");
      expect(text).not.toContain("\x1b");
    }
  });

  test("a row with too few cells is a mistake of the program", () => {
    expect(() =>
      columns({ labels: ["1", "2"], rows: [{ name: "read", cells: ["126"] }], width: 80 }),
    ).toThrow(/"read" has 1 cells for 2 labels/);
  });

  test("no cylinders, no lines", () => {
    expect(columns({ labels: [], rows: [], width: 80 })).toEqual([]);
  });

  test("no table is wider than its width, whatever stands in it", () => {
    const word = fc.string({ unit: "grapheme", maxLength: 40 });
    const table = fc.integer({ min: 1, max: 28 }).chain((count) =>
      fc.record({
        labels: fc.array(word, { minLength: count, maxLength: count }),
        rows: fc.array(
          fc.record({
            name: word,
            unit: word,
            cells: fc.array(fc.option(word, { nil: undefined }), { minLength: count, maxLength: count }),
          }),
          { maxLength: 4 },
        ),
        width: fc.integer({ min: 60, max: 200 }),
      }),
    );
    fc.assert(
      fc.property(table, (options) => {
        for (const line of columns(options)) expect(displayWidth(line)).toBeLessThanOrEqual(options.width);
      }),
      { numRuns: 500 },
    );
  });
});

describe("lists", () => {
  const head = ["engine", "tests", "last", "why"];
  const rows = [
    ["baler", "2", "2021-05", "one test only, five years old: repeat it before you believe it"],
    ["pump", "14", "2026-05", "even"],
  ];

  test("columns are as wide as their widest entry, two spaces apart", () => {
    expect(grid(rows.slice(1), ["left", "right"], { head })).toEqual([
      "engine  tests  last     why",
      "pump       14  2026-05  even",
    ]);
  });

  test("prose in the last column is wrapped inside it", () => {
    expect(grid(rows, ["left", "right"], { head, width: 60 })).toEqual([
      "engine  tests  last     why",
      "baler       2  2021-05  one test only, five years old:",
      "                        repeat it before you believe it",
      "pump       14  2026-05  even",
    ]);
  });

  test("a row that cannot stand in columns becomes a sentence", () => {
    const lines = grid(rows, ["left", "right"], { head, width: 38 });
    expect(lines.at(-2)).toBe("engine pump, tests 14, last 2026-05,");
    expect(lines.at(-1)).toBe("  why even");
  });

  test("an empty list has no lines, a list without a head starts with its first row", () => {
    expect(grid([], [])).toEqual([]);
    expect(
      grid(
        [
          ["a", "1"],
          ["bb", "22"],
        ],
        ["left", "right"],
      ),
    ).toEqual(["a    1", "bb  22"]);
  });
});

describe("prose", () => {
  test("is broken at spaces, and follows its lead with an indent", () => {
    expect(wrapText("oil test on 3, with 1 as control: 5 ml each", 30, "next   ")).toEqual([
      "next   oil test on 3, with 1",
      "       as control: 5 ml each",
    ]);
  });

  test("keeps what a no-break space joins", () => {
    expect(wrapText("about 16\u00a0psi", 10)).toEqual(["about", "16 psi"]);
  });

  test("starts a new line at a newline and leaves a long word whole", () => {
    expect(wrapText("a\nsealtrend-demo/pump/tests.csv:9:31 b", 12)).toEqual([
      "a",
      "sealtrend-demo/pump/tests.csv:9:31",
      "b",
    ]);
    expect(wrapText("", 12)).toEqual([""]);
  });

  test("loses no word and no order, whatever the width", () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z]{1,12}$/)),
        fc.integer({ min: 1, max: 100 }),
        (words, width) => {
          const lines = wrapText(words.join(" "), width);
          expect(
            lines
              .join(" ")
              .split(" ")
              .filter((word) => word !== ""),
          ).toEqual(words);
          for (const line of lines) expect(line.length <= width || !line.includes(" ")).toBe(true);
        },
      ),
    );
  });
});
