// One slip anywhere in the shipped sheets: whatever is typed, dropped or doubled, the tables can be used or the slip is told.

import { readFileSync } from "node:fs";
import {
  type Problem,
  diagnose,
  faultSheets,
  parseTable,
  readFaults,
  shippedFaults,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";
import { withoutTopComments } from "../../packages/core/src/record/index.ts";
import { evidenceOf } from "../core/diagnosis/worked-evidence.ts";

const shipped = Object.fromEntries(
  faultSheets.map((name) => [
    name,
    readFileSync(new URL(`../../data/faults/${name}`, import.meta.url), "utf8"),
  ]),
);

/** Lines of cells, the column names first. */
const linesOf = (text: string): readonly (readonly string[])[] => {
  const { table } = parseTable(withoutTopComments(text), "sheet");
  return [
    table.header.map(({ name }) => name),
    ...table.rows.map(({ cells }) => cells.map((cell) => cell.text)),
  ];
};
const textOf = (lines: readonly (readonly string[])[]): string =>
  lines.map((cells) => cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(",") + "\n").join("");

const lines = Object.fromEntries(Object.entries(shipped).map(([name, text]) => [name, linesOf(text)]));

const typed = fc.constantFrom(
  "",
  "x",
  "often",
  "no-fault",
  "Crack ",
  "1e9",
  "999999999",
  "-1",
  "0",
  "1",
  "0.5",
  "NaN",
  "Infinity",
  "\u001b[2J",
  "a\nb",
  "\u202e",
  "=1+1",
  "é".repeat(500),
);
const slip = fc.oneof(
  { weight: 4, arbitrary: fc.record({ what: fc.constant("cell" as const), typed }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constantFrom("delete", "double"), typed: fc.constant("") }) },
  { weight: 1, arbitrary: fc.record({ what: fc.constant("rename" as const), typed }) },
);
const slips = fc.record({
  sheet: fc.constantFrom(...faultSheets),
  slip,
  row: fc.nat(),
  column: fc.nat(),
});
type Slip = typeof slips extends fc.Arbitrary<infer S> ? S : never;

/** All sheets, the slip made in one of them. */
const slipped = ({ sheet, slip: { what, typed: text }, row, column }: Slip): Record<string, string> => {
  const [header = [], ...rows] = lines[sheet] ?? [];
  const at = row % rows.length;
  const cell = column % header.length;
  const withText = (cells: readonly string[]): readonly string[] => cells.with(cell, text);
  const changed =
    what === "cell"
      ? [header, ...rows.map((cells, i) => (i === at ? withText(cells) : cells))]
      : what === "rename"
        ? [withText(header), ...rows]
        : [
            header,
            ...rows.flatMap((cells, i) => (i !== at ? [cells] : what === "double" ? [cells, cells] : [])),
          ];
  return { ...shipped, [sheet]: textOf(changed) };
};

const oneLow = evidenceOf({ dry: [150, 148, 110, 151] });

/** A place that an editor can go to, and words that say something. */
const isTold = ({ file, line = 0, column = 0, found, expected, mend }: Problem): boolean =>
  faultSheets.includes(file ?? "") &&
  line > 0 &&
  column > 0 &&
  [found, expected, mend].every((words) => words !== "");

test("a slip in one cell, row or column leaves tables that a diagnosis can use, or is told with its place and a mend", () => {
  fc.assert(
    fc.property(slips, (one) => {
      const outcome = readFaults(slipped(one));
      const problems = outcome.ok ? outcome.cautions : outcome.problems;
      expect(problems.filter((problem) => !isTold(problem))).toEqual([]);
      expect(new Set(problems.map(({ file }) => file)).size).toBeLessThan(2);
      if (!outcome.ok) return;
      const { causes, cylinders } = diagnose(oneLow, outcome.value);
      for (const { probability } of causes) expect(probability).toBeGreaterThanOrEqual(0);
      for (const chances of cylinders) expect(chances.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
    }),
    { numRuns: 40 },
  );
});

test("what no fault can show rules them out, even where a state is sure to meet every cylinder", () => {
  const faults = shippedFaults();
  const { borescope } = faults.findings;
  const columns = borescope.columns.map((column, i) =>
    i === 0 ? column : { ...column, chances: [0, 0.5, 0.5, 0, 0, 0] },
  );
  const states = faults.states.map((state) => (state.reach === "some" ? { ...state, share: 1 } : state));
  const evidence = {
    ...oneLow,
    cylinders: oneLow.cylinders.map((one) => ({ ...one, seen: { borescope: "nothing" } })),
  };
  const sure = { ...faults, states, findings: { ...faults.findings, borescope: { ...borescope, columns } } };
  for (const chances of diagnose(evidence, sure).cylinders) {
    expect(chances[0]).toBeCloseTo(1, 9);
    expect(chances.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 9);
  }
});
