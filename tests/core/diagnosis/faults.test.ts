// The tables of faults with a slip in them: each is told with its sheet, line, what was found and what to write.

import { readFileSync } from "node:fs";
import { type Faults, type Problem, faultSheets, readFaults } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";

const shipped = Object.fromEntries(
  faultSheets.map((name) => [
    name,
    readFileSync(new URL(`../../../data/faults/${name}`, import.meta.url), "utf8"),
  ]),
);

const problemsOf = (sheets: Readonly<Record<string, string>>): readonly Problem[] => {
  const outcome = readFaults(sheets);
  return outcome.ok ? outcome.cautions : outcome.problems;
};
const faultsOf = (sheets: Readonly<Record<string, string>>): Faults => {
  const outcome = readFaults(sheets);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
};

/** The shipped sheets, one of them with a text changed; the text must be there. */
const changed = (name: string, from: string, to: string): Readonly<Record<string, string>> => {
  const text = shipped[name] ?? "";
  if (!text.includes(from)) throw new Error(`${name} does not hold ${from}`);
  return { ...shipped, [name]: text.replace(from, to) };
};
const without = (name: string, row: RegExp): Readonly<Record<string, string>> => ({
  ...shipped,
  [name]: (shipped[name] ?? "").replace(row, ""),
});

/** The line of the file on which a text stands, from 1. */
const lineOf = (name: string, text: string): number => {
  const sheet = shipped[name] ?? "";
  return sheet.slice(0, sheet.indexOf(text)).split("\n").length;
};

interface Slip {
  readonly slip: string;
  readonly sheet: string;
  readonly from: string;
  readonly to: string;
  readonly code: Problem["code"];
  readonly found: string;
  readonly mend: string;
}

