// `enter` left before the end: what was typed is kept in the state folder and offered again. Contract: design.md §4; readings invented.

import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { type Desk, deskWithPump } from "./desk.ts";
import { answers, rowsOf } from "./entered.ts";

/** Files of unfinished entries. */
const kept = (desk: Desk): readonly string[] => {
  const folder = join(desk.folder, "state", "sealtrend", "unfinished");
  if (!desk.has("state/sealtrend/unfinished")) return [];
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".json"))
    .map((name) => join(folder, name));
};

const onlyKept = (desk: Desk): string => {
  const [path, ...more] = kept(desk);
  if (path === undefined || more.length > 0) throw new Error(`${kept(desk).length} entries are kept`);
  return path;
};

const begun = ["enter", "pump", "--gauge", "red", "--unit", "psi", "--date", "2026-05-02"];
const flat = (text: string): string => text.replace(/\s+/g, " ");

/** Left after cylinder 3. */
const deskWithLeft = async (): Promise<Desk> => {
  const desk = await deskWithPump();
  await desk.type(begun, answers("150", "148", "147", "q"));
  return desk;
};

test("who leaves is told how to go on, and the next enter goes on with the options of the first", async () => {
  const desk = await deskWithPump();
  const left = await desk.type(begun, answers("150", "148", "147", "q"));
  expect(left.exit).toBe(2);
  expect(flat(left.err)).toContain("nothing was saved; what you typed is kept");
  expect(left.err).toContain("sealtrend enter pump\n");
  expect(rowsOf(desk)).toEqual([]);
  const { exit, out, asked } = await desk.type(["enter", "pump"], answers("", "149", "", "", "", "", "", ""));
  expect(exit).toBe(0);
  expect(out).toContain("an entry of 2026-11-25, 10:00, was left after cylinder 3 (1:150 2:148 3:147)");
  expect(asked[1]).toBe("cylinder 4: ");
  expect(rowsOf(desk)).toMatchObject([
    { test: "2026-05-02a", gauge: "red", unit: "psi", c1: "150", c3: "147", c4: "149" },
  ]);
  expect(kept(desk)).toEqual([]);
});

test("the end of the input keeps it too; before the first answer there is nothing to keep", async () => {
  const desk = await deskWithPump();
  await desk.type(begun, answers());
  expect(kept(desk)).toEqual([]);
  await desk.type(begun, answers("150"));
  expect(kept(desk)).toHaveLength(1);
});

test("the day stays the one it was begun on, and that is said", async () => {
  const desk = await deskWithPump();
  await desk.type(["enter", "pump", "--unit", "psi", "--gauge", "red"], answers("150", "148"));
  const path = onlyKept(desk);
  writeFileSync(path, readFileSync(path, "utf8").replaceAll("2026-11-25", "2026-11-20"));
  const { out } = await desk.type(["enter", "pump"], answers("", "147", "149", "", "", "", "", "", ""));
  expect(out).toContain("its day stays 2026-11-20 (today is 2026-11-25); another: --date");
  expect(rowsOf(desk)).toMatchObject([{ date: "2026-11-20" }]);
});

test("what is typed now wins over what was kept", async () => {
  const desk = await deskWithLeft();
  await desk.type(
    ["enter", "pump", "--date", "2026-06-01", "--gauge", "blue"],
    answers("", "149", "", "", "", "", "", ""),
  );
  expect(rowsOf(desk)).toMatchObject([{ date: "2026-06-01", gauge: "blue", c1: "150" }]);
});

test("n begins anew: the kept one is there until the new one is saved", async () => {
  const desk = await deskWithLeft();
  await desk.type(["enter", "pump", "--gauge", "red", "--unit", "psi"], answers("n", "160"));
  expect(kept(desk)).toHaveLength(2);
  const { out } = await desk.type(
    ["enter", "pump", "--gauge", "red", "--unit", "psi"],
    answers("n", "n", "120", "121", "122", "123", "", "", "", "", "", ""),
  );
  expect(flat(out)).toContain("dropped once this one is saved");
  expect(rowsOf(desk)).toMatchObject([{ c1: "120" }]);
  expect(kept(desk)).toEqual([]);
});

test("d drops it at once; what is no answer is asked again", async () => {
  const desk = await deskWithLeft();
  const { asked } = await desk.type(["enter", "pump"], answers("maybe", "d"));
  expect(asked.slice(0, 2).map(flat)).toEqual(
    Array(2).fill("go on with it (Enter), begin anew (n), drop it (d): "),
  );
  expect(kept(desk)).toEqual([]);
});

test("where all was answered but not saved, the last question stands open again", async () => {
  const desk = await deskWithPump();
  const all = ["150", "148", "147", "149", "warm", "6", "", "", "", "12x", "1412"];
  await desk.type([...begun, "--note", "=1+1"], answers());
  await desk.type(begun, answers(...all.slice(0, -2), "q"));
  const { asked } = await desk.type(["enter", "pump"], answers("", "b", "b", "1412"));
  expect(asked.slice(1).map(flat)[0]).toContain("meter");
});

