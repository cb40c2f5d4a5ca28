// amend: the cell, the trace beside it, and the facts of a test.

import { expect, test } from "vitest";
import { misfits, schemaOf } from "./fits-schema.ts";
import { boat, boatJson, boatTests, mendPlace, testsHeader } from "./mend-place.ts";

const because = ["--because", "paper says so"];
const traceHeader = "when,file,row,column,old,new,because";

test("amend replaces one cell, keeps the reason beside it, and shows the test after the change", async () => {
  const place = boat();
  const { exit, out } = await place.run([
    "amend",
    "boat",
    "--test",
    "latest",
    "--what",
    "dry",
    "--take",
    "1",
    "--cylinder",
    "4",
    "--to",
    "141",
    "--because",
    "paper says 141",
  ]);
  expect(exit).toBe(0);
  expect(place.text("boat/tests.csv")).toBe(boatTests.replace("126,125,111,131", "126,125,111,141"));
  expect(place.text("boat/amendments.csv")).toBe(
    `${traceHeader}\n2026-11-25T10:00:00,tests.csv,2026-05-02a dry take 1 by red,c4,131,141,paper says 141\n`,
  );
  expect(out).toContain("amended  boat 2026-05-02a");
  expect(out).toContain("dry take 1 by red, cylinder 4: 131 -> 141");
  expect(out).toContain("because paper says 141");
  const headline = (await place.run(["show", "boat"])).out.split("\n")[0] ?? "";
  expect(out).toContain(headline);
});

test("A reading is made doubtful, pegged or not taken by what is written for it", async () => {
  const place = boat();
  for (const to of ["131?", ">300", "x"])
    expect(
      (
        await place.run([
          "amend",
          "--test",
          "latest",
          "--take",
          "1",
          "--cylinder",
          "4",
          "--to",
          to,
          ...because,
        ])
      ).exit,
    ).toBe(0);
  expect(place.text("boat/tests.csv")).toContain("126,125,111,x,");
  expect(place.text("boat/amendments.csv").match(/c4,.*(?=,paper)/g)).toEqual([
    "c4,131,131?",
    "c4,131?,>300",
    "c4,>300,x",
  ]);
});

test("A condition changes in the column and the unit of the row that states it", async () => {
  const place = boat();
  await place.run(["amend", "--test", "latest", "--altitude", "400m", "--air", "64.4F", ...because]);
  // 400 m / 0.3048 = 1312.34 ft; (64.4 - 32) / 1.8 = 18 C, which stands there already.
  expect(place.text("boat/tests.csv")).toBe(boatTests.replace(",1148,", ",1312.34,"));
});

test("A condition that no row states goes into the first row of the test", async () => {
  const place = boat();
  await place.run(["amend", "--test", "2025-05-10a", "--speed", "230", ...because]);
  expect(place.text("boat/tests.csv")).toBe(boatTests.replace("350,,20,,warm", "350,,20,230,warm"));
});

test("A reading and a condition of another row of the same test are amended by one command", async () => {
  const place = boat();
  const words = [
    "--test",
    "latest",
    "--take",
    "2",
    "--cylinder",
    "4",
    "--to",
    "132",
    "--air",
    "19C",
    "--date",
    "2026-05-01",
  ];
  expect((await place.run(["amend", ...words, ...because])).exit).toBe(0);
  expect(place.text("boat/tests.csv")).toBe(
    boatTests
      .replaceAll("2026-05-02a,2026-05-02", "2026-05-02a,2026-05-01")
      .replace("112,130", "112,132")
      .replace("1148,18,", "1148,19,"),
  );
});

test("A condition of one of two gauges is amended in the row of that gauge", async () => {
  const place = boat();
  const words = ["--test", "2025-05-10a", "--of-gauge", "blue", "--speed", "230rpm"];
  expect((await place.run(["amend", ...words, ...because])).exit).toBe(0);
  expect(place.text("boat/tests.csv")).toBe(boatTests.replace("126,129,,,,,", "126,129,,,,230,"));
});

test("A fact is taken out with a minus sign", async () => {
  const place = boat();
  await place.run([
    "amend",
    "--test",
    "latest",
    "--altitude",
    "-",
    "--note",
    "-",
    "--engine-temp",
    "-",
    ...because,
  ]);
  expect(place.text("boat/tests.csv")).toBe(
    boatTests.replace(",1148,18,,warm,,,me,,first note", ",,18,,,,,me,,"),
  );
});

