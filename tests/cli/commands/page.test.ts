// page: what is written where, and what stands on a page for whom.

import { cpSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));
const engines = ["tractor", "van", "boat", "mill", "pump", "ultralight"];
const purposes = ["shop", "buyer", "file"];

const page = (desk: Desk, engine: string, ...more: readonly string[]) =>
  desk.type(["page", engine, "--logbook", demo, "--as-of", "2026-11-25", ...more]);

/** The page itself. */
const onPaper = async (engine: string, ...more: readonly string[]): Promise<string> =>
  (await page(newDesk(), engine, "-o", "-", ...more)).out;

/** What an eye sees of it. */
const seen = (html: string): string =>
  html
    .replace(/<style>[\s\S]*<\/style>/, "")
    .replace(/<(?:title|desc)[^>]*>[^<]*<\/(?:title|desc)>/g, "")
    .replace(/<[^>]+>/g, " ");

/** A logbook of one's own with the demo's boat in it. */
const ownBoat = (): Desk => {
  const desk = newDesk();
  cpSync(demo, join(desk.folder, "logbook"), { recursive: true });
  desk.put("logbook/logbook.json", '{ "schema": "sealtrend/logbook@1", "demo": false, "units": "psi" }\n');
  return desk;
};

describe("where it goes", () => {
  test("without a name it is named after the engine, whom it is for and the day, and says so", async () => {
    const desk = newDesk();
    const { exit, out, err } = await page(desk, "van", "--for", "buyer");
    expect([exit, err]).toEqual([0, ""]);
    expect(out).toMatch(/^written {2}van-for-buyer-2026-11-25\.html, \d+ kB\n/);
    expect(desk.text("van-for-buyer-2026-11-25.html")).toMatch(/^<!doctype html><html lang=en>/);
    expect(desk.names()).toEqual(["van-for-buyer-2026-11-25.html"]);
  });

  test("an existing file is written over by --force only", async () => {
    const desk = newDesk();
    desk.put("van.html", "mine");
    const refused = await page(desk, "van", "--for", "buyer", "-o", "van.html");
    expect(refused.exit).toBe(2);
    expect(refused.err).toContain("van.html is already there");
    expect(refused.err).toContain("--force");
    expect(desk.text("van.html")).toBe("mine");
    expect((await page(desk, "van", "--for", "buyer", "-o", "van.html", "--force")).exit).toBe(0);
    expect(desk.text("van.html")).toContain("<!doctype html>");
    expect(desk.names()).toEqual(["van.html"]);
  });

  test.each(["tests.csv", "engine.json", "TESTS.CSV"])(
    "the logbook's own %s is never a page",
    async (name) => {
      const desk = ownBoat();
      const before = desk.text("logbook/boat/tests.csv");
      const { exit, err } = await desk.type([
        "page",
        "boat",
        "--for",
        "buyer",
        "-o",
        `logbook/boat/${name}`,
        "--force",
      ]);
      expect(exit).toBe(2);
      expect(err).toContain("file of the logbook");
      expect(desk.text("logbook/boat/tests.csv")).toBe(before);
    },
  );

  test("a link that bears a page's name is refused: what it leads to is not touched", async () => {
    const desk = ownBoat();
    const before = desk.text("logbook/boat/tests.csv");
    symlinkSync(join(desk.folder, "logbook", "boat", "tests.csv"), join(desk.folder, "page.html"));
    const { exit, err } = await desk.type(["page", "boat", "--for", "buyer", "-o", "page.html", "--force"]);
    expect([exit, err.includes("page.html is a link to another file")]).toEqual([3, true]);
    expect(desk.text("logbook/boat/tests.csv")).toBe(before);
  });

  test("a name that does not say what it is, is refused with one that does", async () => {
    const { exit, err } = await page(newDesk(), "van", "--for", "buyer", "-o", "van.pdf");
    expect([exit, err.includes("-o van.html")]).toEqual([2, true]);
  });

  test("a folder that is not there is named, and nothing is left behind", async () => {
    const desk = newDesk();
    const { exit, err } = await page(desk, "van", "--for", "buyer", "-o", "nowhere/van.html");
    expect(exit).toBe(3);
    expect(err).toContain("nowhere/van.html could not be written");
    expect(desk.names()).toEqual([]);
  });

  test("whom it is for is never guessed", async () => {
    const { exit, err } = await page(newDesk(), "van");
    expect(exit).toBe(2);
    for (const purpose of purposes) expect(err).toContain(`--for ${purpose}`);
  });

  test("to standard output goes the page and nothing else", async () => {
    const desk = newDesk();
    const { out, err } = await page(desk, "van", "--for", "buyer", "-o", "-");
    expect(out).toMatch(/^<!doctype html>[\s\S]*<\/html>\n$/);
    expect([err, desk.names()]).toEqual(["", []]);
  });

  test("by the name .txt or by --text it is text of 76 columns", async () => {
    const desk = newDesk();
    await page(desk, "van", "--for", "buyer", "-o", "van.txt");
    const text = desk.text("van.txt");
    expect(text).not.toContain("<");
    expect(await onPaper("van", "--for", "buyer", "--text")).toBe(text);
    for (const line of text.split("\n")) expect([line, line.length <= 76]).toEqual([line, true]);
    expect((await page(desk, "van", "--for", "buyer", "-o", "van.html", "--text")).exit).toBe(2);
  });

  test("the same logbook on the same day gives the same bytes", async () => {
    for (const purpose of purposes)
      expect(await onPaper("pump", "--for", purpose)).toBe(await onPaper("pump", "--for", purpose));
  });
});

