// yard: which engine stands first, what to type next, and that it stays one screen. Readings invented.

import { describe, expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const day = ["--as-of", "2026-11-26"];
const linesOf = (text: string): readonly Record<string, unknown>[] =>
  text
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line) as Record<string, unknown>);

/** Three engines of four cylinders: one that burns coolant, one with a dead cylinder, one a quarter low. */
const yardOf = async (folder = "logbook"): Promise<Desk> => {
  const desk = newDesk();
  desk.put(`${folder}/.keep`, "");
  const at = ["--logbook", folder];
  const type = async (...words: readonly string[]): Promise<void> => {
    const { exit, err } = await desk.type([...words, ...at]);
    if (exit !== 0) throw new Error(err);
  };
  for (const [id, readings] of [
    ["alder", "150 151 149 110"],
    ["birch", "150 0 149 151"],
    ["zebra", "150 151 149 150"],
  ] as const) {
    await type("engine", "add", id, "--cylinders", "4", "--ignition", "spark");
    await type("enter", id, "--date", "2026-08-03", "--dry", readings, "--unit", "psi");
  }
  await type(
    "note",
    "zebra",
    "--date",
    "2026-10-02",
    "--what",
    "combustion gas in coolant",
    "--value",
    "heavy",
  );
  return desk;
};

test("an engine that is not to be run stands first however even it reads, then the one that holds nothing", async () => {
  const desk = await yardOf();
  const { out } = await desk.type(["yard", ...day]);
  const order = out.split("\n").flatMap((line) => /^(alder|birch|zebra) /.exec(line)?.[1] ?? []);
  expect(order).toEqual(["zebra", "birch", "alder"]);
  expect(out).toMatch(/^3 engines\. 1 not to be run, /);
  expect(out).toMatch(/^zebra .* even .*\n {4}do not run it/m);
  expect(out).toContain("\nnext   sealtrend decide zebra\n");
  const decide = await desk.json("decide", "zebra", ...day);
  expect((await desk.type(["decide", "zebra", ...day])).out).toMatch(/do not run it|it is not run/);
  const json = linesOf((await desk.type(["yard", "--json", "--sort", "worst", ...day])).out);
  expect(json.map(({ engine }) => engine)).toEqual(["zebra", "birch", "alder"]);
  const { code, urgency } = decide.decision as { readonly code: string; readonly urgency?: string };
  expect(json[0]?.decision).toMatchObject({ code, urgency: "stop", use: "not-run" });
  expect(urgency ?? "stop").toBe("stop");
  expect(json.flatMap((line) => misfits(line, schemaOf("yard")))).toEqual([]);
});

test("the next command names the logbook where it was typed, and the logbook of a folder of them", async () => {
  const desk = await yardOf("barns/north");
  const next = async (where: string): Promise<string> =>
    /\nnext {3}(sealtrend .*)\n/.exec((await desk.type(["yard", where, ...day])).out)?.[1] ?? "";
  for (const where of ["barns", "barns/north"]) {
    const command = await next(where);
    expect(command).toBe("sealtrend decide zebra --logbook barns/north");
    const { exit, out } = await desk.type(command.split(" ").slice(1));
    expect([exit, out]).toEqual([0, expect.stringContaining("combustion gas")]);
  }
});

const header = "engine,ignition,test,date,what,unit,c1,c2,c3,c4";
const csvRow = (engine: string, cells: string, date = "2026-05-01"): string =>
  `${engine},spark,${date}a,${date},dry,psi,${cells}`;

test("of a CSV the next command takes it into a logbook, and works", async () => {
  const desk = newDesk();
  desk.put("fleet.csv", [header, csvRow("Red Pump", "150,151,149,131"), ""].join("\n"));
  const { out } = await desk.type(["yard", "fleet.csv", ...day]);
  const command =
    /\nnext {3}decide tells more of what is in a logbook: sealtrend (.*)\n$/.exec(out)?.[1] ?? "";
  expect(command).toBe("import fleet.csv");
  expect((await desk.type([...command.split(" "), "--logbook", "book", "--write"])).exit).toBe(0);
  expect((await desk.type(["decide", "red-pump", "--logbook", "book", ...day])).exit).toBe(0);
});

test("with long names and faults the table stays a table, and all of it one screen", async () => {
  const desk = newDesk();
  const sound = Array.from({ length: 40 }, (_, i) =>
    csvRow(`The ${i % 2 === 0 ? "north" : "south"} workshop compressor ${String(i)}`, "150,151,149,110"),
  );
  const faulty = Array.from({ length: 30 }, (_, i) => csvRow(`faulty ${String(i)}`, "15O,151,149,150"));
  desk.put("fleet.csv", [header, ...sound, ...faulty, ""].join("\n"));
  const { exit, out, err } = await desk.type(["yard", "fleet.csv", "--decide", ...day]);
  expect(exit).toBe(1);
  const lines = `${out}${err}`.trimEnd().split("\n");
  expect(lines.length).toBeLessThanOrEqual(24);
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
  expect(out).toContain("30 with a fault (see below)");
  expect(err).toMatch(/2[89] more with a fault; each: --format jsonl/);
  expect(out).toMatch(/^engine .*decision +due$/m);
});

