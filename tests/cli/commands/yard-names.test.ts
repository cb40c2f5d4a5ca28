// What a yard makes of names and headings of a CSV that are nearly alike. Readings invented.

import { expect, test } from "vitest";
import { newDesk } from "./desk.ts";

const flat = (text: string): string => text.replace(/\s+/g, " ");
const head = "engine,test,date,what,unit,c1,c2,c3,c4,set_aside";
const row = (name: string, day: string, cells = "150,148,152,149"): string =>
  `${name},2026-${day}a,2026-${day},dry,psi,${cells},`;
const enginesOf = (out: string): readonly (readonly unknown[])[] =>
  out
    .trim()
    .split("\n")
    .map((line) => JSON.parse(line) as Record<string, unknown>)
    .map(({ engine, tests }) => [engine, tests]);

const typed = async (rows: readonly string[], ...more: readonly string[]) => {
  const desk = newDesk();
  desk.put("fleet.csv", `${rows.join("\n")}\n`);
  return desk.type(["yard", "fleet.csv", ...more]);
};

/** Three spellings side by side and apart, and two engines of which nobody doubts. */
const dozers = [
  head,
  row("Red Dozer", "05-01"),
  row("red dozer", "05-02"),
  row("Red Dozer", "05-03"),
  row("Pump", "05-04"),
  row("RED  DOZER", "05-05"),
  row("Pump 2", "05-06"),
  row("red dozer", "05-07"),
];

test("names that differ by capitals and blanks only are kept apart, and told", async () => {
  const { exit, out, err } = await typed(dozers, "--json");
  expect(exit).toBe(0);
  expect(enginesOf(out)).toEqual([
    ["Red Dozer", 2],
    ["red dozer", 2],
    ["RED  DOZER", 1],
    ["Pump", 1],
    ["Pump 2", 1],
  ]);
  expect(err.split("\n")[0]).toContain('"Red Dozer" (line 2), "red dozer" (line 3)');
  expect(flat(err)).toContain(
    '"RED DOZER" (line 6) differ by capitals or blanks only: 3 engines here; if they are one, write one name in all its rows',
  );
  expect(err).not.toContain("Pump");
});

test("of many such names the first few are told, and how many more", async () => {
  const rows = Array.from({ length: 9 }, (_, i) => [
    row(`Unit ${String(i)}`, "05-01"),
    row(`UNIT ${String(i)}`, "05-01"),
  ]);
  const { err } = await typed([head, ...rows.flat()]);
  expect(err.match(/differ by/g)).toHaveLength(5);
  expect(err).toContain("4 more such names");
});

test("shards answer what one process answers, and one of them tells of such names", async () => {
  const shards = await Promise.all(
    [1, 2, 3].map((k) => typed(dozers, "--json", "--shard", `${String(k)}/3`)),
  );
  const whole = await typed(dozers, "--json");
  const lines = (text: string): readonly string[] => text.trim().split("\n").sort();
  expect(lines(shards.map(({ out }) => out).join(""))).toEqual(lines(whole.out));
  expect(shards.filter(({ err }) => err.includes("differ by"))).toHaveLength(1);
});

test("a column that is nearly named as one that counts is told", async () => {
  const { exit, err } = await typed([head.replace("set_aside", "Set aside"), row("Pump", "05-01")]);
  expect([exit, flat(err)]).toEqual([
    0,
    'the column "Set aside" is kept but not read; rename it set_aside if that is meant, or leave it ',
  ]);
});

test("a cylinder whose column is empty in every row is named as never read", async () => {
  const { out } = await typed([head, row("Pump", "05-01", ",148,152,149")], "--json");
  expect(JSON.parse(out)).toMatchObject({ unread: ["1"], cylinders: 4 });
});

test("the line that runs shards side by side stands whole on the page", async () => {
  const { out } = await newDesk().type(["yard", "--help"]);
  expect(out).toMatch(/^ *seq 4 \| parallel sealtrend yard fleet\.csv --shard \{\}\/4 --json$/m);
});
