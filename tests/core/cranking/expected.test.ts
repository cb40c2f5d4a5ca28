// What a healthy cylinder should read, from whatever is known: what is given, what is assumed, what is refused.

import {
  absolutePressure,
  angle,
  area,
  expectedFault,
  expectedPressure,
  statedFault,
  unlikelyOf,
  length,
  speed,
  temperature,
  volume,
  type ExpectedPressure,
  type InputName,
  type KnownOfCylinder,
} from "@sealtrend/core/parts";
import { expect, test } from "vitest";

const little: KnownOfCylinder = {
  kind: "spark",
  compressionRatio: 10,
  airPressure: absolutePressure(101_325),
};
const sized: KnownOfCylinder = { ...little, bore: length(0.086), stroke: length(0.086) };

const input = ({ inputs }: ExpectedPressure, name: InputName) => inputs.find((one) => one.name === name);

test("what is not given is assumed, with a deviation, and said", () => {
  const answer = expectedPressure(sized);
  expect(input(answer, "bore")).toEqual({ name: "bore", value: 0.086, from: "given", effect: 0 });
  expect(input(answer, "intakeCloses")).toMatchObject({
    value: 60,
    from: "assumed",
    deviation: { by: "plus-minus", amount: 10 },
  });
  expect(input(answer, "rod")).toMatchObject({ value: 1.65 * 0.086, from: "assumed" });
  expect(input(answer, "leak")).toMatchObject({ from: "assumed", deviation: { by: "times", amount: 1.6 } });
});

test("the band is the reading times and over e to twice the uncertainty", () => {
  const { expected, low, high, uncertainty } = expectedPressure(sized);
  expect(Math.log(high / expected)).toBeCloseTo(2 * uncertainty, 12);
  expect(Math.log(expected / low)).toBeCloseTo(2 * uncertainty, 12);
});

test("the uncertainty is the root of the sum of squares of the effects and of the model's own", () => {
  const { uncertainty, inputs, modelUncertainty } = expectedPressure(sized);
  const sum = inputs.reduce((total, { effect }) => total + effect * effect, modelUncertainty ** 2);
  expect(uncertainty ** 2).toBeCloseTo(sum, 12);
});

test("each thing that becomes known narrows the band", () => {
  const known: readonly KnownOfCylinder[] = [
    little,
    sized,
    { ...sized, intakeCloses: angle(60) },
    { ...sized, intakeCloses: angle(60), leak: area(1e-6) },
    { ...sized, intakeCloses: angle(60), leak: area(1e-6), speed: speed(250) },
    { ...sized, intakeCloses: angle(60), leak: area(1e-6), speed: speed(250), hose: volume(1e-6) },
  ];
  const spreads = known.map((one) => expectedPressure(one).uncertainty);
  expect(spreads).toEqual([...spreads].sort((a, b) => b - a));
});

test("without bore and stroke a size of the kind is assumed, and of one of them the other", () => {
  const none = expectedPressure(little);
  expect(input(none, "size")?.value).toBeCloseTo(0.5e-3, 9);
  expect(none.swept).toBeCloseTo(0.5e-3, 9);
  expect(input(none, "shape")?.value).toBeCloseTo(1, 9);
  const bore = expectedPressure({ ...little, kind: "compression", bore: length(0.088) });
  expect(input(bore, "size")).toBeUndefined();
  expect(bore.model.cylinder.stroke).toBeCloseTo(0.1, 9);
  const stroke = expectedPressure({ ...little, kind: "motorcycle", stroke: length(0.06) });
  expect(stroke.model.cylinder.bore).toBeCloseTo(0.075, 9);
});

test("a cold engine has walls as cold as the air", () => {
  const cold = expectedPressure({ ...sized, engine: "cold", airTemperature: temperature(278.15) });
  expect(cold.model.wall).toBe(278.15);
  expect(cold.model.start).toBeCloseTo(278.15, 9);
});

test("without heat to the walls there is no correlation to doubt", () => {
  expect(input(expectedPressure({ ...sized, heat: "none" }), "heatFactor")).toBeUndefined();
});

test("a hose stated as 0 stays at 0, however it is moved", () => {
  const answer = expectedPressure({ ...sized, hose: volume(0) });
  expect(answer.trappedRatio).toBe(answer.trappedRatioWithHose);
  expect(Number.isFinite(answer.uncertainty)).toBe(true);
});

