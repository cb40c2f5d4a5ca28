// engine add, list, show. Contract: design.md §3 and §4.

import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";

test("a new engine gets its folder with every table, and the logbook its own files", async () => {
  const desk = newDesk();
  const { exit, out, err } = await desk.type([
    "engine",
    "add",
    "pump",
    "--cylinders",
    "2",
    "--ignition",
    "compression",
    "--bore",
    "86mm",
    "--home-altitude",
    "1150ft",
  ]);
  expect([exit, err]).toEqual([0, `your logbook is ${desk.folder}/data/sealtrend\n`]);
  expect(out).toBe(
    "added  pump: 2 cylinders, compression ignition    (sealtrend undo takes it back)\n\n" +
      'next   sealtrend enter pump --dry "400 399" --unit psi\n' +
      "       what else would help: sealtrend engine show pump\n",
  );
  expect(desk.names("data/sealtrend/pump")).toEqual([
    "amendments.csv",
    "engine.json",
    "measurements.csv",
    "notes.csv",
    "services.csv",
    "tests.csv",
  ]);
  expect(JSON.parse(desk.text("data/sealtrend/pump/engine.json"))).toEqual({
    schema: "sealtrend/engine@1",
    name: "pump",
    cylinders: ["1", "2"],
    ignition: "compression",
    homeAltitude_m: 350.5, // 1150 ft x 0.3048 m
    geometry: { bore: "86mm" },
  });
});

test("what is missing is named where nobody can be asked, all of it, with a line to type", async () => {
  const desk = newDesk();
  const { exit, err } = await desk.type(["engine", "add", "pump"]);
  expect(exit).toBe(2);
  expect(err).toContain(
    "how many cylinders has pump?\n    expected --cylinders\n    sealtrend engine add pump --cylinders 4 --ignition spark\n",
  );
  expect(err).toContain("how does pump fire?");
  expect(desk.names()).toEqual([]);
});

test("on a terminal what is missing is asked", async () => {
  const desk = newDesk();
  const { exit, asked } = await desk.type(["engine", "add", "pump", "--ignition", "spark"], {
    answers: ["L R"],
  });
  expect([exit, asked.length]).toEqual([0, 1]);
  expect((await desk.json("engine", "list")).engines).toMatchObject([
    { id: "pump", engine: { cylinders: ["L", "R"] } },
  ]);
});

test.each([
  ["two", ["1", "2"]],
  ["Four", ["1", "2", "3", "4"]],
  ["one", ["1"]],
  ["L R", ["L", "R"]],
])("--cylinders %s: a number in words is a number, other words are labels", async (typed, cylinders) => {
  const desk = newDesk();
  const { exit } = await desk.type(["engine", "add", "pump", "--cylinders", typed, "--ignition", "spark"]);
  expect(exit).toBe(0);
  expect((await desk.json("engine", "list")).engines).toMatchObject([{ engine: { cylinders } }]);
});

test("leaving a question unanswered saves nothing", async () => {
  const desk = newDesk();
  const { exit, err } = await desk.type(["engine", "add", "pump"], { answers: ["4", "q"] });
  expect([exit, err.split("\n")[0], desk.names()]).toEqual([2, "nothing was saved", []]);
});

test.each([
  [["--bore", "86"], '--bore "86"'],
  [["--home-altitude", "350"], '--home-altitude "350"'],
  [["--compression-ratio", "99"], '--compression-ratio "99"'],
  [["--minimum", "26mm"], '--minimum "26mm"'],
])("a value that does not fit is refused: %j", async (more, found) => {
  const desk = newDesk();
  const { exit, err } = await desk.type([
    "engine",
    "add",
    "pump",
    "--cylinders",
    "4",
    "--ignition",
    "spark",
    ...more,
  ]);
  expect([exit, err.split("\n")[0], desk.names()]).toEqual([2, found, []]);
});

test("a name that is taken, or can be no folder, is refused", async () => {
  const desk = await deskWithPump();
  const again = await desk.type(["engine", "add", "pump", "--cylinders", "4", "--ignition", "spark"]);
  expect([again.exit, again.err]).toEqual([
    2,
    expect.stringContaining("there is already a folder logbook/pump"),
  ]);
  const bad = await desk.type(["engine", "add", "Pump 1", "--cylinders", "4", "--ignition", "spark"]);
  expect([bad.exit, bad.err]).toEqual([
    2,
    expect.stringContaining('"Pump 1" cannot be the name of an engine'),
  ]);
});

