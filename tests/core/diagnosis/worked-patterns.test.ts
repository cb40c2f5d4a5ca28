// Presenting patterns and a brute-force sum of handbook/diagnosis.md 2 and 9, and its check value of an oil test: inputs
// invented, results computed in the handbook, no published value. What the patterns were aimed at is judgement.

import { type Diagnosis, diagnose } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { classDensities } from "../../../packages/core/src/diagnosis/model/classes.ts";
import { type Written, evidenceOf } from "./worked-evidence.ts";
import { near } from "./worked-examples.ts";

const causesOf = (written: Written): Readonly<Record<string, number>> =>
  Object.fromEntries(
    diagnose(evidenceOf(written)).causes.map(({ code, probability }) => [code, probability]),
  );
const stateOf = ({ states }: Diagnosis, id: string): number =>
  states.find((state) => state.id === id)?.probability ?? 0;

test("one of four a quarter low is an exhaust valve first, then rings, then the plug seal", () => {
  const of = causesOf({ dry: [150, 152, 110, 149] });
  const sum = (...codes: readonly string[]): number =>
    codes.reduce((total, code) => total + (of[code] ?? 0), 0);
  expect(of["exhaust-valve"]).toEqual(near(0.281));
  // printed .217 is the group `bottom`, with the low compression ratio
  const rings = ["worn-rings-or-bore", "broken-ring-or-piston", "stuck-rings", "low-compression-ratio"];
  expect(sum(...rings)).toEqual(near(0.217));
  expect(sum("sticking-valve", "tight-lash")).toEqual(near(0.13));
  expect([of["intake-valve"], of["plug-seal"], of["no-fault"]]).toEqual([
    near(0.071),
    near(0.107),
    near(0.035),
  ]);
});

test("two neighbours a third low are a gasket first, by two chances in three", () => {
  const of = causesOf({ dry: [150, 100, 98, 149] });
  const named = ["gasket-to-neighbour", "exhaust-valve", "tight-lash", "washed-or-dry-bores"];
  expect(named.map((code) => of[code])).toEqual([0.641, 0.112, 0.047, 0.041].map((value) => near(value)));
});

test("all a quarter low and even: the test itself before wear, and wear before the cam", () => {
  const found = diagnose(evidenceOf({ dry: [110, 108, 112, 109], expected: [150, "maker"] }));
  const ofTest = ["throttle-or-filter", "slow-cranking", "gauge-or-hose", "compression-release"];
  expect(ofTest.reduce((sum, cause) => sum + stateOf(found, `all ${cause}`), 0)).toEqual(near(0.433, 0.001));
  expect(stateOf(found, "all worn-rings-or-bore")).toEqual(near(0.309));
  expect(stateOf(found, "all cam-retarded")).toEqual(near(0.143));
  expect(stateOf(found, "some washed-or-dry-bores")).toBeLessThan(0.001);
});

test("a whole bank low is the cam of that bank, surer than it should be", () => {
  const banks = [
    [0, 1, 2, 3],
    [4, 5, 6, 7],
  ];
  const found = diagnose(evidenceOf({ dry: [150, 151, 149, 150, 105, 106, 104, 105], banks }));
  expect(stateOf(found, "bank 2 cam-retarded")).toEqual(near(0.933));
  expect(stateOf(found, "bank 2 bent-valve")).toEqual(near(0.006));
});

test("two at zero are bent valves", () => {
  const of = causesOf({ dry: [150, 0, 152, 0] });
  const named = ["bent-valve", "sticking-valve", "none-of-these"];
  expect(named.map((code) => of[code])).toEqual([0.712, 0.026, 0.139].map((value) => near(value)));
});

test("one a quarter high is carbon first", () => {
  const of = causesOf({ dry: [150, 152, 185, 149] });
  const named = ["carbon", "no-fault", "none-of-these"];
  expect(named.map((code) => of[code])).toEqual([0.472, 0.195, 0.105].map((value) => near(value)));
});

test("the sum is that of explicit loops over every state of two cylinders, to six digits", () => {
  const { target, causes, cylinders } = diagnose(
    evidenceOf({
      dry: [150, 112],
      wet: [156, 121],
      expected: [155, "maker"],
      signs: { miss: "present", "oil use": "absent" },
      onset: [undefined, "gradual"],
    }),
  );
  expect(target).toBe(1);
  expect(causes.slice(0, 5).map(({ code, probability }) => [code, probability.toFixed(6)])).toEqual([
    ["exhaust-valve", "0.507940"],
    ["intake-valve", "0.114616"],
    ["tight-lash", "0.113756"],
    ["sticking-valve", "0.058208"],
    ["intake-lobe", "0.053785"],
  ]);
  const ofFirst = (cylinders[0] ?? []).toSorted((a, b) => b - a).slice(0, 3);
  expect(ofFirst.map((chance) => chance.toFixed(6))).toEqual(["0.935754", "0.016226", "0.015336"]);
});

// p 110, w 145, c 1.04, reference 151: g .1949, u .0186 -> 0, .000, 6.656, .003
test("a gain by oil of a fifth supports rings and nothing else", () => {
  const [dry, wet, reference] = [110, 145 / 1.04, 151];
  const gain = (wet - dry) / reference;
  const doubt = (0.015 * Math.hypot(wet, dry)) / reference + 0.001;
  expect([gain, doubt]).toEqual([near(0.1949, 0.00005), near(0.0186, 0.00005)]);
  const shapes = [
    [-0.15, 0.05],
    [0.05, 0.1],
    [0.1, 0.25],
    [0.25, 0.8],
  ].map(([low = 0, high = 0]) => ({ kind: "between", low, high }) as const);
  expect(classDensities(shapes, gain, doubt).map((density) => density - 1e-4)).toEqual(
    [0, 0, 6.656, 0.003].map((value) => near(value)),
  );
});
