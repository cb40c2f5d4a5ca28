import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cut, displayWidth, padEnd, padStart } from "../../../packages/cli/src/render/width.ts";

describe("columns of a text", () => {
  // Widths as the handbook reports them of a full width library: CJK 4, emoji 2, combining 1, zero-width 0, escapes 0.
  test.each([
    ["pump", 4],
    ["", 0],
    ["漢字", 4],
    ["ポンプ", 6],
    ["ﾎﾟﾝﾌﾟ", 5],
    ["펌프", 4],
    ["Ａ", 2],
    ["🔧", 2],
    ["👍🏽", 2],
    ["🇳🇴", 2],
    ["e\u0301", 1],
    ["é", 1],
    ["\u200b", 0],
    ["पंप", 2],
    ["▁▂█·●○", 6],
    ["╰─╮┤…±", 6],
    ["\x1b[1mbold\x1b[22m", 4],
  ])("%j takes %i", (text, width) => {
    expect(displayWidth(text)).toBe(width);
  });

  test("padding fills to the width and never cuts", () => {
    expect(padStart("126", 5)).toBe("  126");
    expect(padEnd("漢字", 6)).toBe("漢字  ");
    expect(padStart("漢字", 6)).toBe("  漢字");
    expect(padEnd("longer", 3)).toBe("longer");
  });

  test("cutting never leaves half a wide character, and shows that it cut", () => {
    expect(cut("tractor", 7)).toBe("tractor");
    expect(cut("tractor", 6)).toBe("tract…");
    expect(cut("漢字漢字", 6)).toBe("漢字…");
    expect(cut("e\u0301e\u0301e\u0301", 2)).toBe("e\u0301…");
    expect(cut("abc", 1)).toBe("…");
    expect(cut("abc", 0)).toBe("");
  });

  test("a cut text fits, a padded text fills, whatever the text", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), fc.nat(60), (text, width) => {
        expect(displayWidth(cut(text, width))).toBeLessThanOrEqual(width);
        expect(displayWidth(padEnd(cut(text, width), width))).toBe(width);
        expect(displayWidth(padStart(cut(text, width), width))).toBe(width);
      }),
      { numRuns: 2000 },
    );
  });
});