test("without a terminal nobody is asked: a line says that it waits", async () => {
  const desk = await deskWithLeft();
  const typed = await desk.type(["enter", "pump", "--dry", "150 148 147 149", "--unit", "psi"]);
  expect(flat(typed.err)).toContain("an entry of 2026-11-25, 10:00, waits unfinished");
  expect(typed.err).toContain("sealtrend enter pump");
  expect(typed.asked).toEqual([]);
  const bare = await desk.type(["enter", "pump"]);
  expect([bare.exit, bare.asked]).toEqual([2, []]);
  expect(flat(bare.err)).toContain("waits unfinished");
  expect(kept(desk)).toHaveLength(1);
});

test.each([
  ["torn", (text: string) => text.slice(0, 40)],
  ["empty", () => ""],
  ["no object", () => "[]"],
  ["a control character in an answer", (text: string) => text.replace('"150"', '"15\\u001b[2J0"')],
  ["an option that there is not", (text: string) => text.replace('"gauge"', '"logbook"')],
  ["an option that cannot be", (text: string) => text.replace('"psi"', '"pounds"')],
  ["a day that is none", (text: string) => text.replace('"day":"2026-11-25"', '"day":"2026-02-31"')],
  ["answers that are none", (text: string) => text.replace('["c 1","150"]', '["c 1",150]')],
])("a kept entry that is %s is left aside with a sentence", async (_, harmed) => {
  const desk = await deskWithLeft();
  const path = onlyKept(desk);
  writeFileSync(path, harmed(readFileSync(path, "utf8")));
  const { out, exit, asked } = await desk.type(
    begun,
    answers("120", "121", "122", "123", "", "", "", "", "", ""),
  );
  expect(flat(out)).toContain("an unfinished entry could not be made out and is left aside");
  expect(asked[0]).toBe("cylinder 1: ");
  expect(exit).toBe(0);
});

test("one of a later version is left aside, and left alone", async () => {
  const desk = await deskWithLeft();
  const path = onlyKept(desk);
  writeFileSync(path, readFileSync(path, "utf8").replace("unfinished@1", "unfinished@2"));
  const { out } = await desk.type(begun, answers("120", "121", "122", "123", "", "", "", "", "", ""));
  expect(flat(out)).toContain("of another version of sealtrend is left aside");
  expect(kept(desk)).toEqual([path]);
});

test("one for cylinders that the engine no longer has is left aside", async () => {
  const desk = await deskWithLeft();
  const path = onlyKept(desk);
  writeFileSync(path, readFileSync(path, "utf8").replace('["1","2","3","4"]', '["1","2","3"]'));
  const { out } = await desk.type(begun, answers("120"));
  expect(flat(out)).toContain("it is for cylinders 1 2 3, and the engine has others now");
});

test("a kept answer that is no reading is asked again, and what is shown steers no screen", async () => {
  const desk = await deskWithLeft();
  const path = onlyKept(desk);
  writeFileSync(path, readFileSync(path, "utf8").replace('["c 2","148"]', '["c 2","1\\u202e48"]'));
  const { out, asked } = await desk.type(begun, answers("", "148"));
  expect(out).not.toContain("\u202e");
  expect(asked[1]).toBe("cylinder 2: ");
});

test("where it cannot be kept that is said once, and the entry goes on", async () => {
  const desk = await deskWithPump();
  desk.put("blocked", "a file where the state folder would be");
  const { exit, out } = await desk.type(begun, {
    ...answers("150", "148", "147", "149", "", "", "", "", "", ""),
    env: { XDG_STATE_HOME: join(desk.folder, "blocked") },
  });
  expect(exit).toBe(0);
  expect(flat(out).split("what you type cannot be kept")).toHaveLength(2);
});

test("one that was being saved is offered with the advice to look first", async () => {
  const desk = await deskWithLeft();
  const path = onlyKept(desk);
  writeFileSync(path, readFileSync(path, "utf8").replace('"stage":"typing"', '"stage":"saving"'));
  const { out } = await desk.type(begun, answers("q"));
  expect(flat(out)).toContain("may stand in the logbook: look at sealtrend show pump first");
});

test("one that is open in another window is not offered", async () => {
  const desk = await deskWithLeft();
  const path = onlyKept(desk);
  const held = { pid: process.ppid, host: hostname(), nonce: "another" };
  const entry = JSON.parse(readFileSync(path, "utf8")) as Record<string, unknown>;
  writeFileSync(path, JSON.stringify({ ...entry, owner: held }));
  const { out, asked } = await desk.type(begun, answers("120"));
  expect(flat(out)).toContain("another entry of pump is open in another window");
  expect(asked[0]).toBe("cylinder 1: ");
});
