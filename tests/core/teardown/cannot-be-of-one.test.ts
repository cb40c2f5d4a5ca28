// Figures that no engine has, or that no one engine has: by those of their own part, of its fellows, of what runs in it. All invented.

import { expect, test } from "vitest";
import {
  type Engine,
  judgeTeardown,
  partNames,
  quantitiesOf,
  readMeasurements,
  readTypedLine,
  startTyping,
} from "@sealtrend/core/parts";
import { ofAnyEngine } from "../../../packages/core/src/teardown/consistency/any-engine.ts";
import { insteadLine } from "../../../packages/core/src/teardown/typing/instead-line.ts";
import { inch, mm } from "./consistency-samples.ts";
import { bore, containing, find, journal, judgedAs, measured, saw } from "./judge-samples.ts";

const near = (metres: number): number => expect.closeTo(metres, 9) as number;
/** Nothing is known of it but its cylinders. */
const bare: Engine = { ...saw, geometry: {}, clearances: [] };
const told = (judged: ReturnType<typeof judgedAs>) => judged.conflicts.map(({ text, mend }) => [text, mend]);

test("one figure of six that the others speak against is the slip, and no taper is made of it", () => {
  const judged = judgedAs(measured(bore("1", 1000, 100.01, 100, 100, 100, 100)), bare);
  expect(told(judged)).toEqual([
    [
      "bore 1 top/thrust diameter 1000.00 mm cannot be: expected 98.00 to 102.00 mm, by the other figures of bore 1",
      "was 100.00 mm (a decimal place) meant? Look at the paper or measure it again, then type `bore 1 top/thrust instead: 100.00mm`",
    ],
  ]);
  // by hand: 100.01 less 100.00; the thrust side has a place less, so the taper waits
  expect(find(judged.derived, "bore", "taper")).toMatchObject([{ waits: true, standing: "waits" }]);
  expect(find(judged.derived, "bore", "taper")[0]?.value).toBeCloseTo(0.00001, 9);
});

test("a bore typed ten times too small, all six places, stands against its fellows", () => {
  const rows = ["1", "2", "3"].flatMap((label) => bore(label, 86.5, 86.5, 86.51, 86.5));
  const judged = judgedAs(measured([...rows, ...bore("4", 8.65, 8.65, 8.65, 8.65)]), bare);
  expect(judged.conflicts.map(({ label, code }) => [label, code])).toEqual(
    Array(4).fill(["4", "likely-slip"]),
  );
  expect(judged.conflicts[0]).toMatchObject({
    text: containing("by the other bores"),
    meant: [near(mm(86.5))],
  });
});

test("where as many speak for one as for the other, both wait, and each part is told once", () => {
  const judged = judgedAs(measured([...bore("1", 350, 350.01), ...bore("2", 35, 35.01)]), bare);
  expect(told(judged)).toEqual([
    [
      "bore 1 top/thrust 350.00 mm and bore 2 top/thrust 35.00 mm cannot both be of one engine",
      "measure both again; the wrong one: type `bore 1 top/thrust instead:` or `bore 2 top/thrust instead:` with what it reads",
    ],
    [containing("bore 2 top/thrust 35.00 mm and bore 1"), containing("measure both again")],
  ]);
  expect(judged.items.every(({ waits }) => waits === true)).toBe(true);
});

test.each([
  ["a bore that is worn and one bored out", bore("1", 87.9, 87.6, 87.2, 86.6), bore("2", 88.1, 86.5)],
  ["mains of several sizes", journal("main", "1", 50.8), journal("main", "2", 63.5)],
  ["pins one of which was ground", journal("pin", "1", 48), journal("pin", "2", 46.95)],
  [
    "an inlet stem and an exhaust stem",
    [["stem", "3in", "top", "diameter", 8]],
    [["stem", "3ex", "top", "diameter", 9.5]],
  ],
] as const)("%s may be of one engine", (_, one, other) => {
  expect(judgedAs(measured([...one, ...other]), bare).conflicts).toEqual([]);
});

test("a piston is of the bore that was measured, and is told what would be", () => {
  const rows = measured([...bore("1", 88.9, 88.91), ["piston", "1", "", "diameter", 3.4]]);
  const [only, ...more] = judgedAs(rows, bare).conflicts;
  // by hand: 3.4 in is 86.36 mm
  expect(only).toMatchObject({
    part: "piston",
    text: containing("by the bores as measured"),
    meant: [near(mm(86.36))],
  });
  expect(more).toEqual([]);
});

