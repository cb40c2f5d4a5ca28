// The tables of faults: what belongs together in them, causes of one's own, and the dialects of spreadsheets.

import { faultSheets } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { changed, faultsOf, problemsOf, shipped, without } from "./fault-sheets.ts";

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
