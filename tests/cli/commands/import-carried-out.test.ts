// What `import` prints can be typed, and what it does not take it names. Sheets and figures invented.

import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";
import { rowsOf } from "./import-desk.ts";

const plain = ["--engine", "boat", "--unit", "psi", "--what", "dry"];

const deskOf = (text: string, file = "old.csv"): Desk => {
  const desk = newDesk();
  desk.put(file, text);
  return desk;
};

const flat = (text: string): string => text.replace(/\s+/g, " ");

/** The words of the command that stands behind `next`. */
const nextOf = (out: string): readonly string[] =>
  (/sealtrend (.*)/.exec(out.slice(out.indexOf("\nnext ")))?.[1] ?? "").trim().split(" ");

const mended = "Date,1,2,3,4\n2019-05-04,120,121,119,131\n2021-05-08,118,117,119,129\n";

test("a cell that the first import could not read is filled by the second, as the first said", async () => {
  const desk = deskOf(mended.replace("131", "131 (cold)"));
  const first = await desk.type(["import", "old.csv", ...plain, "--write"]);
  expect([first.exit, first.out]).toEqual([1, expect.stringContaining("1 reading left out at 1 place")]);
  desk.put("old.csv", mended);
  const dry = await desk.type(["import", "old.csv", ...plain]);
  expect([dry.exit, dry.out]).toEqual([0, expect.stringContaining("Would add 1 reading of boat")]);
  expect(dry.out).toContain("1 reading of cylinders that stand there as not taken");
  expect(dry.out).toContain("recorded already, and not added again: 7 readings");
  const second = await desk.type(["import", "old.csv", ...plain, "--write"]);
  expect([second.exit, second.err]).toEqual([0, ""]);
  expect(rowsOf(desk, "boat").at(-1)).toMatchObject({ test: "2019-05-04a", take: "2", c1: "x", c4: "131" });
  const third = await desk.type(["import", "old.csv", ...plain, "--write"]);
  expect(third.out).toContain("is recorded already: 8 readings");
});

test("a sheet that has grown by a cylinder is told how, and that works", async () => {
  const desk = deskOf("Date,1,2\n2019-05-04,120,121\n");
  await desk.type(["import", "old.csv", ...plain, "--write"]);
  desk.put("old.csv", "Date,1,2,3\n2019-05-04,120,121,119\n");
  const refused = await desk.type(["import", "old.csv", ...plain]);
  expect(flat(refused.out)).toContain('sealtrend engine set boat cylinders "1 2 3"');
  expect((await desk.type(["engine", "set", "boat", "cylinders", "1 2 3"])).exit).toBe(0);
  const grown = await desk.type(["import", "old.csv", ...plain, "--write"]);
  expect([grown.exit, grown.out]).toEqual([0, expect.stringContaining("saved  1 reading of boat")]);
});

test("a reading that was taken out by hand with `amend` does not come back", async () => {
  const desk = deskOf(mended);
  await desk.type(["import", "old.csv", ...plain, "--write"]);
  const amend = [
    "amend",
    "boat",
    "--test",
    "2019-05-04a",
    "--cylinder",
    "4",
    "--to",
    "x",
    "--because",
    "leak",
  ];
  expect((await desk.type(amend)).exit).toBe(0);
  const again = await desk.type(["import", "old.csv", ...plain, "--write"]);
  expect(again.out).toContain("is recorded already: 8 readings");
});

test("the amend that is offered for two other figures can be typed, each in turn", async () => {
  const desk = deskOf(mended);
  await desk.type(["import", "old.csv", ...plain, "--write"]);
  desk.put("old.csv", mended.replace("120,121", "125,126"));
  const told = await desk.type(["import", "old.csv", ...plain]);
  expect(flat(told.out)).toContain(
    "--cylinder 1 --to 125 --because sheet, and so on with --cylinder 2 --to 126",
  );
  for (const [label, to] of [
    ["1", "125"],
    ["2", "126"],
  ] as const)
    await desk.type(
      `amend boat --test 2019-05-04a --what dry --cylinder ${label} --to ${to} --because sheet`.split(" "),
    );
  expect((await desk.type(["import", "old.csv", ...plain])).out).toContain("is recorded already: 8 readings");
});

