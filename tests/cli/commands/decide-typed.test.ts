// What `decide` takes on its command line, and what it asks.

import { expect, test } from "vitest";
import { cases, decided } from "./decide-desk.ts";
import { newDesk } from "./desk.ts";

const type = (line: readonly string[], answers?: readonly string[]) =>
  newDesk().type(
    ["decide", ...line, "--logbook", cases, "--as-of", "2026-11-25"],
    answers === undefined ? {} : { answers },
  );

test.each([
  ["5y", 5],
  ["11y", 11],
  ["1.5y", 1.5],
])("--own %s is so many years", async (own, years) => {
  expect((await decided(`healthy --own ${own}`)).horizon_years).toBe(years);
});

test("--own that is no time is refused with what to type", async () => {
  const months = await type(["healthy", "--own", "18 months"]);
  expect(months.exit).toBe(2);
  expect(months.err.replace(/\s+/g, " ")).toContain("or 1.5y for 18 months");
  expect(months.err).toContain("--own 1.5y");
  expect((await type(["healthy", "--own", "1month"])).err).toContain("--own 0.1y");
  for (const own of ["soon", "-3y", "0y", "5 days", "1000y"]) {
    const { exit, err } = await type(["healthy", `--own=${own}`]);
    expect([own, exit]).toEqual([own, 2]);
    expect(err).toContain("--own");
  }
});

test("a price stands over that of engine.json, and several follow one another", async () => {
  const line = "healthy --opened pistons-in --engine-out";
  // handbook/decision.md 9, example 1 by hand: G = now + redo = reRing + .05 (reRing + 1200)
  const { breakEven } = await decided(`${line} --price work.reRing=1000 test=20`);
  expect(breakEven?.G).toBeCloseTo(1000 + 0.05 * 2200, 9);
  const twice = await decided(`${line} --price prices.work.reRing=1000 --price test=20`);
  expect(twice.breakEven).toEqual(breakEven);
});

test("an unknown price is answered with the nearest, a number that is none with one to type", async () => {
  const unknown = await type(["healthy", "--price", "work.rering2=620"]);
  expect(unknown.exit).toBe(2);
  expect(unknown.err).toContain("--price work.reRing=620");
  const last = await type(["healthy", "--price", "headOff=300"]);
  expect(last.err).toContain("--price jobs.headOff=300");
  for (const [typed, mend] of [
    ["work.reRing=620EUR", "--price work.reRing=620"],
    ["work.reRing=-620", "--price work.reRing=620"],
    ["work.reRing=1,200", "--price work.reRing=1200"],
    ["work.reRing=much", "--price work.reRing=620"],
    ["spoil=2", "--price spoil=0.2"],
    ["work.reRing", "--price work.reRing=620"],
  ] as const) {
    const { exit, err } = await type(["healthy", "--price", typed]);
    expect([typed, exit]).toEqual([typed, 2]);
    expect(err).toContain(mend);
  }
});

test("all faults of the prices are named at once, and one name has one price", async () => {
  const { exit, err } = await type(["healthy", "--price", "a=1", "test=x", "day=1", "day=2"]);
  expect(exit).toBe(2);
  expect(err).toContain('"a=1"');
  expect(err).toContain('"test=x"');
  expect(err).toContain("day has two prices");
});

test("on a terminal the horizon is asked once, where nobody said; Enter takes five years and says so", async () => {
  const asked = await type(["untested"], ["11y"]);
  expect(asked.asked).toHaveLength(1);
  expect(asked.out).not.toContain("Nobody said");
  const entered = await type(["untested"], [""]);
  expect(entered.asked).toHaveLength(1);
  expect(entered.out).toContain("Nobody said how long you keep it: 5 years");
  const unclear = await type(["untested"], ["a while", "8"]);
  expect(unclear.asked).toHaveLength(2);
  expect((await type(["untested"], ["q"])).exit).toBe(2);
});

test("nothing is asked where engine.json says it, where it was typed, or where nobody can answer", async () => {
  expect((await type(["healthy"], ["11y"])).asked).toEqual([]);
  expect((await type(["untested", "--own", "5y"], ["11y"])).asked).toEqual([]);
  expect((await type(["untested", "--no-input"], ["11y"])).asked).toEqual([]);
  expect((await type(["untested"])).asked).toEqual([]);
});

test("--renewed and --years-left stand over engine.json, and answer what kept for good asks", async () => {
  const open = ["unpriced", "--opened", "pistons-in", "--own", "for-good"];
  const asked = (await type(open)).out.replace(/\s+/g, " ");
  expect(asked).toContain(
    "say when they were last new (--renewed 2004); kept on record: sealtrend engine set",
  );
  const told = (await type([...open, "--renewed", "1996"])).out.replace(/\s+/g, " ");
  expect(told).not.toContain("--renewed");
  expect(told).toMatch(/if it costs less than \d+ % of what it costs later/);
  const age = async (...words: string[]): Promise<unknown> =>
    (await newDesk().json("decide", ...open, ...words, "--logbook", cases, "--as-of", "2026-11-25")).keep;
  // the middle of 1996 is the first of July; a day is taken as it stands
  expect(await age("--renewed", "1996")).toEqual(await age("--renewed", "1996-07-01"));
  expect(await age("--renewed", "2016")).not.toEqual(await age("--renewed", "1996"));
});

