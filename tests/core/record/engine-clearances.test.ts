// limits.clearances, limits.offered and layout of engine.json: what they come to, and each fault by its path.

import {
  type ClearanceLimit,
  isLimitFor,
  limitQuantitiesOf,
  limitQuantityNamed,
  readEngine,
} from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";

const read = (more: string) =>
  readEngine(`{ "cylinders": ["1", "2"], "ignition": "spark",\n${more} }`, "engine.json", "pump");
const limits = (entries: string) => read(`"limits": { "clearances": ${entries} }`);
const offered = (entry: string) => read(`"limits": { "offered": ${entry} }`);
const found = ({ problems }: ReturnType<typeof read>) => problems.map((problem) => problem.found);
const mends = ({ problems }: ReturnType<typeof read>) => problems.map(({ mend }) => mend);
const mm = (value: number): unknown => expect.closeTo(value / 1000, 12);

describe("limits.clearances", () => {
  test("the entry that the contract prints", () => {
    const { engine, problems } = limits(
      '[{ "part": "bore", "quantity": "taper", "wear": [null, 0.1], "unit": "mm", "source": "workshop manual p. 62" }]',
    );
    expect(problems).toEqual([]);
    expect(engine?.clearances).toEqual([
      {
        part: "bore",
        quantity: "taper",
        wear: { high: mm(0.1) },
        unit: "mm",
        source: "workshop manual p. 62",
        written: { "wear.high": "0.1" },
      },
    ]);
  });

  test("both kinds, both ends, a second unit; the zeros at the end of a figure are kept as written", () => {
    const { engine } = limits(
      `[{ "part": "rod bearing", "quantity": "oil clearance", "new": [0.020, 0.050], "wear": [null, 0.10], "unit": "mm",
          "also": { "unit": "in", "new": [0.0008, 0.0020], "wear": [null, 0.0040] } }]`,
    );
    expect(engine?.clearances).toEqual([
      {
        part: "rod bearing",
        quantity: "clearance",
        new: { low: mm(0.02), high: mm(0.05) },
        wear: { high: mm(0.1) },
        unit: "mm",
        also: {
          unit: "in",
          new: { low: mm(0.02032), high: mm(0.0508) },
          wear: { high: mm(0.1016) },
        },
        written: {
          "new.low": "0.020",
          "new.high": "0.050",
          "wear.high": "0.10",
          "also.new.low": "0.0008",
          "also.new.high": "0.0020",
          "also.wear.high": "0.0040",
        },
      },
    ]);
  });

  test("a limit for one ring, one kind of valve or one journal", () => {
    const { engine, problems } = limits(`[
      { "part": "ring", "at": "1", "quantity": "end gap", "new": [0.2, 0.35], "unit": "mm" },
      { "part": "ring", "at": "oil", "quantity": "end gap", "new": [0.2, 0.7], "unit": "mm" },
      { "part": "guide", "label": "Ex", "quantity": "stem clearance", "wear": [null, 0.15], "unit": "mm" },
      { "part": "main", "label": "3", "quantity": "diameter", "new": [2.498, 2.499], "unit": "in" }]`);
    expect(problems).toEqual([]);
    const figure = { part: "ring", label: "2", at: "1/bottom", quantity: "end gap" } as const;
    const applying = (one: Parameters<typeof isLimitFor>[1]) =>
      engine?.clearances.map((limit) => isLimitFor(limit, one));
    expect(applying(figure)).toEqual([true, false, false, false]);
    expect(applying({ ...figure, at: "oil" })).toEqual([false, true, false, false]);
    expect(applying({ part: "guide", label: "2ex1", quantity: "clearance" })).toEqual([
      false,
      false,
      true,
      false,
    ]);
    expect(applying({ part: "guide", label: "2in", quantity: "clearance" })).toEqual([
      false,
      false,
      false,
      false,
    ]);
    expect(applying({ part: "main", label: "3", at: "front/0", quantity: "diameter" })).toEqual([
      false,
      false,
      false,
      true,
    ]);
    expect(applying({ part: "main", label: "1", at: "front/0", quantity: "diameter" })?.some(Boolean)).toBe(
      false,
    );
  });

  test("what a thread reads is an oil clearance, what a straightedge shows is flatness", () => {
    const limit = (part: ClearanceLimit["part"], quantity: string) => ({ part, quantity });
    expect(
      isLimitFor(limit("rod bearing", "clearance"), { part: "rod bearing", quantity: "thread clearance" }),
    ).toBe(true);
    expect(isLimitFor(limit("head", "flatness"), { part: "head", at: "long1/40", quantity: "gap" })).toBe(
      true,
    );
    expect(isLimitFor(limit("head", "flatness"), { part: "deck", quantity: "gap" })).toBe(false);
    expect(limitQuantityNamed("bore", " Ovality ")).toEqual({ name: "out-of-round", signed: true });
    expect(limitQuantityNamed("bore", "clearance")).toBeUndefined();
    expect(limitQuantitiesOf("head").map(({ name }) => name)).toEqual(["flatness", "flatness 150"]);
  });

  test.each([
    ["bore", "diameter", "thrust", 'take "at" out where the limit is for every place'],
    ["bore", "diameter", "topp/thrust", 'write "top/thrust"'],
    ["ring", "end gap", "5", 'take "at" out where the limit is for every place'],
    ["seat", "runout", "top", 'take "at" out where the limit is for every place'],
  ])("a limit of %s %s at %j would judge nothing, which is said", (part, quantity, at, mend) => {
    const entry = { part, quantity, at, wear: [null, 1], unit: "mm" };
    const read = limits(JSON.stringify([entry]));
    expect(found(read)).toEqual([`limits.clearances[0].at is ${JSON.stringify(at)}`]);
    expect(mends(read)).toEqual([mend]);
    const { at: _, ...everywhere } = entry;
    expect(found(limits(JSON.stringify([everywhere])))).toEqual([]);
  });

  test.each([
    [
      "bore",
      "diameter",
      "7",
      'write 1, or the one that is meant; take "label" out where the limit is for all of them',
    ],
    [
      "rod bearing",
      "clearance",
      "front",
      'write 1, or the one that is meant; take "label" out where the limit is for all of them',
    ],
    ["main", "taper", "centre", 'write 1, 2, 3 …; take "label" out where the limit is for all of them'],
    ["guide", "clearance", "1 EX", 'write "1ex"'],
    [
      "guide",
      "clearance",
      "exhaust",
      'write 1in for the intake valve of cylinder 1, 1ex for its exhaust valve; take "label" out where the limit is for all of them',
    ],
    ["crank", "end play", "1", 'take "label" out'],
  ])("a limit of %s %s labelled %j would judge nothing, which is said", (part, quantity, label, mend) => {
    const read = limits(JSON.stringify([{ part, quantity, label, new: [0.02, 0.05], unit: "mm" }]));
    expect(found(read)).toEqual([`limits.clearances[0].label is ${JSON.stringify(label)}`]);
    expect(mends(read)).toEqual([mend]);
  });

  test.each([
    ["bore", "taper", "2"],
    ["rod bearing", "clearance", "1"],
    ["main", "taper", "5"],
    ["guide", "clearance", "IN"],
    ["seat", "runout", "2ex1"],
    ["crank", "bend", "3"],
    ["head", "flatness", "left"],
  ])("a limit of %s %s labelled %s is for what the engine has", (part, quantity, label) => {
    expect(found(limits(JSON.stringify([{ part, quantity, label, new: [0.02, 0.05], unit: "mm" }])))).toEqual(
      [],
    );
  });

  test.each([
    ["bore", "diameter", "Top/Thrust"],
    ["bore", "diameter", "unworn"],
    ["ring", "end gap", "oil"],
    ["guide", "rocking", "thrust"],
    ["main bearing", "clearance", "front"],
  ])("a limit of %s %s at %s is for a place that is measured", (part, quantity, at) => {
    expect(found(limits(JSON.stringify([{ part, quantity, at, wear: [null, 1], unit: "mm" }])))).toEqual([]);
  });

  test.each([
    ["3", "limits.clearances is 3"],
    ["[3]", "limits.clearances[0] is 3"],
    [
      '[{ "part": "borre", "quantity": "taper", "wear": [null, 1], "unit": "mm" }]',
      'limits.clearances[0].part is "borre"',
    ],
    ['[{ "quantity": "taper", "wear": [null, 1], "unit": "mm" }]', "limits.clearances[0].part is missing"],
    [
      '[{ "part": "bore", "quantity": "tapper", "wear": [null, 1], "unit": "mm" }]',
      'limits.clearances[0].quantity is "tapper"',
    ],
    ['[{ "part": "bore", "quantity": "taper", "wear": [null, 1] }]', "limits.clearances[0].unit is missing"],
    [
      '[{ "part": "bore", "quantity": "taper", "wear": [null, 1], "unit": "bar" }]',
      'limits.clearances[0].unit is "bar"',
    ],
    [
      '[{ "part": "bore", "quantity": "taper", "wear": 0.1, "unit": "mm" }]',
      "limits.clearances[0].wear is 0.1",
    ],
    [
      '[{ "part": "bore", "quantity": "taper", "wear": [0.1], "unit": "mm" }]',
      "limits.clearances[0].wear is [0.1]",
    ],
    [
      '[{ "part": "bore", "quantity": "taper", "wear": [null, null], "unit": "mm" }]',
      "limits.clearances[0].wear is [null,null]",
    ],
    [
      '[{ "part": "bore", "quantity": "taper", "wear": [null, "0.1mm"], "unit": "mm" }]',
      'limits.clearances[0].wear[1] is "0.1mm"',
    ],
    [
      '[{ "part": "bore", "quantity": "diameter", "wear": [-1, null], "unit": "mm" }]',
      "limits.clearances[0].wear[0] is -1",
    ],
    [
      '[{ "part": "bore", "quantity": "diameter", "new": [86, 86e9], "unit": "mm" }]',
      "limits.clearances[0].new[1] is 86000000000",
    ],
    [
      '[{ "part": "bore", "quantity": "diameter", "new": [86.03, 86.00], "unit": "mm" }]',
      "limits.clearances[0].new is [86.03,86]",
    ],
    [
      '[{ "part": "bore", "quantity": "taper", "wear": [null, 1], "unit": "mm", "source": 62 }]',
      "limits.clearances[0].source is 62",
    ],
    [
      '[{ "part": "bore", "quantity": "taper", "wear": [null, 1], "unit": "mm", "also": 1 }]',
      "limits.clearances[0].also is 1",
    ],
    [
      '[{ "part": "bore", "quantity": "taper", "wear": [null, 1], "unit": "mm", "also": { "unit": "mm", "wear": [null, 1] } }]',
      'limits.clearances[0].also.unit is "mm"',
    ],
    [
      '[{ "part": "bore", "quantity": "taper", "wear": [null, 1], "unit": "mm", "also": { "unit": "in", "new": [null, 1] } }]',
      "limits.clearances[0].also.new is [null,1]",
    ],
  ])("%s is refused by its path", (entries, sentence) => {
    const outcome = limits(entries);
    expect(found(outcome)).toEqual([sentence]);
    expect(outcome.problems).toMatchObject([{ code: "field-bad", severity: "error", line: 2 }]);
    expect(outcome.engine).toBeUndefined();
  });

  test("an entry without a limit, and two for the same thing", () => {
    const none = limits('[{ "part": "bore", "quantity": "taper", "unit": "mm" }]');
    expect(mends(none)).toEqual(['add "wear": [null, 0.1]; null where one end is open']);
    const entry = '{ "part": "deck", "quantity": "flatness", "wear": [null, 0.1], "unit": "mm" }';
    const twice = limits(`[${entry},\n${entry.replace("flatness", "gap")}]`);
    expect(twice.problems).toMatchObject([
      { line: 3, expected: "one entry for one quantity; entry 1 is for the same" },
    ]);
  });

  test("every mend is ready to type", () => {
    const one = (entry: string) => mends(limits(`[{ "part": "bore", "unit": "mm", ${entry} }]`));
    expect(one('"quantity": "tapper", "wear": [null, 1]')).toEqual(['write "taper"']);
    expect(one('"quantity": "taper", "wear": 0.1')).toEqual(["write [null, 0.1]"]);
    expect(one('"quantity": "diameter", "new": [87, 86]')).toEqual(["write [86, 87]"]);
    expect(one('"quantity": "diameter", "new": ["86", 87]')).toEqual([
      "write the number alone, without quotes and unit",
    ]);
    expect(one('"quantity": "diameter", "new": [-1, 87]')).toEqual([
      "write a number in mm of 0 or more and at most 2 m, or null",
    ]);
  });

  test.each([
    [
      '"main", "quantity": "diameter", "new": [2.6235, 2.6245], "wear": [null, 2.6225]',
      "write [2.6225, null]",
    ],
    ['"bore", "quantity": "diameter", "wear": [4.005, null]', "write [null, 4.005]"],
    ['"bore", "quantity": "taper", "wear": [null, 8]', "write [null, 0.008]"],
    ['"bore", "quantity": "taper", "wear": [null, 0.3]', 'write [null, 0.3] with the unit "mm"'],
    ['"pin", "quantity": "out-of-round", "wear": [null, -0.002]', "write [null, 0.002]"],
    [
      '"piston", "quantity": "clearance", "new": [0.002, 0.004], "wear": [null, 0.001]',
      "look both up again: one of them is misread",
    ],
  ])("what cannot be meant is refused: %s", (entry, mend) => {
    const outcome = limits(`[{ "part": ${entry}, "unit": "in" }]`);
    expect(mends(outcome)).toEqual([mend]);
    expect(outcome.engine).toBeUndefined();
  });

  test("each fault stands at its own entry, by line and column", () => {
    const { problems } = limits(`[
  { "part": "bore", "quantity": "taper", "wear": [null, 0.1], "unit": "mm" },
  { "part": "bore", "quantity": "diameter", "new": [86.03, "86"], "unit": "mmm" }
]`);
    expect(problems.map(({ found: sentence, line, column }) => [sentence, line, column])).toEqual([
      ['limits.clearances[1].new[1] is "86"', 4, 60],
      ['limits.clearances[1].unit is "mmm"', 4, 67],
    ]);
  });

  test("a signed limit may have a low end below nought; names that nobody reads are told", () => {
    const { engine, problems } = limits(
      '[{ "part": "pin", "quantity": "taper", "wear": [-0.005, 0.005], "unit": "mm", "sorce": "p. 9" }]',
    );
    expect(engine?.clearances[0]?.wear).toEqual({ low: mm(-0.005), high: mm(0.005) });
    expect(problems).toMatchObject([
      { code: "field-unknown", severity: "caution", mend: "rename it source", line: 2 },
    ]);
  });
});

