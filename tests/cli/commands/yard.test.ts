// yard: many engines at once.

import { readEngineRecord, yardRow } from "@sealtrend/core/parts";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { yardDocument } from "../../../packages/cli/src/documents/yard-document.ts";
import { type FleetEngine, fleetEngine, fleetHeader, fleetText } from "../yard/fleet.ts";
import { newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));
type Line = Record<string, unknown> & { readonly engine: string };
const linesOf = (text: string): readonly Line[] =>
  text
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as Line);
const fleet = (count: number): readonly FleetEngine[] =>
  Array.from({ length: count }, (_, i) => fleetEngine(i));

/** Always the same order, and no engine together. */
const shuffled = (rows: readonly string[]): readonly string[] =>
  rows
    .map((row, i) => ({ row, key: (i * 7_919) % 10_007 }))
    .sort((a, b) => a.key - b.key)
    .map(({ row }) => row);

test("each engine of the demo is told as show, history and decide tell it", async () => {
  const desk = newDesk();
  const { out, exit } = await desk.type(["yard", demo, "--json"]);
  const lines = linesOf(out);
  expect([exit, lines.map(({ engine }) => engine)]).toEqual([
    0,
    ["boat", "mill", "pump", "tractor", "ultralight", "van"],
  ]);
  for (const line of lines) {
    expect(misfits(line, schemaOf("yard"))).toEqual([]);
    const [show, history, decide] = await Promise.all(
      ["show", "history", "decide"].map((command) => desk.json(command, line.engine, "--logbook", demo)),
    );
    const { label, lost, heldBelowOthers, ...dry } = line.worst as { label: string } & Line;
    expect(show?.cylinders).toContainEqual(expect.objectContaining({ label, ...dry }));
    if (lost !== undefined)
      expect(show?.cylinders).toContainEqual(
        expect.objectContaining({ label, leakDown: expect.objectContaining({ lost }) as unknown }),
      );
    expect(typeof heldBelowOthers).toBe(typeof lost);
    expect(show?.test).toMatchObject({ id: line.test, date: line.last });
    expect([label, history?.cylinders]).toEqual([
      label,
      expect.arrayContaining([expect.objectContaining({ label: line.courseOf, course: line.course })]),
    ]);
    expect(decide).toMatchObject({
      decision: { code: (line.decision as Line).code },
      next: { by: line.due },
    });
  }
});

test("a column without a name is told once, however long the file is", async () => {
  const desk = newDesk();
  const rows = Array.from(
    { length: 1500 },
    (_, i) => `eng${String(i)},2024-05-01a,2024-05-01,dry,psi,150,149,151,148,x,as before`,
  );
  const header = "engine,test,date,what,unit,c1,c2,c3,c4,,note";
  desk.put("fleet.csv", [header, ...rows, ""].join("\n"));
  const { exit, err } = await desk.type(["yard", "fleet.csv"]);
  expect([exit, err.match(/has no name/g)?.length]).toEqual([1, 1]);
});

test("500 engines of one CSV, in any order of rows, are told as 500 logbooks tell them", async () => {
  const engines = fleet(500);
  const desk = newDesk();
  desk.put("fleet.csv", fleetText(engines));
  desk.put(
    "mixed.csv",
    fleetHeader +
      shuffled(engines.flatMap(({ rows }) => rows))
        .map((row) => `${row}\n`)
        .join(""),
  );
  const expected = engines.map(({ id, cylinders, ignition, tests }) => {
    const engine = { file: "engine.json", text: JSON.stringify({ cylinders, ignition }) };
    const { record } = readEngineRecord({ id, engine, tests: { file: "tests.csv", text: tests } }, [], {
      demo: false,
    });
    if (record === undefined) throw new Error(`${id} has no record`);
    const row = yardRow(record, { today: "2026-11-25", decide: "never" });
    return JSON.stringify(yardDocument({ engine: id, row, problems: [] }));
  });
  const inOrder = await desk.type(["yard", "fleet.csv", "--json"]);
  expect(inOrder.out.trimEnd().split("\n")).toEqual(expected);
  const mixed = await desk.type(["yard", "mixed.csv", "--json"]);
  expect(mixed.out.trimEnd().split("\n").sort()).toEqual(expected);
  expect(mixed.err).toBe(inOrder.err);
});

