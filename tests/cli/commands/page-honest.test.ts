// page: nothing that a buyer has to know is lost between the logbook and the paper. Engines and readings are invented.

import { cpSync, readdirSync, utimesSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));

/** A logbook of one's own with the demo's engines in it. */
const own = (): Desk => {
  const desk = newDesk();
  cpSync(demo, join(desk.folder, "logbook"), { recursive: true });
  desk.put("logbook/logbook.json", '{ "schema": "sealtrend/logbook@1", "demo": false, "units": "psi" }\n');
  return desk;
};

const said = async (desk: Desk, ...words: readonly string[]): Promise<string> =>
  (await desk.type(["page", ...words, "--text", "-o", "-"])).out.replace(/\s+/g, " ");

const amended = async (): Promise<Desk> => {
  const desk = own();
  const where = ["--test", "2026-05-17a", "--what", "dry", "--take", "1", "--cylinder", "4"];
  await desk.type(["amend", "boat", ...where, "--to", "11.3", "--because", "paper says 11.3"]);
  return desk;
};

describe("what was changed", () => {
  test("stands on a page of an earlier day too, for the changed value does", async () => {
    const text = await said(await amended(), "boat", "--for", "buyer", "--as-of", "2026-05-20");
    expect(text).toContain("paper says 11.3");
  });

  test("what was changed in a test that is not shown stays away with it", async () => {
    const text = await said(await amended(), "boat", "--for", "buyer", "--as-of", "2025-12-31");
    expect(text).not.toContain("paper says 11.3");
  });

  test("is marked at the reading, and told in words, not in names of columns", async () => {
    const text = await said(await amended(), "boat", "--for", "buyer");
    expect(text).toContain("11.3† ");
    expect(text).toMatch(/Entry 2026-05-17a dry take 1 by blue|2026-05-17a dry take 1 by blue cylinder 4 \d/);
    expect(text).toContain("cylinder 4");
    expect(text).not.toMatch(/\bc4\b/);
  });
});

describe("who is meant", () => {
  test("to a buyer the owner is called so, and a seller of before an earlier one", async () => {
    const text = await said(own(), "boat", "--for", "buyer");
    expect(text).toContain("by the owner");
    expect(text).not.toMatch(/by me\b|by seller\b/);
    expect(text).toContain("by an earlier seller");
    expect(await said(own(), "boat", "--for", "file")).toContain("by me");
  });

  test("a headline that rests on a seller's sheet says so", async () => {
    const desk = own();
    const rows = desk.text("logbook/boat/tests.csv").replaceAll(",me,", ",seller,");
    desk.put("logbook/boat/tests.csv", rows);
    expect(await said(desk, "boat", "--for", "buyer")).toContain(
      "By an earlier seller's sheet, which counts for nothing here: ",
    );
  });
});

test("how old the last test is stands in the first lines", async () => {
  const { out } = await newDesk().type([
    "page",
    "tractor",
    "--for",
    "buyer",
    "--text",
    "-o",
    "-",
    "--logbook",
    demo,
    "--as-of",
    "2036-11-25",
  ]);
  expect(out.split("\n").slice(0, 10).join(" ")).toContain("The last test is ten years old.");
});

test("the course in words counts from the first test that counts, and keeps what was before a work", async () => {
  const desk = own();
  const valves = ["service", "boat", "--what", "valve job", "--cylinders", "5", "--date", "2026-06-01"];
  expect((await desk.type(valves)).exit).toBe(0);
  const after = [
    "enter",
    "boat",
    "--dry",
    "10.9 10.8 11.1 11.0 11.0 10.4",
    "--unit",
    "bar",
    "--gauge",
    "blue",
    "--date",
    "2026-07-10",
  ];
  expect((await desk.type(after)).exit).toBe(0);
  const text = await said(desk, "boat", "--for", "buyer");
  // 2017-09-16 is the seller's sheet
  expect(text).toMatch(
    / 5 [+-]?\d+\.\d % on 2018-05-12, -1\d\.\d % on 2026-05-17; then anew [+-]?\d+\.\d % on 2026-07-10/,
  );
  expect(text).toContain("not counted 0.0 % on 2017-09-16");
});

test("the supply of a leak-down is told in the unit of its tester, and the oil that was put in", async () => {
  expect(await said(newDesk(), "boat", "--for", "buyer", "--logbook", demo)).toContain("supply 80 psi");
});

describe("where it goes", () => {
  const page = (desk: Desk, ...more: readonly string[]) =>
    desk.type(["page", "van", "--logbook", demo, ...more]);

  test("the mend keeps what was typed", async () => {
    const desk = newDesk();
    const near = relative(desk.folder, demo);
    const { err } = await desk.type(["page", "van", "--logbook", near]);
    expect(err.replace(/\s+/g, " ")).toContain(`sealtrend page van --for buyer --logbook ${near}`);
  });

  test("in a folder a name is proposed", async () => {
    const desk = newDesk();
    desk.put("out/other.txt", "");
    for (const name of ["out", "out/"])
      expect((await page(desk, "--for", "buyer", "-o", name)).err).toContain("-o out/van-for-buyer.html");
  });

  test("a folder that is not there can be made", async () => {
    const { exit, err } = await page(newDesk(), "--for", "buyer", "-o", "new/van.html");
    expect([exit, err.includes("mkdir -p new")]).toEqual([3, true]);
  });

  test("what a kill left of an earlier page is swept", async () => {
    const desk = newDesk();
    const left = join(desk.folder, ".van.html.4711.tmp");
    writeFileSync(left, "half");
    utimesSync(left, new Date("2020-01-01"), new Date("2020-01-01"));
    expect((await page(desk, "--for", "buyer", "-o", "van.html")).exit).toBe(0);
    expect(readdirSync(desk.folder).filter((name) => name.endsWith(".tmp"))).toEqual([]);
  });
});

describe("what the own file says in a message", () => {
  test("evidence is told in sentences, not as a table that does not fit", async () => {
    const text = await said(own(), "tractor", "--for", "file");
    expect(text).not.toMatch(/\bSpeaks (?:for wear|against|set aside)\b|Rests on/);
    expect(text).toMatch(/Evidence; [^-]*- (?:for wear|against|set aside): /);
  });

  // by hand: 78 of 80 psi is within what two dials leave open, 60 of 80 is not
  test("a leak too small to be told is no size in the table either", async () => {
    const desk = newDesk();
    desk.put(
      "logbook/gauges.csv",
      "gauge,kind,unit,full_scale,restrictor_mm,regulated\ndrip,leak-down,psi,100,1.016,80\n",
    );
    desk.put("logbook/pump/engine.json", '{"cylinders": ["1", "2"], "ignition": "spark"}');
    await desk.type([
      "enter",
      "pump",
      "--date",
      "2026-05-01",
      "--leak-down",
      "78/80 60/80",
      "--gauge",
      "drip",
    ]);
    const text = await said(desk, "pump", "--for", "file");
    const [, bound = ""] = /equal hole mm (<[\d.]+) /.exec(text) ?? [];
    expect(bound).not.toBe("");
    expect(text.split(`2026-05-01a leak down drip ${bound} `)).toHaveLength(2);
  });
});
