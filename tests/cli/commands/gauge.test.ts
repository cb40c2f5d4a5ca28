// gauge add and list. Contract: design.md §3 (gauges.csv).

import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";

const add = ["gauge", "add"] as const;
const red = [
  ...add,
  "red",
  "--kind",
  "compression",
  "--unit",
  "psi",
  "--full-scale",
  "300psi",
  "--class",
  "2.5",
  "--division",
  "5",
] as const;

const lastRow = (text: string): string => text.trimEnd().split(/\r?\n/).at(-1) ?? "";

test("a gauge is appended to gauges.csv", async () => {
  const desk = await deskWithPump();
  const { exit, out, err } = await desk.type(red);
  expect([exit, err]).toEqual([0, ""]);
  expect(out).toBe(
    "added  gauge red: compression, 300 psi, class 2.5 %, steps of 5 psi\n" +
      `${" ".repeat(50)}(sealtrend undo takes it back)\n`,
  );
  expect(lastRow(desk.text("logbook/gauges.csv"))).toBe("red,compression,psi,300,2.5,5,,,,,,,,,,,,,,,,,");
});

test("the first gauge begins the logbook and says where it is", async () => {
  const desk = newDesk();
  const { exit, err } = await desk.type(red);
  expect([exit, err]).toEqual([0, `your logbook is ${desk.folder}/data/sealtrend\n`]);
  expect(desk.names("data/sealtrend")).toEqual(["gauges.csv", "logbook.json"]);
});

test("the row is written in the dialect of the file, and no other byte changes", async () => {
  const desk = await deskWithPump();
  const before = "note;gauge;kind;unit;full_scale;class_percent;mine\r\nmeine;blau;compression;bar;20;1,6;x";
  desk.put("logbook/gauges.csv", before);
  await desk.type([...add, "lang", "--kind", "compression", "--full-scale", "60bar", "--class", "1.6"]);
  expect(desk.text("logbook/gauges.csv")).toBe(`${before}\r\n;lang;compression;bar;60;1,6;\r\n`);
});

test("figures in another unit are turned into that of the dial", async () => {
  const desk = await deskWithPump();
  await desk.type([
    ...add,
    "tester",
    "--kind",
    "leak-down",
    "--unit",
    "kPa",
    "--full-scale",
    "100psi",
    "--dial",
    "pressure",
    "--restrictor",
    "0.040in",
  ]);
  // 100 psi = 689.476 kPa (the pound and the inch of 1959); 0.040 in x 25.4 = 1.016 mm
  expect(lastRow(desk.text("logbook/gauges.csv"))).toBe(
    "tester,leak-down,kPa,689.476,,,,,,1.016,,,,,pressure,,,,,,,,",
  );
});

test("a restrictor that is not known is said so, never guessed", async () => {
  const desk = await deskWithPump();
  await desk.type([
    ...add,
    "tester",
    "--kind",
    "leak-down",
    "--dial",
    "percent-lost",
    "--restrictor",
    "unknown",
  ]);
  expect(lastRow(desk.text("logbook/gauges.csv"))).toContain(",unknown,");
  const { out } = await desk.type(["gauge", "list"]);
  expect(out.split("\n")[1]).toBe(
    "tester  leak-down      -      -     -  restrictor not known, dial percent-lost",
  );
});

test.each([
  [["--full-scale", "300"], '--full-scale "300": in which unit?'],
  [["--full-scale", "300mm"], '--full-scale "300mm"'],
  [["--unit", "psi", "--full-scale", "-3psi"], '--full-scale "-3psi"'],
  [["--class", "40"], '--class "40"'],
  [["--unit", "psi", "--full-scale", "300", "--division", "300"], "--division 300 of a scale of 300"],
  [["--restrictor", "1.0mm"], "--restrictor with --kind compression"],
  [["--dial", "pressure"], "--dial with --kind compression"],
])("a figure that does not fit is refused: %j", async (more, found) => {
  const desk = await deskWithPump();
  const before = desk.text("logbook/gauges.csv");
  const { exit, err } = await desk.type([...add, "red", "--kind", "compression", ...more]);
  expect([exit, err.split("\n")[0]]).toEqual([2, found]);
  expect(desk.text("logbook/gauges.csv")).toBe(before);
});