const slips: readonly Slip[] = [
  {
    slip: "a cause that is misspelt",
    sheet: "finding-wet.csv",
    from: "tight-lash,",
    to: "tite-lash,",
    code: "word-unknown",
    found: 'cause "tite-lash" is not a word known here',
    mend: "write tight-lash",
  },
  {
    slip: "a finding that is misspelt",
    sheet: "bounds.csv",
    from: "leak,gross",
    to: "leek,gross",
    code: "word-unknown",
    found: 'finding "leek" is not a word known here',
    mend: "write leak",
  },
  {
    slip: "a finding of a test that is not known",
    sheet: "tests.csv",
    from: "leak + path",
    to: "leak + pith",
    code: "word-unknown",
    found: 'finds "pith" is not a word known here',
    mend: "write path",
  },
  {
    slip: "a class that is misspelt",
    sheet: "bounds.csv",
    from: "wet,weak",
    to: "wet,week",
    code: "word-unknown",
    found: 'class "week" is not a word known here',
    mend: "write weak",
  },
  {
    slip: "a group that is not known",
    sheet: "causes.csv",
    from: "worn rings or bore,bottom",
    to: "worn rings or bore,low end",
    code: "word-unknown",
    found: 'group "low end" is not a word known here',
    mend: "write one of these words",
  },
  {
    slip: "a circumstance that nobody can record",
    sheet: "shifts.csv",
    from: "event: flooded",
    to: "event: floded",
    code: "word-unknown",
    found: 'when "event: floded" is not a word known here',
    mend: "write event: flooded",
  },
  {
    slip: "a shift of a cause that has no chance of its own",
    sheet: "shifts.csv",
    from: "all cam-retarded,15",
    to: "cam-retarded,15",
    code: "word-unknown",
    found: 'entry "cam-retarded" is not a word known here',
    mend: "write all cam-retarded",
  },
  {
    slip: "an obstacle that is not known",
    sheet: "tests.csv",
    from: "no leak-down yet + crank",
    to: "no leakdown yet + crank",
    code: "word-unknown",
    found: 'blocked "no leakdown yet" is not a word known here',
    mend: "write no leak-down yet",
  },
  {
    slip: "a number with the letter O",
    sheet: "causes.csv",
    from: "0.0138",
    to: "0.O138",
    code: "number-bad",
    found: 'prior "0.O138" is not a number: a letter O stands where a zero may belong',
    mend: "write 0.0138",
  },
  {
    slip: "a chance above 1",
    sheet: "finding-gas.csv",
    from: "gasket-to-coolant,0.",
    to: "gasket-to-coolant,9.",
    code: "number-range",
    found: "is out of range for the chance of positive",
    mend: "write a number from 0 to 1",
  },
  {
    slip: "negative minutes",
    sheet: "tests.csv",
    from: "borescope,borescope,15",
    to: "borescope,borescope,-15",
    code: "number-range",
    found: '"-15" is out of range for the minutes',
    mend: "write a number from 1 to 1440",
  },
  {
    slip: "a doubt of nothing",
    sheet: "settings.csv",
    from: "doubt of a leak,0.08",
    to: "doubt of a leak,0",
    code: "number-range",
    found: '"0" is out of range for the doubt of a leak',
    mend: "write a number from 0.01 to 1",
  },
  {
    slip: "a prior in words",
    sheet: "causes.csv",
    from: "0.0138",
    to: "often",
    code: "number-bad",
    found: 'prior "often" is not a number',
    mend: "write a number from 0 to 0.6",
  },
  {
    slip: "a prior that was crossed out",
    sheet: "causes.csv",
    from: "0.0138",
    to: "x",
    code: "number-bad",
    found: 'prior "x" is not a number',
    mend: "write a number from 0 to 0.6",
  },
  {
    slip: "a prior that was emptied",
    sheet: "causes.csv",
    from: "0.0138",
    to: "",
    code: "sheet-cell-empty",
    found: 'nothing in the column "prior"',
    mend: "write a number from 0 to 0.6",
  },
  {
    slip: "a factor beside odds",
    sheet: "shifts.csv",
    from: "release active,all compression-release,,9",
    to: "release active,all compression-release,2,9",
    code: "sheet-cell-spare",
    found: 'odds "9" beside a factor, and a shift has one of the two',
    mend: "empty odds, or factor if that is the slip",
  },
  {
    slip: "a class that a sound cylinder never shows",
    sheet: "finding-gas.csv",
    from: "no-fault,0.02,0.98",
    to: "no-fault,0,1",
    code: "number-range",
    found: '"0" is out of range for the chance of positive',
    mend: "write a number from 0.000001 to 1",
  },
  {
    slip: "a code of two words",
    sheet: "tests.csv",
    from: "retest-warm,",
    to: "Retest warm,",
    code: "sheet-code",
    found: 'code "retest warm" is not one plain word',
    mend: "write retest-warm",
  },
  {
    slip: "an escape in a name",
    sheet: "causes.csv",
    from: "carbon (or",
    to: "\u001b[2Jcarbon (or",
    code: "sheet-text",
    found: "name holds characters that cannot be seen",
    mend: "delete the text and type it again",
  },
  {
    slip: "chances that do not add up to 1",
    sheet: "finding-lower.csv",
    from: "worn-rings-or-bore,0.75,0.25",
    to: "worn-rings-or-bore,0.75,0.2",
    code: "chances-sum",
    found: "the chances of this row add up to 0.95",
    mend: "add 0.05 where it belongs",
  },
  {
    slip: "a cause with two rows",
    sheet: "causes.csv",
    from: 'plug-seal,"leak',
    to: 'carbon,"leak',
    code: "sheet-row-twice",
    found: '"carbon" stands on line',
    mend: "delete one of the two rows, or name something else in this one",
  },
  {
    slip: "a prior for no fault",
    sheet: "causes.csv",
    from: "no fault in this cylinder,nothing,",
    to: "no fault in this cylinder,nothing,0.5",
    code: "sheet-cell-spare",
    found: 'prior "0.5" beside no-fault, which has what the others leave',
    mend: "empty prior",
  },
  {
    slip: "a share for a state that meets all",
    sheet: "states.csv",
    from: "all,slow-cranking,0.018,0.04,",
    to: "all,slow-cranking,0.018,0.04,0.5",
    code: "sheet-cell-spare",
    found: 'share "0.5" in a row that meets all',
    mend: "empty share",
  },
  {
    slip: "a state without its chance",
    sheet: "states.csv",
    from: "some,tight-lash,0.006",
    to: "some,tight-lash,",
    code: "sheet-cell-empty",
    found: 'nothing in the column "prior"',
    mend: "write a number from 0 to 0.9",
  },
  {
    slip: "bounds that fall",
    sheet: "bounds.csv",
    from: "level,very low,0.15,0.5",
    to: "level,very low,0.05,0.5",
    code: "bounds-order",
    found: 'this class begins at 0.05, and "dead" ends at 0.15',
    mend: 'write 0.15 here, or at most 0.05 in the column high of "dead"',
  },
  {
    slip: "a word scale out of order",
    sheet: "words.csv",
    from: "less likely,0.1",
    to: "less likely,0.4",
    code: "words-scale",
    found: "this word begins at 0.4, the one above it at 0.35",
    mend: "put the rows in order, the highest number first, no two the same",
  },
];