test("the shards together are the whole, each engine in one of them", async () => {
  const desk = newDesk();
  desk.put("fleet.csv", fleetText(fleet(40)));
  const whole = (await desk.type(["yard", "fleet.csv", "--json"])).out.split("\n").sort();
  const shards = await Promise.all(
    ["1/3", "2/3", "3/3"].map((shard) => desk.type(["yard", "fleet.csv", "--json", "--shard", shard])),
  );
  expect(shards.map(({ out }) => linesOf(out).length).every((count) => count > 5)).toBe(true);
  expect(shards.flatMap(({ out }) => out.split("\n").slice(0, -1)).sort()).toEqual(whole.slice(1));
});

test("the table answers first, then the worst, with why", async () => {
  const { out, err, exit } = await newDesk().type(["yard", "--logbook", demo, "--top", "3"]);
  expect([exit, err]).toEqual([0, ""]);
  expect(out.replaceAll(demo, "DEMO"))
    .toBe(`6 engines. 1 in need of work, 3 due for a test. 2 lagging, none suspect. By luck
alone less than one (0.3) would be lagging or suspect.

engine   tests  last     worst     course        decision          due
boat        11  2026-05  5: -18 %  stepped down  open the top end  now
    cylinder 5 lags: flagged in two tests running; the evidence agrees
tractor     10  2026-10  3: -20 %  falling       test again        now
    cylinder 3 lags: flagged in two tests running; falling 1.9 % a year; its
    limit is too near to watch
pump         4  2026-05  even      too short     watch it          now
    wear developing

Order: not to be run, work needed, then standing, how far below, course, due.
worst: below the others, or lost in leak-down. due: a past month is overdue.
3 of 6 shown; all: --top all.
next   sealtrend decide boat
`);
});

const rows = `engine,test,date,what,unit,c1,c2,c3,c4,ignition
a,2026-01-01a,2026-01-01,dry,psi,150,149,151,148,spark
b,2026-01-01a,2026-01-01,dry,psi,15O,149,151,148,
,2026-01-01a,2026-01-01,dry,psi,150,149,151,148,
c,2026-01-01a,2026-01-01,dry,psi,150,100,151,148,
a,2026-02-01a,2026-02-01,dry,psi,150,149,151,148,spark
`;

test("an engine with a fault is reported and skipped, the others are answered, and the exit is 1", async () => {
  const desk = newDesk();
  desk.put("fleet.csv", rows);
  const { out, err, exit } = await desk.type(["yard", "fleet.csv"]);
  expect(exit).toBe(1);
  expect(out.split("\n\n")[0]).toBe(
    "3 engines, 2 read, 1 with a fault (see below). 1 due for a test. 1 lagging, none\nsuspect. By luck alone less than one (0.1) would be lagging or suspect.",
  );
  expect(out).toContain("c           1  2026-01  2: -33 %");
  expect(err).toContain('fleet.csv:3:34 c1 "15O" is not a number');
  expect(err).toContain("fleet.csv:4:1 no name in the column engine");
  const lines = linesOf((await desk.type(["yard", "fleet.csv", "--json"])).out);
  expect(lines.map((line) => [line.engine, line.tests])).toEqual([
    ["a", 2],
    ["b", undefined],
    ["c", 1],
  ]);
  expect(lines.flatMap((line) => misfits(line, schemaOf("yard")))).toEqual([]);
  const csv = (await desk.type(["yard", "fleet.csv", "--format", "csv"])).out.split("\n");
  expect(csv[0]).toMatch(/^engine,tests,last,.*,problems$/);
  expect(csv[2]).toMatch(/^b,,+its record has a fault,+1$/);
});

test("standard input, tabs, Windows line ends, a mark and Windows-1252 are read as any file is", async () => {
  const desk = newDesk();
  desk.put("fleet.csv", rows);
  const plain = (await desk.type(["yard", "fleet.csv", "--json"])).out.replaceAll(
    "fleet.csv",
    "standard input",
  );
  const forms = [rows, rows.replaceAll("\n", "\r\n"), `\uFEFF${rows}`, rows.trimEnd()];
  for (const input of forms) expect((await desk.type(["yard", "-", "--json"], { input })).out).toBe(plain);
  const tabs = (await desk.type(["yard", "-", "--json"], { input: `sep=\t\n${rows.replaceAll(",", "\t")}` }))
    .out;
  expect(linesOf(tabs).map(({ engine, why }) => [engine, why])).toEqual(
    linesOf(plain).map(({ engine, why }) => [engine, why]),
  );
  desk.put("old.csv", Buffer.from(rows.replaceAll("\na,", "\nM\xfcller,"), "latin1"));
  const old = await desk.type(["yard", "old.csv", "--json"]);
  expect(linesOf(old.out)[0]?.engine).toBe("Müller");
  expect(old.err).toContain("was read as Windows-1252");
  desk.put("wide.csv", Buffer.from(`\uFEFF${rows}`, "utf16le"));
  const wide = await desk.type(["yard", "wide.csv"]);
  expect([wide.exit, wide.err]).toEqual([1, expect.stringContaining("save it again as CSV")]);
});

