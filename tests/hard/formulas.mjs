// Expressions of a rule that try to get out, to run something, to hang or to fill the memory; then ten thousand by lot, put together
// from what the grammar has and has not. None gets past the short list of what a formula may hold, none takes longer than 5 ms,
// none gives a number that is none.
//   node tests/hard/formulas.mjs [--count 10000] [--seed 1]

import { all, create } from "mathjs";
import { faultOfNumbers, faultOfPrototypes } from "./shared/judge.mjs";
import { begin, options } from "./shared/part.mjs";
import { loadProgram } from "./shared/program.mjs";
import { randomOf } from "../random.mjs";

const { count, seed } = options({ count: "10000" });
const mostTime_ms = 5;
const program = await loadProgram();
const part = begin();

/** All that the parser's package knows by name, but what a formula may use. */
const allowed = new Set([...program.variableNames, ...program.functionNames, "not"]);
const known = Object.keys(create(all)).filter((name) => !allowed.has(name));

const written = [
  // ways to a constructor, and from there to anything
  'cos.constructor("return process")()', 'f(x)=x; f.constructor("x")()', '"a".constructor.constructor("x")()', "[].map.constructor", "{}.constructor",
  'min["constructor"]', "min.constructor.constructor", '"x".replace.call', "p.valueOf.constructor", "(p).constructor", 'expression.docs["x"]',
  "{a:1}.a.constructor", 'cos.apply(null, "x")', "bind(1)", "parse(\"cos\").constructor", 'p["\\x63onstructor"]', "p.__proto__.polluted = 1",
  '{"__proto__": {polluted: 1}}', '{"constructor": 1}', "[1].__proto__", "prototype.polluted = 1", "this.constructor", "globalThis.process",
  "process.exit(1)", 'require("fs")', 'import("fs")', "eval(1)", "Function(1)", 'chain(1).done.constructor("x")()', 'typed("x", {"": min})',
  'parser().evaluate("1")', 'evaluate("1")', 'compile("1")', 'simplify("p + p")', 'derivative("p^2", "p")', 'rationalize("p")', 'resolve("p")',
  'config({number: "BigNumber"})', "config({epsilon: 1})", 'createUnit("psig", "1 psi")', 'import({p: 1}, {override: true})', 'reviver("x", 1)',
  'replacer("x", 1)', 'help("min")', 'format(p, {notation: "fixed"})', 'print("$p", {p: 1})', 'symbolicEqual("p", "p")', 'parse("(")',
  // to hang, or to fill the memory
  "9^9^9^9", "9 ^ 9 ^ 9", "2^1023 * 2^1023", "1e308*10", "1e308", "1e999", "9e9", "bignumber(9)^9^7", "factorial(1e9)", "170!", "p!!", "gamma(1e9)",
  "zeros(9999, 9999)", "ones(1e9)", "range(1, 1e9)", "1:1e9", "0:1e-9:1", "sum(1:1000000)", "combinations(1e9, 5e8)", "isPrime(9999999967)",
  "permutations(1e9)", "identity(99999)", "random([9999, 9999])", "fraction(1, 3)^999", "inv(zeros(999,999))", "repeat(p, 1e9)", "map(1:1e9, min)",
  "f(x) = f(x); f(1)", "f(x) = f(x-1) + f(x-2)", "sparse(1e9)", "cumsum(1:1e9)", "stirlingS2(999, 500)", "bellNumbers(999)", "catalan(1e6)",
  // every form that the parser knows
  "p = 3", "p; p", "p\np", "[p, p]", "[p; p]", "[1, 2][1]", "p[1]", "p[1] = 2", "p[1:2]", "{a: 1}", "{a: 1}.a", "a.b.c", "a.b = 1", "f(x) = x", "p ? 1 : 2",
  "p ? p ? 1 : 2 : 3", "1 < p < 2", "1 < p <= 2 < 3", "1:10", "1:2:10", '"text"', "'text'", "'a", "true", "false", "null", "undefined", "NaN", "Infinity",
  "-Infinity", "i", "2i", "pi", "e", "tau", "phi", "version", "p'", "p.'", "5%", "p % 2", "p mod 2", "p xor 1", "p & 1", "p | 1", "~p", "p << 2", "p >> 2",
  "p >>> 2", "p .* 2", "p ./ 2", "p .^ 2", "p to psi", "p in psi", "3 psi", "2p", "2 p", "p p", "(p)(2)", "min(p)max(p)", "+p", "p ?? 1", "p?.x", "p |> min",
  "min(p)(1)", "min.x", "not", "and", "p and", "or p", "p == ", "== p", "p === p", "p !== p", "p <> p", "p => p", "p -> p", "p := 1", "p += 1", "p++", "--p--",
  "p, p", "min(p,)", "min(,p)", "min(p p)", "min(", "min)", ")(", "()", "(,)", "((p)", "(p))", "p()", "p(1)", "1(p)", "1.2.3", "1..2", ".", "..", ".5.",
  "0x10", "0b11", "0o7", "1e", "1e+", "1_000", "1,5", "p # c", "p // c", "/* */ p", "p\\", "p\u0000", "p\u2028p", "рatio", "min\u200b", "ｐ", "p²", "√p", "p×2", "p÷2",
  "p−1", "p≤1", "∞", "\ud800", "$p", "@p", "#p", "`p`", "${p}", "\\u0070", "&#112;", "%70", "p;drop", "__proto__", "constructor", "toString", "hasOwnProperty",
  "valueOf", "prototype", "end", "ans", "this", "self", "window", "global", "arguments", "new p", "delete p", "typeof p", "void p", "await p", "yield p",
  `${"(".repeat(100_000)}p${")".repeat(100_000)}`, `${"-".repeat(100_000)}p`, `${"not ".repeat(25_000)}p`, `${"abs(".repeat(25_000)}p`, "p+".repeat(50_000),
  `${"(".repeat(90)}p${")".repeat(90)}`, `${"-".repeat(150)}p`, `${"not ".repeat(45)}p`, `p${"^2".repeat(90)}`, "p<".repeat(99) + "p", "min(".repeat(45), "9".repeat(201), " ".repeat(100_000), "\t", "\n", "",
]; // prettier-ignore

