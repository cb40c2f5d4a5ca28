import { expect, test } from "vitest";
import { readRuleSheet } from "../../../packages/core/src/rules/index.ts";

const header = "id,family,formula,limit,unit,compare,applies,text,source,status";
const row =
  "quarter,ratio,p / max,0.75,1,>=,use=road cylinders=2..,lowest at least 0.75,manual p. 30,excerpt seen";
const columns = header.split(",");

/** The good row with one cell changed. */
const rowWith = (column: string, text: string): string => {
  const cells = row.split(",");
  cells[columns.indexOf(column)] = text;
  return cells.join(",");
};

const faults = async (...lines: readonly string[]) => {
  const outcome = await readRuleSheet(`${lines.join("\n")}\n`, "my.csv");
  return outcome.ok
    ? []
    : outcome.problems.map(({ code, file, line, column }) => ({ code, file, line, column }));
};

test("a sheet in order gives its rules, limits in pascals or as fractions", async () => {
  const second = "low,minimum,p,90,psi,>=,,each 90 psi or more,manual p. 31,from memory";
  const outcome = await readRuleSheet([header, row, second].join("\r\n"), "my.csv");
  expect(outcome).toMatchObject({
    ok: true,
    value: {
      file: "my.csv",
      rules: [
        {
          id: "quarter",
          holds: "fraction",
          limit: { value: 0.75, unit: "1", compare: ">=" },
          applies: { kind: "engines", use: ["road"], cylinders: { least: 2 } },
        },
        // 90 psi = 90 * 6894.757293168361 Pa, by the definition of the pound-force and the inch
        {
          id: "low",
          holds: "pressure",
          limit: { value: 620528.1563851525, unit: "psi", compare: ">=" },
          status: "from memory",
        },
      ],
    },
  });
});

test("comment lines at the top are passed over and later lines keep their numbers", async () => {
  expect(await faults("# my own rules", "", "# second", header, rowWith("limit", "O.75"))).toEqual([
    { code: "number-bad", file: "my.csv", line: 5, column: 23 },
  ]);
});

test("columns may stand in any order, with semicolons and decimal commas", async () => {
  const reversed = (text: string, cells: readonly string[]): string => cells.toReversed().join(text);
  const cells = row.split(",").map((cell) => (cell === "0.75" ? "0,75" : cell));
  const outcome = await readRuleSheet(`${reversed(";", columns)}\n${reversed(";", cells)}\n`, "my.csv");
  expect(outcome).toMatchObject({ ok: true, value: { rules: [{ id: "quarter", limit: { value: 0.75 } }] } });
});

test("a formula that says yes or no has no limit", async () => {
  const outcome = await readRuleSheet(
    `${header}\nboth,ratio,ratio > 0.7 and cv < 0.1,,,,,both,mine,judgement\n`,
    "my.csv",
  );
  expect(outcome).toMatchObject({ ok: true, value: { rules: [{ id: "both", holds: "truth" }] } });
});

// Columns of the good row: id 1, family 9, formula 15, limit 23, unit 28, compare 30, applies 33, text 56, source 77, status 90
const oneFault: readonly (readonly [string, string, string, number])[] = [
  ["id", "", "rule-cell-empty", 1],
  ["id", "Quarter", "rule-id", 1],
  ["id", "__proto__", "rule-id", 1],
  ["family", "ration", "word-unknown", 9],
  ["formula", "", "rule-formula", 15],
  ["formula", "p / foo", "rule-formula", 19],
  ["formula", "p /", "rule-formula", 18],
  ["formula", "p / max.constructor", "rule-formula", 15],
  ["formula", "p - 100", "rule-mixed", 15],
  ["formula", "p * max", "rule-mixed", 15],
  ["formula", "round(p) / max", "rule-mixed", 15],
  ["formula", "(p > 1) and ratio", "rule-mixed", 15],
  ["formula", "p > max + ratio", "rule-mixed", 15],
  ["formula", "not p", "rule-mixed", 15],
  ["limit", "", "rule-cell-empty", 23],
  ["limit", "three quarters", "number-bad", 23],
  ["unit", "", "rule-cell-empty", 28],
  ["unit", "mmHg", "word-unknown", 28],
  ["unit", "psi", "rule-unit", 28],
  ["compare", "=>", "word-unknown", 30],
  ["applies", "use=moon", "rule-applies", 33],
  ["applies", "use=road use=farm", "rule-applies", 33],
  ["applies", "cylinders=4..2", "rule-applies", 33],
  ["applies", "cylinders=0", "rule-applies", 33],
  ["applies", "colour=red", "rule-applies", 33],
  ["applies", "use=road=farm", "rule-applies", 33],
  ["text", "", "rule-cell-empty", 56],
  ["source", "", "rule-cell-empty", 77],
  ["status", "sure", "word-unknown", 90],
];