test("a table that nobody said the length of fits on a screen, and says how to see the rest", async () => {
  const desk = newDesk();
  desk.put("fleet.csv", fleetText(fleet(60)));
  const short = await desk.type(["yard", "fleet.csv"]);
  expect(short.out.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
  expect(short.out).toMatch(/\d+ of 60 shown; all: --top all\./);
  const long = await desk.type(["yard", "fleet.csv", "--top", "30"]);
  expect(long.out).toContain("30 of 60 shown");
});

test("a cylinder that the leak-down lets stand out is told by what it lost", async () => {
  const rows = ["2025", "2026"].flatMap((year) => [
    `a,${year}-05-01a,${year}-05-01,dry,1,psi,150,151,150,152`,
    `a,${year}-05-01a,${year}-05-01,leak-down,1,%,6,7,6,38`,
  ]);
  const header = "engine,test,date,what,take,unit,c1,c2,c3,c4";
  const desk = newDesk();
  desk.put("one.csv", `${[header, ...rows].join("\n")}\n`);
  const { out } = await desk.type(["yard", "one.csv", "--as-of", "2026-06-01"]);
  expect(out).toMatch(/^a .* 4: 38 % lost /m);
  expect(out).toContain("cylinder 4 lags: flagged in two tests running");
  const [line] = linesOf((await desk.type(["yard", "one.csv", "--json", "--as-of", "2026-06-01"])).out);
  expect(line?.worst).toMatchObject({ label: "4", standing: "lagging", lost: 0.38 });
  expect(misfits(line, schemaOf("yard"))).toEqual([]);
  const csv = await desk.type(["yard", "one.csv", "--format", "csv", "--as-of", "2026-06-01"]);
  expect(csv.out.split("\n")[0]).toContain("below_median,below_others,lost,held_below_others,low,leaking,");
});

test("only what is due by a day, in the order of the days", async () => {
  const { out } = await newDesk().type([
    "yard",
    demo,
    "--due",
    "2027-05-30",
    "--sort",
    "due",
    "--format",
    "csv",
  ]);
  const due = out
    .trimEnd()
    .split("\n")
    .slice(1)
    .map((line) => line.split(",")[0]);
  expect(due).toEqual(["boat", "pump", "tractor", "mill", "van"]);
});

test("a folder of logbooks is answered logbook by logbook; one that cannot be opened stops none", async () => {
  const desk = newDesk();
  for (const book of ["east", "west"]) {
    desk.put(`yard/${book}/logbook.json`, "{}");
    await desk.type([
      "engine",
      "add",
      "pump",
      "--cylinders",
      "4",
      "--ignition",
      "spark",
      "--logbook",
      `yard/${book}`,
    ]);
  }
  desk.put("yard/broken/logbook.json", "{");
  const { out, err, exit } = await desk.type(["yard", "yard", "--json"]);
  expect(linesOf(out).map(({ logbook, engine, why }) => [logbook ?? engine, why])).toEqual([
    ["broken", "it could not be read: its engines are not counted"],
    ["east/pump", "no test yet"],
    ["west/pump", "no test yet"],
  ]);
  expect([exit, err]).toEqual([1, expect.stringContaining("yard/broken/logbook.json:1:2 this is not JSON")]);
});

test.each([
  [["--top", "0"], "number-bad"],
  [["--shard", "0/3"], "number-bad"],
  [["--shard", "4/3"], "number-bad"],
  [["--workers", "x"], "number-bad"],
  [["--due", "3.4.2026"], "date-bad"],
  [["--sort", "colour"], "option-choice"],
])("%j is refused with the mend", async (words, code) => {
  const { problems } = await newDesk().json("yard", demo, ...words);
  expect(problems).toEqual([expect.objectContaining({ code, mend: expect.stringMatching(/./) as string })]);
});
