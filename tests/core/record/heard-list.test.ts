// Where air was heard, as people type it. The places and their meaning: handbook/leakdown.md B.

import { describe, expect, test } from "vitest";
import { splitHeard } from "../../../packages/core/src/record/index.ts";

const four = ["1", "2", "3", "4"];

describe("a line of places becomes the words of the file, one a cylinder", () => {
  test.each([
    ["none exhaust crankcase:faint intake+plug", ["none", "exhaust", "crankcase:faint", "intake+plug"]],
    ["carburettor tailpipe breather radiator", ["intake", "exhaust", "crankcase", "coolant"]],
    [
      "throttle body, exhaust port, dipstick tube, header tank",
      ["intake", "exhaust", "crankcase", "coolant"],
    ],
    ["air inlet tail pipe oil filler bubbles", ["intake", "exhaust", "crankcase", "coolant"]],
    ["oil filler cap faint none none none", ["crankcase:faint", "none", "none", "none"]],
    ["oil filler: faint + exhaust, none, x, -", ["crankcase:faint+exhaust", "none", "x", "x"]],
    ["next plug hole none none none", ["neighbour", "none", "none", "none"]],
    ["neighbour 2 faint neighbour:1 none none", ["neighbour:2:faint", "neighbour:1", "none", "none"]],
    ["faint exhaust; Loud Intake; spark plug; head joint", ["exhaust:faint", "intake", "plug", "outside"]],
  ])("%s", (line, cells) => {
    expect(splitHeard(line, four)).toEqual(cells);
  });

  test("what is no place stays as it was typed, for the fault to show", () => {
    expect(splitHeard("exaust none none none", four)).toEqual(["exaust", "none", "none", "none"]);
    expect(splitHeard("neighbour:9, none, none, none", four)).toEqual([
      "neighbour:9",
      "none",
      "none",
      "none",
    ]);
  });
});