describe("engines not to be run", () => {
  /** Engines with gas in the coolant, as many sound ones, and one whose row has a slip. */
  const yardWith = async (stopped: number, ...words: readonly string[]) => {
    const desk = await yardOf();
    const put = (id: string, cells: string, note: string): void => {
      desk.put(`logbook/${id}/engine.json`, '{"cylinders": ["1", "2", "3", "4"], "ignition": "spark"}');
      const test = `2026-08-03a,2026-08-03,dry,psi,${cells}`;
      desk.put(`logbook/${id}/tests.csv`, `test,date,what,unit,c1,c2,c3,c4\n${test}\n`);
      desk.put(`logbook/${id}/notes.csv`, `date,what,value\n${note}`);
    };
    for (let i = 1; i < stopped; i++)
      put(`zebra-${String(i)}`, "150,151,149,150", "2026-10-02,combustion gas in coolant,heavy\n");
    for (let i = 0; i < 20; i++) put(`sound-${String(i)}`, "150,151,149,150", "");
    put("faulty", "15O,151,149,150", "");
    const { exit, out, err } = await desk.type(["yard", ...words, ...day]);
    expect(exit).toBe(1);
    expect(out).toContain(` ${String(stopped)} not to be run`);
    return { out, err, shown: out.match(/^zebra.* /gm)?.length };
  };

  test("are all shown before a fault gets more than its place", async () => {
    const { out, err, shown } = await yardWith(5);
    expect(shown).toBe(5);
    expect(err).toMatch(/^logbook.faulty.tests\.csv:2:\d+ .*15O/m);
    expect(err.replace(/\s+/g, " ")).toContain("; the mend: --top all");
    expect(err).not.toContain("expected");
    expect(`${out}${err}`.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
  });

  test("leave the fault its mend where both have room, and where all is asked for", async () => {
    expect((await yardWith(1)).err).toContain("expected");
    const { err, shown } = await yardWith(5, "--top", "all");
    expect([shown, err]).toEqual([5, expect.stringContaining("expected")]);
  });
});

test("CSV has what a reading carries, on one line; JSON has every digit", async () => {
  const desk = newDesk();
  desk.put(
    "fleet.csv",
    [header, csvRow('"Red\nPump"', "150,151,149,109"), csvRow("b", "0,151,0,149"), ""].join("\n"),
  );
  const csv = (await desk.type(["yard", "fleet.csv", "--format", "csv", ...day])).out.trimEnd().split("\n");
  const columns = csv[0]?.split(",") ?? [];
  const cell = (line: number, name: string): string | undefined =>
    csv[line]?.split(",")[columns.indexOf(name)];
  // 109 of 150
  expect([cell(1, "engine"), cell(1, "below_others"), cell(2, "low")]).toEqual([
    "Red\\u{a}Pump",
    "0.2733",
    "1 3",
  ]);
  const [json] = linesOf((await desk.type(["yard", "fleet.csv", "--json", ...day])).out);
  expect((json?.worst as { readonly belowOthers: number }).belowOthers).toBeCloseTo(1 - 109 / 150, 12);
  const both = await desk.type(["yard", "fleet.csv", "--format", "csv", "--json", ...day]);
  expect([both.out.split("\n")[0], both.err]).toEqual([csv[0], expect.stringContaining("not --json")]);
});

test("whoever decides where lives hang on it is named, and a boat is not taken for an aircraft", async () => {
  const desk = await yardOf();
  const licensed = "Where lives hang on an engine, or it is to fly, a licensed person decides.";
  expect((await desk.type(["yard", ...day])).out).not.toContain(licensed);
  await desk.type(["engine", "set", "alder", "use", "boat"]);
  await desk.type(["engine", "set", "alder", "remote", "true"]);
  const { out } = await desk.type(["yard", ...day]);
  expect(out).toContain(licensed);
  expect(out).not.toContain("Aircraft");
});

test("what holds nothing says so in its document too", async () => {
  const desk = await yardOf();
  const rows = linesOf((await desk.type(["yard", "--json", ...day])).out);
  expect(rows.flatMap((line) => misfits(line, schemaOf("yard")))).toEqual([]);
  expect(rows.find(({ engine }) => engine === "birch")).toMatchObject({
    low: [{ label: "2", held: "nothing" }],
  });
  expect(JSON.stringify(rows.find(({ engine }) => engine === "alder"))).not.toContain('"held"');
});
