// Two tests of one engine, years apart, by the same kind of value: fully corrected where speed was refused for neither,
// else in reference air alone.

import { type SpeedCorrected, speedDoubt, usualSpeedEffect } from "../../cranking/index.ts";
import type { Engine, EngineRecord, Test } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import { correctionOf } from "../values/correction.ts";
import type { EngineFigures } from "../figures.ts";
import { unevenOf } from "./even-speed.ts";
import type { SpeedAssessment } from "./speed-assessment.ts";
import { sweptOf } from "./speed-estimates.ts";
import { speedOf } from "./speed.ts";
import { isComparable, valuesOf } from "../values/values.ts";

/** In the engine's order; undefined where there is nothing to compare. */
type Lns = readonly (number | undefined)[];

export interface DryPair {
  /** ln of the readings of each. */
  readonly before: Lns;
  readonly after: Lns;
  /** Variance of ln of their ratio by what the speed correction leaves in doubt, or where it was not made by what the
   *  speeds may have done. */
  readonly speedVariance: number;
  /** Middle cranking speeds of both that were known and not corrected [rpm]. */
  readonly speeds?: { readonly before: number; readonly after: number };
}

/** P_0 is the same in both tests, so that its part counts once, as a difference. @source handbook/cranking.md I.4 */
export const dryPair = (record: EngineRecord, figures: EngineFigures, before: Test, after: Test): DryPair => {
  const speeds = [before, after].map((test) =>
    speedOf(record, test, { correction: correctionOf(record, test), figures }),
  );
  const [one, other] = speeds;
  if (one === undefined || other === undefined || speeds.some((speed) => speed?.refused !== undefined))
    return {
      before: inAir(record, before),
      after: inAir(record, after),
      ...asCranked(record.engine, one?.from, other?.from),
    };
  return {
    before: one.cylinders.map((cell) => (cell === undefined ? undefined : Math.log(cell.pressure))),
    after: other.cylinders.map((cell) => (cell === undefined ? undefined : Math.log(cell.pressure))),
    speedVariance: varianceOf(one, other),
  };
};

/** Two known speeds have done what the usual loss makes of their distance, as unsure as it is large; an unknown one lies
 *  anywhere that engines crank at. @source handbook/cranking.md I.5 (computed, no published figure) */
const asCranked = (
  engine: Engine,
  before: number | undefined,
  after: number | undefined,
): Pick<DryPair, "speedVariance" | "speeds"> => {
  if (before === undefined || after === undefined)
    return { speedVariance: (before === after ? 2 : 1) * speedDoubt(engine.ignition, sweptOf(engine)) ** 2 };
  const effect = usualSpeedEffect(engine.ignition, sweptOf(engine), { from: after, to: before });
  return { speedVariance: effect ** 2, speeds: { before, after } };
};

/** At one speed within a test where its cylinders were cranked at differing ones. */
const inAir = (record: EngineRecord, test: Test): Lns => {
  const lnFactors = unevenOf(record, test)?.lnFactors ?? [];
  return (valuesOf(test, "dry")?.cells ?? []).map((cell, i) =>
    cell === undefined || !isComparable(cell) || cell.value <= 0
      ? undefined
      : Math.log(cell.value * correctionOf(record, test).factor) + (lnFactors[i] ?? 0),
  );
};

const varianceOf = (one: SpeedAssessment, other: SpeedAssessment): number => {
  const middle = ({ cylinders }: SpeedAssessment, part: (cell: SpeedCorrected) => number): number =>
    median(cylinders.flatMap((cell) => (cell === undefined ? [] : part(cell))));
  const anew = [one, other].flatMap((speed) => [
    middle(speed, ({ doubts }) => doubts.speed),
    middle(speed, ({ doubts }) => doubts.form),
  ]);
  const shared =
    middle(one, ({ doubts }) => doubts.lossFree) - middle(other, ({ doubts }) => doubts.lossFree);
  return [...anew, shared].reduce((sum, part) => sum + part ** 2, 0);
};