const values = { min: 8e5, max: 1e6, mean: 9e5, median: 9e5, range: 2e5, ratio: 0.8, cv: 0.1, n: 4, p: 9e5, lost: 0.2, leastLost: 0.1, mostLost: 0.2 }; // prettier-ignore

/** One text; what is wrong with how it was taken, and whether it became a formula. */
const tryOne = async (text) => {
  let best = Infinity;
  let formula;
  for (let run = 0; run < 4 && best > mostTime_ms; run += 1) {
    const begun = performance.now();
    const read = await program.parseFormula(text);
    if (read.ok) {
      formula = read.formula;
      const value = program.evaluateFormula(formula, values);
      const fault = faultOfNumbers({ value, formula });
      if (fault !== undefined) return { fault };
    } else if (!(read.at >= 0 && read.at <= text.length)) return { fault: `a fault at ${String(read.at)}` };
    best = Math.min(best, performance.now() - begun);
  }
  if (best > mostTime_ms) return { fault: `${best.toFixed(1)} ms` };
  return { fault: faultOfPrototypes(), formula };
};

const attempt = async (label, text, mayPass) => {
  try {
    const { fault, formula } = await tryOne(text);
    const passed = formula !== undefined && !mayPass ? `is taken: ${JSON.stringify(formula)}` : undefined;
    part.tried(label, fault ?? passed);
  } catch (error) {
    part.fail(`${label}: throws ${error.stack}`);
  }
};

await program.parseFormula("p"); // the parser is loaded with the first
for (const text of written) await attempt(JSON.stringify(text.slice(0, 80)), text, false);
const shapes = [
  (name) => name,
  (name) => `${name}(p)`,
  (name) => `p + ${name}(min, max)`,
  (name) => `${name}.x`,
];
for (const name of known) for (const shape of shapes) await attempt(shape(name), shape(name), false);

const scraps = [
  ...allowed, "(", ")", "(", ")", "+", "-", "*", "/", "^", "<", "<=", ">", ">=", "==", "!=", " and ", " or ", "not ", ",", " ", ".", "0.75", "2", "6", "7", "1e9",
  "min(", "max(", "abs(", "round(", "mean(", "[", "]", "{", "}", "=", ":", ";", "?", "!", "%", "'", '"', "f(x)=", "sqrt(", "p p", "2p", "constructor", "\n",
]; // prettier-ignore
/** Half of them by the grammar alone, so that most of those are formulas. */
const grown = (random, depth) => {
  if (depth <= 0 || random.chance(0.3))
    return random.pick([...program.variableNames, "0.75", "2", "0", "1000000"]);
  const inner = () => grown(random, depth - 1);
  return random.pick([
    () => `(${inner()})`,
    () => `${inner()} ${random.pick(["+", "-", "*", "/", "<", ">=", "==", "and", "or"])} ${inner()}`,
    () => `${random.pick(program.functionNames)}(${inner()})`,
    () => `-${inner()}`,
    () => `not (${inner()})`,
    () => `${inner()} ^ ${String(random.below(8))}`,
  ])();
};
for (let nth = 1; nth <= Number(count); nth += 1) {
  const random = randomOf(Number(seed), nth);
  const text = random.chance(0.5)
    ? grown(random, 4)
    : Array.from({ length: random.between(1, 20) }, () => random.pick(scraps)).join("");
  await attempt(`case ${String(nth)} of seed ${seed}, ${JSON.stringify(text)}`, text, true);
}
part.end({ escapes: written.length, names: known.length * shapes.length, expressions: Number(count) });
