import { describe, expect, test } from "vitest";
import { ioFacts, type Surroundings } from "../../../packages/cli/src/render/io-facts.ts";

const facts = (given: Partial<Surroundings> = {}) => ioFacts({ env: {}, platform: "linux", ...given });

describe("width of the output", () => {
  test.each([
    ["the terminal's own columns", 132, "100", 132],
    ["COLUMNS where the terminal tells nothing", undefined, "100", 100],
    ["80 where nothing tells", undefined, undefined, 80],
    ["80 where COLUMNS is no number", undefined, "wide", 80],
    ["80 where COLUMNS is not whole", undefined, "72.5", 80],
    ["COLUMNS where a terminal reports zero", 0, "72", 72],
    ["40 on a narrower terminal", 20, undefined, 40],
    ["200 on a wider one", 500, undefined, 200],
  ])("is %s", (_, columns, told, width) => {
    expect(facts({ columns, env: { COLUMNS: told } }).width).toBe(width);
  });
});

describe("letters beyond ASCII", () => {
  test.each<[string, Partial<Surroundings>, boolean]>([
    ["are used under a UTF-8 locale", { env: { LANG: "de_DE.UTF-8" } }, true],
    ["are used under utf8 in any spelling", { env: { LC_ALL: "C.utf8" } }, true],
    ["are used where no locale is set", {}, true],
    ["are not used under another encoding", { env: { LANG: "de_DE.ISO-8859-1" } }, false],
    ["are not used in the C locale", { env: { LC_ALL: "C", LANG: "en_US.UTF-8" } }, false],
    ["follow LC_CTYPE before LANG", { env: { LC_CTYPE: "en_US.UTF-8", LANG: "C" } }, true],
    ["are not used on the Linux console", { env: { TERM: "linux", LANG: "en_US.UTF-8" } }, false],
    ["are not used on a dumb terminal", { env: { TERM: "dumb" } }, false],
    ["are not used under --ascii", { letters: "ascii" }, false],
    ["are not used in an old Windows console", { platform: "win32" }, false],
    ["are used in a new Windows one", { platform: "win32", env: { WT_SESSION: "x" } }, true],
    [
      "are used on Windows where TERM is a known one",
      { platform: "win32", env: { TERM: "xterm-256color" } },
      true,
    ],
  ])("%s", (_, given, unicode) => {
    expect(facts(given).unicode).toBe(unicode);
  });
});