test("a further take of a recorded day says what is recorded of it", async () => {
  const desk = deskOf(mended);
  await desk.type(["import", "old.csv", ...plain, "--write"]);
  desk.put("old.csv", `${mended}2021-05-08,117,118,118,128\n`);
  const { out } = await desk.type(["import", "old.csv", ...plain]);
  expect(out).toContain("Would add 4 readings of boat");
  expect(out).toContain("recorded already, and not added again: 8 readings");
});

test("columns that are not read are named, on the screen and in the document; so are remarks that stay out", async () => {
  const sheet =
    "Date,1,2,Belt,Notes\n2019-05-04,120,121,new,fine\n2020-05-04,?,?,old,head off\n2021-05-08,118,117,old,\n";
  const desk = deskOf(sheet);
  const { out } = await desk.type(["import", "old.csv", ...plain]);
  expect(out).toContain("not read: column D Belt");
  expect(flat(out)).toContain('remarks beside no reading stay out: row 3 "head off"');
  const document = await desk.json("import", "old.csv", ...plain);
  expect(misfits(document, schemaOf("import"))).toEqual([]);
  expect(document).toMatchObject({
    unread: [{ column: "D", heading: "Belt", cells: 3 }],
    remarks: [{ row: 3, text: "head off" }],
  });
});

test("a reading that looks mistyped is worth a look, with the words of enter", async () => {
  const desk = deskOf(mended.replace("117", "1177"));
  const { exit, out } = await desk.type(["import", "old.csv", ...plain]);
  expect([exit, out]).toEqual([0, expect.stringContaining("worth a look before --write")]);
  expect(flat(out)).toContain("cylinder 2, dry 1177: about ten times the others; did you mean 117.7?");
});

test("readings unlike the last ones are worth a look, and no fault", async () => {
  const desk = deskOf("Date,1,2,3,4\n2019-05-04,45,44,46,45\n2021-05-08,310,303,317,310\n");
  const { exit, out } = await desk.type(["import", "old.csv", ...plain]);
  expect([exit, out]).toEqual([0, expect.stringContaining("worth a look before --write")]);
  expect(flat(out)).toContain(
    "old.csv:3:12 all readings of dry are about 7 times the last ones: is psi right?",
  );
  const document = await desk.json("import", "old.csv", ...plain);
  expect(misfits(document, schemaOf("import"))).toEqual([]);
  const written = await desk.type(["import", "old.csv", ...plain, "--write"]);
  expect(written.exit).toBe(0);
  const [, amend = ""] = /sealtrend (amend .*)/.exec(written.err) ?? [];
  expect((await desk.type(amend.trim().split(" "))).exit).toBe(0);
  expect(rowsOf(desk, "boat").at(-1)).toMatchObject({ unit: "kPa" });
});

test("an option fills what a map leaves open; what the map says otherwise is refused with both ways", async () => {
  const desk = deskOf(mended);
  await desk.type(["import", "old.csv", ...plain, "--map", "m.json"]);
  const same = await desk.type(["import", "old.csv", ...plain, "--map", "m.json"]);
  expect([same.exit, same.err]).toEqual([0, ""]);
  expect((await desk.type(nextOf(same.out))).exit).toBe(0);
  const other = await desk.type(["import", "old.csv", "--unit", "bar", "--engine", "van", "--map", "m.json"]);
  expect(other.exit).toBe(2);
  expect(flat(other.err)).toContain('leave --unit out, or write "unit": {"fixed":"bar"} in m.json');
  expect(flat(other.err)).toContain('leave --engine out, or write "engine": {"fixed":"van"} in m.json');
});

