// Work done since the newest test: every screen says so, and all name the same next step. Readings invented.

import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";
import { deskWith, yearly } from "./years.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));
const rows = ["150 148 150 149", "150 148 147 149", "150 148 144 149", "150 148 141 149", "150 148 138 149"];
const runIn = "run it in for 25 h or 1000 km, then read every cylinder, warm";

const reRinged = async (): Promise<Desk> => {
  const desk = await deskWith(yearly(2020, rows));
  const { exit } = await desk.type(["service", "pump", "--what", "re-ring", "--date", "2024-06-01"]);
  expect(exit).toBe(0);
  return desk;
};

const told = async (desk: Desk, ...words: string[]): Promise<string> =>
  (await desk.type([...words, "--as-of", "2024-06-02"])).out.replace(/\s+/g, " ");

test("show, history and decide say that it was re-ringed since, and name the run-in first", async () => {
  const desk = await reRinged();
  const show = await told(desk, "show", "pump");
  expect(show).toContain("Re-ring on 2024-06-01 came after this test: it speaks of before.");
  expect(show).toContain(`next ${runIn}`);
  const history = await told(desk, "history", "pump");
  expect(history).toMatch(
    /^Too short to tell: no test since the re-ring 2024-06-01, and a course needs four\./,
  );
  expect(history).toContain(`next ${runIn}`);
  const decide = await told(desk, "decide", "pump");
  expect(decide).toMatch(/^Run it in, and test it anew before you decide\./);
  expect(decide).toContain(`next ${runIn}`);
});

test("the document of show names the work", async () => {
  const document = await (await reRinged()).json("show", "pump");
  expect(misfits(document, schemaOf("show"))).toEqual([]);
  expect(document.workAfter).toEqual({ date: "2024-06-01", what: "re-ring" });
});

test("with nothing done since, none of it is said", async () => {
  const desk = await deskWith(yearly(2020, rows));
  expect(await told(desk, "show", "pump")).not.toContain("came after this test");
  expect((await desk.json("show", "pump")).workAfter).toBeUndefined();
});

test("where a healthy test asks for nothing, show names what tells when to test again", async () => {
  const { out } = await newDesk().type(["show", "van", "--logbook", demo]);
  expect(out.replace(/\s+/g, " ")).toContain(
    "next nothing from this test; when to test again: sealtrend decide van",
  );
});
