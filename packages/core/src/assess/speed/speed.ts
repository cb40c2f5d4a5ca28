// The dry readings of one test brought to the speed that the engine's readings are held against, or why they are not.

import {
  type PressureCorrection,
  type SpeedRefusal,
  commonSpeedDoubt,
  correctSpeed,
  refusedLossFree,
  refusedSpeeds,
  speedRefusal,
} from "../../cranking/index.ts";
import { speed as rpm } from "../../quantity/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import type { EngineFigures } from "../figures.ts";
import { leakEvidence } from "./leak-shown.ts";
import { lossFreeOf, usualLossOf } from "./speed-estimates.ts";
import { type Uneven, unevenOf } from "./even-speed.ts";
import type { SpeedAssessment } from "./speed-assessment.ts";
import { speedsRead } from "./speeds.ts";
import { middleOf, readingsOf, refusedByTest } from "./test-at-speed.ts";
import { isComparable, valuesOf } from "../values/values.ts";

export interface SpeedFacts {
  readonly correction: PressureCorrection;
  readonly figures: EngineFigures;
}

/** Undefined where the test holds no dry reading that can be compared.
 *  @source handbook/cranking.md I (computed from a cycle model; no published figure) */
export const speedOf = (record: EngineRecord, test: Test, facts: SpeedFacts): SpeedAssessment | undefined => {
  const values = valuesOf(test, "dry");
  const read = (values?.cells ?? []).map(
    (cell) => cell !== undefined && isComparable(cell) && cell.value > 0,
  );
  if (values === undefined || !read.includes(true)) return undefined;
  const speeds = speedsRead(test, values);
  const uneven = unevenOf(record, test);
  const known = speeds.filter((speed) => speed !== undefined);
  const from = known.length === 0 ? undefined : median(known);
  const to = facts.figures.referenceSpeed;
  const said = {
    ...(from === undefined ? {} : { from, least: Math.min(...known), most: Math.max(...known) }),
    ...(to === undefined ? {} : { to }),
    speeds,
    ...(uneven === undefined ? {} : { uneven: unevenSaid(uneven) }),
  };
  const refuse = (refused: SpeedRefusal, more: Partial<SpeedAssessment> = {}): SpeedAssessment => ({
    ...said,
    ...more,
    refused,
    cylinders: values.cells.map(() => undefined),
  });
  const refused = refusedByTest(record, test);
  if (refused !== undefined && from !== undefined) return refuse(refused);
  const blank = record.engine.cylinders.filter((_, i) => read[i] === true && speeds[i] === undefined);
  if (from === undefined || blank.length > 0)
    return refuse(speedRefusal("speed-not-recorded", from === undefined ? {} : { labels: blank }));
  if (to === undefined) return refuse(speedRefusal("no-reference-speed"));
  const outside = refusedSpeeds(known, to);
  if (outside !== undefined) return refuse(outside);
  const readings = readingsOf(values, speeds, facts.correction);
  const middle = middleOf(readings, from, usualLossOf(record.engine).value);
  const { lossFree, calibration } = lossFreeOf(record, middle, values.gauge);
  const p0 = { lossFree, ...(calibration === undefined ? {} : { calibration }) };
  const step = { to: rpm(to), lossFree, middle };
  const doubt = commonSpeedDoubt(correctSpeed(middle, step, "alone").doubts);
  const tooLittle = refusedLossFree(lossFree, { middle: middle.pressure, doubt });
  if (tooLittle !== undefined) return refuse(tooLittle, { ...p0, middle: middle.pressure });
  const evidence = leakEvidence(record, test, facts);
  return {
    ...said,
    ...p0,
    cylinders: readings.map((reading, i) =>
      reading === undefined ? undefined : correctSpeed(reading, step, evidence[i] ?? "unknown"),
    ),
  };
};

const unevenSaid = ({ to, refused }: Uneven): NonNullable<SpeedAssessment["uneven"]> => ({
  to,
  ...(refused === undefined ? {} : { refused }),
});