describe("a slip is told with its sheet, its line, what was found and what to write", () => {
  test.each(slips)("$slip", ({ sheet, from, to, code, found, mend }) => {
    const problem = problemsOf(changed(sheet, from, to)).find((one) => one.code === code);
    expect(problem).toMatchObject({ severity: "error", file: sheet, line: lineOf(sheet, from), mend });
    expect(problem?.found).toContain(found);
    expect(problem?.column).toBeGreaterThan(0);
  });
});

test("priors of causes that leave no fault less than 0.4 are refused", () => {
  const [problem] = problemsOf(changed("causes.csv", "0.0138", "0.6"));
  // The list of handbook/diagnosis.md 2 adds up to 0.060136: 0.060136 - 0.0138 + 0.6 = 0.646336; 0.6 / 0.646336 = 0.928.
  expect(problem).toMatchObject({
    code: "priors-sum",
    file: "causes.csv",
    found: "the priors add up to 0.646336",
    mend: "make them smaller: multiply each by 0.92",
  });
});

test("a sheet that is missing, a column that is missing and a row that is missing are told apart", () => {
  const { "words.csv": _, ...others } = shipped;
  expect(problemsOf(others)).toMatchObject([{ code: "sheet-missing", file: "words.csv" }]);
  expect(problemsOf(changed("finding-gas.csv", "cause,positive,", "cause,postive,"))).toMatchObject([
    { code: "sheet-column-missing", file: "finding-gas.csv", mend: "write positive in place of postive" },
  ]);
  expect(problemsOf(without("finding-gas.csv", /^carbon,.*\n/m))).toMatchObject([
    { code: "sheet-row-missing", file: "finding-gas.csv", found: 'no row for "carbon" in the column cause' },
  ]);
});

test("a cause that the program itself speaks of cannot be left out", () => {
  const problems = problemsOf(without("causes.csv", /^cam-retarded,.*\n/m));
  expect(problems).toContainEqual(
    expect.objectContaining({ file: "causes.csv", found: 'no row for "cam-retarded" in the column code' }),
  );
});

test("the faults of all sheets are told at once", () => {
  const problems = problemsOf({
    ...changed("causes.csv", "0.0138", "lots"),
    ...{ "words.csv": changed("words.csv", "0.65", "65")["words.csv"] ?? "" },
    ...{ "finding-gas.csv": changed("finding-gas.csv", "carbon,", "carbn,")["finding-gas.csv"] ?? "" },
  });
  expect(problems.map(({ file, code }) => `${file ?? ""} ${code}`)).toEqual([
    "causes.csv number-bad",
    "finding-gas.csv word-unknown",
    "words.csv number-range",
  ]);
});

test.each(["lots", "x", ""])(
  "a slip in one cause (prior %j) brings no further faults in the sheets that name it",
  (typed) => {
    expect(problemsOf(changed("causes.csv", "0.0138", typed))).toHaveLength(1);
  },
);