describe("limits.offered", () => {
  test("sizes come in order, in SI", () => {
    const { engine, problems } = offered(
      '{ "bore": { "unit": "mm", "sizes": [0.5, 0.25, 1.0] }, "pin": { "unit": "thou", "sizes": [10, 20] } }',
    );
    expect(problems).toEqual([]);
    expect(engine?.offered).toEqual({
      bore: { unit: "mm", sizes: [mm(0.25), mm(0.5), mm(1)] },
      pin: { unit: "thou", sizes: [mm(0.254), mm(0.508)] },
    });
  });

  test.each([
    ["[]", "limits.offered is []"],
    ['{ "bores": { "unit": "mm", "sizes": [0.5] } }', 'limits.offered.bores is {"unit":"mm","sizes":[0.5]}'],
    ['{ "bore": [0.5] }', "limits.offered.bore is [0.5]"],
    ['{ "bore": { "sizes": [0.5] } }', "limits.offered.bore.unit is missing"],
    ['{ "bore": { "unit": "mm" } }', "limits.offered.bore.sizes is missing"],
    ['{ "bore": { "unit": "mm", "sizes": [] } }', "limits.offered.bore.sizes is []"],
    ['{ "bore": { "unit": "mm", "sizes": [0.25, 0] } }', "limits.offered.bore.sizes[1] is 0"],
    ['{ "bore": { "unit": "mm", "sizes": [86.5] } }', "limits.offered.bore.sizes[0] is 86.5"],
    ['{ "bore": { "unit": "mm", "sizes": ["STD"] } }', 'limits.offered.bore.sizes[0] is "STD"'],
    ['{ "bore": { "unit": "mm", "sizes": [0.5, 0.5] } }', "limits.offered.bore.sizes[1] is 0.5"],
  ])("%s is refused by its path", (entry, sentence) => {
    expect(found(offered(entry))).toEqual([sentence]);
  });

  test("a near name is suggested, a name that nobody reads is told", () => {
    expect(mends(offered('{ "bores": { "unit": "mm", "sizes": [0.5] } }'))).toEqual(['rename it "bore"']);
    expect(offered('{ "bore": { "unit": "mm", "sizes": [0.5], "from": "shop" } }').problems).toMatchObject([
      { code: "field-unknown", severity: "caution" },
    ]);
  });
});

describe("layout", () => {
  test("as many as are told; nothing where nothing is", () => {
    expect(read('"layout": { "mains": 5, "pins": 4, "numberedFrom": "front" }').engine?.layout).toEqual({
      mains: 5,
      pins: 4,
      numberedFrom: "front",
    });
    expect(read('"name": "pump"').engine).toMatchObject({ layout: {}, clearances: [], offered: {} });
  });

  test.each([
    ['{ "mains": 4.5 }', "layout.mains is 4.5", "a whole number from 1 to 60"],
    ['{ "pins": 0 }', "layout.pins is 0", "a whole number from 1 to 28"],
    ['{ "mains": "5" }', 'layout.mains is "5"', "a whole number from 1 to 60"],
  ])("%s is refused", (layout, sentence, expected) => {
    expect(read(`"layout": ${layout}`).problems).toMatchObject([{ found: sentence, expected }]);
  });
});
