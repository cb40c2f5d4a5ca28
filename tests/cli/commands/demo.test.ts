// demo: lays out invented engines, never over anything, and shows the main job on them. Contract: design.md §4.

import { mkdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { newDesk } from "./desk.ts";

const source = fileURLToPath(new URL("../../../data/demo", import.meta.url));

test("the demo is laid out and shown on one screen", async () => {
  const desk = newDesk();
  const { exit, out, err } = await desk.type(["demo"]);
  expect([exit, err]).toEqual([0, ""]);
  const lines = out.trimEnd().split("\n");
  expect(lines.length).toBeLessThanOrEqual(23);
  expect(Math.max(...lines.map((line) => [...line].length))).toBeLessThanOrEqual(80);
  expect(lines[0]).toBe("Demo, laid out in sealtrend-demo: engines, readings and people are all invented.");
  // what is true of these engines: data/demo/README.md
  expect(out).toMatch(/^boat +5 lags: \d+ % under the rest/m);
  expect(out).toMatch(/^mill +all four even/m);
  expect(out).toMatch(/^pump +both even/m);
  expect(out).toMatch(/^tractor +3 lags: 20 % under the rest/m);
  expect(out).toMatch(/^ultralight +all four even, leak-down/m);
  expect(out).toMatch(/^van +all four even/m);
  expect(out).toContain("\ntractor: Cylinder 3 lags: 20 % under the others");
  expect(out).toMatch(
    /\nWhy believe it: each figure is the mean of three readings; 3 stands out in\s\w+\stests\srunning, since \d{4}/,
  );
});

test("the files are those of the demo, byte for byte, and nothing beside them", async () => {
  const desk = newDesk();
  await desk.type(["demo"]);
  expect(desk.names("sealtrend-demo")).toEqual([
    "boat",
    "gauges.csv",
    "logbook.json",
    "mill",
    "pump",
    "tractor",
    "ultralight",
    "van",
  ]);
  for (const file of ["logbook.json", "gauges.csv", "boat/tests.csv", "van/engine.json"])
    expect(desk.text(`sealtrend-demo/${file}`), file).toBe(readFileSync(join(source, file), "utf8"));
  expect(statSync(join(desk.folder, "sealtrend-demo/boat/tests.csv")).mode & 0o600).toBe(0o600);
});

test("the lines to type next can be typed", async () => {
  const desk = newDesk();
  for (const words of [["demo"], ["demo", "elsewhere"]]) {
    const next = (await desk.json(...words)).next as readonly string[];
    expect(next).toHaveLength(3);
    for (const line of next)
      expect(await desk.type(line.split(" ").slice(1)), line).toMatchObject({ exit: 0 });
  }
});

test("the lines to type next are those of npm where npm started it, and name the folder where it is not found by itself", async () => {
  const desk = newDesk();
  const { out } = await desk.type(["demo"], { env: { npm_lifecycle_event: "start" } });
  expect(out).toContain("\nnext   npm start -- show tractor --why\n");
  expect((await desk.type(["demo", "other"])).out).toContain(
    "\nnext   sealtrend show tractor --why --logbook other\n",
  );
});

test("a demo that is there is shown as it stands", async () => {
  const desk = newDesk();
  await desk.type(["demo"]);
  desk.put("sealtrend-demo/mill/notes.csv", "date,meter,what,value,unit,cylinders,by,note\n");
  const { exit, out } = await desk.type(["demo"]);
  expect([exit, out.split("\n")[0]]).toEqual([
    0,
    "Demo, as it stands in sealtrend-demo: engines, readings and people are all",
  ]);
  expect(desk.text("sealtrend-demo/mill/notes.csv")).toBe("date,meter,what,value,unit,cylinders,by,note\n");
});

test("a demo somebody took engines out of is still shown", async () => {
  const desk = newDesk();
  desk.put("demo/logbook.json", '{ "demo": true }');
  expect(await desk.type(["demo", "demo"])).toMatchObject({ exit: 0 });
});

test.each([
  ["mine/logbook.json", "{}"],
  ["mine/letter.txt", "dear"],
  ["mine", "a file"],
])("nothing is laid over %s", async (name, content) => {
  const desk = newDesk();
  desk.put(name, content);
  const { exit, err } = await desk.type(["demo", "mine"]);
  expect([exit, err]).toEqual([
    2,
    "something else is in mine\n    expected a free place: the demo is written over nothing\n    sealtrend demo mine-demo\n",
  ]);
  expect(desk.text(name)).toBe(content);
});

test("an empty folder is free", async () => {
  const desk = newDesk();
  mkdirSync(join(desk.folder, "empty"));
  expect(await desk.type(["demo", "empty"])).toMatchObject({ exit: 0 });
});
