// Readings of leak-down tests as the makers' worked examples give them: psi, millimetres, dials of ±2 psi.

import {
  type LeakReading,
  type Restrictor,
  dialUncertainty,
  gaugePressure,
  length,
  seaLevelPressure,
  toSi,
} from "@sealtrend/core/parts";

export const psi = (value: number) => gaugePressure(toSi(value, "psi"));
export const mm = (value: number) => length(toSi(value, "mm"));
/** As millimetres, for comparisons. */
export const inMm = (metres: number): number => metres * 1e3;

/** ±2 psi, divided in 1 psi. */
export const uDial = dialUncertainty({});

/** At sea level, both dials alike. */
export const read = (cylinder: number, supply = 80, u = uDial): LeakReading => ({
  supply: psi(supply),
  cylinder: psi(cylinder),
  ambient: seaLevelPressure,
  uSupply: u,
  uCylinder: u,
});

/** A restrictor of which the bore is known to 0.001 in. */
export const bored = (millimetres: number): Restrictor => ({ bore: mm(millimetres), tolerance: mm(0.0254) });
export const usual = bored(1.016);
