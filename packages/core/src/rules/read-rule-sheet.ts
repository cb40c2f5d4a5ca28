// A rule sheet, CSV text to rules: every fault named with its line, its column and what to write instead.

import { type Outcome, type Problem, bad, byPlace, good, problem } from "../problem/index.ts";
import { gaugeUnits, readNumber, toSi } from "../quantity/index.ts";
import { type Table, parseTable, withoutTopComments } from "../record/index.ts";
import { readApplies } from "./applies.ts";
import { type Formula, subjectOf } from "./formula.ts";
import { type Holds, formulaHolds } from "./formula-holds.ts";
import { parseFormula } from "./parse-formula.ts";
import {
  type Limit,
  type LimitUnit,
  type Rule,
  type RuleFamily,
  type RuleSheet,
  limitComparisons,
  ruleFamilies,
  ruleStatuses,
} from "./rule.ts";
import { RuleRow, ruleColumns } from "./rule-row.ts";

const limitUnits: readonly LimitUnit[] = [...gaugeUnits, "1", "%"];

/** Reads a rule sheet. @param file - its name, for the problems */
export const readRuleSheet = async (text: string, file: string): Promise<Outcome<RuleSheet>> => {
  const { table, problems } = parseTable(withoutTopComments(text), file, ruleColumns.join(","));
  const found: Problem[] = [...problems, ...columnFaults(table, file)];
  if (!hasAllColumns(table)) return bad(found.toSorted(byPlace));
  const rules: Rule[] = [];
  const lines = new Map<string, number>();
  for (const row of table.rows) {
    const rule = await readRule(new RuleRow(table, row, found), lines);
    if (rule !== undefined) rules.push(rule);
  }
  if (table.rows.length === 0 && found.length === 0)
    found.push(problem("rule-none", {}, { file, line: table.headerLine }));
  const sorted = found.toSorted(byPlace);
  return sorted.some(({ severity }) => severity === "error") ? bad(sorted) : good({ file, rules }, sorted);
};

const hasAllColumns = (table: Table): boolean =>
  ruleColumns.every((column) => table.header.some(({ name }) => name === column));

const columnFaults = (table: Table, file: string): Problem[] => {
  if (table.header.length === 0) return [];
  const names = table.header.map(({ name }) => name);
  const missing = ruleColumns.filter((column) => !names.includes(column));
  const known: readonly string[] = ruleColumns;
  const unknown = table.header.filter(({ name }) => name !== "" && !known.includes(name));
  const line = table.headerLine;
  return [
    ...(missing.length === 0
      ? []
      : [
          problem(
            "column-missing",
            { names: missing, header: names, delimiter: table.delimiter },
            { file, line, column: 1 },
          ),
        ]),
    ...unknown.map(({ name, column }) => problem("rule-column", { name }, { file, line, column }, "caution")),
  ];
};

const readRule = async (row: RuleRow, lines: Map<string, number>): Promise<Rule | undefined> => {
  const id = readId(row, lines);
  const family = row.word("family", ruleFamilies);
  const read = await readFormula(row);
  const limit = read === undefined ? undefined : readLimit(row, read.holds);
  const isOfFamily = family === undefined || read === undefined || fitsFamily(row, family, read);
  const applies = readApplies(row.text("applies"));
  if (!applies.ok)
    row.note(
      problem("rule-applies", { text: applies.text, expected: applies.expected }, row.place("applies")),
    );
  const text = row.needed("text");
  const source = row.needed("source");
  const status = row.word("status", ruleStatuses);
  if (id === undefined || family === undefined || read === undefined || limit === undefined) return undefined;
  if (!isOfFamily || !applies.ok || text === undefined || source === undefined || status === undefined)
    return undefined;
  return { id, family, ...read, ...limit, applies: applies.applies, text, source, status };
};

const readId = (row: RuleRow, lines: Map<string, number>): string | undefined => {
  const id = row.needed("id");
  if (id === undefined) return undefined;
  if (!/^[a-z][A-Za-z0-9-]{0,39}$/.test(id)) return row.note(problem("rule-id", { id }, row.place("id")));
  const line = lines.get(id);
  if (line !== undefined) return row.note(problem("rule-twice", { id, line }, row.place("id")));
  lines.set(id, row.line);
  return id;
};

const readFormula = async (
  row: RuleRow,
): Promise<{ formula: string; tree: Formula; holds: Holds } | undefined> => {
  const formula = row.text("formula");
  const reading = await parseFormula(formula);
  if (!reading.ok)
    return row.note(
      problem("rule-formula", { formula, fault: reading.fault }, row.place("formula", reading.at)),
    );
  const holds = formulaHolds(reading.formula);
  if (holds === undefined) return row.note(problem("rule-mixed", { formula }, row.place("formula")));
  return { formula, tree: reading.formula, holds };
};

/** A rule on leak-down speaks of the part lost, any other of pressures. */
const fitsFamily = (
  row: RuleRow,
  family: RuleFamily,
  { formula, tree }: { readonly formula: string; readonly tree: Formula },
): boolean => {
  const subject = subjectOf(tree);
  if (subject === "neither" || subject === (family === "leak-down" ? "leak-down" : "cranking")) return true;
  row.note(problem("rule-family", { formula, family }, row.place("formula")));
  return false;
};

/** The limit of a formula that yields a number; a formula that says yes or no has none. */
const readLimit = (row: RuleRow, holds: Holds): { readonly limit?: Limit } | undefined => {
  if (holds === "truth") {
    const spare = (["limit", "unit", "compare"] as const).filter((column) => row.text(column) !== "");
    for (const column of spare)
      row.note(problem("rule-limit-spare", { column, text: row.text(column) }, row.place(column)));
    return spare.length === 0 ? {} : undefined;
  }
  const compare = row.word("compare", limitComparisons);
  const number = readLimitNumber(row);
  const unit = row.word("unit", limitUnits);
  if (compare === undefined || number === undefined || unit === undefined) return undefined;
  const asFraction = unit === "1" || unit === "%";
  if (asFraction !== (holds === "fraction"))
    return row.note(problem("rule-unit", { formula: row.text("formula"), unit, holds }, row.place("unit")));
  return { limit: { value: limitToSi(number, unit), unit, compare } };
};

const readLimitNumber = (row: RuleRow): number | undefined => {
  const text = row.needed("limit");
  if (text === undefined) return undefined;
  const reading = readNumber(text);
  if (!reading.ok)
    return row.note(
      problem("number-bad", { column: "limit", text, fault: reading.fault }, row.place("limit")),
    );
  const decimalMark = row.delimiter === "," ? "." : ",";
  const { value, thousands } = reading;
  if (thousands === undefined || thousands.mark === decimalMark) return value;
  return row.note(
    problem("number-two-ways", { text, small: value, large: thousands.value }, row.place("limit")),
  );
};

/** A limit as printed, in Pa or as a fraction. */
const limitToSi = (value: number, unit: LimitUnit): number =>
  unit === "1" ? value : unit === "%" ? value / 100 : toSi(value, unit);
