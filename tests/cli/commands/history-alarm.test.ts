// What `history` says to do next where something was found: one line, the same step as `show` names; how it is done and what
// it may be are for `show`. Readings invented.

import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";
import { deskWith, oneSpeed, said, yearly } from "./years.ts";

const next = (out: string): string => /^next {3}(.*)$/m.exec(out)?.[1] ?? "";
const nextOf = async (rows: readonly string[]): Promise<string> =>
  next(await said(await deskWith(yearly(2015, rows), [], oneSpeed)));
const third = (values: readonly number[]): readonly string[] =>
  values.map((value, i) => `150 ${String(148 + (i % 2))} ${String(value)} 149`);

/** The first step of `show`, with its minutes. */
const shownStep = async (desk: Desk): Promise<string> =>
  next((await desk.type(["show", "pump"], { width: 200 })).out).replace(" (tells most)", "");

test("a falling cylinder gets the step that show names first, as do two cylinders", async () => {
  const two = [150, 147, 144, 141, 138, 135, 132].map((value) => `150 ${String(value)}`);
  for (const [rows, step] of [
    [third([150, 147, 144, 141, 138, 135, 132]), "oil test on 3, with 1 as control, 10 minutes"],
    [two, "oil test on 2, with 1 as control, 10 minutes"],
  ] as const) {
    const desk = await deskWith(yearly(2015, rows), [], oneSpeed);
    expect(await shownStep(desk)).toBe(step);
    expect(next(await said(desk))).toBe(`${step}; how, and what it may be: sealtrend show pump`);
    const document = await desk.json("history", "pump");
    expect(document.next).toEqual({ code: "wet", text: step.replace(", 10 minutes", ""), minutes: 10 });
    expect(misfits(document, schemaOf("history"))).toEqual([]);
  }
});

test("a cylinder that held nothing is read again with the adapter checked", async () => {
  expect(await nextOf([...third([150, 151, 149, 150]), "150 149 0 149"])).toBe(
    "read 3 again, adapter checked; what it may be: sealtrend show pump",
  );
});

test("where two cylinders cannot tell which one moved, a test that reads each by itself is named", async () => {
  // both rise, 2 far more slowly: the one has gained or the other has lost
  const rows = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => `${String(120 + 9 * i)} ${String(120 + 3 * i)}`);
  expect(await nextOf(rows)).toBe(
    "leak-down of both tells which: it reads each by itself; how: sealtrend how leak-down pump",
  );
});

test("a fall of the whole engine asks for a test in which nothing is cranked", async () => {
  const words = "leak-down: a slow starter does not touch it (sealtrend how leak-down pump)";
  const levels = [150, 145, 140, 136, 131, 127, 123, 119];
  expect(await nextOf(levels.map((value) => `${String(value)} ${String(value + 1)} ${String(value)}`))).toBe(
    words,
  );
  expect(await nextOf(levels.map(String))).toBe(words);
});

test("a leak that grows asks to be listened to", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--cylinders", "4", "--ignition", "spark"]);
  for (const [i, lost] of [9, 11, 14, 16, 19, 21, 24].entries()) {
    const date = `${String(2018 + i)}-05-03`;
    const { err } = await desk.type(
      ["enter", "pump", "--leak-down", `8 7 ${String(lost)} 8`, "--unit", "%"].concat("--date", date),
    );
    expect(err).toBe("");
  }
  // the step that `show` names first
  expect(next(await said(desk))).toMatch(
    /^listen where the air goes on 3, at top dead centre .*; how, and what it may be: sealtrend show pump$/,
  );
});

test("what the leak-down found stands before a plan for cranking tests", async () => {
  const desk = await deskWith(yearly(2018, third([150, 149, 150, 151, 150, 149, 150])), [], oneSpeed);
  for (const [i, lost] of [9, 11, 14, 16, 19, 21, 24].entries()) {
    const date = `${String(2018 + i)}-05-03`;
    await desk.type(
      ["enter", "pump", "--leak-down", `8 7 ${String(lost)} 8`, "--unit", "%"].concat("--date", date),
    );
  }
  const out = await said(desk);
  expect(out).toContain("Leak-down:\nCylinder 3 is falling");
  expect(next(out)).toMatch(/^listen where the air goes on 3/);
  expect(out).toContain("--cylinder 3");
});
