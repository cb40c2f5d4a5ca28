// engine set of limits for parts: one by one, or the whole list; the answer says in words what changed. Figures invented.

import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";

const byHand = `{ "cylinders": ["1", "2"], "ignition": "spark",\r
  "limits": {\r
    "clearances": [\r
      { "part": "bore", "quantity": "taper",   "wear": [null, 0.10], "unit": "mm", "mine": 1 },\r
      { "part": "main", "quantity": "diameter", "new": [2.4980, null], "unit": "in" }\r
    ],\r
    "compression": { "minimum": "7bar" } } }\r
`;

const deskWith = (text: string): Desk => {
  const desk = newDesk();
  desk.put("logbook/pump/engine.json", text);
  return desk;
};

const set = (desk: Desk, path: string, value: string) => desk.type(["engine", "set", "pump", path, value]);
const file = (desk: Desk): string => desk.text("logbook/pump/engine.json");

test("a limit that is missing is added at the end of the list, and undo takes it back to the byte", async () => {
  const desk = deskWith(byHand);
  const { exit, out } = await set(desk, "limits.rod-bearing.clearance.new", "0.0010 to 0.0025in, card p. 3");
  expect([exit, out]).toEqual([
    0,
    "set  pump rod bearing clearance new 0.0010 to 0.0025 in (card p. 3)\n" +
      `${" ".repeat(50)}(sealtrend undo takes it back)\n`,
  ]);
  expect(file(desk)).toBe(
    byHand.replace(
      '"unit": "in" }',
      '"unit": "in" },\r\n      { "part": "rod bearing", "quantity": "clearance", "new": [0.0010, 0.0025], "unit": "in", "source": "card p. 3" }',
    ),
  );
  expect(await desk.type(["undo"])).toMatchObject({ exit: 0 });
  expect(file(desk)).toBe(byHand);
});

test("a limit that is there changes, what else its entry says stays", async () => {
  const desk = deskWith(byHand);
  expect((await set(desk, "limits.bore.taper.wear", "up to 0.120 mm")).out).toContain(
    "set  pump bore taper worn to 0.120 mm, was worn to 0.10 mm",
  );
  expect(file(desk)).toBe(byHand.replace("[null, 0.10]", "[null, 0.120]"));
  await set(desk, "limits.main.diameter.wear", "from 2.4970in, card p. 4");
  expect(file(desk)).toContain(
    '"new": [2.4980, null], "unit": "in", "wear": [2.4970, null], "source": "card p. 4" }',
  );
});

test("- takes one limit out, with its entry where that says nothing more, and the list with the last", async () => {
  const desk = deskWith(byHand);
  expect((await set(desk, "limits.bore.taper.wear", "-")).out).toContain(
    "set  pump taken out: bore taper worn to 0.10 mm",
  );
  expect(file(desk)).toBe(byHand.replace(/\{ "part": "bore".*?\},\r\n {6}/s, ""));
  await set(desk, "limits.main.diameter.new", "-");
  expect(JSON.parse(file(desk))).toEqual({
    cylinders: ["1", "2"],
    ignition: "spark",
    limits: { compression: { minimum: "7bar" } },
  });
  expect((await set(desk, "limits.main.diameter.new", "-")).out).toContain("nothing was written");
});

test("an engine without limits gets its first one", async () => {
  const desk = deskWith('{ "cylinders": ["1"], "ignition": "spark" }');
  await set(desk, "limits.ring.1.end-gap.wear", "up to 0.9mm");
  expect(file(desk)).toBe(
    '{ "cylinders": ["1"], "ignition": "spark", "limits": { "clearances": [{ "part": "ring", "at": "1", "quantity": "end gap", "wear": [null, 0.9], "unit": "mm" }] } }',
  );
});

test("the same limit in a second unit, which holds no longer, goes", async () => {
  const twice = byHand.replace('"mine": 1', '"also": { "wear": [null, 0.004], "unit": "in" }');
  const desk = deskWith(twice);
  await set(desk, "limits.bore.taper.wear", "up to 0.12mm");
  expect(file(desk)).toBe(
    twice.replace(', "also": { "wear": [null, 0.004], "unit": "in" }', "").replace("0.10]", "0.12]"),
  );
});

test("the document holds what stood there and what stands there now", async () => {
  const desk = deskWith(byHand);
  const line = ["engine", "set", "pump", "limits.bore.taper.wear", "up to 0.12mm"];
  expect(await desk.json(...line)).toMatchObject({
    written: {
      path: "limits.bore.taper.wear",
      before: { wear: [null, 0.1], unit: "mm" },
      after: { wear: [null, 0.12], unit: "mm" },
    },
  });
});

test.each([
  [
    "limits.bore.taper.wear",
    "0.12mm",
    'limits.bore.taper.wear "0.12mm"',
    'sealtrend engine set pump limits.bore.taper.wear "up to 0.12mm"',
  ],
  [
    "limits.bore.taper.wear",
    "0.2 to 0.1mm",
    'limits.bore.taper.wear "0.2 to 0.1mm"',
    'sealtrend engine set pump limits.bore.taper.wear "0.1 to 0.2mm"',
  ],
  [
    "limits.bore.tapr.wear",
    "up to 0.12mm",
    'an engine has no limit "limits.bore.tapr.wear"',
    'sealtrend engine set pump limits.bore.taper.wear "up to 0.12mm"',
  ],
  [
    "limits.bore.taper",
    "up to 0.12mm",
    'an engine has no limit "limits.bore.taper"',
    'sealtrend engine set pump limits.bore.taper.wear "up to 0.12mm"',
  ],
])("refused, with a mend: %s %s", async (path, value, found, mend) => {
  const desk = deskWith(byHand);
  const { exit, err } = await set(desk, path, value);
  const lines = err.trimEnd().split("\n");
  expect([exit, lines[0], lines.at(-1)?.trim()]).toEqual([2, found, mend]);
  expect(file(desk)).toBe(byHand);
});

