// What was recorded of the day of each test, said once where all tests state it alike.

import { type PressureUnit, type Test, byKey, fromSi } from "@sealtrend/core/parts";
import type { PageInput } from "./page-input.ts";
import type { TableBlock } from "./page-model.ts";
import { left } from "./page-tables.ts";
import { conditionTexts, kept, meterText, whoText } from "./page-words.ts";
import { fixed, joined } from "../words.ts";

/** By whom, and the conditions. */
const factsOf = (test: Test, input: PageInput): readonly string[] => [
  test.by === undefined ? "by whom not recorded" : `by ${whoText(test.by, input)}`,
  ...conditionTexts(test.conditions, supplyUnit(test, input)),
];

/** What its tester was read in. */
const supplyUnit = ({ rows }: Test, { unit }: PageInput): PressureUnit => {
  const read = rows.find((row) => row.what.startsWith("leak-down") && row.unit !== "%")?.unit;
  return read === undefined || read === "%" ? unit : read;
};

/** Conditions that every test states alike are said once. */
export const sharedConditions = (input: PageInput): readonly string[] => {
  const { tests } = input.record;
  const [first, ...rest] = tests.filter(({ rows }) => rows.length > 0).map((test) => factsOf(test, input));
  return rest.length === 0 ? [] : (first ?? []).filter((text) => rest.every((texts) => texts.includes(text)));
};

export const conditionsTable = (input: PageInput, shared: readonly string[]): TableBlock => ({
  kind: "table",
  caption: "What was recorded of each day.",
  columns: [left("Test"), left("Meter, by whom, conditions")],
  rows: input.record.tests.map((test) => ({ cells: [test.id, conditionsOf(input, test, shared)] })),
});

const useWords = {
  full: "",
  "run-in": "running in: not counted",
  seller: "an earlier seller's sheet: not counted",
  "set-aside": "void: not counted",
} as const;

export const conditionsOf = (input: PageInput, test: Test, shared: readonly string[]): string => {
  const {
    record: { engine },
    history,
    notes,
  } = input;
  const { byGauge = {}, meter, setAside, heard } = test;
  const use = [history.cranking, history.leakDown].flatMap(
    (kind) => kind?.counted.find((one) => one.test.id === test.id)?.use ?? [],
  )[0];
  const own = factsOf(test, input).filter((text) => !shared.includes(text));
  const gauges = Object.entries(byGauge).flatMap(([gauge, facts]) => {
    const texts = conditionTexts(facts, supplyUnit(test, input)).filter(
      (text) => !shared.includes(text) && !own.includes(text),
    );
    return texts.length === 0 ? [] : [`${kept(gauge)}: ${texts.join(", ")}`];
  });
  return [
    [meterText(meter, engine), ...own].filter((text) => text !== "").join(", "),
    ...gauges,
    oilText(engine.cylinders, test),
    heard === undefined ? "" : heardText(engine.cylinders, heard),
    setAside === undefined ? useWords[use ?? "full"] : `SET ASIDE: ${kept(setAside)}`,
    ...(notes === "shown" ? test.notes.map(kept) : []),
  ]
    .filter((text) => text !== "")
    .join("; ");
};

/** `oil put in: 5 mL each`, `oil put in: 5 mL in 1 and 3, 10 mL in 2`. */
const oilText = (labels: readonly string[], { perCylinder: { oil = [] } }: Test): string => {
  const poured = oil.flatMap((volume, i): readonly Named[] =>
    volume === undefined ? [] : [{ name: `${fixed(fromSi(volume, "ml"), 0)} mL`, label: labels[i] ?? "" }],
  );
  if (poured.length === 0) return "";
  const said = labelsByName(poured).map(([name, own]) =>
    own.length === labels.length && own.length > 1 ? `${name} each` : `${name} in ${joined(own)}`,
  );
  return `oil put in: ${said.join(", ")}`;
};

/** `heard: exhaust in 5, crankcase (faint) in 1 and 3`. */
const heardText = (labels: readonly string[], heard: NonNullable<Test["heard"]>): string => {
  const places = heard.flatMap((own, i) =>
    (own ?? []).map(({ place, faint, neighbour }): Named => {
      const air = place === "none" ? "no air" : place;
      const where = neighbour === undefined ? "" : ` ${neighbour}`;
      return { name: `${air}${where}${faint ? " (faint)" : ""}`, label: labels[i] ?? "" };
    }),
  );
  const said = labelsByName(places).map(([name, own]) => `${name} in ${joined(own)}`);
  return said.length === 0 ? "" : `heard: ${said.join(", ")}`;
};

/** What was done to a cylinder, or heard of it. */
interface Named {
  readonly name: string;
  readonly label: string;
}

const labelsByName = (
  all: readonly Named[],
): readonly (readonly [name: string, labels: readonly string[]])[] =>
  [...byKey(all, ({ name }) => name)].map(([name, own]) => [name, own.map(({ label }) => label)]);
