// What was recorded of the day of each test, said once where all tests state it alike.

import type { Test } from "@sealtrend/core";
import type { PageInput } from "./page-input.ts";
import type { TableBlock } from "./page-model.ts";
import { conditionTexts, kept, meterText } from "./page-words.ts";
import { joined } from "../words.ts";

/** By whom, and the conditions. */
const factsOf = ({ by, conditions }: Test): readonly string[] => [
  by === undefined ? "by whom not recorded" : `by ${kept(by)}`,
  ...conditionTexts(conditions),
];

/** Conditions that every test states alike are said once. */
export const sharedConditions = (tests: readonly Test[]): readonly string[] => {
  const [first, ...rest] = tests.filter(({ rows }) => rows.length > 0).map(factsOf);
  return rest.length === 0 ? [] : (first ?? []).filter((text) => rest.every((texts) => texts.includes(text)));
};

export const conditionsTable = (input: PageInput, shared: readonly string[]): TableBlock => ({
  kind: "table",
  caption: "What was recorded of each day.",
  columns: [
    { name: "Test", align: "left" },
    { name: "Meter, by whom, conditions", align: "left" },
  ],
  rows: input.record.tests.map((test) => ({ cells: [test.id, conditionsOf(input, test, shared)] })),
});

const useWords = {
  full: "",
  "run-in": "running in: not counted",
  seller: "a seller's sheet: not counted",
  "set-aside": "void: not counted",
} as const;

export const conditionsOf = (
  { record: { engine }, history, notes }: PageInput,
  test: Test,
  shared: readonly string[],
): string => {
  const { byGauge = {}, meter, setAside, heard } = test;
  const use = [history.cranking, history.leakDown].flatMap(
    (kind) => kind?.counted.find((one) => one.test.id === test.id)?.use ?? [],
  )[0];
  const own = factsOf(test).filter((text) => !shared.includes(text));
  const gauges = Object.entries(byGauge).flatMap(([gauge, facts]) => {
    const texts = conditionTexts(facts).filter((text) => !shared.includes(text) && !own.includes(text));
    return texts.length === 0 ? [] : [`${kept(gauge)}: ${texts.join(", ")}`];
  });
  return [
    [meterText(meter, engine), ...own].filter((text) => text !== "").join(", "),
    ...gauges,
    heard === undefined ? "" : heardText(engine.cylinders, heard),
    setAside === undefined ? useWords[use ?? "full"] : `SET ASIDE: ${kept(setAside)}`,
    ...(notes === "shown" ? test.notes.map(kept) : []),
  ]
    .filter((text) => text !== "")
    .join("; ");
};

/** `heard: exhaust in 5, crankcase (faint) in 1 and 3`. */
const heardText = (labels: readonly string[], heard: NonNullable<Test["heard"]>): string => {
  const places = new Map<string, string[]>();
  for (const [i, own] of heard.entries())
    for (const { place, faint, neighbour } of own ?? []) {
      const name = `${place === "none" ? "no air" : place}${neighbour === undefined ? "" : ` ${neighbour}`}${faint ? " (faint)" : ""}`;
      places.set(name, [...(places.get(name) ?? []), labels[i] ?? ""]);
    }
  return places.size === 0
    ? ""
    : `heard: ${[...places].map(([name, own]) => `${name} in ${joined(own)}`).join(", ")}`;
};
