// Whether a low cylinder is known to leak, by something beside its own dry reading. A lag that is no leak (a cam lobe, one
// clogged port) goes otherwise with the cranking speed.

import type { LeakEvidence, PressureCorrection } from "../../cranking/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import type { CylinderAssessment } from "../assessment.ts";
import type { EngineFigures } from "../figures.ts";
import { forwardOf, isFlagged } from "../flags.ts";
import { oilTest } from "../oil/oil-test.ts";
import { pressureValues } from "../values/pressure-values.ts";
import { risesFaster } from "./second-speed.ts";
import { valuesOf } from "../values/values.ts";

export interface Known {
  readonly correction: PressureCorrection;
  readonly figures: EngineFigures;
}

/** In the engine's order: oil raised it as it raises worn rings, its leak-down is flagged, or it rose with the speed as a
 *  leaking one does. An engine of one cylinder has nothing to share a lag with. */
export const leakEvidence = (record: EngineRecord, test: Test, known: Known): readonly LeakEvidence[] => {
  const { cylinders } = record.engine;
  if (cylinders.length === 1) return ["alone"];
  const oiled = oilShown(record, test, known);
  const leaking = forwardOf(record, test, "leak-down", known.figures);
  const faster = risesFaster(record, test, known.figures);
  return cylinders.map((label, i) =>
    oiled.includes(label) || isFlagged(leaking?.cylinders[i]) || faster[i] === true ? "shown" : "unknown",
  );
};

/** Cylinders that stand out low and that oil raised by 10 % more than it raises a sound one. Limits are left out here:
 *  whether one is missed hangs on the speed correction itself. @source handbook/trade.md B3 */
const oilShown = (record: EngineRecord, test: Test, known: Known): readonly string[] => {
  if (valuesOf(test, "wet") === undefined) return [];
  const verdicts = forwardOf(record, test, "dry", known.figures)?.cylinders;
  const pressures = pressureValues(record, test, known);
  const cylinders = record.engine.cylinders.map((label, i): CylinderAssessment => {
    const verdict = verdicts?.[i];
    const flagged = isFlagged(verdict);
    const read = verdict !== undefined && verdict.kind !== "not-read";
    return {
      label,
      pressures: pressures[i] ?? {},
      ...(read ? { dryStanding: flagged ? "suspect" : "even" } : {}),
      flagged,
      flaggedBefore: false,
      belowLimit: false,
      limitsMissed: [],
    };
  });
  return (oilTest(record, test, { cylinders, figures: known.figures })?.cylinders ?? []).flatMap(
    ({ label, evidence }) => (evidence === "rings" || evidence === "strong" ? [label] : []),
  );
};