test("more clearance than any worn engine has is a wrong figure", () => {
  const one = measured([
    ["pin", "1", "front/0", "diameter", 45],
    ["rod bearing", "1", "front/0", "bore", 48],
  ]);
  expect(judgedAs(one, bare).conflicts).toMatchObject([
    {
      code: "cannot-be",
      text: containing("rod bearing 1 clearance 3.00 mm cannot be: more than any that is worn out"),
    },
  ]);
  // 2 mm in a bore of 300 mm may be
  const large = measured([...bore("1", 300, 300), ["piston", "1", "", "diameter", 298]]);
  expect(judgedAs(large, bare).conflicts).toEqual([]);
});

test.each([
  ["crank", "", "", "end play", 15],
  ["crank", "2", "", "runout", 12],
  ["piston", "1", "", "diameter", 3.4],
  ["rod", "1", "", "side clearance", 25],
  ["stem", "1in", "top", "diameter", 0.08],
] as const)("%s %s %s %s %d mm is of no engine", (part, label, at, quantity, value) => {
  const [only] = judgedAs(measured([[part, label, at, quantity, value]]), bare).conflicts;
  expect(only).toMatchObject({
    code: expect.stringMatching(/cannot-be|likely-slip/) as string,
    weight: "conflict",
  });
});

test("a gap of nothing may be", () => {
  expect(judgedAs(measured([["crank", "", "", "end play", 0]]), bare).conflicts).toEqual([]);
});

test("the stroke says what no bore of it is", () => {
  const short: Engine = { ...bare, geometry: { stroke: mm(80) } };
  expect(judgedAs(measured(bore("1", 865)), short).conflicts).toMatchObject([
    { text: containing("by the stroke in engine.json"), meant: [near(mm(86.5))] },
  ]);
});

// by hand: 15 thou and 1.5 thou are 13.5 thou apart, gauging thread explains 4·√2·0.25 = 1.4
test("repeats that cannot both be right have no mean, after an `instead` neither", () => {
  const row = (value: number, instead = "") =>
    `1,2026-03-02,rod bearing,2,,thread clearance,${String(value)},thou,thread,,as found,${instead}`;
  const header = "teardown,date,part,label,at,quantity,value,unit,instrument,resolution,state,instead";
  const rows = [header, row(15), row(1.5, "yes"), row(15)].join("\n");
  const { measurements, problems } = readMeasurements(rows, "measurements.csv", bare);
  expect(problems).toEqual([]);
  const judged = judgeTeardown({ engine: bare, measurements });
  expect(judged?.items).toMatchObject([
    { superseded: true, supersededBy: { by: "instead", value: inch(0.0015) } },
    { apart: [near(inch(0.0015)), near(inch(0.015))], value: inch(0.0015), readings: 2, waits: true },
  ]);
  expect(judged?.conflicts).toMatchObject([
    { code: "repeats-apart", mend: containing("type `rod bearing 2 instead: 1.5th`") },
  ]);
});

const labelOf = {
  cylinder: "3",
  journal: "3",
  rod: "3",
  valve: "3in",
  face: "",
  casting: "",
  none: "",
} as const;
const wordOf = (place: PlaceWord): string =>
  place.kind === "words" || place.kind === "line"
    ? (place.words[0] ?? "")
    : place.kind === "degrees"
      ? "90"
      : "40";
type PlaceWord = ReturnType<typeof quantitiesOf>[number]["places"][number][number];

const lengths = partNames.flatMap((part) =>
  quantitiesOf(part).flatMap(({ name, kind, label, places: [first = []] }) =>
    kind !== "length" || part === "crack"
      ? []
      : [
          {
            part,
            quantity: name,
            label: labelOf[label],
            at: first.map(wordOf).join("/"),
            unit: "mm" as const,
          },
        ],
  ),
);

test.each(lengths)("the mend of $part $quantity is read as that very figure", ({ label, at, ...figure }) => {
  const place = { ...(label === "" ? {} : { label }), ...(at === "" ? {} : { at }) };
  const line = insteadLine({ ...figure, ...place }, mm(1.25));
  expect(readTypedLine(line, startTyping("2026-03-02", 1), bare)).toMatchObject({
    kind: "measurements",
    measurements: [
      { part: figure.part, quantity: figure.quantity, ...place, instead: true, value: { value: mm(1.25) } },
    ],
  });
});

test.each(lengths)("what $part $quantity can be at all is known", ({ part, quantity }) => {
  expect(ofAnyEngine(part, quantity) !== undefined || quantity === "thread clearance").toBe(true);
});
