// service: what is saved, what it means, and every way to be refused. Kinds of work and their default baselines: design, section 3.

import { expect, test } from "vitest";
import { misfits, schemaOf } from "./fits-schema.ts";
import { boat, boatJson, mendPlace, servicesHeader } from "./mend-place.ts";

test("A service is one row of services.csv, and the answer says which cylinders begin a new history", async () => {
  const place = boat();
  const { exit, out } = await place.run([
    "service",
    "boat",
    "--what",
    "valve job",
    "--cylinders",
    "3",
    "--meter",
    "640",
    "--by",
    "shop",
  ]);
  expect(exit).toBe(0);
  expect(place.text("boat/services.csv")).toBe(`${servicesHeader}\n2026-11-25,640,valve job,3,,shop,\n`);
  expect(out).toContain("saved  boat 2026-11-25, valve job");
  expect(out).toContain("Cylinder 3 begins a new history here");
  expect(out.replace(/\s+/g, " ")).toContain(
    "one after 50 h as the new baseline (judgement, no published figure)",
  );
});

test("Work on the head touches all cylinders where none is named", async () => {
  const place = boat();
  const { out } = await place.run(["service", "--what", "Head Gasket"]);
  expect(place.text("boat/services.csv")).toContain("2026-11-25,,head gasket,all,,,");
  expect(out).toContain("All four cylinders begin a new history");
});

test.each(["re-ring", "rebore", "rebuild"])(
  "After a %s the tests of the run-in are shown but count in nothing",
  async (what) => {
    const place = boat();
    const { out } = await place.run(["service", "--what", what, "--meter", "640"]);
    expect(out.replace(/\s+/g, " ")).toContain(
      "Run-in: tests within 25 h from here are shown, but count in no slope and no baseline",
    );
    expect(out).not.toContain("Without the meter");
    expect((await place.run(["service", "--what", what])).out.replace(/\s+/g, " ")).toContain(
      "Without the meter reading they cannot be told apart",
    );
  },
);

test("An oil change begins no new history", async () => {
  const { out } = await boat().run(["service", "--what", "oil change"]);
  expect(out).toContain("No cylinder begins a new history");
  expect(out).toMatch(/: sealtrend history boat\n$/);
});

test("--new-baseline goes before the default of the work", async () => {
  const place = boat();
  const none = await place.run(["service", "--what", "valve job", "--new-baseline", "none"]);
  expect(none.out).toContain("No cylinder begins a new history");
  const some = await place.run(["service", "--what", "timing drive", "--new-baseline", "1,2", "--json"]);
  expect(some.json()).toMatchObject({
    service: { cylinders: ["1", "2", "3", "4"], newBaseline: ["1", "2"] },
  });
  expect(place.text("boat/services.csv")).toContain("timing drive,,1 2,,");
});

test("The document of a service is as its schema says", async () => {
  const { json } = await boat().run([
    "service",
    "--what",
    "re-ring",
    "--meter",
    "640.5",
    "--note",
    "0.5 over",
    "--by",
    "me",
    "--json",
  ]);
  expect(misfits(json(), schemaOf("service"))).toEqual([]);
  expect(json()).toMatchObject({
    schema: "sealtrend/service@1",
    runIn: true,
    service: { meter: 640.5 },
    written: { file: "logbook/boat/services.csv", rows: 1 },
  });
});

test("A new meter is not saved without what it reads, and storage asks how long it was", async () => {
  const place = boat();
  const refused = await place.run(["service", "--what", "meter replaced"]);
  expect([refused.exit, refused.err]).toEqual([2, expect.stringContaining("what does the new meter read?")]);
  expect((await place.run(["service", "--what", "meter replaced", "--meter", "0"])).out).toContain(
    "the meter counts anew",
  );
  expect((await place.run(["service", "--what", "storage"])).out).toContain('--note "7 months"');
});

