// The gas in a cranked cylinder from intake closing to a little past top dead centre: a closed volume that leaks and
// loses heat. The loop works on plain numbers in SI and makes no objects.

import {
  type AbsolutePressure,
  type Angle,
  type GaugePressure,
  type Temperature,
  absolutePressure,
  angle,
  gaugePressure,
  temperature,
} from "../../quantity/index.ts";
import { gasConstant } from "../../air/index.ts";
import { type CycleInput, type Slopes, ratesOf } from "./cycle-rates.ts";
import { clearanceVolume, closingAngle, requirePossible, trappedRatio } from "./cylinder.ts";
import { apparentExponent } from "./polytropic.ts";
import { onParabola, summit } from "./parabola.ts";

/** What the cylinder does. */
export interface Cycle {
  readonly peak: AbsolutePressure;
  /** What a gauge shows that holds the peak. */
  readonly reading: GaugePressure;
  /** From top dead centre, negative before it. */
  readonly peakAngle: Angle;
  readonly peakTemperature: Temperature;
  /** Mass at the peak / mass at intake closing. */
  readonly massLeft: number;
  /** n of peak/air = r'^n, r' the trapped ratio with the hose. */
  readonly exponent: number;
}

/** Crank degrees a step where nothing asks for less. */
const usualStep = 1;
/** The integration ends here, well past any peak [deg]. */
const end = 20;
/** Steps in the shortest time that the leak needs to empty the chamber. */
const stepsPerEmptying = 12;
/** For the speed of that emptying, a gas hotter than any here [K]. */
const hottest = 1200;
/** A leak that would need more steps than this lets the gas out so much faster than the piston drives it that no pressure
 *  builds up: below 0.3 kPa even at a ratio of 40. */
const mostSteps = 20_000;

/** Peak pressure of a closed, leaking, cooled cylinder. Over the crank angle θ, with ω = 2πN/60:
 *  dm/dθ = −ṁ/ω,  dT/dθ = [−p dV/dθ ω + h A (T_wall − T) − ṁ R T]/(m c_v ω),  p = m R T/V,  c_v = R/(γ − 1),
 *  ṁ = Cd·A p ψ(p_air/p)/√(R T); inflow brings h_in − u instead. Classical Runge-Kutta at fixed steps, the peak by a parabola.
 *  @param step - crank degrees at most; the error at 1 deg is below 0.02 % (tests/laws/cycle.test.ts)
 *  @throws RangeError for impossible sizes, a speed of 0, a heat factor below 0, a γ of 1 or less
 *  @source first law of an open system, any engine textbook  @checked tests/published/cranking-model.test.ts */
export const crankingCycle = (input: CycleInput, step = usualStep): Cycle => {
  const { cylinder, intakeCloses, air, hose } = input;
  requirePossible("crankingCycle", { ...cylinder, intakeCloses });
  requireInput(input, step);
  const from = closingAngle(intakeCloses);
  const steps = stepsFor(input, end - from, step);
  if (steps > mostSteps) return withoutPressure(input);
  const top = integrate(input, from, steps);
  const peak = absolutePressure(top.pressure);
  return {
    peak,
    reading: gaugePressure(Math.max(0, peak - air)),
    peakAngle: angle(top.theta),
    peakTemperature: temperature(top.kelvins),
    massLeft: top.mass,
    exponent: apparentExponent(air, peak, trappedRatio(cylinder, intakeCloses, hose)),
  };
};

const requireInput = ({ speed, heatFactor, gamma }: CycleInput, step: number): void => {
  const must = (holds: boolean, what: string, found: number): void => {
    if (!holds) throw new RangeError(`crankingCycle: ${what}, got ${String(found)}`);
  };
  must(speed > 0, "speed must be above 0 rpm", speed);
  must(heatFactor >= 0, "heatFactor must be at least 0", heatFactor);
  if (gamma !== "variable") must(gamma > 1, "gamma must be above 1", gamma);
  must(step > 0, "step must be above 0 deg", step);
};

interface Peak {
  readonly pressure: number;
  readonly theta: number;
  readonly kelvins: number;
  readonly mass: number;
}

/** What a gas does that the leak never holds: it stays at the pressure and the temperature it came with. */
const withoutPressure = ({ cylinder, intakeCloses, air, start, hose }: CycleInput): Cycle => ({
  peak: air,
  reading: gaugePressure(0),
  peakAngle: angle(0),
  peakTemperature: start,
  massLeft: 1 / trappedRatio(cylinder, intakeCloses, hose),
  exponent: 0,
});

/** Mass counts in units of the mass at intake closing. @param from - where the intake closes [deg] */
const integrate = (input: CycleInput, from: number, steps: number): Peak => {
  const step = (end - from) / steps;
  const rates = ratesOf(input);
  const slopes: Slopes = { mass: 0, kelvins: 0, pressure: 0 };
  const trace = {
    pressure: new Float64Array(steps + 1),
    kelvins: new Float64Array(steps + 1),
    mass: new Float64Array(steps + 1),
  };
  let mass = 1;
  let kelvins: number = input.start;
  for (let i = 0; i <= steps; i++) {
    const theta = from + i * step;
    rates(theta, mass, kelvins, slopes);
    trace.pressure[i] = slopes.pressure;
    trace.kelvins[i] = kelvins;
    trace.mass[i] = mass;
    const m1 = slopes.mass;
    const t1 = slopes.kelvins;
    rates(theta + step / 2, mass + (step / 2) * m1, kelvins + (step / 2) * t1, slopes);
    const m2 = slopes.mass;
    const t2 = slopes.kelvins;
    rates(theta + step / 2, mass + (step / 2) * m2, kelvins + (step / 2) * t2, slopes);
    const m3 = slopes.mass;
    const t3 = slopes.kelvins;
    rates(theta + step, mass + step * m3, kelvins + step * t3, slopes);
    mass += (step / 6) * (m1 + 2 * m2 + 2 * m3 + slopes.mass);
    kelvins += (step / 6) * (t1 + 2 * t2 + 2 * t3 + slopes.kelvins);
  }
  const { at, offset } = summit(trace.pressure);
  return {
    pressure: onParabola(trace.pressure, at, offset),
    theta: from + (at + offset) * step,
    kelvins: onParabola(trace.kelvins, at, offset),
    mass: onParabola(trace.mass, at, offset),
  };
};

/** Fewer crank degrees a step where the leak could empty the chamber within a few of them. */
const stepsFor = ({ cylinder, leak, speed, hose }: CycleInput, span: number, most: number): number => {
  const sound = Math.sqrt(gasConstant * hottest);
  const emptying = (clearanceVolume(cylinder) + hose) / (Math.max(leak, 1e-12) * sound);
  const stepForLeak = (6 * speed * emptying) / stepsPerEmptying;
  return Math.ceil(span / Math.min(most, stepForLeak));
};