test("a question that only the map answers goes on with a map, and the same again is no loop", async () => {
  const desk = deskOf(
    "Craft,When,1,2,3,4\nAnna,2019-05-04,120,121,119,131\nBea,2019-05-05,118,117,119,129\n",
  );
  const line = ["import", "old.csv", "--unit", "psi", "--what", "dry"];
  const asked = await desk.type(line);
  expect([asked.exit, asked.out]).toEqual([2, expect.stringContaining('"engine": { "column": "A" }')]);
  expect(asked.out).toContain("--map old-map.json");
  const laid = await desk.type([...line, "--map", "old-map.json"]);
  expect([laid.exit, flat(laid.out)]).toEqual([2, expect.stringContaining("edit old-map.json")]);
  const map = desk.text("old-map.json");
  desk.put("old-map.json", map.replace("{", '{ "engine": { "column": "A" },'));
  const settled = await desk.type([...line, "--map", "old-map.json"]);
  expect([settled.exit, settled.out]).toEqual([
    0,
    expect.stringContaining("Would add 8 readings of 2 engines"),
  ]);
});

test("the supply of a leak-down that the sheet does not name is typed", async () => {
  const desk = deskOf("Date,1,2\n2019-05-04,72,74\n");
  const line = ["import", "old.csv", "--engine", "plane", "--unit", "psi", "--what", "leak-down"];
  const bare = await desk.type(line);
  expect([bare.exit, flat(bare.out)]).toEqual([1, expect.stringContaining("--regulated 80psi")]);
  const { exit, out } = await desk.type([...line, "--regulated", "80psi", "--write"]);
  expect([exit, out]).toEqual([0, expect.stringContaining("saved  2 readings of plane")]);
  expect(rowsOf(desk, "plane")).toMatchObject([{ regulated_psi: "80", c1: "72" }]);
  const odd = await desk.type([...line, "--regulated", "80"]);
  expect(odd.exit).toBe(2);
});

test("--engine is a name that an engine can have", async () => {
  const { exit, err } = await deskOf(mended).type(["import", "old.csv", "--engine", "t"]);
  expect([exit, err]).toEqual([2, expect.stringContaining('"t"')]);
});

test("what a word may be is said in the dry run too, and one more fault costs no line about it", async () => {
  const rows = ["oil", "damp", "soaked", "moist"].map(
    (kind, i) => `2019-05-0${String(i + 1)},${kind},120,121`,
  );
  const desk = deskOf(`Date,Test,1,2\n2018-05-01,dry,120,121\n${rows.join("\n")}\n`);
  const { out } = await desk.type(["import", "old.csv", "--engine", "boat", "--unit", "psi"]);
  expect(flat(out)).toContain('what "oil"');
  expect(flat(out)).toMatch(/expected .*dry.*wet/);
  expect(out).toContain('"moist"');
  expect(out).not.toContain("more: --why");
});

test("tabs of an excerpt are blanks", async () => {
  const desk = deskOf("Date\t1\t2\n2019-05-04\t12O\t121\n");
  const { err } = await desk.type(["import", "old.csv", ...plain, "--write"]);
  expect(err).toContain("    2019-05-04 12O 121");
});

test("an option that the sheet says otherwise is asked about, and next leaves it out", async () => {
  const desk = deskOf("Date,Dry 1,Dry 2,Wet 1,Wet 2\n2019-05-04,120,121,130,131\n");
  const asked = await desk.type(["import", "old.csv", "--engine", "boat", "--unit", "psi", "--what", "dry"]);
  expect([asked.exit, asked.out]).toEqual([2, expect.stringContaining("leave --what out")]);
  const next = nextOf(asked.out);
  expect(next).not.toContain("--what");
  const settled = await desk.type([...next, "--write"]);
  expect([settled.exit, settled.out]).toEqual([0, expect.stringContaining("saved  4 readings of boat")]);
  expect(rowsOf(desk, "boat").map(({ what, c1 }) => [what, c1])).toEqual([
    ["dry", "120"],
    ["wet", "130"],
  ]);
});

test("a gauge that is typed does not go over the sheet's own column of gauges", async () => {
  const desk = deskOf("Date,Gauge,1,2\n2019-05-04,red,120,121\n2019-05-04,blue,118,119\n");
  const { exit, err } = await desk.type(["import", "old.csv", ...plain, "--gauge", "green"]);
  expect([exit, err]).toEqual([2, expect.stringContaining("leave --gauge out")]);
  expect((await desk.type(["import", "old.csv", ...plain])).exit).toBe(0);
});