test.each([
  [
    "a word that is not known",
    ["--what", "valvejob"],
    'did you mean valve job?: sealtrend service boat --what "valve job"',
  ],
  ["a work in other words", ["--what", "new pistons"], "the nearest is re-ring"],
  ["a cylinder that is not there", ["--what", "valve job", "--cylinders", "5"], "expected all, none, or"],
  ["a range of cylinders", ["--what", "valve job", "--cylinders", "1-3"], "expected all, none, or"],
  [
    "a baseline of a cylinder that is not there",
    ["--what", "plugs", "--new-baseline", "7"],
    "expected all, none, or",
  ],
  ["a meter that is no number", ["--what", "plugs", "--meter", "64O"], "letter O"],
  [
    "a day that is none",
    ["--what", "plugs", "--date", "2026-02-30"],
    "--date YYYY-MM-DD, the day of the work",
  ],
  ["a day to come", ["--what", "plugs", "--date", "2026-11-26"], "lies ahead"],
  ["a note that a spreadsheet would run", ["--what", "plugs", "--note", "=1+1"], "put a word in front of it"],
  ["no work", [], 'sealtrend service boat --what "valve job"'],
])("A service with %s is refused, and nothing is written", async (_, words, said) => {
  const place = boat();
  const before = place.picture();
  const { exit, err, out } = await place.run(["service", "boat", ...words]);
  expect({ exit, out }).toEqual({ exit: 2, out: "" });
  expect(err.replace(/\s+/g, " ")).toContain(said);
  expect(place.picture()).toEqual(before);
});

test("On a terminal the work, the cylinders, the meter and a note are asked", async () => {
  const place = boat();
  const { exit, asked } = await place.run(["service"], ["valve job", "1 2", "640", ""]);
  expect(exit).toBe(0);
  expect(asked.map((question) => question.split(/[ :]/)[0])).toEqual(["what", "which", "meter", "anything"]);
  expect(place.text("boat/services.csv")).toContain("2026-11-25,640,valve job,1 2,,,");
  const left = await place.run(["service"], ["valve job", "q"]);
  expect([left.exit, left.err]).toEqual([2, expect.stringContaining("nothing was saved")]);
});

test("A row goes into services.csv in the dialect of that file", async () => {
  const place = mendPlace({
    "boat/engine.json": boatJson,
    "boat/services.csv": "\uFEFFwhat;date;meter;note;cylinders\r\nplugs;2024-01-02;1,5;;",
  });
  expect(
    (await place.run(["service", "--what", "valve job", "--meter", "640.5", "--note", "seats; guides"])).exit,
  ).toBe(0);
  expect(place.text("boat/services.csv")).toBe(
    '\uFEFFwhat;date;meter;note;cylinders\r\nplugs;2024-01-02;1,5;;\r\nvalve job;2026-11-25;640,5;"seats; guides";all\r\n',
  );
  const lacking = await place.run(["service", "--what", "plugs", "--by", "me"]);
  expect([lacking.exit, lacking.err]).toEqual([
    0,
    "logbook/boat/services.csv got a column it lacked, at the end of its lines: by\n",
  ]);
  expect(place.text("boat/services.csv")).toMatch(
    /^\uFEFFwhat;date;meter;note;cylinders;by\r\nplugs;2024-01-02;1,5;;;\r\n/,
  );
});

test("A services.csv that is missing, empty or blank gets its header", async () => {
  for (const content of [undefined, "", "\n"]) {
    const place = mendPlace({
      "boat/engine.json": boatJson,
      ...(content === undefined ? {} : { "boat/services.csv": content }),
    });
    expect((await place.run(["service", "--what", "plugs"])).exit).toBe(0);
    expect(place.text("boat/services.csv").trim()).toBe(`${servicesHeader}\n2026-11-25,,plugs,,,,`);
    expect((await place.run(["proofread"])).exit).toBe(0);
  }
});

test("Nothing is written into the demo, or for an engine that is not there or has faults", async () => {
  const demo = mendPlace({ "logbook.json": '{"demo": true}', "boat/engine.json": boatJson });
  const before = demo.picture();
  for (const words of [
    ["service", "--what", "plugs"],
    ["note", "--what", "smoke", "--value", "blue"],
    ["amend", "--test", "latest", "--meter", "1", "--because", "x"],
    ["undo"],
  ]) {
    const { exit, err } = await demo.run(words);
    expect([exit, err]).toEqual([2, expect.stringContaining("is the demo")]);
  }
  expect(demo.picture()).toEqual(before);
  expect((await boat().run(["service", "baot", "--what", "plugs"])).err).toContain("did you mean boat?");
  const bad = mendPlace({ "boat/engine.json": '{"cylinders": ["1"]}' });
  expect((await bad.run(["service", "--what", "plugs"])).exit).toBe(1);
});