test.each([
  ["bore", { bore: length(0) }, { must: "be-at-least", limit: 0.005 }],
  ["compressionRatio", { compressionRatio: 1 }, { must: "be-above", limit: 1 }],
  ["intakeCloses", { intakeCloses: angle(180) }, { must: "be-below", limit: 180 }],
  ["rod", { rod: length(0.04) }, { must: "be-above", limit: 0.043 }],
  ["speed", { speed: speed(0) }, { must: "be-at-least", limit: 30 }],
  ["leak", { leak: area(1e-3) }, { must: "be-at-most", limit: 100e-6 }],
  ["wall", { wall: temperature(900) }, { must: "be-at-most", limit: 500 }],
  ["gamma", { gamma: 1 }, { must: "be-at-least", limit: 1.05 }],
] as const)(
  "%s that cannot be is named with its limit, and throws where it is used",
  (field, wrong, fault) => {
    const known = { ...sized, ...wrong };
    expect(expectedFault(known)).toMatchObject({ field, ...fault });
    expect(() => expectedPressure(known)).toThrow(`expectedPressure: ${field} must`);
  },
);

test("a rod is held against the longest stroke that the assumption is moved to", () => {
  // 0.5 L times 1.5, bore = stroke: (4 x 0.75e-3 / pi)^(1/3) = 98.5 mm, half of it 49.2 mm
  for (const rod of [0.044, 0.045, 0.049])
    expect(expectedFault({ ...little, rod: length(rod) })).toMatchObject({
      field: "rod",
      must: "be-above",
      limit: expect.closeTo(0.04924, 4) as number,
      assumed: "stroke",
    });
  expect(expectedFault({ ...little, rod: length(0.05) })).toBeUndefined();
  expect(expectedPressure({ ...little, rod: length(0.05) }).standing).toBe("usable");
});

test("a size that is assumed from an odd one stays among those that can be", () => {
  for (const known of [
    { bore: length(0.005) },
    { bore: length(2) },
    { stroke: length(0.005) },
    { stroke: length(5) },
  ])
    for (const kind of ["spark", "motorcycle", "compression"] as const)
      expect(expectedFault({ ...little, kind, ...known })).toBeUndefined();
});

test("plain numbers can be asked about before they are made quantities", () => {
  expect(statedFault({ hose: -1e-6 })).toMatchObject({ field: "hose", must: "be-at-least", limit: 0 });
  expect(statedFault({ wall: 0 })).toMatchObject({ field: "wall", limit: 200 });
  expect(statedFault({ leak: -1e-6, compressionRatio: 10 })).toMatchObject({ field: "leak", limit: 0 });
  expect(statedFault({ compressionRatio: 10, speed: 250 })).toBeUndefined();
});

test("a leak that no compression keeps up with leaves nothing to read", () => {
  const answer = expectedPressure({
    ...little,
    compressionRatio: 40,
    bore: length(0.005),
    stroke: length(0.005),
    leak: area(100e-6),
    speed: speed(30),
  });
  expect([answer.expected, answer.standing]).toEqual([0, "no-pressure"]);
});

test("a band whose upper end is more than four times its lower says nothing", () => {
  const wide = expectedPressure({ ...little, leak: area(18e-6) });
  expect(wide.high / wide.low).toBeGreaterThan(4);
  expect(wide.standing).toBe("too-wide");
});

test("what hardly any engine has is named with what nearly all have; what is assumed is not", () => {
  expect(unlikelyOf({ ...little, bore: length(0.086), stroke: length(0.86) })).toEqual([
    { name: "shape", found: expect.closeTo(0.1, 9) as number, least: 0.4, most: 2 },
  ]);
  expect(unlikelyOf({ ...little, compressionRatio: 30 }).map(({ name }) => name)).toEqual([
    "compressionRatio",
  ]);
  expect(unlikelyOf({ ...little, kind: "compression", compressionRatio: 20 })).toEqual([]);
  expect(
    unlikelyOf({ ...little, intakeCloses: angle(170), speed: speed(40) }).map(({ name }) => name),
  ).toEqual(["intakeCloses", "speed"]);
  expect(unlikelyOf(sized)).toEqual([]);
});

test("a rod is held against the throw of the stroke that is assumed", () => {
  expect(expectedFault({ ...little, rod: length(0.03) })).toMatchObject({ field: "rod", must: "be-above" });
});
