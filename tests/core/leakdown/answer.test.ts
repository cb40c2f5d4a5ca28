import { type LeakQuestion, type Typed, answerLeak, seaLevelPressure } from "@sealtrend/core";
import { expect, test } from "vitest";
import { inMm, psi, uDial, usual } from "./readings.ts";

const asked = (typed: Typed, rest: Partial<LeakQuestion> = {}) =>
  answerLeak({ typed, restrictor: usual, ambient: seaLevelPressure, uDial, ...rest });

test("a percentage with its supply is the pressure it stands for", () => {
  const percent = asked({ kind: "lost", lost: 0.25, supply: psi(80) });
  const pressure = asked({ kind: "pressure", cylinder: psi(60), supply: psi(80) });
  expect(percent.figures?.alpha).toBeCloseTo(pressure.figures?.alpha ?? 0, 9);
  expect(percent.lost).toBeCloseTo(pressure.lost, 12);
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

test("it is never told for another tester: its supply is not known, or its restrictor is not", () => {
  expect(asked({ kind: "lost", lost: 0.18 }, { other: { supply: psi(100) } }).refused).toBe("supply-unknown");
  const dial = asked(
    { kind: "lost", lost: 0.18, supply: psi(80) },
    { restrictor: {}, other: { supply: psi(100) } },
  );
  expect(dial.refused).toBe("restrictor-unknown");
  expect(dial.figures).not.toHaveProperty("size");
});

test("no seal has no figures, a tight cylinder keeps those of the model", () => {
  expect(asked({ kind: "pressure", cylinder: psi(0), supply: psi(80) }).figures).toBeUndefined();
  const tight = asked({ kind: "pressure", cylinder: psi(79), supply: psi(80) });
  expect([tight.judgement?.kind, tight.figures?.alpha.toFixed(4)]).toEqual(["tight", "0.2133"]); // table C.7
  const shut = asked({ kind: "pressure", cylinder: psi(80), supply: psi(80) });
  expect([shut.figures?.alpha, shut.figures?.size?.area]).toEqual([0, 0]);
  expect(shut.figures?.uAlpha).toBeGreaterThan(0);
});
