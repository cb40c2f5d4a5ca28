// What a machine is called in a sheet as the id of an engine.

import { isEngineId, suggestEngineId } from "@sealtrend/core/parts";
import fc from "fast-check";
import { describe, expect, test } from "vitest";

describe("the id of an engine", () => {
  test.each([
    ["Baler 1", "baler-1"],
    ["Mähdrescher (groß)", "mahdrescher-gross"],
    ["A-7", "engine-a-7"],
    ["3", "engine-3"],
    ["con", "engine-con"],
    ["../../etc", "etc"],
    ["拖拉机", "engine"],
    ["", "engine"],
    ["x".repeat(200), "x".repeat(26)],
  ])("%s becomes %s", (name, id) => {
    expect(suggestEngineId(name)).toBe(id);
  });

  test("is good whatever the name, and none that is taken", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 60 }), (name) => {
        const first = suggestEngineId(name);
        expect(isEngineId(first)).toBe(true);
        const second = suggestEngineId(name, new Set([first]));
        expect(isEngineId(second)).toBe(true);
        expect(second).not.toBe(first);
      }),
    );
  });
});
