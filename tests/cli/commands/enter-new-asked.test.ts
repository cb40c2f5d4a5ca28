// `enter --new` on a terminal: what makes the engine is asked, and an entry that was left is found again. Contract: design.md §4;
// readings invented.

import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";
import { answers } from "./entered.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const bench = () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  return desk;
};
const engineOf = (desk: { text(name: string): string }): unknown =>
  JSON.parse(desk.text("logbook/baler/engine.json"));

test("the cylinders and the ignition of a new engine are asked for", async () => {
  const desk = bench();
  const { exit, asked, out } = await desk.type(
    ["enter", "baler", "--new"],
    answers("99", "2", "wood", "diesel", "", "psi", "318", "321", "", "", "", "", ""),
  );
  expect(asked.slice(0, 4).map(flat)).toEqual([
    "how many cylinders has baler (such as 4, or their labels: L R): ",
    "how many cylinders has baler (such as 4, or their labels: L R): ",
    expect.stringContaining("how does it fire (spark, compression") as string,
    expect.stringContaining("how does it fire") as string,
  ]);
  expect([exit, flat(out).includes("saved")]).toEqual([0, true]);
  expect(engineOf(desk)).toMatchObject({ cylinders: ["1", "2"], ignition: "compression" });
});

test("who leaves at the question of the cylinders has nothing to go on with", async () => {
  const desk = bench();
  const { exit, err } = await desk.type(["enter", "baler", "--new"], answers("q"));
  expect([exit, err]).toEqual([2, "nothing was saved\n    run the command again when you have it\n"]);
  expect(desk.has("logbook/baler")).toBe(false);
});

test("a new engine whose entry was left is gone on with by its name alone", async () => {
  const desk = bench();
  const line = ["enter", "baler", "--new", "--cylinders", "2", "--ignition", "spark"];
  await desk.type(line, answers("", "psi", "118", "q"));
  const told = await desk.type(["enter", "baler"]);
  expect([told.exit, flat(told.err).includes("waits unfinished")]).toEqual([2, true]);
  const { exit, out } = await desk.type(["enter", "baler"], answers("", "121", "", "", "", "", "", ""));
  expect(flat(out)).toContain("was left after cylinder 1 (1:118)");
  expect(exit).toBe(0);
  expect(engineOf(desk)).toMatchObject({ cylinders: ["1", "2"], ignition: "spark" });
});

test("a slip that was questioned is questioned again when the entry is gone on with", async () => {
  const desk = await deskWithPump();
  const line = ["enter", "pump", "--unit", "psi", "--gauge", "red"];
  const left = await desk.type(line, answers("152", "15", "149", "151", "q"));
  expect(flat(left.out)).toContain("is a digit missing?");
  const { out, asked } = await desk.type(["enter", "pump"], answers("", "150", "", "", "", "", "", ""));
  expect(flat(out)).toContain("cylinder 2, 15: about a tenth of the others; is a digit missing?");
  expect(asked[1]).toBe("cylinder 2: ");
  expect(desk.text("logbook/pump/tests.csv")).toContain(",152,150,149,151");
});

test("a reading typed where the gauge is asked for is questioned once", async () => {
  const desk = await deskWithPump();
  const { out, asked } = await desk.type(
    ["enter", "pump", "--unit", "psi"],
    answers("118", "", "118", "120", "121", "119", "", "", "", "", "", ""),
  );
  expect(flat(out)).toContain("118 looks like a reading");
  expect(asked.slice(1, 3).map(flat)).toEqual([expect.stringContaining("gauge") as string, "cylinder 1: "]);
  const again = await deskWithPump();
  await again.type(
    ["enter", "pump", "--unit", "psi"],
    answers("7", "7", "118", "120", "121", "119", "", "", "", "", "", ""),
  );
  expect(again.text("logbook/pump/tests.csv")).toContain(",7,psi,");
});

test("the echo counts a dead cylinder, as the result does", async () => {
  const desk = await deskWithPump();
  const { out } = await desk.type(
    ["enter", "pump", "--unit", "psi", "--gauge", "red"],
    answers("150", "0", "q"),
  );
  expect(out).toContain("1:150 2:0 psi   lowest/highest 0.00");
});

test("who leaves reads no word of what was expected", async () => {
  const desk = await deskWithPump();
  const { err } = await desk.type(["enter", "pump", "--unit", "psi"], answers("", "150", "q"));
  expect(err).not.toContain("expected");
  expect(err).toContain("sealtrend enter pump\n");
});
