// The shape of the screen of `show`: width, letters, numbers that are those of the document, hostile text.

import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";
import { numbersLost } from "./numbers.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));
const engines = ["tractor", "van", "boat", "mill", "pump", "ultralight"];

test.each([40, 60, 80, 120])("%i columns: no line is longer, and every cylinder is there", async (width) => {
  for (const engine of engines)
    for (const words of [[], ["--why"]]) {
      const { out } = await newDesk().type(["show", engine, ...words, "--logbook", demo], { width });
      for (const line of out.split("\n")) expect([...line].length).toBeLessThanOrEqual(width);
    }
});

test("an engine of 28 cylinders fits every width", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  const readings = Array.from({ length: 28 }, (_, i) => String(150 - (i === 20 ? 30 : i % 4))).join(" ");
  await desk.type([
    "enter",
    "radial",
    "--new",
    "--cylinders",
    "28",
    "--ignition",
    "spark",
    "--dry",
    readings,
    "--unit",
    "psi",
  ]);
  for (const width of [40, 60, 80, 120]) {
    const { out } = await desk.type(["show", "radial"], { width });
    expect(out).toMatch(/^Cylinder 21 is suspect/);
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(width);
    if (width < 60) continue;
    const labels = out.split("\n").filter((line) => line.startsWith("radial "));
    expect(labels.flatMap((line) => line.split(/\s+/).slice(2))).toEqual(
      Array.from({ length: 28 }, (_, i) => String(i + 1)),
    );
  }
});

test("the demo's answers fit 24 lines of 80", async () => {
  for (const engine of engines) {
    const { out } = await newDesk().type(["show", engine, "--logbook", demo]);
    expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
  }
});

test("--ascii is ASCII, short and long", async () => {
  for (const engine of engines)
    for (const words of [[], ["--why"]]) {
      const { out } = await newDesk().type(["show", engine, "--ascii", ...words, "--logbook", demo]);
      expect(out).toMatch(/^[\x20-\x7e\n]*$/);
    }
});

test("every number on the screen stands in the document", async () => {
  for (const engine of engines)
    for (const units of ["psi", "kPa", "bar"])
      for (const words of [[], ["--why"]]) {
        const desk = newDesk();
        const { out } = await desk.type(["show", engine, ...words, "--units", units, "--logbook", demo], {
          width: 200,
        });
        const document = await desk.json("show", engine, "--logbook", demo);
        expect(numbersLost(out, document), `${engine} in ${units}`).toEqual([]);
      }
});

test("names and notes of a stranger's file stay visible text", async () => {
  const hostile = ["\u001b[31mred", "<script>alert(1)</script>", "\u202edrawkcab", "=cmd|x"];
  for (const name of hostile) {
    const desk = await deskWithPump();
    const head = desk.text("logbook/pump/tests.csv").trimEnd();
    const cells = {
      test: "2026-05-03a",
      date: "2026-05-03",
      what: "dry",
      gauge: name,
      unit: "psi",
      c1: "150",
      c2: "148",
      c3: "152",
      c4: "149",
      by: name,
      note: name,
    };
    const row = head
      .split(",")
      .map((column) => (cells as Record<string, string>)[column] ?? "")
      .join(",");
    desk.put("logbook/pump/tests.csv", `${head}\n${row}\n`);
    for (const line of [
      ["show", "pump"],
      ["show", "pump", "--why"],
      ["history", "pump"],
      ["history", "pump", "--long"],
      ["show", "pump", "--json"],
      ["history", "pump", "--json"],
    ]) {
      const { out, err } = await desk.type(line);
      expect(out + err).not.toMatch(/(?!\n)\p{Cc}|\p{Bidi_Control}/u);
    }
  }
});