describe("what every page says", () => {
  test.each(engines.flatMap((engine) => purposes.map((purpose) => [engine, purpose] as const)))(
    "%s for %s: that its data is invented; its document is as the schema says and holds its words",
    async (engine, purpose) => {
      const desk = newDesk();
      const html = await onPaper(engine, "--for", purpose);
      expect(html).toContain("INVENTED DATA");
      expect(html).not.toMatch(/NaN|undefined|Infinity|\[object/);
      const { out } = await page(desk, engine, "--for", purpose, "--json", "-o", "-");
      const document = JSON.parse(out) as Record<string, unknown>;
      expect(misfits(document, schemaOf("page"))).toEqual([]);
      expect(desk.names()).toEqual([]);
      const said = JSON.stringify(document);
      for (const number of new Set(seen(html).match(/\d+\.\d{2,}/g) ?? []))
        expect([number, said.includes(number)]).toEqual([number, true]);
    },
  );

  test("a logbook of one's own is not called invented", async () => {
    const { out } = await ownBoat().type(["page", "boat", "--for", "buyer", "-o", "-"]);
    expect(out).not.toContain("INVENTED DATA");
  });

  test("as of an earlier day nothing later stands on it", async () => {
    const { out } = await newDesk().type([
      "page",
      "boat",
      "--for",
      "file",
      "-o",
      "-",
      "--logbook",
      demo,
      "--as-of",
      "2020-12-31",
    ]);
    expect(seen(out)).not.toMatch(/202[1-6]-\d\d-\d\d[a-z]/);
    expect(out).toContain("as of 2020-12-31");
  });
});

describe("for a buyer", () => {
  const verdicts = /leave it|watch it|test again|open the top end|decision(?!s)/i;

  test.each(engines)("%s: every reading, no word of the decision, no price, no note", async (engine) => {
    const text = seen(await onPaper(engine, "--for", "buyer"));
    expect(text).not.toMatch(verdicts);
    expect(text).not.toMatch(/EUR|\bprice of\b|expected cost/);
    const { tests } = (await newDesk().json("history", engine, "--logbook", demo)) as {
      tests: { ids: string[] }[];
    };
    for (const id of tests.flatMap(({ ids }) => ids)) expect(text).toContain(id);
  });

  test("raw stands beside corrected, in the unit that was read", async () => {
    // 2022-05-14a of the boat was read in bar, 10.8 in cylinder 2 of the first take
    const text = seen(await onPaper("boat", "--for", "buyer"));
    expect(text).toMatch(/2022-05-14a\s+dry blue, take 1\s+10\.9\s+10\.8\s+11\.3/);
  });

  test("private notes stand on it only when asked for", async () => {
    const desk = ownBoat();
    desk.put(
      "logbook/boat/notes.csv",
      "date,meter,what,value,unit,cylinders,by,note\n2026-05-01,,other,,,,me,sold it to nobody yet\n",
    );
    const plain = await desk.type(["page", "boat", "--for", "buyer", "-o", "-"]);
    expect(plain.out).not.toContain("sold it to nobody yet");
    const told = await desk.type(["page", "boat", "--for", "buyer", "-o", "-", "--with-notes"]);
    expect(told.out).toContain("sold it to nobody yet");
  });

  test("what was changed or set aside afterwards stands there with its reason", async () => {
    const desk = ownBoat();
    await desk.type([
      "amend",
      "boat",
      "--test",
      "2025-05-10a",
      "--what",
      "dry",
      "--take",
      "1",
      "--cylinder",
      "4",
      "--to",
      "11.5",
      "--because",
      "paper says 11.5",
    ]);
    await desk.type([
      "amend",
      "boat",
      "--test",
      "2024-05-18a",
      "--set-aside",
      "wrong adapter",
      "--because",
      "seen later",
    ]);
    const text = seen((await desk.type(["page", "boat", "--for", "buyer", "-o", "-"])).out);
    expect(text).toContain("paper says 11.5");
    expect(text).toContain("SET ASIDE: wrong adapter");
    expect(text).toMatch(/2024-05-18a is set aside[^.]*wrong adapter/);
  });

  test("a trace that cannot be read stops the page: without it the page would mislead", async () => {
    const desk = ownBoat();
    desk.put(
      "logbook/boat/amendments.csv",
      'when,file,row,column,old,new,because\n2026-01-01T10:00:00,"tests.csv\n',
    );
    const { exit, err } = await desk.type(["page", "boat", "--for", "buyer", "-o", "-"]);
    expect(exit).toBe(1);
    expect(err).toContain("amendments.csv:2");
  });
});

describe("for the shop", () => {
  test("each figure in both units, its doubt, its limit with its source, and its word", async () => {
    const text = seen(await onPaper("pump", "--for", "shop"));
    // 86.09 mm / 25.4 = 3.38937 in
    expect(text).toMatch(/86\.09\s+\[3\.3894\]/);
    expect(text).toMatch(/Diameter: U 0\.013 \[0\.0005\], new 86\.00 to 86\.03, wear up to 86\.20/);
    expect(text).toContain("limits: workshop book, invented");
    expect(text).toContain("too close to tell");
    for (const word of ["Again", "Finished", "Stop and ring before", "Expected back", "Loose parts"])
      expect(text).toContain(word);
  });

  test("by --units us the inch stands first", async () => {
    expect(seen(await onPaper("pump", "--for", "shop", "--units", "us"))).toMatch(/3\.3894\s+\[86\.0\d+\]/);
  });

  test("chances stay off it", async () => {
    for (const engine of engines)
      expect(seen(await onPaper(engine, "--for", "shop"))).not.toMatch(/\d in 10\b|probab|likely/i);
  });

  test("where nothing was measured it says so and has a box for each part there is", async () => {
    const html = await onPaper("tractor", "--for", "shop");
    expect(html).toContain("Nothing was measured");
    // found and finished: four bores of six places, piston, ring gap, limit; five mains and four pins of four places and a
    // limit, and as the number of journals is only the usual one, two spare rows of each
    const boxes = 2 * (4 * 9 + (5 + 2) * 5 + (4 + 2) * 5);
    const counts = 23;
    expect(html.match(/<td class=blank>/g)).toHaveLength(boxes + counts);
  });
});

test("for the own file there is all of it: decision, prices, notes, readings, limits", async () => {
  const text = seen(await onPaper("tractor", "--for", "file"));
  for (const words of [
    "The decision",
    "EUR",
    "oil use",
    "2014-10-04a",
    "limits.compression.minimum",
    "95psi",
  ])
    expect(text).toContain(words);
});
