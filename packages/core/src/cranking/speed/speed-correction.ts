// A reading brought from the cranking speed of the day to a reference speed, with what that leaves in doubt.

import { type GaugePressure, type Speed, gaugePressure } from "../../quantity/index.ts";
import type { LossFreePressure, ReadingAtSpeed } from "./loss-free-pressure.ts";
import { lossSpeed } from "./loss-speed.ts";

/** How sure it is that a cylinder that lags does so by a leak: `unknown` 0.8 and 0.4 (judgement: 8 of 10 low cylinders
 *  leak), `shown` by oil, leak-down or a second speed, `alone` for an engine of one cylinder. */
export type LeakEvidence = "unknown" | "shown" | "alone";

const weights = {
  unknown: { weight: 0.8, uncertainty: 0.4 },
  shown: { weight: 1, uncertainty: 0.1 },
  alone: { weight: 1, uncertainty: 0 },
} as const;

/** u(ln N) of a speed that was read somehow. */
const speedUncertainty = 0.03;
/** u(ln P)/ln(N/N_ref): how well the form follows the model. */
const formUncertainty = 0.02;

/** What the readings of one test are brought to another speed by. */
export interface SpeedStep {
  readonly to: Speed;
  readonly lossFree: LossFreePressure;
  /** The middle reading of the test. */
  readonly middle: ReadingAtSpeed;
}

/** The parts of u(ln P) at the reference speed. */
export interface SpeedDoubts {
  /** Signed, u(ln P_0) x d ln P / d ln P_0; common to the cylinders of a test. */
  readonly lossFree: number;
  /** Of the speed read, and of the form: common too. */
  readonly speed: number;
  readonly form: number;
  /** Leak or not, of this cylinder alone. */
  readonly leak: number;
}

/** A reading brought to another cranking speed, with what its doubt rests on. */
export interface SpeedCorrected {
  readonly pressure: GaugePressure;
  /** N_s of this cylinder. */
  readonly lossSpeed: Speed;
  /** d ln P(corrected) / d ln P(read), at least A. */
  readonly sensitivity: number;
  readonly doubts: SpeedDoubts;
}

/** P at the speed `to` by a loss speed: P ((1 + N_s/2N)/(1 + N_s/2N_ref))^2. */
const atSpeed = ({ pressure, speed }: ReadingAtSpeed, loss: number, to: Speed): number =>
  pressure * ((1 + loss / (2 * speed)) / (1 + loss / (2 * to))) ** 2;

/** P_leak = P_0/(1 + rho y)^2, rho = N/N_ref, y = sqrt(P_0/P) - 1; P_common = P x what the middle reading needs;
 *  ln P_ref = w ln P_leak + (1 - w) ln P_common. The factor of the middle reading is that of its own loss speed.
 *  A = rho(1 + y)/(1 + rho y), sensitivity = max(A, A + (1 - A) q), and the doubts of the ln: (1 - A) u(ln P_0),
 *  2 rho y/(1 + rho y) u_N, 0.02 ln rho, u_w ln(P_leak/P_common).
 *  @param reading - in reference air, above 0 @throws RangeError on a pressure not above 0
 *  @source cycle model of the handbook (computed) @checked tests/published/speed-correction.test.ts */
export const correctSpeed = (
  reading: ReadingAtSpeed,
  step: SpeedStep,
  evidence: LeakEvidence,
): SpeedCorrected => {
  const { to, lossFree } = step;
  const own = lossSpeed(lossFree.pressure, reading.pressure, reading.speed);
  const leak = atSpeed(reading, own, to);
  const common = evidence === "alone" ? leak : commonAtSpeed(reading, step);
  const { weight, uncertainty } = weights[evidence];
  const rho = reading.speed / to;
  const y = own / (2 * reading.speed);
  // above P_0 nothing is taken off, and the reading stands as it is
  const a = own > 0 ? (rho * (1 + y)) / (1 + rho * y) : 1;
  return {
    pressure: weighed(leak, common, weight),
    lossSpeed: own,
    sensitivity: Math.max(a, a + (1 - a) * lossFree.ownShare),
    doubts: {
      lossFree: (1 - a) * lossFree.uncertainty,
      speed: ((2 * rho * y) / (1 + rho * y)) * speedUncertainty,
      form: formUncertainty * Math.log(rho),
      leak: uncertainty * Math.log(leak / common),
    },
  };
};

/** The pressure of that alone: the years of a fleet ask for no more. */
export const pressureAtSpeed = (
  reading: ReadingAtSpeed,
  step: SpeedStep,
  evidence: LeakEvidence,
): GaugePressure => {
  const { to, lossFree } = step;
  const leak = atSpeed(reading, lossSpeed(lossFree.pressure, reading.pressure, reading.speed), to);
  const common = evidence === "alone" ? leak : commonAtSpeed(reading, step);
  return weighed(leak, common, weights[evidence].weight);
};

const commonAtSpeed = (reading: ReadingAtSpeed, { to, lossFree, middle }: SpeedStep): number =>
  atSpeed(reading, lossSpeed(lossFree.pressure, middle.pressure, middle.speed), to);

const weighed = (leak: number, common: number, weight: number): GaugePressure =>
  gaugePressure(leak ** weight * common ** (1 - weight));

/** What the cylinders of one test share of the doubt, in ln P. */
export const commonSpeedDoubt = ({ lossFree, speed, form }: SpeedDoubts): number =>
  Math.hypot(lossFree, speed, form);

/** Standard uncertainty of ln of the corrected reading. @param reading - u(ln P) of the reading itself, 0.018 as a rule */
export const speedCorrectedUncertainty = ({ sensitivity, doubts }: SpeedCorrected, reading: number): number =>
  Math.hypot(sensitivity * reading, commonSpeedDoubt(doubts), doubts.leak);

/** Standard uncertainty of ln(other/one), two tests of one cylinder with the same P_0: P_0, and whether it leaks, are the
 *  same in both, so that their parts count once, as a difference. @param reading - u(ln P) of each reading itself */
export const speedRatioUncertainty = (one: SpeedCorrected, other: SpeedCorrected, reading: number): number =>
  Math.hypot(
    ...[one, other].flatMap(({ sensitivity, doubts: { speed, form } }) => [
      sensitivity * reading,
      speed,
      form,
    ]),
    one.doubts.lossFree - other.doubts.lossFree,
    one.doubts.leak - other.doubts.leak,
  );
