// What `decide` tells beside the verdict: minutes, limits, what flips it, what holds without a test, how far the record goes.

import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { cases, screen } from "./decide-desk.ts";
import { newDesk } from "./desk.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));

test("the minutes of measuring are those of what is named, and they add up", async () => {
  for (const line of [
    "healthy --opened pistons-in",
    "thirsty --opened head-off",
    "falling --opened bottom-open",
  ]) {
    const text = (await screen(line)).replace(/\s+/g, " ");
    const [, total = "", named = ""] =
      /measure (\d+) minutes for one of each, [^:]*: (.*?); then: /.exec(text) ?? [];
    const each = [...named.matchAll(/\((\d+)\)/g)].map(([, minutes = ""]) => Number(minutes));
    expect(each.length).toBeGreaterThan(1);
    expect(each.reduce((sum, one) => sum + one, 0)).toBe(Number(total));
  }
});

test("what it is held to is named, or how limits are set", async () => {
  const text = (await screen("healthy --opened pistons-in")).replace(/\s+/g, " ");
  expect(text).toContain(
    'held to no limits yet; from the manual, such as: sealtrend engine set healthy limits.bore.taper.wear "up to 0.10mm"',
  );
  const why = (await screen("healthy --opened pistons-in --why")).replace(/\s+/g, " ");
  expect(why).toMatch(/Kept by: sealtrend teardown healthy, which takes lines such as "bore \d: /);
});

test("tests of years ago that carry the chance are not said to be unseen", async () => {
  const { out } = await newDesk().type([
    ..."decide healthy --opened pistons-in --as-of 2028-06-01 --logbook".split(" "),
    cases,
  ]);
  const text = out.replace(/\s+/g, " ");
  expect(text).toContain("the readings say about 1 in 10");
  expect(text).toContain("not seen bores, ring gaps and bearings measured; cranking compression of late");
});

test("what flips it only far beyond its range is marked", async () => {
  const text = (await screen("healthy --opened pistons-in --engine-out")).replace(/\s+/g, " ");
  expect(text).toMatch(
    /flips kept for good \(re-ring\) · a taper or a bearing over its limit · measure first: the limit .* · far off: from [\d.]+ years of ownership on/,
  );
  // one input lies within its range (holds), the next does not
  const held = (await screen("short --engine-out")).replace(/\s+/g, " ");
  expect(held).toMatch(/flips watch it: getting the engine out at \d+ EUR instead of 1200 · /);
  expect(held).not.toContain("far off");
});

test("test again says what the test costs and may change, where it turns, and what holds without it", async () => {
  const text = (await screen("short --engine-out")).replace(/\s+/g, " ");
  expect(text).toMatch(
    /changes the answer with a chance of about \d in 10 and is worth about \d+ EUR against its price of 25 EUR/,
  );
  expect(text).toMatch(/pays only if the chance .* exceeds about \d in 10; the readings say about \d in 10/);
  expect(text).toContain("If you do not test: put it back, and watch it.");
  for (const line of ["untested", "alllow", "stored"])
    expect((await screen(line)).replace(/\s+/g, " ")).toContain("If you do not test: ");
});

test("the bottom end open and a limit too near: the one test that is left comes before closing, and is named once", async () => {
  const { out } = await newDesk().type([
    "decide",
    ...`tractor --opened bottom-open --logbook ${demo}`.split(" "),
  ]);
  const text = out.replace(/\s+/g, " ");
  expect(text).toMatch(/^Test again before you close it up\./);
  expect(text).toContain("next a leak-down as it is, if it can be turned: sealtrend how leak-down tractor");
  expect(/measure .*then: sealtrend teardown/.exec(text)?.[0]).not.toContain("leak-down");
});

test("a question far beyond the record says so", async () => {
  expect((await screen("healthy --own 40y")).replace(/\s+/g, " ")).toContain(
    "The record spans 12 years, the question 40: drawn on far beyond what was tested.",
  );
  expect(await screen("healthy --own 5y")).not.toContain("drawn on far beyond");
});

test("notes are told with their own figures", async () => {
  // notes.csv of that engine: 0.1 L/100h in 2016, 0.4 now
  expect((await screen("thirsty --why")).replace(/\s+/g, " ")).toContain(
    "oil use 4 times what it was at first: 0.4 L/100h, 0.1 in 2016 (note 2026-11-21)",
  );
});

test("too near to watch tells one chance: that of the years ahead where it is told, else that of being there now", async () => {
  const desk = newDesk();
  const said = async (...more: string[]) =>
    (await desk.type(["decide", "tractor", "--logbook", demo, ...more])).out.replace(/\s+/g, " ");
  const years = await said("--own", "5y");
  expect(years).toContain("cylinder 3 may have passed its cranking limit (0.75 of the others) already. ");
  expect(years).toContain("the chance of passing that limit within 5 years is about ");
  expect(await said("--own", "for-good")).toMatch(/already, about 1 in 10 or more\. Kept for good/);
});
