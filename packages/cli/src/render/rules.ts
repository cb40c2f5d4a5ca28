// The screen of `rules`: formula and limit first, then in words, then who says so.

import { type PressureUnit, type Rule, type RuleFinding, fromSi } from "@sealtrend/core";
import type { RulesAnswer } from "../documents/rules-document.ts";
import { verdictWords } from "./rule-words.ts";
import { grid, wrapText } from "./table.ts";
import { count, percent } from "./words.ts";

export interface RulesOptions {
  readonly width: number;
  /** The unit asked for; absent = each limit as it was printed. */
  readonly asked: PressureUnit | undefined;
  /** The unit of what was printed nowhere: the maker's figures of the engine's record. */
  readonly usual: PressureUnit;
}

export interface RulesShown extends RulesAnswer {
  /** How many rules for comparison there are. */
  readonly left: number;
}

export const rulesScreen = (shown: RulesShown, options: RulesOptions): readonly string[] => {
  const { record, test, findings, inForce, compared, from, left } = shown;
  const { width } = options;
  const masters = findings.filter(({ id }) => id === "master");
  const whose = record === undefined ? "The rules" : `The rules for ${record.engine.id}`;
  const sheet = from === undefined ? "" : ` of ${from}`;
  const against = test === undefined ? "" : `, held against its test ${test}`;
  const more =
    left > 0 && compared.length === 0
      ? `${String(left)} rules of single makers, for comparison only: --why`
      : "";
  return [
    ...wrapText(
      `${whose}${sheet}${against}.${record === undefined ? " A maker's own figure of an engine goes before them." : ""}`,
      width,
    ),
    "",
    ...(inForce.length === 0 && masters.length === 0
      ? wrapText(noRule(shown), width)
      : inForce.flatMap((rule) => ruleLines(rule, findings, record === undefined, options))),
    ...masters.flatMap((finding) => masterLines(finding, width)),
    ...(compared.length === 0
      ? []
      : [
          "",
          "For comparison only, never judged:",
          ...compared.flatMap((rule) => ruleLines(rule, [], false, options)),
        ]),
    "",
    ...wrapText(
      "p = the cylinder judged; min, max, mean of the cylinders of one test, at sea level. lost = what it loses in the leak-down, a part of the supply.",
      width,
    ),
    ...wrapText(more, width),
  ].filter((line, i, all) => line !== "" || (i < all.length - 1 && all[i - 1] !== ""));
};

const noRule = ({ record }: RulesShown): string => {
  const cylinders = record?.engine.cylinders.length ?? 0;
  const why =
    cylinders === 1
      ? "it has no fellows to be compared with, and no maker's figure is recorded"
      : "none that is published fits it, and no maker's figure is recorded";
  return record === undefined
    ? "None."
    : `None for this engine (${count(cylinders)} cylinder${cylinders === 1 ? "" : "s"}): ${why}: sealtrend engine set ${record.engine.id} limits.compression.minimum VALUE`;
};

/** The master orifice read with the test, whose reading is the limit of that day. */
const masterLines = (
  { verdict, value, cylinder = "", text, source, status }: RuleFinding,
  width: number,
): readonly string[] => [
  `master  ${verdictWords[verdict]}: ${value === undefined ? "more than it allows" : `${percent(value)} of it`} at cylinder ${cylinder}`,
  ...wrapText(`${text}.`, width, "    "),
  ...wrapText(`${source} (${status})`, width, "    "),
];

const ruleLines = (
  rule: Rule,
  findings: readonly RuleFinding[],
  listed: boolean,
  options: RulesOptions,
): readonly string[] => {
  const finding = findings.find(({ id }) => id === rule.id);
  const unit = unitFor(rule, options);
  const head = grid(
    [[rule.id, boundText(rule, unit), finding === undefined ? "" : foundText(finding, unit)]],
    ["left", "left", "left"],
    { width: options.width },
  );
  const applies = listed ? ` For ${appliesText(rule)}.` : "";
  return [
    ...head,
    ...wrapText(`${rule.text}.${applies}`, options.width, "    "),
    ...wrapText(`${rule.source} (${rule.status})`, options.width, "    "),
  ];
};

const unitFor = ({ status, limit }: Rule, { asked, usual }: RulesOptions): PressureUnit => {
  const printed = limit?.unit;
  if (
    asked !== undefined ||
    status === "engine record" ||
    printed === undefined ||
    printed === "1" ||
    printed === "%"
  )
    return asked ?? usual;
  return status === "judgement" ? usual : printed;
};

const digits = (value: number): string => String(Number(value.toPrecision(4)));

const boundText = ({ formula, limit, holds }: Rule, unit: PressureUnit): string => {
  if (limit === undefined) return formula;
  const bound =
    holds === "pressure"
      ? `${digits(fromSi(limit.value, unit))} ${unit}`
      : limit.unit === "%"
        ? `${digits(limit.value * 100)} %`
        : digits(limit.value);
  return `${formula} ${limit.compare} ${bound}`;
};

const foundText = ({ verdict, value, holds, limit, cylinder }: RuleFinding, unit: PressureUnit): string => {
  const word = verdictWords[verdict];
  if (value === undefined) return word;
  const read =
    holds === "pressure"
      ? `${fromSi(value, unit).toFixed(unit === "psi" || unit === "kPa" ? 0 : 2)} ${unit}`
      : limit?.unit === "%"
        ? percent(value)
        : value.toFixed(2);
  return `${word}: ${read}${cylinder === undefined ? "" : ` at cylinder ${cylinder}`}`;
};

const ignitions: Readonly<Record<string, string>> = { compression: "diesel", unknown: "ignition not known" };

/** `road, farm or boat`. */
const either = (words: readonly string[] = []): string => words.join(", ").replace(/, ([^,]*)$/, " or $1");

const boreText = ({ least, below }: { readonly least?: number; readonly below?: number }): string => {
  const mm = (metres: number): string => digits(fromSi(metres, "mm"));
  if (least === undefined) return below === undefined ? "" : `bores below ${mm(below)} mm`;
  return `bores from ${mm(least)} mm${below === undefined ? "" : ` to ${mm(below)} mm`}`;
};

/** The engines a rule is for, in words. */
const appliesText = ({ applies }: Rule): string => {
  if (applies.kind === "comparison") return "comparison only";
  const { use, ignition, cycle, cylinders, bore, tester } = applies;
  const number =
    cylinders === undefined
      ? ""
      : cylinders.most === undefined
        ? `${count(cylinders.least)} or more cylinders`
        : `${String(cylinders.least)} to ${String(cylinders.most)} cylinders`;
  const words = [
    either(use),
    either(ignition?.map((word) => ignitions[word] ?? word)),
    either(cycle),
    number,
    bore === undefined ? "" : boreText(bore),
    tester === undefined
      ? ""
      : `a tester of ${digits(fromSi(tester.restrictor, "mm"))} mm at ${digits(fromSi(tester.supply, "psi"))} psi`,
  ];
  const said = words.filter((word) => word !== "").join("; ");
  return said === "" ? "every engine" : said;
};