test("one entry has one unit", async () => {
  const desk = deskWith(byHand);
  const { exit, err } = await set(desk, "limits.main.diameter.wear", "from 63.40mm");
  expect([exit, err.split("\n")[0]]).toEqual([
    2,
    'limits.main.diameter.wear "from 63.40mm": its other limit stands in in',
  ]);
  expect(file(desk)).toBe(byHand);
});

test("a whole list is told a limit a line, eight at most", async () => {
  const desk = deskWith(byHand);
  const entries = Array.from(
    { length: 9 },
    (_, i) =>
      `{ "part": "main", "label": "${String(i + 1)}", "quantity": "diameter", "new": [2.4980, null], "unit": "in" }`,
  );
  const { out } = await set(desk, "limits.clearances", `[${entries.join(", ")}]`);
  const lines = out.trimEnd().split("\n");
  expect(lines[0]).toMatch(/^set {2}pump limits\.clearances: 11 limits +\(sealtrend undo takes it back\)$/);
  expect(lines[1]).toBe("     main diameter (1) new from 2.4980 in");
  expect(lines.slice(-1)).toEqual(["     and 3 more (sealtrend engine show)"]);
  expect(lines).toHaveLength(10);
  expect(out).not.toContain("{");
});

test("sizes that are offered are told in words", async () => {
  const desk = deskWith(byHand);
  const { out } = await set(desk, "limits.offered", '{ "bore": { "unit": "mm", "sizes": [0.25, 0.5] } }');
  expect(out).toContain("set  pump limits.offered: none -> bore 0.25 0.5 mm");
});

test.each([
  ["bore.diameter.new", "3.9385..3.9375in, card p. 3", '"3.9375 to 3.9385in, card p. 3"'],
  ["bore.diameter.new", "3.9375-3.9385in", '"3.9375 to 3.9385in"'],
  ["bore.diameter.wear", "from 4.005in", '"up to 4.005in"'],
  ["bore.diameter.wear", "up to 4.005in (4.006in)", '"up to 4.005in"'],
  ["bore.diameter.wear", "up to 4.005in, 101.727mm", '"up to 4.005in (101.727mm)"'],
  ["bore.diameter.wear", "4.005in (101.727mm), p. 4", '"up to 4.005in (101.727mm), p. 4"'],
  ["bore.taper.wear", "0.008", '"up to 0.008mm"'],
  ["bore.taper.wear", "up to 8mm", '"up to 0.008mm"'],
  ["bore.taper.wear", "up to 0.25in", '"up to 0.25mm"'],
  ["bore.taper.wear", "up to -0.1mm", '"up to 0.1mm"'],
  ["main.diameter.wear", "up to 2.4970in", '"from 2.4970in"'],
  ["main.diameter.wear", "2.4970in", '"from 2.4970in"'],
  ["crank.end-play.wear", "up to -0.3mm", '"up to 0.3mm"'],
])("what cannot be meant is refused with the figures that were typed: %s %s", async (path, value, mend) => {
  const desk = deskWith(byHand);
  const { exit, err } = await set(desk, `limits.${path}`, value);
  const said = err.replace(/\s+/g, " ");
  expect([exit, said]).toEqual([
    2,
    expect.stringContaining(`sealtrend engine set pump limits.${path} ${mend}`),
  ]);
  expect(file(desk)).toBe(byHand);
});

test.each([
  ["limits.boer.taper.wear", "limits.bore.taper.wear"],
  ["limits.bearing.clearance.wear", "limits.rod-bearing.clearance.wear"],
  ["limits.pistons.clearance.wear", "limits.piston.clearance.wear"],
])("the nearest part is named for %s", async (path, meant) => {
  const { exit, err } = await set(deskWith(byHand), path, "up to 0.12mm");
  expect([exit, err]).toEqual([
    2,
    expect.stringContaining(`sealtrend engine set pump ${meant} "up to 0.12mm"`),
  ]);
});

test("a limit that is printed in two units is kept in both, and told in both", async () => {
  const desk = deskWith(byHand);
  const { out } = await set(desk, "limits.pin.taper.wear", "up to 0.002in (0.05mm), manual p. 4");
  expect(out.replace(/\s+/g, " ")).toContain(
    "set pump pin taper worn to 0.002 in (also printed: worn to 0.05 mm) (manual p. 4)",
  );
  expect(file(desk)).toContain(
    '"wear": [null, 0.002], "unit": "in", "source": "manual p. 4", "also": { "wear": [null, 0.05], "unit": "mm" } }',
  );
  await set(desk, "limits.pin.taper.new", "0 to 0.0010in (0 to 0.025mm)");
  expect(JSON.parse(file(desk))).toMatchObject({
    limits: {
      clearances: [
        {},
        {},
        { also: { wear: [null, 0.05], new: [0, 0.025], unit: "mm" }, new: [0, 0.001], wear: [null, 0.002] },
      ],
    },
  });
  expect(await set(desk, "limits.pin.taper.new", "0 to 0.0010in (0 to 25um)")).toMatchObject({ exit: 2 });
});
