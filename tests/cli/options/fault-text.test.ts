// How faults are printed: sorted by place, all of them, with the line and a mark under it.

import { run, Stop, type Command, type Fault } from "sealtrend";
import { expect, test } from "vitest";
import { fakeIo } from "../fake-io.ts";

const printed = async (faults: readonly Fault[], { width = 80, json = false } = {}): Promise<string> => {
  const command: Command = {
    name: "proofread",
    summary: "examine every file",
    examples: ["proofread"],
    positionals: [],
    options: [],
    run: () => Promise.reject(new Stop(1, faults)),
  };
  const io = fakeIo({ width });
  await run(json ? ["proofread", "--json"] : ["proofread"], io, [command]);
  return json ? io.stdout() : io.stderr();
};

const fault = (more: Partial<Fault> = {}): Fault => ({
  code: "number-bad",
  severity: "error",
  file: "tests.csv",
  line: 9,
  column: 56,
  found: 'c4 "14O" is not a number: a letter O stands where a zero may belong',
  expected: "a number such as 131 or 9.8",
  mend: "write 140, or x if it was not taken",
  ...more,
});

const row = "2026-05-02a,2026-05-02,1412,dry,1,black,psi,126,125,111,14O,350";
const at = row.indexOf("14O") + 1;

test("a fault shows its place, the line, a mark under the fault, what was expected and the mend", async () => {
  expect(await printed([fault({ column: at, excerpt: { text: row, from: at, to: at + 2 } })])).toBe(
    [
      'tests.csv:9:57 c4 "14O" is not a number: a letter O stands where a zero may',
      "belong",
      "    2026-05-02a,2026-05-02,1412,dry,1,black,psi,126,125,111,14O,350",
      "                                                            ^^^",
      "    expected a number such as 131 or 9.8",
      "    write 140, or x if it was not taken",
      "",
    ].join("\n"),
  );
});

test("a long line is cut to the width, with the fault in sight", async () => {
  const text = `${"126,".repeat(60)}14O,${"125,".repeat(60)}`;
  const from = text.indexOf("14O") + 1;
  for (const width of [40, 60, 80]) {
    const lines = (await printed([fault({ excerpt: { text, from, to: from + 2 } })], { width })).split("\n");
    const mark = lines.findIndex((line) => line.includes("^^^"));
    expect(lines[mark - 1]?.slice(lines[mark]?.indexOf("^"), (lines[mark]?.indexOf("^") ?? 0) + 3)).toBe(
      "14O",
    );
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(width);
  }
});

test("the mark stands right after hidden and wide letters, which are written out or take two columns", async () => {
  const text = "\u202e水,14O";
  const lines = (await printed([fault({ excerpt: { text, from: 4, to: 6 } })])).split("\n");
  const mark = lines.findIndex((line) => line.includes("^"));
  expect(lines[mark - 1]).toBe("    \\u{202e}水,14O");
  expect(lines[mark]).toBe(`${" ".repeat(4 + 8 + 2 + 1)}^^^`);
});

test("an empty cell has one mark", async () => {
  expect(await printed([fault({ excerpt: { text: "1,,2", from: 3, to: 2 } })])).toContain(
    "    1,,2\n      ^\n",
  );
});

test("faults are sorted by file, line and column, and those without a place come first", async () => {
  const { file: _, line: __, column: ___, ...bare } = fault();
  const faults = [
    fault({ file: "b.csv" }),
    fault({ line: 10 }),
    fault({ line: 2, column: 7 }),
    fault({ line: 2, column: 3 }),
    bare,
  ];
  const places = JSON.parse(await printed(faults, { json: true })) as { problems: Fault[] };
  expect(places.problems.map(({ file, line, column }) => [file, line, column])).toEqual([
    [undefined, undefined, undefined],
    ["b.csv", 9, 56],
    ["tests.csv", 2, 3],
    ["tests.csv", 2, 7],
    ["tests.csv", 10, 56],
  ]);
});

test("many faults of one kind in one file are folded for a person, never for a script", async () => {
  const faults = Array.from({ length: 20 }, (_, i) => fault({ line: i + 2, column: 1 }));
  const text = await printed([
    ...faults,
    fault({ file: "other.csv" }),
    fault({ code: "date-bad", line: 30 }),
  ]);
  expect(text.match(/^tests\.csv:\d+:1 c4/gm)).toHaveLength(3);
  expect(text).toContain("\ntests.csv: 17 more like it, lines 5 to 21\n");
  expect(text).toContain("other.csv:9:56 ");
  expect(text).toContain("tests.csv:30:56 ");
  expect((JSON.parse(await printed(faults, { json: true })) as { problems: Fault[] }).problems).toHaveLength(
    20,
  );
});

test("five of a kind are all shown", async () => {
  const text = await printed(Array.from({ length: 5 }, (_, i) => fault({ line: i + 2, column: 1 })));
  expect(text.match(/^tests\.csv:\d+:1 c4/gm)).toHaveLength(5);
});

test("a caution says that it is one", async () => {
  expect(await printed([fault({ severity: "caution", found: "the row ends early" })])).toMatch(
    /^tests\.csv:9:56 caution: the row ends early\n/,
  );
});

test("a mend that is a command stays on one line, to be copied", async () => {
  const mend = "sealtrend amend boat --test 2025-05-10a --what dry --take 1 --cylinder 4 --to 141";
  expect(await printed([fault({ mend })], { width: 60 })).toContain(`\n    ${mend}\n`);
});
