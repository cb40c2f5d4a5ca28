// What a pair of readings measures: how large the leak is beside the tester's own restrictor.

import {
  type AbsolutePressure,
  type GaugePressure,
  type Temperature,
  aboveVacuum,
  gaugePressure,
} from "../quantity/index.ts";
import { type FlowModel, isentropicFlow } from "./flow-model.ts";
import { type Warmth, noWarmth } from "./warmth.ts";

/** One reading of a leak-down tester: both dials, the air of the place, and what is known of its temperatures. */
export interface LeakReading {
  /** Before the restrictor: what the regulator is set to. */
  readonly supply: GaugePressure;
  /** Behind it: the cylinder-side dial. */
  readonly cylinder: GaugePressure;
  /** Air of the place. */
  readonly ambient: AbsolutePressure;
  /** Standard uncertainties of the two dials [Pa]; absent: taken as exact. */
  readonly uSupply?: number;
  readonly uCylinder?: number;
  /** Absent: the cylinder is as warm as the supply air. */
  readonly warmth?: Warmth;
  /** Absent: 20 °C; only the flow rests on it. */
  readonly supplyTemperature?: Temperature;
}

/** What the restrictor and the leak see. Drops as fractions of the pressure before each. */
export interface Drops {
  readonly supply: AbsolutePressure;
  readonly cylinder: AbsolutePressure;
  readonly restrictor: number;
  readonly leak: number;
}

/** @throws RangeError unless the cylinder lies above the air and not above the supply */
export const dropsOf = ({ supply, cylinder, ambient }: LeakReading): Drops => {
  if (!(cylinder > 0 && cylinder <= supply))
    throw new RangeError(
      `leak-down: the cylinder must read above 0 and at most the supply, got ${String(cylinder)} of ${String(supply)} Pa`,
    );
  const before = aboveVacuum(supply, ambient);
  const between = aboveVacuum(cylinder, ambient);
  return {
    supply: before,
    cylinder: between,
    restrictor: (supply - cylinder) / before,
    leak: cylinder / between,
  };
};

/** alpha = (Cd·A) of the leak / (Cd·A) of the restrictor.
 *  α = [p1·ψ(p2/p1)]/[p2·ψ(pa/p2)]·√(T2/T1), absolute pressures
 *  @throws RangeError unless 0 < P2 ≤ P1 @source steady mass balance @checked tests/published/leakdown.test.ts */
export const alphaOf = (reading: LeakReading, model: FlowModel = isentropicFlow): number => {
  const { supply, cylinder, restrictor, leak } = dropsOf(reading);
  const { factor } = reading.warmth ?? noWarmth;
  return ((supply * model.flow(restrictor)) / (cylinder * model.flow(leak))) * factor;
};

/** How strongly ln alpha moves with the logarithms of the two absolute pressures. */
export interface Sensitivity {
  /** d ln α / d ln p1 = S, 1 where the restrictor is choked. */
  readonly supply: number;
  /** −d ln α / d ln p2: S while the leak is choked, more where it is not. */
  readonly cylinder: number;
}

/** Infinite where nothing is lost. @throws RangeError as alphaOf */
export const sensitivityOf = (reading: LeakReading, model: FlowModel = isentropicFlow): Sensitivity => {
  const { restrictor, leak } = dropsOf(reading);
  const supply = 1 + model.steepness(restrictor);
  return { supply, cylinder: supply + model.steepness(leak) };
};

/** u(ln α) = √((S2·u2/p2)² + (S1·u1/p1)² + u_T²). @throws RangeError as alphaOf */
export const alphaUncertainty = (reading: LeakReading, model: FlowModel = isentropicFlow): number => {
  const { supply, cylinder } = dropsOf(reading);
  const s = sensitivityOf(reading, model);
  const dialSupply = (s.supply * (reading.uSupply ?? 0)) / supply;
  const dialCylinder = (s.cylinder * (reading.uCylinder ?? 0)) / cylinder;
  return Math.hypot(dialSupply, dialCylinder, (reading.warmth ?? noWarmth).uncertainty);
};

/** The cylinder-side pressure of a dial that shows the part lost. @param lost - 0 … 1 @throws RangeError outside */
export const cylinderOfLost = (supply: GaugePressure, lost: number): GaugePressure => {
  if (!(lost >= 0 && lost <= 1))
    throw new RangeError(`cylinderOfLost: the part lost must be within 0 … 1, got ${String(lost)}`);
  return gaugePressure(supply * (1 - lost));
};

/** u of the part lost. √((u2/P1)² + (P2·u1/P1²)²) */
export const lostUncertainty = ({ supply, cylinder, uSupply = 0, uCylinder = 0 }: LeakReading): number =>
  Math.hypot(uCylinder / supply, (cylinder * uSupply) / supply ** 2);