test("an engine.json of somebody else is checked and copied", async () => {
  const desk = newDesk();
  desk.put("theirs.json", '{ "name": "Theirs", "cylinders": ["1"], "ignition": "spark", "colour": "green" }');
  const { exit, err } = await desk.type(["engine", "add", "saw", "--from", "theirs.json"]);
  expect([exit, err]).toEqual([
    0,
    expect.stringContaining('theirs.json:1:62 caution: nothing here is named "colour"'),
  ]);
  expect(JSON.parse(desk.text("data/sealtrend/saw/engine.json"))).toMatchObject({
    name: "Theirs",
    colour: "green",
  });
});

test("every fault of somebody's engine.json has its place, and nothing is made", async () => {
  const desk = newDesk();
  desk.put("theirs.json", '{ "cylinders": [1],\n  "use": "plane" }');
  const { exit, err } = await desk.type(["engine", "add", "saw", "--from", "theirs.json"]);
  expect([exit, desk.has("data")]).toEqual([1, false]);
  expect(err).toContain("theirs.json:1:3 cylinders is [1]\n");
  expect(err).toContain('theirs.json:2:3 use is "plane"\n');
  expect(err).toContain('theirs.json:1:1 there is no "ignition"');
});

test("--from stands alone, and a file that is not there ends with 3", async () => {
  const desk = newDesk();
  desk.put("theirs.json", "{}");
  const both = await desk.type(["engine", "add", "saw", "--from", "theirs.json", "--use", "farm"]);
  expect([both.exit, both.err.split("\n")[0]]).toEqual([2, "--from and --use together"]);
  const none = await desk.type(["engine", "add", "saw", "--from", "nobody.json"]);
  expect([none.exit, none.err.split("\n")[0]]).toEqual([3, "there is no file nobody.json"]);
});

test("nothing is added to the demo", async () => {
  const desk = newDesk();
  desk.put("book/logbook.json", '{ "demo": true }');
  const { exit, err } = await desk.type([
    "engine",
    "add",
    "pump",
    "--cylinders",
    "4",
    "--ignition",
    "spark",
    "--logbook",
    "book",
  ]);
  expect([exit, err.split("\n")[0]]).toEqual([
    2,
    "book is the demo: invented engines, nothing real is written there",
  ]);
});

test("the list has a line an engine, also for one whose file has a fault", async () => {
  const desk = await deskWithPump();
  await desk.type(["enter", "pump", "--dry", "150 149 151 150", "--unit", "psi", "--date", "2026-05-02"]);
  await desk.type([
    "engine",
    "add",
    "baler",
    "--cylinders",
    "1",
    "--ignition",
    "unknown",
    "--name",
    "Old baler",
  ]);
  desk.put("logbook/saw/engine.json", "{");
  const { exit, out, err } = await desk.type(["engine", "list"]);
  expect(exit).toBe(1);
  expect(out).toBe(
    "engine  cylinders  ignition  tests  last        name\n" +
      "baler           1  unknown    none  -           Old baler\n" +
      "pump            4  spark         1  2026-05-02  pump\n" +
      "saw                                             engine.json has 1 fault\n",
  );
  expect(err).toBe("saw: 1 fault in its files; see each: sealtrend proofread\n");
});

test("a list as of an earlier day counts the tests up to it", async () => {
  const desk = await deskWithPump();
  await desk.type(["enter", "pump", "--dry", "150 149 151 150", "--unit", "psi", "--date", "2026-05-02"]);
  const { out } = await desk.type(["engine", "list", "--as-of", "2025-01-01"]);
  expect(out.split("\n")[1]).toBe("pump            4  spark      none  -     pump");
});

test("an empty logbook says how to begin", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  const { exit, out } = await desk.type(["engine", "list"]);
  expect([exit, out]).toEqual([0, expect.stringContaining("No engine in logbook yet.")]);
});

test("one engine is shown with all that is known, and what would help", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type([
    "engine",
    "add",
    "pump",
    "--cylinders",
    "2",
    "--ignition",
    "compression",
    "--bore",
    "86mm",
    "--stroke",
    "90mm",
    "--use",
    "farm",
  ]);
  const { exit, out } = await desk.type(["engine", "show"]);
  expect(exit).toBe(0);
  expect(out).toContain(
    "pump: pump, no test yet\nlogbook/pump/engine.json\n\nengine    use farm, cylinders 1 2, ignition compression\ngeometry  bore 86mm, stroke 90mm\n",
  );
  expect(out).toContain(
    "not known, and would help\n  limits.compression.minimum  the maker's limit goes before any rule of thumb\n",
  );
  expect(out).toContain("  wetTest.allowed             a diesel gets no oil unless its maker allows it\n");
  expect(out).not.toContain("geometry.bore ");
});

test("an engine that is not there is not guessed", async () => {
  const desk = await deskWithPump();
  const { exit, err } = await desk.type(["engine", "show", "pimp"]);
  expect([exit, err]).toEqual([2, expect.stringContaining("did you mean pump?")]);
});
