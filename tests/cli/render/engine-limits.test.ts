// How `engine show` tells the maker's limits for parts: in the digits they are written with, each unit and source named.

import { type Engine, readEngine } from "@sealtrend/core";
import { expect, test } from "vitest";
import { clearanceTexts, offeredTexts } from "../../../packages/cli/src/render/engine-limits.ts";

const engineOf = (limits: string): Engine => {
  const text = `{ "cylinders": ["1"], "ignition": "spark", "limits": ${limits} }`;
  const { engine } = readEngine(text, "engine.json", "pump");
  if (engine === undefined) throw new Error("the engine has a fault");
  return engine;
};

const entry = (more: string): string => `{ "part": "ring", "quantity": "end gap", "unit": "mm", ${more} }`;

test("a part a line, both kinds of limit, the source once where it is one", () => {
  const engine = engineOf(`{ "clearances": [
    { "part": "bore", "quantity": "diameter", "new": [86.00, 86.030], "wear": [null, 86.20], "unit": "mm", "source": "p. 62" },
    { "part": "bore", "quantity": "taper", "wear": [null, 0.10], "unit": "mm", "source": "p. 62" },
    { "part": "main", "label": "3", "quantity": "diameter", "new": [2.4980, null], "wear": [2.4970, null], "unit": "in", "source": "p. 62" }] }`);
  expect(clearanceTexts(engine)).toEqual([
    "bore: diameter new 86.00 to 86.030, worn to 86.20 mm; taper worn to 0.10 mm",
    "main: diameter (3) new from 2.4980, worn down to 2.4970 in",
    "source p. 62",
  ]);
});

test("sources that differ stand with their limits; none is made up", () => {
  const two = engineOf(
    `{ "clearances": [${entry('"at": "1", "wear": [null, 0.9], "source": "p. 8"')}, ${entry('"at": "2", "wear": [null, 1.0]')}] }`,
  );
  expect(clearanceTexts(two)).toEqual([
    "ring: end gap (1) worn to 0.9 mm (p. 8); end gap (2) worn to 1.0 mm",
  ]);
  expect(clearanceTexts(engineOf(`{ "clearances": [${entry('"wear": [null, 1.0]')}] }`))).toEqual([
    "ring: end gap worn to 1.0 mm",
  ]);
  expect(clearanceTexts(engineOf("{}"))).toEqual([]);
});

test("sizes in the unit they are offered in, smallest first", () => {
  const engine = engineOf(
    '{ "offered": { "bore": { "unit": "in", "sizes": [0.04, 0.02] }, "pin": { "unit": "mm", "sizes": [0.25] } } }',
  );
  expect(offeredTexts(engine)).toEqual(["bore 0.02 0.04 in", "pin 0.25 mm"]);
});