test("--renewed or --years-left that cannot be is refused with one to type", async () => {
  for (const [words, mend] of [
    [["--renewed", "long ago"], "--renewed 2004"],
    [["--renewed", "spring 2011"], "--renewed 2011"],
    [["--renewed", "2031"], "--renewed 2026"],
    [["--years-left", "many"], "--years-left 12"],
    [["--years-left", "400"], "--years-left 12"],
  ] as const) {
    const { exit, err } = await type(["healthy", ...words]);
    expect([words, exit]).toEqual([words, 2]);
    expect(err).toContain(mend);
  }
  expect((await type(["healthy", "--years-left", "12y"])).exit).toBe(0);
});

test("a value that is left out before the next option is asked for, not taken from it", async () => {
  const { exit, err } = await type(["healthy", "--opened", "--why"]);
  expect(exit).toBe(2);
  expect(err).toContain("write --opened head-off");
  expect(err).not.toContain("--opened=");
});

test("--test goes by that test, and an unknown one is named with a near one", async () => {
  const ids = await decided("healthy --test 2026-11-20a");
  expect(ids.decision.code).toBe("leave-it");
  const { exit, err } = await type(["healthy", "--test", "2026-11-20b"]);
  expect(exit).toBe(2);
  expect(err).toContain("2026-11-20a");
});

test("--opened takes the five states, and names them otherwise", async () => {
  const { exit, err } = await type(["healthy", "--opened", "half"]);
  expect(exit).toBe(2);
  expect(err).toContain("pistons-in");
});

test("every state of the engine is the access of its own", async () => {
  const access = async (words: string): Promise<unknown> =>
    (
      await newDesk().json(
        "decide",
        "healthy",
        ...words.split(" "),
        "--logbook",
        cases,
        "--as-of",
        "2026-11-25",
      )
    ).access;
  expect(await access("--own 5y")).toBe("in-place");
  expect(await access("--engine-out")).toBe("engine-out-closed");
  expect(await access("--opened head-off")).toBe("head-off");
  expect(await access("--opened bottom-open")).toBe("bottom-open");
  for (const state of ["pistons-in", "pistons-out", "crank-out"])
    expect(await access(`--opened ${state}`)).toBe("fully-open");
});

test("--faults and --rules go by sheets of the user's own, and say so or name what is missing", async () => {
  const desk = newDesk();
  const at = ["--logbook", cases, "--as-of", "2026-11-25"];
  desk.put(
    "mine/words.csv",
    "word,least,status,source\nlikely,0.5,judgement,own\nnot likely,0,judgement,own\n",
  );
  const own = await desk.type(["decide", "falling", "--faults", "mine", ...at]);
  const { faults } = await desk.json("decide", "falling", "--faults", "mine", ...at);
  expect(faults).toEqual({ from: ["words.csv"] });
  expect((await desk.json("decide", "falling", ...at)).faults).toBeUndefined();
  expect([own.exit, own.err.replace(/\s+/g, " ")]).toEqual([
    0,
    "causes by the tables in mine: words.csv; the other 29 as shipped ",
  ]);
  const none = await desk.type(["decide", "falling", "--rules", "none.csv", ...at]);
  expect(none.exit).toBe(3);
  expect(none.err).toContain("none.csv");
});

test("--as-of decides by what was known that day", async () => {
  const document = await newDesk().json("decide", "valve", "--logbook", cases, "--as-of", "2022-12-01");
  expect((document.test as { date: string }).date).toBe("2022-11-20");
  expect((document.decision as { code: string }).code).not.toBe("open-the-top-end");
});

test("with some prices given it says which are missing, not that there are none", async () => {
  const { out } = await type(["unpriced", "--opened", "pistons-in", "--price", "work.reRing=620"]);
  const said = out.replace(/\s+/g, " ");
  expect(said).not.toContain("No prices are given");
  // the work and the way in that nobody priced
  expect(said).toContain(
    "Prices still missing: jobs.headOff, jobs.bottomOpen, work.topEnd and work.rebuild.",
  );
});

test("all low: what is recorded already is not asked for again", async () => {
  // tests.csv of that engine: throttle open, no cranking speed; no gauge proved
  const { out } = await type(["alllow"]);
  expect(out.replace(/\s+/g, " ")).toContain("prove gauge and cranking speed first");
});

test("a test that is only too old is said to be so many months old", async () => {
  // 2026-11-20 to 2028-01-01: 13 months and some days
  const said = await newDesk().type(["decide", "healthy", "--logbook", cases, "--as-of", "2028-01-01"]);
  expect(said.out).toContain("The last test is 13 months old");
  expect(said.out).not.toContain("is doubtful");
});

test("what to type after the work names the work", async () => {
  const { out } = await type(["valve"]);
  expect(out.replace(/\s+/g, " ")).toContain('sealtrend service valve --what "valve job"');
});
