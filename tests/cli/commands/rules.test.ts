// rules, and --rules FILE. Contract: design.md §4; the rules themselves are tested with the core.

import { expect, test } from "vitest";
import { type Desk, deskWithPump, newDesk } from "./desk.ts";

const header = "id,family,formula,limit,unit,compare,applies,text,source,status\n";
const own = `${header}mine,ratio,min / max,0.9,1,>=,,lowest nine tenths of the highest,my own,judgement\n`;

const withTest = async (): Promise<Desk> => {
  const desk = await deskWithPump();
  await desk.type([
    "enter",
    "pump",
    "--dry",
    "150 149 151 120",
    "--unit",
    "psi",
    "--altitude",
    "0m",
    "--date",
    "2026-05-02",
  ]);
  return desk;
};

test("the rules are listed with formula, limit, engines, source and how far it was seen", async () => {
  const desk = newDesk();
  const { exit, out, err } = await desk.type(["rules"]);
  expect([exit, err]).toEqual([0, ""]);
  expect(out).toContain(
    "\npct15  (max - p) / max <= 15 %\n    outboard motors: none more than 15 % below the highest; for an inboard\n",
  );
  expect(out).toContain("\nfloor100psi  p >= 100 psi\n");
  expect(out).toContain("Mitsubishi, Pajero diesel owner manual (excerpt seen)\n");
  expect(out).toContain("rules of single makers, for comparison only: --why\n");
  expect(out).not.toContain("kohler");
});

test("limits are told in the unit asked for", async () => {
  const { out } = await newDesk().type(["rules", "--units", "bar"]);
  expect(out).toContain("\nfloor100psi  p >= 6.895 bar\n"); // 100 psi = 689.476 kPa
});

test("--why adds those listed for comparison", async () => {
  const { out } = await newDesk().type(["rules", "--why"]);
  expect(out).toContain("\nFor comparison only, never judged:\n");
  expect(out).toContain("\nkohler-floor  p >= 90 psi\n");
});

test("the maker's own figures of an engine take the place of the usual rules, and the latest test is held against them", async () => {
  const desk = await withTest();
  expect((await desk.type(["rules", "pump"])).out).toMatch(
    /^The rules for pump, held against its test 2026-05-02a\.\n\nratio75 {2}p \/ max >= 0\.75 {2}\w+( \w+)?: 0\.79 at cylinder 4\n/,
  );
  await desk.type(["engine", "set", "pump", "limits.compression.lowestToHighest", "0.9"]);
  const { out } = await desk.type(["rules", "pump"]);
  expect(out).toContain("\nmaker-ratio  p / max >= 0.9  not met: 0.79 at cylinder 4\n"); // 120 / 151
  expect(out).not.toContain("ratio75");
});

test("an engine without a test has its rules listed, not judged", async () => {
  const desk = await deskWithPump();
  expect((await desk.type(["rules", "pump"])).out).toMatch(
    /^The rules for pump\.\n\nratio75 {2}p \/ max >= 0\.75\n/,
  );
});

test("an engine that no rule fits is told so", async () => {
  const desk = newDesk();
  await desk.type(["engine", "add", "saw", "--cylinders", "1", "--ignition", "spark"]);
  expect((await desk.type(["rules", "saw"])).out).toContain(
    "None for this engine (one cylinder): it has no fellows to be compared with",
  );
});

test("a sheet of one's own is read and judged, in rules and in show", async () => {
  const desk = await withTest();
  desk.put("mine.csv", own);
  expect((await desk.type(["rules", "--rules", "mine.csv"])).out).toMatch(/^The rules of mine\.csv\..*\n/);
  expect((await desk.type(["rules", "pump", "--rules", "mine.csv"])).out).toContain(
    "mine  min / max >= 0.9  not met: 0.79\n",
  );
  expect((await desk.type(["show", "pump", "--rules", "mine.csv"])).out).toMatch(
    /min \/ max 0\.79, .*0\.90\W+not\s+met/,
  );
});

test("every fault of a sheet has its file, line and column", async () => {
  const desk = newDesk();
  desk.put(
    "mine.csv",
    `${header}a,ratio,min / mix,0.9,1,>=,,t,s,judgement\nb,ratio,min / max,lots,1,>=,,t,s,judgement\n`,
  );
  const { exit, err } = await desk.type(["rules", "--rules", "mine.csv"]);
  expect(exit).toBe(1);
  expect(err).toContain("mine.csv:2:15 ");
  expect(err).toContain('mine.csv:3:19 limit "lots"');
});

test("a sheet that is not there ends with 3", async () => {
  const { exit, err } = await newDesk().type(["rules", "--rules", "none.csv"]);
  expect([exit, err.split("\n")[0]]).toEqual([3, "there is no file none.csv"]);
});
