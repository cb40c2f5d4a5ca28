// gauge calibrate at two cranking speeds: what is kept in engine.json, and what is refused.

import { expect, test } from "vitest";
import type { Desk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";
import { deskWithGauges, speeds } from "./gauge-desk.ts";
import { numbersLost } from "./numbers.ts";

interface Curve {
  readonly gauge: string;
  readonly P0: string;
  readonly u_ln: number;
  readonly source: string;
}

const curvesIn = (desk: Desk): readonly Curve[] =>
  (JSON.parse(desk.text("logbook/pump/engine.json")) as { crankingCurve: Curve[] }).crankingCurve;

test("two speeds keep what the engine would read without losses, for this gauge, in engine.json", async () => {
  const desk = await deskWithGauges();
  const before = desk.text("logbook/pump/engine.json");
  const { exit, out } = await desk.type(speeds);
  // means 171.67 and 190.33 psi: s 180/sqrt(171.67) = 13.738, 260/sqrt(190.33) = 18.846; (80/5.108)^2 = 245.3 psi
  // = 1691 kPa; at 0 m the factor to reference air is 1
  expect([exit, out.split("\n").slice(2, 4)]).toEqual([
    0,
    ["Without any loss pump would read 245 psi on red at sea level, ± 4 % (one", "standard uncertainty)."],
  ]);
  const [curve, more] = curvesIn(desk);
  expect([curve?.gauge, curve?.source, more]).toEqual(["red", "two speeds, 2026-05-03", undefined]);
  expect(Number.parseFloat(curve?.P0 ?? "")).toBeCloseTo(1691, -1);
  expect(desk.text("logbook/pump/engine.json").startsWith(before.trimEnd().replace(/\s*\}$/, ""))).toBe(true);
});

test("a later calibration of the same gauge takes the place of its older one; that of another gauge stays", async () => {
  const desk = await deskWithGauges();
  await desk.type([
    "engine",
    "set",
    "pump",
    "crankingCurve",
    '[{ "gauge": "blue", "P0": "1700kPa", "u_ln": 0.05 }, { "gauge": "red", "P0": "1500kPa", "u_ln": 0.05 }]',
  ]);
  expect(await desk.type(speeds)).toMatchObject({ exit: 0 });
  expect(curvesIn(desk).map(({ gauge, P0 }) => [gauge, P0 === "1500kPa"])).toEqual([
    ["blue", false],
    ["red", false],
  ]);
});

test("speeds that lie too close, or readings that do not rise, are refused with the reason, and nothing is kept", async () => {
  const desk = await deskWithGauges();
  const before = desk.text("logbook/pump/engine.json");
  const close = speeds.map((word) => (word === "260rpm" ? "200rpm" : word));
  const flat = speeds.map((word) => (word === "190 191 190" ? "171 172 172" : word));
  const said = [await desk.type(close), await desk.type(flat)];
  expect(said.map(({ exit, err }) => [exit, err.split("\n")[0]])).toEqual([
    [1, "180 and 200 rpm lie too close: the second should be 1.25 times the first"],
    [1, "the reading did not rise from 180 to 260 rpm, as every loss makes it"],
  ]);
  expect(desk.text("logbook/pump/engine.json")).toBe(before);
});

const speedsWith = (slow: string, fast = "190 191 190"): readonly string[] =>
  speeds.map((word) => (word === "171 172 172" ? slow : word === "190 191 190" ? fast : word));

test("readings at one speed that differ as repeats do not are refused in plain words, and nothing is kept", async () => {
  const desk = await deskWithGauges();
  const before = desk.text("logbook/pump/engine.json");
  const { exit, err } = await desk.type(speedsWith("100 171 172"));
  expect([exit, err.replace(/\s+/g, " ")]).toEqual([
    1,
    "the readings at the slow speed (100 171 172) differ by 72 psi, more than repeats do " +
      "expected readings of one cylinder that lie within a few percent read them again: --slow-reads ",
  ]);
  expect(err).not.toContain("crankingCurve");
  expect(desk.text("logbook/pump/engine.json")).toBe(before);
});

test("readings that leave the answer open are refused in plain words", async () => {
  const desk = await deskWithGauges();
  const close = speedsWith("150", "225").map((word) => (word === "260rpm" ? "230rpm" : word));
  const { exit, err } = await desk.type(close);
  expect(exit).toBe(1);
  expect(err).toMatch(/^these readings leave the loss-free reading ± \d+ % in doubt\n/);
});

test("a reading beyond the dial is refused", async () => {
  const desk = await deskWithGauges();
  await desk.type(["gauge", "add", "dial", "--kind", "compression", "--full-scale", "300psi"]);
  const { exit, err } = await desk.type(
    speedsWith("171 172 172", "350 350 350").map((word) => (word === "red" ? "dial" : word)),
  );
  expect([exit, err.split("\n")[0]]).toEqual([2, "--fast-reads 350 is more than dial can show (300 psi)"]);
});

test("one reading a speed is taken, with a wider doubt and a word", async () => {
  const desk = await deskWithGauges();
  const { exit, out } = await desk.type(speedsWith("171", "190"));
  expect([exit, out.replace(/\s+/g, " ")]).toEqual([
    0,
    expect.stringContaining(
      "Fewer than three readings at a speed make it less sure, which the ± holds: three at each tell more.",
    ),
  ]);
  const [one] = curvesIn(desk);
  await desk.type(speeds);
  const [three] = curvesIn(desk);
  expect(one?.u_ln).toBeGreaterThan(1.2 * (three?.u_ln ?? NaN));
});

test("--why tells the means, the loss speed and their doubts, and the document holds every number", async () => {
  const desk = await deskWithGauges();
  const document = await desk.json(...speeds);
  const { out } = await desk.type([...speeds, "--why"]);
  expect(misfits(document, schemaOf("gauges"))).toEqual([]);
  expect(numbersLost(out, document)).toEqual([]);
  // means 171.67 and 190.33 psi; N_s = 2 x 180 x (sqrt(245.3/171.67) - 1) = 70.3 rpm
  expect(out).toContain("At 180 rpm (± 1.5 %) the mean of 3 in reference air: 171.7 psi");
  expect(out).toContain("This cylinder loses speed as 70 rpm");
});