test.each([
  [
    "a column that was renamed",
    "code,name,group,prior,",
    "code,name,group,chance,",
    "write prior in place of chance",
  ],
  ["a column that lost its name", "code,name,group,prior,", "code,name,group,,", "write prior above it"],
  [
    "a cause that is misspelt in causes.csv",
    "\ncrack,",
    "\ncrakc,",
    /^write crack, or in each of these sheets/,
  ],
])("%s is one fault, and its mend is to write what it was", (_, from, to, mend) => {
  const problems = problemsOf(changed("causes.csv", from, to));
  expect(problems).toMatchObject([{ file: "causes.csv" }]);
  expect(problems[0]?.mend).toMatch(mend);
});

const newCause = "porous-casting,porous casting,top,0.001,judgement,own\n";
/** The shipped sheets, a row added to some of them. */
const added = (rows: Readonly<Record<string, string>>): Readonly<Record<string, string>> =>
  Object.fromEntries(Object.entries(shipped).map(([name, text]) => [name, text + (rows[name] ?? "")]));
const ofCauses = faultSheets.filter((name) => /^(?:finding-|signs-by-cause)/.test(name));
/** The row of none of these in each of them, under the name of the new cause. */
const rows = Object.fromEntries(
  ofCauses.map((name) => {
    const [model = ""] = /^none-of-these,.*$/m.exec(shipped[name] ?? "") ?? [];
    return [name, `${model.replace("none-of-these", "porous-casting")}\n`];
  }),
);

test("a new cause in causes.csv alone is one fault with a row to type, and typing such rows mends it", () => {
  const [problem, ...others] = problemsOf(added({ "causes.csv": newCause }));
  expect(others).toEqual([]);
  expect(problem).toMatchObject({ code: "cause-rows-missing", file: "causes.csv", column: 1 });
  expect(problem?.line).toBe((shipped["causes.csv"] ?? "").split("\n").length);
  expect(problem?.found).toBe(
    'the cause "porous-casting" has no row in 20 sheets: signs-by-cause.csv, 19 finding-NAME.csv',
  );
  const [, row = ""] = /in signs-by-cause\.csv: (porous-casting,\S+)$/.exec(problem?.mend ?? "") ?? [];
  const mended = added({ "causes.csv": newCause, ...rows, "signs-by-cause.csv": `${row}\n` });
  expect(problemsOf(mended)).toEqual([]);
  expect(faultsOf(mended).causes.at(-1)).toMatchObject({ code: "porous-casting", prior: 0.001 });
});

test("a new cause that causes.csv alone lacks is one fault there, with a row to type", () => {
  const problems = problemsOf(added(rows));
  expect(problems).toMatchObject([{ code: "cause-unlisted", file: "causes.csv" }]);
  const [, row = ""] = /: (porous-casting,.*)$/.exec(problems[0]?.mend ?? "") ?? [];
  expect(problemsOf(added({ ...rows, "causes.csv": `${row}\n` }))).toEqual([]);
});

test("a cause left out in causes.csv is told there, and what other sheets say of it is passed over", () => {
  const sheets = without("causes.csv", /^tight-lash,.*\n/m);
  expect(problemsOf(sheets)).toMatchObject([
    { severity: "caution", file: "causes.csv", found: 'no row for "tight-lash" in the column code' },
  ]);
  const { causes, states, findings } = faultsOf(sheets);
  expect([...causes, ...states].filter((one) => Object.values(one).includes("tight-lash"))).toEqual([]);
  expect(findings.lash.columns).toHaveLength(causes.length);
});

test.each([
  ["tests.csv", /^wet,.*\n/m, "a test without one is never proposed"],
  ["states.csv", /^all,cam-advanced,.*\n/m, "a state of the engine without one is never considered"],
  ["shifts.csv", /^event: flooded,.*\n/m, "a circumstance without one shifts nothing"],
])("a row left out in %s is told with what that does", (sheet, row, does) => {
  const problems = problemsOf(without(sheet, row));
  expect(problems).toMatchObject([{ severity: "caution", code: "sheet-row-missing", file: sheet }]);
  expect(problems[0]?.expected).toContain(does);
  expect(problems[0]?.mend).toBe(`leave it so if that is meant, else copy the row from the shipped ${sheet}`);
});