test("The day changes in all rows of the test, which keeps its name", async () => {
  const place = boat();
  const { out } = await place.run(["amend", "--test", "latest", "--date", "2026-05-01", ...because]);
  expect(place.text("boat/tests.csv")).toBe(
    boatTests.replaceAll("2026-05-02a,2026-05-02", "2026-05-02a,2026-05-01"),
  );
  expect(place.text("boat/amendments.csv").split("\n")).toHaveLength(4);
  expect(out).toContain("The test keeps its name, 2026-05-02a.");
});

test("Meter, gauge, unit, by and note of a test are amended where they stand", async () => {
  const place = boat();
  await place.run([
    "amend",
    "--test",
    "latest",
    "--meter",
    "641.5",
    "--gauge",
    "blue",
    "--by",
    "shop",
    "--note",
    "read twice",
    ...because,
  ]);
  expect(place.text("boat/tests.csv")).toBe(
    boatTests
      .replace("2026-05-02,640,dry,1,red", "2026-05-02,641.5,dry,1,blue")
      .replace("2026-05-02,,dry,2,red", "2026-05-02,,dry,2,blue")
      .replace("me,,first note", "shop,,read twice")
      .replace(/me,,\n$/, "shop,,\n"),
  );
  const unit = await place.run(["amend", "--test", "latest", "--unit", "KPA", ...because]);
  expect(unit.exit).toBe(0);
  expect(place.text("boat/tests.csv").match(/2026-05-02a.*,kPa,/g)).toHaveLength(2);
});

test("A test is set aside with its reason, and taken back", async () => {
  const place = boat();
  const { out } = await place.run(["amend", "--test", "latest", "--set-aside", "wrong adapter"]);
  expect(place.text("boat/tests.csv")).toContain("me,wrong adapter,first note");
  expect(place.text("boat/amendments.csv")).toContain("set_aside,,wrong adapter,wrong adapter");
  expect(out).toContain("Set aside: wrong adapter; it counts in nothing.");
  await place.run(["amend", "--test", "latest", "--set-aside", "-"]);
  expect(place.text("boat/tests.csv")).toBe(boatTests);
  expect(place.text("boat/amendments.csv")).toContain("set_aside,wrong adapter,,no longer set aside");
});

test("Where two gauges read the same take, the gauge is asked for", async () => {
  const place = boat();
  const words = [
    "amend",
    "--test",
    "2025-05-10a",
    "--what",
    "dry",
    "--take",
    "1",
    "--cylinder",
    "4",
    "--to",
    "128",
    ...because,
  ];
  const open = await place.run(words);
  expect([open.exit, open.err]).toEqual([2, expect.stringContaining("add --of-gauge blue")]);
  expect((await place.run([...words, "--gauge", "red"])).exit).toBe(0);
  expect(place.text("boat/tests.csv")).toContain("red,psi,126,125,124,128");
  const unit = await place.run(["amend", "--test", "2025-05-10a", "--gauge", "green", ...because]);
  expect([unit.exit, unit.err]).toEqual([
    2,
    expect.stringContaining("the rows of the test say different things"),
  ]);
  expect(
    (
      await place.run([
        "amend",
        "--test",
        "2025-05-10a",
        "--of-gauge",
        "blue",
        "--gauge",
        "green",
        ...because,
      ])
    ).exit,
  ).toBe(0);
});

test("An entry with a fault is found by its raw cells and mended", async () => {
  const bad = boatTests
    .replace("126,125,111,131", "126,125,111,13l")
    .replace("2026-05-02a,2026-05-02,,dry,2", "2026-05-02a,2.5.2026,,dry,2");
  const place = mendPlace({ "boat/engine.json": boatJson, "boat/tests.csv": bad });
  expect((await place.run(["show", "boat"])).exit).toBe(1);
  const first = await place.run([
    "amend",
    "--test",
    "latest",
    "--take",
    "1",
    "--cylinder",
    "4",
    "--to",
    "131",
    ...because,
  ]);
  expect([first.exit, first.out]).toEqual([1, expect.stringContaining("other entries have faults")]);
  expect(first.err).toContain("tests.csv:5:13");
  const second = await place.run(["amend", "--test", "latest", "--date", "2026-05-02", ...because]);
  expect(second.exit).toBe(0);
  expect(place.text("boat/tests.csv")).toBe(boatTests);
});

