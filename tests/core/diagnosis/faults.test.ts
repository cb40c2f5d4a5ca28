// The tables of faults with a slip in them: each is told with its sheet, line, what was found and what to write.

import { readFileSync } from "node:fs";
import { type Faults, type Problem, faultSheets, readFaults } from "@sealtrend/core";
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
    mend: "write 0.0138, or x if it was not taken",
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
    found: "0.05 is not above 0.15",
    mend: "look for two numbers that changed places",
  },
  {
    slip: "a word scale out of order",
    sheet: "words.csv",
    from: "less likely,0.1",
    to: "less likely,0.4",
    code: "words-scale",
    found: "this word begins at 0.4, the one above it at 0.35",
    mend: "put the rows in order, the highest number first",
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
    { code: "column-missing", file: "finding-gas.csv", severity: "error" },
    { code: "sheet-column", mend: "name it positive", severity: "caution" },
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
    "finding-gas.csv sheet-row-missing",
    "finding-gas.csv word-unknown",
    "words.csv number-range",
  ]);
});

test("a slip in one cause brings no further faults in the sheets that name it", () => {
  expect(problemsOf(changed("causes.csv", "0.0138", "lots"))).toHaveLength(1);
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
    { file: "finding-path.csv", found: 'no row for "porous-casting" in the column cause' },
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
