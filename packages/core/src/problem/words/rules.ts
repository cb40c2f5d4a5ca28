// Sentences for faults in a rule sheet.

import { quoted } from "./print.ts";

const names = "min, max, mean, median, range, ratio, cv, n, p";
const functions = "min(), max(), mean(), abs(), round()";

/** What can be wrong with a formula; `kind` as the parser names it. */
type FormulaFacts =
  | { readonly kind: "empty" }
  | { readonly kind: "long"; readonly length: number }
  | { readonly kind: "syntax" | "sign" | "name" | "form" | "exponent"; readonly text: string }
  | { readonly kind: "nodes" | "depth" };

const forms: Readonly<Record<string, string>> = {
  implicit: "a multiplication without a sign",
  RelationalNode: "two comparisons in a row",
  AssignmentNode: "an assignment",
  FunctionAssignmentNode: "a definition of a function",
  AccessorNode: "a property",
  min: "min without numbers",
  max: "max without numbers",
  mean: "mean without numbers",
  abs: "abs of other than one number",
  round: "round of other than one number",
};

const formMends: Readonly<Record<string, string>> = {
  implicit: "write the sign: 0.75 * max",
  RelationalNode: "join two comparisons with and: ratio > 0.7 and ratio < 0.8",
};

const formulaWords = (fault: FormulaFacts): { readonly why: string; readonly mend: string } => {
  switch (fault.kind) {
    case "empty":
      return { why: "no formula", mend: "write one, such as min / max" };
    case "long":
      return { why: `a formula of ${String(fault.length)} characters`, mend: "shorten it to 200 characters" };
    case "sign":
      return {
        why: `${quoted(fault.text)} has no meaning in a formula`,
        mend: "take it out; decimals have a point, * stands between factors",
      };
    case "name":
      return {
        why: `${quoted(fault.text)} is no name that a formula may use`,
        mend: `use ${names}, or ${functions}`,
      };
    case "exponent":
      return {
        why: "an exponent that is not a number of at most 6",
        mend: "write a number from 0 to 6 after ^",
      };
    case "form":
      return {
        why: `${forms[fault.text] ?? quoted(fault.text)} has no place in a formula`,
        mend:
          formMends[fault.text] ?? "use numbers, names, parentheses, + - * / ^, comparisons, and, or, not",
      };
    case "syntax":
      return {
        why:
          fault.text === ""
            ? "the formula ends too early"
            : `the formula cannot be read from ${quoted(fault.text)} on`,
        mend: "look for a missing sign, name or parenthesis just before this place; decimals have a point",
      };
    case "nodes":
    case "depth":
      return { why: "a formula with too many parts inside each other", mend: "split it into two rules" };
  }
};

export const rulesWords = {
  "rule-none": (_: object) => ({
    found: "the sheet has column names but no rule",
    expected: "a rule a row",
    mend: "add a row, such as: quarter,ratio,p / max,0.75,1,>=,,lowest at least 0.75 of the highest,manual p. 30,excerpt seen",
  }),
  "rule-column": ({ name }: { name: string }) => ({
    found: `the column ${quoted(name)} is not read`,
    expected: "id, family, formula, limit, unit, compare, applies, text, source, status",
    mend: "leave it, or rename it if one of these was meant",
  }),
  "rule-cell-empty": ({ column }: { column: string }) => ({
    found: `no ${column}`,
    expected: `every rule states its ${column}`,
    mend: `fill in the column ${column}`,
  }),
  "rule-id": ({ id }: { id: string }) => ({
    found: `the id ${quoted(id)} is no short name`,
    expected: "a small letter, then up to 39 letters, digits or hyphens",
    mend: "write a short name such as ratio75",
  }),
  "rule-twice": ({ id, line }: { id: string; line: number }) => ({
    found: `the id ${quoted(id)} stands on line ${String(line)} already`,
    expected: "each id once",
    mend: `write ${id}-2, or delete one of the two rows`,
  }),
  "rule-formula": ({ formula, fault }: { formula: string; fault: FormulaFacts }) => {
    const { why, mend } = formulaWords(fault);
    const shown = formula.length > 60 ? `${formula.slice(0, 60)} …` : formula;
    return {
      found: formula === "" ? why : `formula ${quoted(shown)}: ${why}`,
      expected: "a formula such as (max - min) / max",
      mend,
    };
  },
  "rule-mixed": ({ formula }: { formula: string }) => ({
    found: `formula ${quoted(formula)}: a pressure and a plain number, or yes and no and a number, do not go together`,
    expected: "a pressure, a fraction, or a comparison of like with like",
    mend: "compare pressures with pressures, such as min >= 0.75 * max; a limit in psi or kPa stands in the column limit",
  }),
  "rule-family": ({ formula, family }: { formula: string; family: string }) => ({
    found: `formula ${quoted(formula)} in the family ${quoted(family)}`,
    expected:
      family === "leak-down"
        ? "lost, leastLost and mostLost in the family leak-down, and no pressures beside them"
        : "pressures of a cranking test; what is lost in a leak-down has the family leak-down",
    mend:
      family === "leak-down"
        ? "write such as lost, with the limit 25 and the unit %"
        : "write family leak-down",
  }),
  "rule-limit-spare": ({ column, text }: { column: string; text: string }) => ({
    found: `${column} ${quoted(text)} beside a formula that already says yes or no`,
    expected: "limit, unit and compare empty for such a formula",
    mend: `empty ${column}, or take the comparison out of the formula`,
  }),
  "rule-unit": ({ formula, unit, holds }: { formula: string; unit: string; holds: string }) => ({
    found: `a limit in ${quoted(unit)} for ${quoted(formula)}, which yields a ${holds}`,
    expected: holds === "pressure" ? "psi, kPa, bar, MPa or kgf/cm2" : "1 for a fraction, or %",
    mend: holds === "pressure" ? "write the unit the limit was printed in" : "write 1 or %",
  }),
  "rule-applies": ({ text, expected }: { text: string; expected: string }) => ({
    found: `applies ${quoted(text)} is not understood`,
    expected,
    mend: "write such as: use=road|farm ignition=spark cylinders=2..",
  }),
} as const;