test.each(oneFault)("%s %j is a fault %s at its own column", async (column, text, code, at) => {
  expect(await faults(header, rowWith(column, text))).toEqual([
    { code, file: "my.csv", line: 2, column: at },
  ]);
});

test("a limit whose mark may divide thousands is refused", async () => {
  expect(await faults(header, rowWith("limit", '"1,000"'))).toMatchObject([{ code: "number-two-ways" }]);
});

test("a limit beside a formula that says yes or no is refused, cell by cell", async () => {
  expect((await faults(header, rowWith("formula", "ratio > 0.75"))).map(({ code }) => code)).toEqual([
    "rule-limit-spare",
    "rule-limit-spare",
    "rule-limit-spare",
  ]);
});

test("an id that stands twice names the line of the first", async () => {
  const outcome = await readRuleSheet([header, row, row, ""].join("\n"), "my.csv");
  expect(outcome).toMatchObject({
    ok: false,
    problems: [{ code: "rule-twice", line: 3, found: 'the id "quarter" stands on line 2 already' }],
  });
});

test("all faults of a sheet are told, in the order of the file", async () => {
  expect(
    await faults(
      header,
      rowWith("unit", "psi"),
      rowWith("id", "A"),
      rowWith("formula", "q").replace("quarter", "other"),
    ),
  ).toMatchObject([
    { code: "rule-unit", line: 2 },
    { code: "rule-id", line: 3 },
    { code: "rule-formula", line: 4 },
  ]);
});

test("a missing column is told once and ends the reading", async () => {
  expect(await faults("id,family,formula,limit,unit,compare,applies,text,source", "x,,,,,,,,")).toMatchObject(
    [{ code: "column-missing" }],
  );
});

test("an unknown column is only remarked on", async () => {
  const outcome = await readRuleSheet(`${header},colour\n${row},red\n`, "my.csv");
  expect(outcome).toMatchObject({ ok: true, cautions: [{ code: "rule-column", column: header.length + 2 }] });
});

test.each([
  ["", "file-empty"],
  ["# only a comment\n", "file-empty"],
  [`${header}\n`, "rule-none"],
])("a sheet %j without rules is a fault", async (text, code) => {
  expect(await readRuleSheet(text, "my.csv")).toMatchObject({ ok: false, problems: [{ code }] });
});

test("every fault says what was found, what was expected and what to write", async () => {
  const texts = oneFault.map(([column, text]) => `${header}\n${rowWith(column, text)}\n`);
  for (const text of texts) {
    const outcome = await readRuleSheet(text, "my.csv");
    const words = outcome.ok
      ? []
      : outcome.problems.flatMap(({ found, expected, mend }) => [found, expected, mend]);
    expect(words.length).toBeGreaterThan(0);
    expect(words.filter((word) => word.trim() === "" || word.includes("undefined"))).toEqual([]);
  }
});

test.each([
  ["p / foo", '"foo" is no name that a formula may use'],
  ["0.75max", '"5max" has no meaning in a formula'],
  ["2 max", "a multiplication without a sign has no place in a formula"],
  ["1 < p < 2", "two comparisons in a row has no place in a formula"],
  ["p ^ 9", "an exponent that is not a number of at most 6"],
  ["p /", "the formula ends too early"],
])("the formula %j is told why it is refused", async (formula, why) => {
  const outcome = await readRuleSheet(`${header}\n${rowWith("formula", formula)}\n`, "my.csv");
  expect(outcome).toMatchObject({ ok: false, problems: [{ found: `formula "${formula}": ${why}` }] });
});