test("a cause of one's own without a chance of its own needs a state of the engine", () => {
  const priorless = { ...rows, "causes.csv": newCause.replace("0.001", "") };
  expect(problemsOf(added(priorless))).toMatchObject([{ code: "sheet-cell-empty", file: "causes.csv" }]);
  const state = "some,porous-casting,0.001,,0.5,judgement,own\n";
  expect(problemsOf(added({ ...priorless, "states.csv": state }))).toEqual([]);
});

/** A sheet as a spreadsheet of a country with decimal commas saves it. */
const withCommas = (text: string): string =>
  text
    .split("\n")
    .map((line) => (line.startsWith("#") ? line : line.replaceAll(",", ";").replace(/(\d)\.(\d)/g, "$1,$2")))
    .join("\r\n");

test("semicolons, decimal commas and line ends of a spreadsheet change nothing", () => {
  const sheets = Object.fromEntries(
    Object.entries(shipped).map(([name, text]) => [name, text.includes('"') ? text : withCommas(text)]),
  );
  expect(faultsOf(sheets)).toEqual(faultsOf(shipped));
});

test("rows may stand in any order, and so may columns", () => {
  const sheets = changed("words.csv", "word,least,status,source", "word,least,status,source,note");
  const text = shipped["finding-path.csv"] ?? "";
  const [top = ""] = /^(?:#.*\n)*.*\n/.exec(text) ?? [];
  const turned = top + text.slice(top.length).trimEnd().split("\n").reverse().join("\n") + "\n";
  const gas = (shipped["finding-gas.csv"] ?? "").replace(/^([^,#\n]+),([^,\n]+),([^,\n]+),/gm, "$3,$2,$1,");
  const read = faultsOf({ ...sheets, "finding-path.csv": turned, "finding-gas.csv": gas });
  expect(read).toEqual(faultsOf(shipped));
});

test("thirds written with six digits are taken as thirds", () => {
  const row = /^crack,.*$/m.exec(shipped["finding-lash.csv"] ?? "")?.[0] ?? "";
  const thirds = "crack,0.333333,0.333333,0.333333,judgement,judgement,own";
  const { findings, causes } = faultsOf(changed("finding-lash.csv", row, thirds));
  const { chances = [] } = findings.lash.columns[causes.findIndex(({ code }) => code === "crack")] ?? {};
  for (const chance of chances) expect(chance).toBeCloseTo(1 / 3, 12);
});

test("a cause of the user's own stands beside the shipped ones once every sheet has its row", () => {
  const own = Object.fromEntries(
    Object.entries(shipped).map(([name, text]) => {
      const [crack = ""] = /^crack,.*\n/m.exec(text) ?? [];
      const isByCause = name === "causes.csv" || name === "signs-by-cause.csv" || name.startsWith("finding-");
      return [name, isByCause ? text + crack.replace("crack,", "porous-casting,") : text];
    }),
  );
  const { causes, findings } = faultsOf(own);
  expect(causes.at(-1)?.code).toBe("porous-casting");
  expect(findings.path.columns.at(-1)).toEqual(
    findings.path.columns[causes.findIndex(({ code }) => code === "crack")],
  );
  const { "finding-path.csv": path = "", ...rest } = own;
  const lacking = path.replace(/^porous-casting,.*\n/m, "");
  expect(problemsOf({ ...rest, "finding-path.csv": lacking })).toMatchObject([
    { file: "causes.csv", found: 'the cause "porous-casting" has no row in finding-path.csv' },
  ]);
});

test("a published source is shown by its title, and one that nobody knows as it was typed", () => {
  const sourceOf = (sheets: Readonly<Record<string, string>>): string | undefined =>
    faultsOf(sheets).shifts.find(
      ({ when, entry }) => when === "two-stroke, ports only" && entry === "exhaust-valve",
    )?.source;
  expect(sourceOf(shipped)).toBe("Toro, Two-stroke engine service manual");
  expect(sourceOf(changed("shifts.csv", "published,toro-two-stroke", "published,my manual p. 30"))).toBe(
    "my manual p. 30",
  );
});
