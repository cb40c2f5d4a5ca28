// A person's own text that quotes a command of ours stays as it is, on the screen, in a document and in the files, while the
// commands that are printed repeat --logbook. Readings invented.

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { newDesk, type Desk } from "../commands/desk.ts";

const at = ["--logbook", "d1"];
const flat = (text: string): string => text.replace(/\s+/g, " ");
/** A text that quotes a command, and what names it. */
const quote = (which: string): string => `${which}: sealtrend show pump, then sealtrend undo`;

const type = async (desk: Desk, ...line: readonly string[]) => {
  const said = await desk.type([...line, ...at]);
  expect(said.exit, `${line.join(" ")}\n${said.err}`).toBe(0);
  return said;
};

const deskOfQuotes = async (): Promise<Desk> => {
  const desk = newDesk();
  desk.put("d1/.keep", "");
  await type(
    desk,
    "engine",
    "add",
    "pump",
    "--cylinders",
    "4",
    "--ignition",
    "spark",
    "--name",
    quote("name"),
  );
  await type(desk, "gauge", "add", "red", "--kind", "compression", "--unit", "psi", "--note", quote("gauge"));
  const dry = ["--dry", "150 148 152 121", "--unit", "psi", "--date", "2025-05-03", "--by", quote("by")];
  await type(desk, "enter", "pump", ...dry, "--gauge", "red", "--note", quote("test"));
  await type(desk, "note", "pump", "--what", "other", "--note", quote("note"), "--by", quote("by"));
  await type(desk, "service", "pump", "--what", "oil change", "--note", quote("service"));
  await type(desk, "engine", "set", "pump", "limits.compression.source", quote("source"));
  return desk;
};

/** Every text in a document. */
const textsIn = (value: unknown): readonly string[] => {
  if (typeof value === "string") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(textsIn) : [];
};

const files = (folder: string): readonly string[] =>
  readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => readFileSync(join(entry.parentPath, entry.name), "utf8"));

const commands = [
  ["show", "pump", "--why"],
  ["history", "pump", "--why"],
  ["decide", "pump", "--why"],
  ["engine", "show", "pump"],
  ["engine", "list"],
  ["gauge", "list"],
  ["page", "pump", "--for", "file", "-o", "-", "--text"],
  ["page", "pump", "--for", "buyer", "--with-notes", "-o", "-", "--text"],
  ["proofread"],
  ["yard"],
];

test("on every screen and in every document a quoted command stays as it was typed", async () => {
  const desk = await deskOfQuotes();
  const seen = new Set<string>();
  for (const line of commands) {
    const { out } = await type(desk, ...line);
    const said = await desk.type([...line, ...at, "--json"]);
    const plain = await desk.type([...line, ...at, "--json", "--ascii"]);
    expect(plain.out, line.join(" ")).not.toContain("\\ue5ea");
    for (const text of [flat(out), ...(said.out === "" ? [] : textsIn(JSON.parse(said.out) as unknown))]) {
      for (const [, which = "", rest = ""] of text.matchAll(/(\w+): (sealtrend show .{0,40})/g)) {
        if (!["name", "gauge", "by", "test", "note", "service", "source"].includes(which)) continue;
        seen.add(which);
        expect(rest.startsWith("sealtrend show pump"), `${line.join(" ")}: ${text}`).toBe(true);
      }
      expect(text).not.toContain("\ue5ea");
    }
  }
  expect([...seen].sort()).toEqual(["by", "gauge", "name", "note", "service", "source"]);
});

test("the commands that are printed repeat the logbook beside it", async () => {
  const desk = await deskOfQuotes();
  const { out } = await type(
    desk,
    "enter",
    "pump",
    "--dry",
    "150 149 151 122",
    "--unit",
    "psi",
    "--note",
    quote("test"),
  );
  expect(flat(out)).toContain("(sealtrend undo --logbook d1 takes it back)");
});

test("in the files it stands as it was typed, through amend, a set-aside reason, undo and a new column", async () => {
  const desk = await deskOfQuotes();
  const amend = ["amend", "pump", "--test", "latest"];
  await type(desk, ...amend, "--set-aside", quote("aside"), "--because", quote("because"));
  await type(desk, ...amend, "--by", "sealtrend undo", "--because", quote("again"));
  expect(desk.text("d1/pump/tests.csv")).toContain(quote("aside"));
  expect(desk.text("d1/pump/amendments.csv")).toContain(quote("because"));
  const { out } = await type(desk, "show", "pump", "--test", "2025-05-03a", "--why");
  expect(flat(out)).toContain(quote("aside"));
  const before = desk.text("d1/pump/tests.csv");
  await type(desk, "engine", "set", "pump", "cylinders", "1 2 3 4 5");
  await type(desk, "undo");
  expect(desk.text("d1/pump/tests.csv")).toBe(before);
  for (const text of files(join(desk.folder, "d1"))) expect(text).not.toContain("\ue5ea");
});

test("a fault that quotes what was typed or what stands in a file quotes it to the letter", async () => {
  const desk = await deskOfQuotes();
  const typed = await desk.type(["enter", "pump", "--dry", "sealtrend show pump", ...at]);
  expect(flat(typed.err)).toContain('"sealtrend');
  expect(typed.err).not.toContain('"sealtrend show --logbook');
  desk.put("d1/pump/notes.csv", "date,what,value\n2025-05-03,smoke,sealtrend show pump\n");
  const { err } = await desk.type(["show", "pump", ...at]);
  expect(err).toContain("sealtrend show pump");
  expect(err).not.toContain("sealtrend show --logbook d1 pump");
  const { problems } = (await desk.json("show", "pump", ...at)) as { problems: { found: string }[] };
  expect(problems.map(({ found }) => found).join()).toContain("sealtrend show pump");
});

test("a sheet, a page and a folder of such a name are opened and written as they are called", async () => {
  const desk = await deskOfQuotes();
  desk.put(
    "sealtrend show pump.csv",
    `date,engine,1,2,3,4,remark\n2024-05-03,pump,150,149,151,150,"${quote("sheet")}"\n`,
  );
  const sheet = ["import", "sealtrend show pump.csv", "--unit", "psi", "--what", "dry"];
  await type(desk, ...sheet, "--write");
  await type(desk, "page", "pump", "--for", "file", "-o", "sealtrend show.txt");
  expect(desk.has("sealtrend show.txt")).toBe(true);
  expect(flat(desk.text("sealtrend show.txt"))).toContain(quote("note"));
  for (const text of files(desk.folder).filter((one) => !one.includes("sealtrend/undo@1")))
    expect(text).not.toContain("\ue5ea");
});
