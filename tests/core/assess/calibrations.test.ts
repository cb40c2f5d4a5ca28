// What two cranking speeds say of a gauge, and what a known offset does to its readings. Numbers by the handbook are
// computed there.

import {
  type Engine,
  assessTest,
  gaugePressure,
  length,
  pressureCorrection,
  speed,
  speedCalibration,
  toSi,
} from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { gaugeOf } from "./gauge-of.ts";
import { assessed, recordOf } from "./records.ts";

const psi = (value: number) => gaugePressure(toSi(value, "psi"));

const { engine } = recordOf({ tests: [] });
const twoStroke: Engine = { ...engine, cycle: "two-stroke" };
const selfReleasing: Engine = { ...engine, compressionRelease: "automatic" };
const red = gaugeOf({ gauge: "red", kind: "compression", unit: "kPa" });
const atSea = pressureCorrection({ altitude: length(0) });
const at = (rpm: number, ...kPa: number[]) => ({
  speed: speed(rpm),
  readings: kPa.map((value) => gaugePressure(value * 1000)),
});
const calibrated = (of: Engine, slow: ReturnType<typeof at>, fast: ReturnType<typeof at>, gauge = red) =>
  speedCalibration({ engine: of, gauge }, { slow, fast }, atSea);

test("one cylinder at two speeds gives the reading without losses", () => {
  // handbook, cranking I.5 number 5 (computed): 1185 kPa at 180 rpm, 1312 at 260: P0 1684.6 kPa
  const found = calibrated(engine, at(180, 1185, 1185, 1185), at(260, 1312, 1312, 1312));
  if ("refused" in found) throw new Error(found.refused.code);
  expect(found.P0 / 1000).toBeCloseTo(1684.6, 1);
  // g 2.6827 and 3.6827, h -0.8655: with 1 % each u is 0.0472 there. Here repeats that agree blend to
  // sqrt(6 x 0.015^2 / 10) = 0.01162, of three 0.00671: 4.5562 x 0.00671 = 0.03056; speeds 1.5 % each: 0.01836; and the air
  expect(found.uncertainty).toBeCloseTo(Math.hypot(0.03056, 0.01836, atSea.uncertainty), 4);
});

test("what the gauge reads too high is taken out of both", () => {
  const high = gaugeOf({ gauge: "red", kind: "compression", unit: "kPa", reads_high: "20" });
  const found = calibrated(engine, at(180, 1205, 1205), at(260, 1332, 1332), high);
  expect("P0" in found && found.P0 / 1000).toBeCloseTo(1684.6, 1);
});

test("what the cylinder loses is told as a loss speed, and the means as they were taken", () => {
  const found = calibrated(engine, at(180, 1185), at(260, 1312));
  if ("refused" in found) throw new Error(found.refused.code);
  // N_s = 2 x 180 x (sqrt(1684.6/1185) - 1) = 69.2 rpm
  expect(found.lossSpeed).toBeCloseTo(69.2, 1);
  expect(found.slow.pressure / 1000).toBeCloseTo(1185, 6);
  // a single reading has the whole 1.5 %, three of them 1.162 %/sqrt 3 as above
  expect(found.slow.uPressure).toBeCloseTo(0.015, 6);
});

test("repeats that lie apart are refused before anything is worked out, with how far", () => {
  const found = calibrated(engine, at(180, 100, 171, 172), at(260, 190, 191, 190));
  expect(found).toEqual({ refused: { code: "repeats-differ", at: "slow", by: 72_000 } });
  expect(calibrated(engine, at(180, 1185, 1186), at(260, 1312, 1400))).toMatchObject({
    refused: { code: "repeats-differ", at: "fast" },
  });
});

test("speeds that lift the reading almost as their square leave too much doubt", () => {
  // s = 180/sqrt(1000) = 5.692 and 230/sqrt(1550) = 5.842: the difference, 0.15, is smaller than what repeats leave of either
  expect(calibrated(engine, at(180, 1000), at(230, 1550))).toMatchObject({
    refused: { code: "tells-too-little" },
  });
});

test.each([
  ["speeds too close", engine, at(180, 1185), at(220, 1312), "speeds-too-close"],
  ["no rise", engine, at(180, 1185), at(260, 1185), "not-rising"],
  ["a speed beyond the rule", engine, at(90, 1185), at(260, 1312), "speed-out-of-range"],
  ["a two-stroke", twoStroke, at(180, 1185), at(260, 1312), "two-stroke"],
  ["a release that works by itself", selfReleasing, at(180, 1185), at(260, 1312), "release"],
])("%s: refused", (_, of, slow, fast, code) => {
  expect(calibrated(of, slow, fast)).toMatchObject({ refused: { code } });
});

test("a gauge that reads 5 psi high has 5 psi taken out of its values; what was read stays as read", () => {
  const gauges = "gauge,kind,unit,reads_high\nred,compression,psi,5\n";
  const { readsHigh, cylinders, spread } = assessed({
    gauges,
    tests: [{ test: "2026-05-03a", gauge: "red", cells: "155 145 165 0" }],
  });
  expect(readsHigh).toBeCloseTo(psi(5), 6);
  const dry = cylinders.map(({ pressures }) => pressures.dry);
  expect(dry.map((value) => value?.read)).toEqual([155, 145, 165, 0].map((value) => psi(value)));
  // 155 - 5 = 150 …; a needle that did not move stays at 0
  [150, 140, 160, 0].forEach((value, i) => expect(dry[i]?.corrected).toBeCloseTo(psi(value), 3));
  expect(spread?.highest).toBeCloseTo(psi(160), 3);
});

test("a leak-down dial that reads high is put right too, and the tester's own supply stands in for one not stated", () => {
  const record = recordOf({
    gauges: "gauge,kind,unit,reads_high,regulated,dial\ntester,leak-down,psi,2,80,pressure\n",
    tests: [{ test: "2026-05-03a", what: "leak-down", gauge: "tester", cells: "74 66 74 80" }],
  });
  const [only] = record.tests;
  if (only === undefined) throw new Error("no test");
  // (80 - 72)/80 = 0.1; (80 - 64)/80 = 0.2; (80 - 78)/80 = 0.025
  const lost = assessTest(record, only).cylinders.map(({ leakDown }) => leakDown?.lost);
  expect(lost).toEqual([0.1, 0.2, 0.1, 0.025].map((value) => expect.closeTo(value, 9) as number));
});

test("known holes and the master are read on the same dial as the cylinder: what it reads too high drops out of both", () => {
  const leakDown = (offset: number) =>
    assessed({
      gauges: `gauge,kind,unit,reads_high,regulated,dial,known_holes
tester,leak-down,psi,${String(offset)},80,pressure,1.0mm:${String(66 + offset)}psi
`,
      tests: [
        {
          test: "2026-05-03a",
          what: "leak-down",
          gauge: "tester",
          cells: [74, 66, 72, 70].map((value) => String(value + offset)).join(" "),
          master_psi: String(44 + offset),
        },
      ],
    }).cylinders.map(({ leakDown: found }) => found);
  const right = leakDown(0);
  const high = leakDown(3);
  expect(high.map((found) => found?.lost)).toEqual(
    right.map((found) => expect.closeTo(found?.lost ?? NaN, 9) as number),
  );
  expect(JSON.stringify(rounded(high))).toBe(JSON.stringify(rounded(right)));
});

/** Without what was read, to nine digits. */
const rounded = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (name, inner: unknown) =>
      name === "readings" || name === "value" || name === "read"
        ? undefined
        : typeof inner === "number"
          ? Number(inner.toPrecision(9))
          : inner,
    ),
  );
