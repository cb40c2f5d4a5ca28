import { type LeakQuestion, type Typed, answerLeak, seaLevelPressure } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { inMm, psi, uDial, usual } from "./readings.ts";

const asked = (typed: Typed, rest: Partial<LeakQuestion> = {}) =>
  answerLeak({ typed, restrictor: usual, ambient: seaLevelPressure, uDial, ...rest });

test("a percentage with its supply is the pressure it stands for", () => {
  const percent = asked({ kind: "lost", lost: 0.25, supply: psi(80) });
  const pressure = asked({ kind: "pressure", cylinder: psi(60), supply: psi(80) });
  expect(percent.figures?.alpha).toBeCloseTo(pressure.figures?.alpha ?? 0, 9);
  expect(percent.lost).toBeCloseTo(pressure.lost ?? 0, 12);
});

test("a percentage alone has no size: no alpha, no hole, no area", () => {
  const alone = asked({ kind: "lost", lost: 0.18 }, { restrictor: {} });
  expect(Object.keys(alone)).toEqual(["lost", "alphaSpan"]);
});

// d·√α with alpha 0.762 … 0.885 over 30 to 100 psi
test("with the bore it is a span of holes over the supplies in use", () => {
  const { holeSpan } = asked({ kind: "lost", lost: 0.18 });
  expect([inMm(holeSpan?.low ?? 0).toFixed(2), inMm(holeSpan?.high ?? 0).toFixed(2)]).toEqual([
    "0.89",
    "0.96",
  ]);
});

test("without its supply it is never told for another tester", () => {
  expect(asked({ kind: "lost", lost: 0.18 }, { other: { supply: psi(100) } }).refused).toBe("supply-unknown");
});

// handbook example 6 (computed): 64/80 is 20 %, at 100 psi 19.38 … 24.57 %
test("with its supply it is told for another one on the same restrictor, as the pressure is; no bore is needed", () => {
  const other = { supply: psi(100) };
  const percent = asked({ kind: "lost", lost: 0.2, supply: psi(80) }, { restrictor: {}, other });
  const pressure = asked({ kind: "pressure", cylinder: psi(64), supply: psi(80) }, { restrictor: {}, other });
  for (const { restated, refused, figures } of [percent, pressure]) {
    expect(refused).toBeUndefined();
    expect(figures).not.toHaveProperty("size");
    expect(
      [restated?.reading.lost, restated?.laminarLost].map((lost) => (100 * (lost ?? 0)).toFixed(2)),
    ).toEqual(["19.38", "24.57"]);
  }
});

test("on the same tester at the same supply nothing changes, and no bore counts", () => {
  const typed: Typed = { kind: "pressure", cylinder: psi(64), supply: psi(80) };
  const same = asked(typed, { other: { supply: psi(80) } });
  expect([same.unchanged, same.refused]).toEqual(["same-tester", undefined]);
  expect(same.restated?.reading.cylinder).toBeCloseTo(psi(64), 3);
  expect(same.restated?.uLost).toBeCloseTo(same.figures?.uLost ?? 0, 3);
  expect(asked(typed, { other: { restrictor: usual } })).not.toHaveProperty("unchanged");
});

test("dials that disagree leave nothing to tell, whether or not it is to be restated", () => {
  const above = asked({ kind: "pressure", cylinder: psi(90), supply: psi(80) });
  expect([above.refused, above.judgement?.kind]).toEqual(["gauges-disagree", "disagree"]);
  expect(above).not.toHaveProperty("figures");
});

test("no seal has no figures, a tight cylinder keeps those of the model", () => {
  expect(asked({ kind: "pressure", cylinder: psi(0), supply: psi(80) }).figures).toBeUndefined();
  const tight = asked({ kind: "pressure", cylinder: psi(79), supply: psi(80) });
  expect([tight.judgement?.kind, tight.figures?.alpha.toFixed(4)]).toEqual(["tight", "0.2133"]); // table C.7
  const shut = asked({ kind: "pressure", cylinder: psi(80), supply: psi(80) });
  expect([shut.figures?.alpha, shut.figures?.size?.area]).toEqual([0, 0]);
  expect(shut.figures?.uAlpha).toBeGreaterThan(0);
});

test("a share beyond the whole, and a doubt below nothing, are mistakes of the caller, with a supply and without", () => {
  for (const supply of [{}, { supply: psi(80) }])
    for (const lost of [1.01, -0.01, NaN])
      expect(() => asked({ kind: "lost", lost, ...supply })).toThrow(/answerLeak: the part lost/);
  expect(() => asked({ kind: "lost", lost: 0.2 }, { uDial: -1 })).toThrow(/at least 0 Pa, got -1/);
});
