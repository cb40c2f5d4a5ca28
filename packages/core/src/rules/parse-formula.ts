// Text to formula. mathjs only splits the text into its tree and never computes; what is not on the short list
// below is refused, and what is left is copied into a tree of our own.

import type * as mathjs from "mathjs";
import { type Formula, arithmeticOperators, comparisons, functionNames, variableNames } from "./formula.ts";

export type FormulaFault =
  | { readonly kind: "empty" }
  | { readonly kind: "long"; readonly length: number }
  | { readonly kind: "syntax" | "sign" | "name" | "form" | "exponent"; readonly text: string }
  | { readonly kind: "nodes" | "depth" };

export type FormulaReading =
  | { readonly ok: true; readonly formula: Formula }
  /** `at` counts the characters of the text before the fault. */
  | { readonly ok: false; readonly fault: FormulaFault; readonly at: number };

const mostCharacters = 200;
const mostNodes = 200;
const mostDepth = 20;
const mostExponent = 6;

/** Reads a formula such as `(max - min) / max`: numbers, the names of formula.ts, parentheses, + - * / ^,
 *  comparisons, and, or, not. At most 200 characters, 200 nodes, 20 deep; an exponent is a number of at most 6. */
export const parseFormula = async (text: string): Promise<FormulaReading> => {
  const early = faultOfText(text);
  if (early !== undefined) return early;
  const parse = await parser();
  try {
    return { ok: true, formula: copier()(parse(text), 1) };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, fault: error.fault, at: placeIn(text, error.fault) };
    if (error instanceof SyntaxError) return syntaxFault(text, error);
    throw error;
  }
};

class Refused extends Error {
  readonly fault: FormulaFault;
  constructor(fault: FormulaFault) {
    super(fault.kind);
    this.fault = fault;
  }
}

type Parse = (text: string) => mathjs.MathNode;
let loaded: Promise<Parse> | undefined;

const parser = (): Promise<Parse> => (loaded ??= loadParser());

const loadParser = async (): Promise<Parse> => {
  const { create, parseDependencies } = await import("mathjs/number");
  const { parse } = create({ ...parseDependencies });
  return (text) => parse(text);
};

const faultOfText = (text: string): FormulaReading | undefined => {
  if (text.trim() === "") return { ok: false, fault: { kind: "empty" }, at: 0 };
  if (text.length > mostCharacters)
    return { ok: false, fault: { kind: "long", length: text.length }, at: mostCharacters };
  const strange = /[^A-Za-z0-9 .,()+\-*/^<>=!]|\d[A-Za-z]+/.exec(text);
  if (strange === null) return undefined;
  return { ok: false, fault: { kind: "sign", text: strange[0] }, at: strange.index };
};

const syntaxFault = (text: string, error: SyntaxError): FormulaReading => {
  const char = "char" in error && typeof error.char === "number" ? error.char : 1;
  const at = Math.min(Math.max(char - 1, 0), text.length);
  return { ok: false, fault: { kind: "syntax", text: text.slice(at).trim().split(" ")[0] ?? "" }, at };
};

const placeIn = (text: string, fault: FormulaFault): number =>
  "text" in fault ? Math.max(0, text.search(new RegExp(`\\b${fault.text.replace(/\W/g, "\\$&")}\\b`))) : 0;

/** Copies one parsed tree, counting its nodes. @throws Refused at the first node that is not on the list */
const copier = (): ((node: mathjs.MathNode, depth: number) => Formula) => {
  let nodes = 0;
  const copy = (node: mathjs.MathNode, depth: number): Formula => {
    nodes += 1;
    if (nodes > mostNodes) throw new Refused({ kind: "nodes" });
    if (depth > mostDepth) throw new Refused({ kind: "depth" });
    if (isParenthesis(node)) return copy(node.content, depth + 1);
    if (isConstant(node)) return numberOf(node);
    if (isSymbol(node)) return { kind: "variable", name: named(variableNames, node.name) };
    if (isFunction(node))
      return functionOf(
        node,
        node.args.map((part) => copy(part, depth + 1)),
      );
    if (isOperator(node))
      return operatorOf(
        node,
        node.args.map((part) => copy(part, depth + 1)),
      );
    throw new Refused({ kind: "form", text: node.type });
  };
  return copy;
};

type AnyOperator = mathjs.MathNode & {
  readonly op: string;
  readonly fn: string;
  readonly implicit: boolean;
  readonly args: readonly mathjs.MathNode[];
};
type AnyFunction = mathjs.MathNode & {
  readonly fn: mathjs.MathNode;
  readonly args: readonly mathjs.MathNode[];
};

const isParenthesis = (node: mathjs.MathNode): node is mathjs.ParenthesisNode =>
  node.type === "ParenthesisNode";
const isConstant = (node: mathjs.MathNode): node is mathjs.MathNode & { readonly value: unknown } =>
  node.type === "ConstantNode";
const isSymbol = (node: mathjs.MathNode): node is mathjs.SymbolNode => node.type === "SymbolNode";
const isFunction = (node: mathjs.MathNode): node is AnyFunction => node.type === "FunctionNode";
const isOperator = (node: mathjs.MathNode): node is AnyOperator => node.type === "OperatorNode";

const numberOf = ({ value }: { readonly value: unknown }): Formula => {
  if (typeof value === "number" && Number.isFinite(value)) return { kind: "number", value };
  throw new Refused({ kind: "name", text: String(value) });
};

const named = <N extends string>(names: readonly N[], text: string): N => {
  const found = names.find((name) => name === text);
  if (found === undefined) throw new Refused({ kind: "name", text });
  return found;
};

const functionOf = ({ fn }: AnyFunction, of: readonly Formula[]): Formula => {
  if (!isSymbol(fn)) throw new Refused({ kind: "form", text: fn.type });
  const name = named(functionNames, fn.name);
  const single = name === "abs" || name === "round";
  if (of.length === 0 || (single && of.length > 1)) throw new Refused({ kind: "form", text: name });
  return { kind: "function", name, of };
};

const operatorOf = ({ op, fn, implicit }: AnyOperator, parts: readonly Formula[]): Formula => {
  const [left, right] = parts;
  if (implicit || left === undefined) throw new Refused({ kind: "form", text: implicit ? "implicit" : op });
  if (fn === "unaryMinus") return { kind: "negative", of: left };
  if (fn === "not") return { kind: "not", of: left };
  if (right === undefined) throw new Refused({ kind: "form", text: op });
  if (op === "and" || op === "or") return { kind: op === "and" ? "both" : "either", left, right };
  const comparison = comparisons.find((known) => known === op);
  if (comparison !== undefined) return { kind: "comparison", operator: comparison, left, right };
  const operator = arithmeticOperators.find((known) => known === op);
  if (operator === undefined) throw new Refused({ kind: "form", text: op });
  if (operator === "^" && (right.kind !== "number" || right.value > mostExponent))
    throw new Refused({ kind: "exponent", text: right.kind === "number" ? String(right.value) : "" });
  return { kind: "arithmetic", operator, left, right };
};
