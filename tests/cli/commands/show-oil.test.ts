// What `show` and `enter` say of oil, first strokes and the hose of the gauge. Readings invented; what each is worth:
// handbook/trade.md A3 to A5, B3 and handbook/cranking.md D.3.

import { expect, test } from "vitest";
import { misfits, schemaOf } from "./fits-schema.ts";
import { type Desk, newDesk } from "./desk.ts";

/** 500 ml at 9:1, a chamber of 62.5 ml. */
const geometry = '{"bore": "86.025mm", "stroke": "86.025mm", "compressionRatio": 9}';

const deskOf = (cylinders: number, more = `"geometry": ${geometry}`): Desk => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  const labels = Array.from({ length: cylinders }, (_, i) => `"${String(i + 1)}"`).join(", ");
  desk.put("logbook/pump/engine.json", `{"cylinders": [${labels}], "ignition": "spark", ${more}}`);
  return desk;
};
const enter = (desk: Desk, ...line: readonly string[]) =>
  desk.type(["enter", "pump", ...line, "--unit", "psi"], { width: 300 });
const low = ["--dry", "150 148 120 151"];

test("without a control the oil's own room is taken off, and said", async () => {
  const { out, err } = await enter(deskOf(4), ...low, "--wet", "x x 144 x", "--oil", "x x 2 x");
  expect(out).toContain(
    "Oil raised 3 by 20 %, with no sound cylinder oiled beside it; 4 % at most is the room it takes up, 16 % (11 to 21 %) is left: rings or bore more likely than valves.",
  );
  expect(err).not.toContain("oil:");
});

test("what makes an oil test weak stands beside its word", async () => {
  const said = async (wet: string, oil: string) =>
    (await enter(deskOf(4), ...low, "--wet", wet, "--oil", oil)).out;
  expect(await said("153 x 144 x", "2 x 5 x")).toContain(
    "a weak sign of rings (the control had another amount of oil).",
  );
  expect(await said("x x 186 x", "x x 15 x")).toContain(
    "a weak sign of rings (the oil filled 24 % of the chamber, and no control shows what that did).",
  );
  expect(await said("153 x 129.6 x", "2 x 2 x")).toContain(
    "a weak sign of rings, which scatter alone may make.",
  );
});

test("oil above a quarter of the chamber is cautioned as it is entered, and the reading is kept", async () => {
  const desk = deskOf(4);
  const { exit, err } = await enter(desk, ...low, "--wet", "170 x 150 x", "--oil", "20 x 20 x");
  expect([exit, err]).toEqual([0, expect.stringContaining("oil: 20 ml in 1 (32 % of its chamber)")]);
  expect(desk.text("logbook/pump/tests.csv")).toContain("wet,1,,psi,170,x,150,x");
});

test("oil above half of the chamber is said with what to do, makes the test doubtful and is no sign", async () => {
  const desk = deskOf(4);
  const { exit, out, err } = await enter(desk, ...low, "--wet", "x x 250 x", "--oil", "x x 40 x");
  expect([exit, err]).toEqual([0, expect.stringContaining("turn it by hand until it is out")]);
  expect(out).toContain(
    "Oil filled more than half of the chamber of 3: what it did there tells nothing of rings.",
  );
  expect(out).toContain("Doubtful: 40 ml of oil filled 64 % of the chamber of cylinder 3");
  expect(await desk.json("show", "pump")).toMatchObject({
    trust: { code: "doubtful", reasons: [{ code: "too-much-oil" }] },
    cautions: expect.arrayContaining([expect.stringContaining("oil: 40 ml in 3")]) as unknown,
  });
});

test("the only cylinder of an engine is told what oil did to it", async () => {
  expect((await enter(deskOf(1), "--dry", "120", "--wet", "144", "--oil", "2")).out).toContain(
    "Oil raised 1 by 20 %, with no other cylinder to hold it against; 4 % at most is the room it takes up,",
  );
});

test.each([
  [
    "90 90 43 90",
    "First stroke of 3: 36 % of the last, the middle cylinder 60 %; low first, then building is a weak sign of rings.",
  ],
  [
    "90 90 110 90",
    "First stroke of 3: 92 % of the last, the middle cylinder 60 %; it hardly builds, a weak sign of a valve.",
  ],
  ["90 90 72 90", "First stroke: 3 builds up as the others do, no sign of rings or valves."],
])("first strokes of %s are held against each other only", async (first, said) => {
  const { out } = await enter(deskOf(4), "--dry", "150 150 120 150", "--first-stroke", first);
  expect(out).toContain(said);
});

// By hand: 60/150 = .4 = 1/(1 + q + q² + q³), so q = .692, and 1 − q⁴ = .77
test("strokes that stopped short of the final reading are too few for that gauge", async () => {
  const { out } = await enter(
    deskOf(4),
    "--dry",
    "150 150 150 150",
    "--first-stroke",
    "60 60 60 60",
    "--strokes",
    "4",
  );
  expect(out).toContain(
    "By the first strokes, 4 got this gauge to about 77 % of where it stops: give it more",
  );
});

test("the hose of the gauge is named behind the screen, with what it costs on this engine", async () => {
  const desk = deskOf(4);
  desk.put(
    "logbook/gauges.csv",
    "gauge,kind,unit,valve_end,hose_cm3\nred,compression,psi,gauge,4\nblue,compression,psi,,4\n",
  );
  const why = async (gauge: string) =>
    (await enter(desk, "--dry", "150 150 150 150", "--gauge", gauge, "--why")).out;
  expect(await why("red")).toMatch(
    /The check valve of red sits at the gauge, so its hose belongs to the chamber: it reads about 7 % low on this engine, alike in every cylinder \(hose 4 cm3, chamber 62\.5 cm3; computed, ± 0\.\d %\)/,
  );
  expect(await why("blue")).toContain(
    "Where the check valve of blue sits is not recorded (valve_end in gauges.csv).",
  );
});

test("all of it is in the JSON, as its schema says", async () => {
  const desk = deskOf(4);
  desk.put("logbook/gauges.csv", "gauge,kind,unit,valve_end,hose_cm3\nred,compression,psi,gauge,4\n");
  const line = [
    "--wet",
    "153 x 144 x",
    "--oil",
    "2 x 2 x",
    "--first-stroke",
    "90 89 43 90",
    "--strokes",
    "6",
  ];
  await enter(desk, ...low, ...line, "--gauge", "red");
  const shown = await desk.json("show", "pump");
  expect(misfits(shown, schemaOf("show"))).toEqual([]);
  expect(shown).toMatchObject({
    oil: { against: "control", cylinders: [{ oil_cm3: 2 }, { label: "3", oil_cm3: 2, amount: "fits" }] },
    buildUp: { gauge: "red", reached: { strokes: 6 }, cylinders: [{}, {}, { pattern: "builds-up" }, {}] },
    gaugeHose: { gauge: "red", valveEnd: "gauge", hose_cm3: expect.closeTo(4, 9) as number },
  });
});
