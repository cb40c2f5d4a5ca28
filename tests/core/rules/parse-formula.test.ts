import fc from "fast-check";
import { expect, test } from "vitest";
import { evaluateFormula, parseFormula } from "../../../packages/core/src/rules/index.ts";
import { parsed } from "./rule-readings.ts";

// Ways out of an expression parser that were found in general-purpose ones over the years, and every form of
// expression that such a parser knows and a rule has no use for. None may give a formula.
const escapes: readonly string[] = [
  'cos.constructor("return process")()',
  '"a".constructor',
  "{}.__proto__",
  '{"__proto__": {"p": 1}}',
  "p.constructor",
  "p.__proto__.x",
  "min.constructor",
  "max.call(1)",
  "mean.apply",
  "[].map",
  "[1, 2, 3]",
  "[p]",
  "p[1]",
  "p[1] = 2",
  "p = 3",
  "min = 3",
  "f(x) = x",
  "f(x) = f(x)",
  "min(x) = 1",
  "p; max",
  "p\nmax",
  "p ? 1 : 2",
  "p ?? 1",
  "1:1000000",
  "sum(1:1000000)",
  "p > 1 > 0",
  "1 < p < 2",
  'config({number: "BigNumber"})',
  "import({p: 1})",
  'createUnit("psig")',
  'evaluate("1")',
  'parse("1")',
  'simplify("p")',
  'derivative("p", "p")',
  "parser()",
  "typed(p)",
  "help(p)",
  "zeros(3000, 3000)",
  "ones(9999)",
  "bignumber(9)",
  "bignumber(9) ^ 9 ^ 7",
  "9 ^ 9 ^ 9",
  "p ^ 7",
  "p ^ n",
  "p ^ (2)^ 9",
  "p ^ -1",
  "170!",
  "p!",
  "p'",
  "5%",
  "p % 2",
  "p mod 2",
  "p xor 1",
  "p & 1",
  "p | 1",
  "~ p",
  "p << 2",
  "p >>> 2",
  "p .* 2",
  "p ./ 2",
  "p .^ 2",
  "p to psi",
  "p in psi",
  "3 psi",
  "2 p",
  "2p",
  "(p)(2)",
  "min(p)max(p)",
  "+p",
  "true",
  "false",
  "null",
  "undefined",
  "NaN",
  "Infinity",
  "i",
  "pi",
  "e",
  "1e3",
  "1e999",
  "0x10",
  "0b11",
  '"text"',
  "'text'",
  "p # comment",
  "end",
  "ans",
  "this",
  "globalThis",
  "process",
  "constructor",
  "__proto__",
  "toString",
  "hasOwnProperty",
  "prototype",
  "valueOf()",
  "random()",
  "sqrt(p)",
  "exp(1)",
  "log(p)",
  "print(p)",
  "format(p)",
  "min()",
  "abs()",
  "abs(1, 2)",
  "round(1, 2)",
  "min(p)(1)",
  "reviver()",
  "resolve(p)",
  "unit(5)",
  "chain(p)",
  "p\\max",
  "p\u0000",
  "рatio",
  "min\u200b",
  "0,75*max",
  "(",
  "p +",
  "* p",
  "",
  "   ",
  `${"(".repeat(30)}p${")".repeat(30)}`,
  `p${" + 1".repeat(60)}`,
  `${"-".repeat(25)}p`,
  `${"abs(".repeat(25)}p${")".repeat(25)}`,
];

test.each(escapes)("%j is no formula", async (text) => {
  expect(await parseFormula(text)).toMatchObject({ ok: false });
});

test("a formula is plain data and survives a round trip through JSON", async () => {
  const tree = await parsed("not (min < 0.75 * max) and abs(p - mean) / mean <= 0.2");
  expect(JSON.parse(JSON.stringify(tree))).toEqual(tree);
});

test("parentheses leave no trace of their own", async () => {
  expect(await parsed("((max - min)) / (max)")).toEqual({
    kind: "arithmetic",
    operator: "/",
    left: {
      kind: "arithmetic",
      operator: "-",
      left: { kind: "variable", name: "max" },
      right: { kind: "variable", name: "min" },
    },
    right: { kind: "variable", name: "max" },
  });
});

test("the limits of size are 200 characters, 200 parts and 20 deep, each inclusive", async () => {
  expect(await parseFormula("p".padEnd(200))).toMatchObject({ ok: true });
  expect(await parseFormula("p".padEnd(201))).toMatchObject({
    ok: false,
    fault: { kind: "long", length: 201 },
  });
  expect(await parseFormula(`${"(".repeat(19)}p${")".repeat(19)}`)).toMatchObject({ ok: true });
  expect(await parseFormula(`${"(".repeat(20)}p${")".repeat(20)}`)).toMatchObject({
    ok: false,
    fault: { kind: "depth" },
  });
  expect(await parseFormula("p ^ 6")).toMatchObject({ ok: true });
});

test.each([
  ["p + foo", "name", 4],
  ["0.75max", "sign", 3],
  ["p + $", "sign", 4],
  ["p + ", "syntax", 4],
  ["p / / 2", "syntax", 4],
  ["min / max)", "syntax", 9],
])("the fault in %j is a %s after %d characters", async (text, kind, at) => {
  expect(await parseFormula(text)).toMatchObject({ ok: false, fault: { kind }, at });
});

test("no text at all can make the reader or the evaluator throw", async () => {
  const scraps = fc.constantFrom(
    "p",
    "min",
    "max(",
    "(",
    ")",
    "+",
    "-",
    "*",
    "/",
    "^",
    "<",
    ">=",
    "and ",
    "not ",
    "0.75",
    "2",
    ",",
    " ",
    ".",
    "ratio",
    "foo",
  );
  const text = fc.oneof(
    fc.string({ maxLength: 40 }),
    fc.array(scraps, { maxLength: 20 }).map((parts) => parts.join("")),
  );
  await fc.assert(
    fc.asyncProperty(text, async (formula) => {
      const reading = await parseFormula(formula);
      const value = reading.ok
        ? evaluateFormula(reading.formula, { p: 1, min: 1, max: 2, ratio: 0.5 })
        : undefined;
      expect(typeof value === "number" ? Number.isFinite(value) : true).toBe(true);
    }),
    { numRuns: 1_000 },
  );
});