test("Rows that disagree are brought together by one amendment", async () => {
  const place = mendPlace({
    "boat/engine.json": boatJson,
    "boat/tests.csv": boatTests.replace("2026-05-02,,dry,2", "2026-05-02,6400,dry,2"),
  });
  expect((await place.run(["proofread"])).exit).toBe(1);
  expect((await place.run(["amend", "--test", "latest", "--meter", "640", ...because])).exit).toBe(0);
  expect((await place.run(["proofread"])).exit).toBe(0);
});

test("The document of an amendment is that of show, with what was changed", async () => {
  const place = boat();
  const words = [
    "amend",
    "boat",
    "--test",
    "latest",
    "--take",
    "1",
    "--cylinder",
    "4",
    "--to",
    "130",
    ...because,
    "--json",
  ];
  const { json } = await place.run(words);
  expect(misfits(json(), schemaOf("amend"))).toEqual([]);
  expect(json()).toMatchObject({
    schema: "sealtrend/amend@1",
    engine: { id: "boat" },
    test: { id: "2026-05-02a" },
    trust: { code: "trusted" },
    changes: [{ row: "dry take 1 by red", line: 4, column: "c4", old: "131", new: "130" }],
    because: "paper says so",
    written: { file: "logbook/boat/tests.csv", rows: 1 },
  });
  const faulty = mendPlace({
    "boat/engine.json": boatJson,
    "boat/tests.csv": boatTests.replace(",129,", ",12O,"),
  });
  const ran = await faulty.run(words);
  expect(misfits(ran.json(), schemaOf("amend"))).toEqual([]);
  expect([ran.exit, ran.json()]).toEqual([
    1,
    expect.objectContaining({
      test: { id: "2026-05-02a" },
      problems: [expect.objectContaining({ line: 3 })],
    }),
  ]);
});

test("Where air was heard is amended like a reading", async () => {
  const heard = "2026-05-02a,2026-05-02,,heard,1,,,none,none,exhaust,none,,,,,,,,me,,\n";
  const place = mendPlace({ "boat/engine.json": boatJson, "boat/tests.csv": boatTests + heard });
  const words = ["amend", "--test", "latest", "--what", "heard", "--cylinder", "3", "--to"];
  expect((await place.run([...words, "intake:faint+exhaust", ...because])).exit).toBe(0);
  expect(place.text("boat/tests.csv")).toBe(boatTests + heard.replace("exhaust", "intake:faint+exhaust"));
  const wrong = await place.run([...words, "exhast", ...because]);
  expect([wrong.exit, wrong.err]).toEqual([2, expect.stringContaining("write exhaust")]);
});

test("A column that a file lacks is added at the end of its lines, and undo takes it out again", async () => {
  const place = boat();
  const before = place.picture();
  const { exit, err } = await place.run(["amend", "--test", "latest", "--throttle", "open", ...because]);
  expect([exit, err]).toEqual([
    0,
    "logbook/boat/tests.csv got a column it lacked, at the end of its lines: throttle\n",
  ]);
  const lines = place.text("boat/tests.csv").trimEnd().split("\n");
  const old = boatTests.trimEnd().split("\n");
  expect(lines).toEqual(old.map((line, i) => `${line}${[",throttle", ",", ",", ",open", ","][i] ?? ""}`));
  await place.run(["undo"]);
  expect(place.picture()).toMatchObject(before);
});

test("A trace that lacks columns gets them", async () => {
  const place = mendPlace({
    "boat/engine.json": boatJson,
    "boat/tests.csv": boatTests,
    "boat/amendments.csv": "when,file\n",
  });
  const { exit } = await place.run(["amend", "--test", "latest", "--meter", "641", ...because]);
  expect(exit).toBe(0);
  expect(place.text("boat/amendments.csv")).toContain("when,file,row,column,old,new,because\n");
});

test("Without any test there is nothing to amend", async () => {
  for (const files of [
    { "boat/engine.json": boatJson },
    { "boat/engine.json": boatJson, "boat/tests.csv": `${testsHeader}\n` },
  ]) {
    const none = await mendPlace(files).run(["amend", "--test", "latest", "--meter", "1", ...because]);
    expect([none.exit, none.err]).toEqual([1, expect.stringContaining("boat has no test yet")]);
  }
});
