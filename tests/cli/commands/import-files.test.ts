// What FILE may be: its encoding, and files that are no text. The bytes of the heads are those of the published formats.

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";
import { deskWith } from "./import-desk.ts";

test("UTF-16 is read by its mark, and without one by its zero bytes, which is said", async () => {
  for (const [name, said] of [
    ["utf-16le.csv", ""],
    ["utf-16le-unmarked.csv", "does not say how it is encoded and was read as UTF-16"],
  ] as const) {
    const desk = deskWith(name);
    const { exit, out, err } = await desk.type(["import", name]);
    expect([exit, err.replaceAll("\n", " ")]).toEqual([0, said === "" ? "" : expect.stringContaining(said)]);
    expect(out).toContain("Would add 12 readings of 2 engines, 2023 to 2024.");
  }
});

test("UTF-16 with the other end first is read too, marked or told", async () => {
  const little = readFileSync(new URL("../import-samples/utf-16le.csv", import.meta.url));
  const big = Buffer.from(little).swap16();
  const desk = newDesk();
  desk.put("big.csv", big);
  desk.put("bare.csv", big.subarray(2));
  expect((await desk.type(["import", "big.csv"])).out).toContain("Would add 12 readings");
  expect((await desk.type(["import", "bare.csv"])).out).toContain("Would add 12 readings");
  const told = await desk.type(["import", "bare.csv", "--sheet-encoding", "utf-16be"]);
  expect([told.exit, told.err]).toEqual([0, ""]);
});

test("Windows-1252 is said aloud, and its letters arrive", async () => {
  const desk = deskWith("windows-1252.csv");
  const { err } = await desk.type(["import", "windows-1252.csv", "--what", "dry"]);
  expect(err).toContain("windows-1252.csv is not UTF-8 and was read as Windows-1252");
  await desk.type(["import", "windows-1252.csv", "--what", "dry", "--write"]);
  const engine = desk.names("data/sealtrend").find((name) => name.startsWith("groupe")) ?? "";
  expect(JSON.parse(desk.text(`data/sealtrend/${engine}/engine.json`))).toMatchObject({
    name: "Groupe élec.",
  });
});

test("an encoding that was told is believed; UTF-8 that is none is refused", async () => {
  const desk = deskWith("windows-1252.csv");
  const told = await desk.type([
    "import",
    "windows-1252.csv",
    "--what",
    "dry",
    "--sheet-encoding",
    "windows-1252",
  ]);
  expect([told.exit, told.err]).toEqual([0, ""]);
  const wrong = await desk.type(["import", "windows-1252.csv", "--sheet-encoding", "utf-8"]);
  expect(wrong.exit).toBe(1);
  expect(wrong.err).toContain("windows-1252.csv is not UTF-8 throughout");
});

test.each([
  ["old.xlsx", [0x50, 0x4b, 0x03, 0x04, 0x14, 0], "a workbook (.xlsx or .ods)"],
  ["old.ods", [0x50, 0x4b, 0x03, 0x04, 0x14, 0], "a workbook (.xlsx or .ods)"],
  ["old.xls", [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1], "an old workbook (.xls)"],
  ["old.pdf", [...Buffer.from("%PDF-1.7")], "a PDF"],
  ["old.csv", [...Buffer.from("<HTML><table>")], "a web page"],
] as const)("%s is recognised and refused with the way to make it CSV", async (name, head, is) => {
  const desk = newDesk();
  desk.put(name, Uint8Array.from([...head, ...Array.from({ length: 60 }, () => 0x20)]));
  const { exit, out, err } = await desk.type(["import", name]);
  expect([exit, out]).toEqual([1, ""]);
  expect(err).toContain(`${name} is ${is}`);
  expect(err.replace(/\s+/g, " ")).toContain("save the sheet as CSV (UTF-8), then: sealtrend import old.csv");
});

test("a file of zeros, none at all, a folder, and an empty one each get their fault", async () => {
  const desk = newDesk();
  desk.put("zeros.csv", new Uint8Array(64));
  desk.put("empty.csv", "");
  desk.put("blank.csv", ";;;\n;;;\n");
  desk.put("folder/.keep", "");
  const typed = async (name: string) => {
    const { exit, err } = await desk.type(["import", name]);
    return [exit, err] as const;
  };
  expect(await typed("zeros.csv")).toEqual([1, expect.stringContaining("holds zero bytes, 64 of them")]);
  expect(await typed("none.csv")).toEqual([3, expect.stringContaining("there is no file none.csv")]);
  expect(await typed("folder")).toEqual([3, expect.stringContaining("folder is not a file")]);
  expect((await typed("empty.csv"))[0]).toBe(1);
  expect((await typed("blank.csv"))[0]).toBe(1);
  expect((await desk.type(["import"])).exit).toBe(2);
});

test("standard input is read as FILE is", async () => {
  const desk = newDesk();
  const input = "date,machine,dry psi 1,dry psi 2\n2024-05-04,twin,120,119\n";
  const { exit, out } = await desk.type(["import", "-"], { input });
  expect([exit, out.split("\n")[0]]).toEqual([0, expect.stringContaining("Would add 2 readings of twin")]);
  const written = await desk.type(["import", "-", "--write", "--json"], { input });
  expect(misfits(JSON.parse(written.out), schemaOf("import"))).toEqual([]);
});
