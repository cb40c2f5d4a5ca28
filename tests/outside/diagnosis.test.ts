// 200 invented engines with random findings against a program that was written from handbook/diagnosis.md and the fault
// tables alone: tests/outside/diagnosis.py. Computed, not published; the two share the tables and the description. If a
// number of data/faults is changed, the answers are to be made again (README.md).

import { readFileSync } from "node:fs";
import { type Evidence, diagnose, shippedFaults } from "@sealtrend/core/parts";
import { expect, test } from "vitest";

interface Answer {
  readonly target: number;
  /** Aligned with the cylinders and the causes. */
  readonly cylinders: readonly (readonly number[])[];
  readonly states: readonly (readonly [string, number])[];
  readonly pairs: readonly (readonly [number, number, number])[];
  readonly groups: Readonly<Record<string, number>>;
  readonly level?: number;
  readonly oilFactor?: number;
  /** Code, bits, effort; in the order in which they are proposed. */
  readonly tests: readonly (readonly [string, number, number])[];
}

interface Reference {
  readonly causes: readonly string[];
  readonly cases: readonly { readonly evidence: Evidence; readonly answer: Answer }[];
}

const file = new URL("../../data/reference/diagnosis-random.json", import.meta.url);
const reference = JSON.parse(readFileSync(file, "utf8")) as Reference;
const faults = shippedFaults();
const cases = reference.cases.map(({ evidence, answer }) => ({ found: diagnose(evidence, faults), answer }));
type Case = (typeof cases)[number];

type Named = readonly (readonly [string, number])[];

/** Cases and names whose two numbers are further apart than a millionth; a name that one side lacks counts as 0. */
const apart = (ours: (one: Case) => Named, theirs: (one: Case) => Named): readonly string[] =>
  cases.flatMap((one, at) => {
    const outside = new Map(theirs(one));
    const inside = new Map(ours(one));
    return [...new Set([...inside.keys(), ...outside.keys()])].flatMap((name) => {
      const [a, b] = [inside.get(name) ?? 0, outside.get(name) ?? 0];
      return Math.abs(a - b) <= 1e-6 ? [] : [`case ${at}, ${name}: ${a}, ${b} outside`];
    });
  });

const cellsOf = (rows: readonly (readonly number[])[]): Named =>
  rows.flatMap((row, place) =>
    row.map((chance, at) => [`${reference.causes[at] ?? ""} in ${place}`, chance] as const),
  );

test("the other program took the same causes, in the same order", () => {
  expect(cases).toHaveLength(200);
  expect(faults.causes.map(({ code }) => code)).toEqual(reference.causes);
});

test("every cause has the same chance in every cylinder, to a millionth", () => {
  expect(
    apart(
      ({ found }) => cellsOf(found.cylinders),
      ({ answer }) => cellsOf(answer.cylinders),
    ),
  ).toEqual([]);
});

test("so has every state of the engine and of its banks", () => {
  expect(
    apart(
      ({ found }) => found.states.map(({ id, probability }) => [id, probability]),
      ({ answer }) => answer.states.filter(([name]) => name !== "none"),
    ),
  ).toEqual([]);
});

test("so has a gasket that leaks between two neighbours", () => {
  expect(
    apart(
      ({ found }) => found.pairs.map(({ cylinders, probability }) => [cylinders.join("-"), probability]),
      ({ answer }) => answer.pairs.map(([a, b, chance]) => [`${a}-${b}`, chance]),
    ),
  ).toEqual([]);
});

test("the level of the day and the share of the oil are the same", () => {
  const told = (level = 0, oilFactor = 0): Named => [
    ["ln level", Math.log(level || 1)],
    ["oil factor", oilFactor],
  ];
  expect(
    apart(
      ({ found }) => told(found.level, found.oilFactor),
      ({ answer }) => told(answer.level, answer.oilFactor),
    ),
  ).toEqual([]);
});

test("the same cylinder is the one to explain, and its causes come to the same groups", () => {
  expect(cases.map(({ found }) => found.target)).toEqual(cases.map(({ answer }) => answer.target));
  expect(
    apart(
      ({ found }) => Object.entries(found.groups),
      ({ answer }) => Object.entries(answer.groups),
    ),
  ).toEqual([]);
});

test("the same tests are left, they tell as much, and cost as much", () => {
  expect(
    apart(
      ({ found }) => found.tests.map(({ test: { code }, bits }) => [code, bits]),
      ({ answer }) => answer.tests.map(([code, bits]) => [code, bits]),
    ),
  ).toEqual([]);
  const efforts = cases.map(({ found }) =>
    found.tests.map(({ test: { code }, effort }) => `${code} ${effort}`),
  );
  expect(efforts.map((all) => all.toSorted())).toEqual(
    cases.map(({ answer }) => answer.tests.map(([code, , effort]) => `${code} ${effort}`).toSorted()),
  );
});

// Within a tenth of the best rate, risk, minutes and the order of the table decide (handbook/diagnosis.md 6).
test("the tests are proposed in the same order", () => {
  expect(cases.map(({ found }) => found.tests.map(({ test: { code } }) => code))).toEqual(
    cases.map(({ answer }) => answer.tests.map(([code]) => code)),
  );
});