test("a restrictor without its unit is refused", async () => {
  const desk = await deskWithPump();
  const { exit, err } = await desk.type([...add, "tester", "--kind", "leak-down", "--restrictor", "1.0"]);
  expect([exit, err.split("\n")[0]]).toEqual([2, '--restrictor "1.0"']);
});

test("a kind is needed, and asked on a terminal", async () => {
  const desk = await deskWithPump();
  const { exit, err } = await desk.type([...add, "red"]);
  expect([exit, err.split("\n")[0]]).toEqual([2, "what does red measure?"]);
  expect(await desk.type([...add, "red"], { answers: ["compression"] })).toMatchObject({ exit: 0 });
});

test("a kind that is none is refused even when it was asked", async () => {
  const desk = await deskWithPump();
  expect(await desk.type([...add, "red"], { answers: ["oil"] })).toMatchObject({ exit: 2 });
});

test.each(["=cmd", "1.5", "a,b", "x".repeat(41)])("the name %s is refused", async (name) => {
  const desk = await deskWithPump();
  expect(await desk.type([...add, name, "--kind", "compression"])).toMatchObject({ exit: 2 });
});

test("a name that is taken is refused; a near one is questioned once", async () => {
  const desk = await deskWithPump();
  await desk.type(red);
  const again = await desk.type(red);
  expect([again.exit, again.err.split("\n")[0]]).toEqual([2, 'there is already a gauge "red" in logbook']);
  const near = await desk.type([...add, "rad", "--kind", "compression"]);
  expect([near.exit, near.err]).toEqual([
    0,
    "rad is named nearly like red, which is there already; if they are one:\nsealtrend undo\n",
  ]);
  const no = await desk.type([...add, "redd", "--kind", "compression"], { answers: ["no"] });
  expect([no.exit, no.asked]).toEqual([2, ["red is there already: is redd another gauge? (yes or no) "]]);
  expect(await desk.type([...add, "redd", "--kind", "compression"], { answers: ["yes"] })).toMatchObject({
    exit: 0,
    err: "",
  });
});

test("a column that the file lacks is added, and said", async () => {
  const desk = await deskWithPump();
  desk.put("logbook/gauges.csv", "gauge,kind\n");
  const { exit, err } = await desk.type(red);
  expect([exit, err]).toEqual([0, expect.stringContaining("logbook/gauges.csv got columns it lacked")]);
  expect(desk.text("logbook/gauges.csv")).toBe(
    "gauge,kind,unit,full_scale,class_percent,division\nred,compression,psi,300,2.5,5\n",
  );
});

test("the list has a line a gauge", async () => {
  const desk = newDesk();
  await desk.type(["demo"]);
  const { out } = await desk.type(["gauge", "list"]);
  expect(out).toBe(
    "gauge   kind           scale  class     step  more\n" +
      "red     compression  300 psi  2.5 %    5 psi  screw-in hose\n" +
      "blue    compression  250 psi  1.6 %    2 psi  second scale in bar and kPa\n" +
      "long    compression   60 bar  1.6 %  0.5 bar  for diesels, with the dummy\n" +
      "                                              injector\n" +
      "tester  leak-down    100 psi  1.6 %    1 psi  restrictor 1 mm, dial pressure;\n" +
      "                                              two dials\n",
  );
});

test("a logbook without a gauge says how to add one", async () => {
  const desk = await deskWithPump();
  expect(await desk.type(["gauge", "list"])).toMatchObject({
    exit: 0,
    out: expect.stringContaining("No gauge in logbook yet.") as string,
  });
});
