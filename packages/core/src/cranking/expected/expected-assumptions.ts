// What is assumed of an engine where nobody said: a value and one standard deviation, by kind of engine. From memory and
// judgement, checked against printed figures of a handful of engines; not a maker's data.

import { sweptVolume } from "../cycle/cylinder.ts";
import { type Length, length } from "../../quantity/index.ts";

/** Which row of assumptions: `spark` = car, tractor or stationary engine. */
export type EngineKind = "spark" | "motorcycle" | "compression";

/** A value and its standard deviation, in the same unit; or, `times`, the factor up or down. */
type Plain = readonly [value: number, deviation: number];
type Times = readonly [value: number, factor: number];

export interface Assumptions {
  /** Volume swept by one cylinder [m³]. */
  readonly size: Times;
  /** Bore/stroke. */
  readonly shape: Plain;
  /** Rod/stroke. */
  readonly rod: Plain;
  /** [deg after bottom dead centre]. */
  readonly intakeCloses: Plain;
  /** Ahead of the check valve [m³]. */
  readonly hose: Plain;
  /** [rpm]. */
  readonly speed: Plain;
  /** Standard uncertainty of ln P of the model itself. */
  readonly model: number;
}

/** @source sizes: judgement; the rest: handbook I.6, from memory, cranking speeds after makers' manuals */
export const assumptions: Readonly<Record<EngineKind, Assumptions>> = {
  spark: {
    size: [0.5e-3, 1.5],
    shape: [1, 0.12],
    rod: [1.65, 0.12],
    intakeCloses: [60, 10],
    hose: [1e-6, 0.6e-6],
    speed: [250, 40],
    model: 0.05,
  },
  motorcycle: {
    size: [0.25e-3, 1.6],
    shape: [1.25, 0.2],
    rod: [1.75, 0.12],
    intakeCloses: [60, 10],
    hose: [1e-6, 0.6e-6],
    speed: [350, 60],
    model: 0.05,
  },
  compression: {
    size: [0.8e-3, 1.6],
    shape: [0.88, 0.08],
    rod: [1.65, 0.12],
    intakeCloses: [35, 8],
    hose: [2e-6, 1e-6],
    speed: [250, 40],
    model: 0.1,
  },
};

/** One standard deviation of what is given, where a person's figure is never exact. */
export const givenDeviation = { compressionRatio: 0.2, intakeCloses: 3, hose: 0.2e-6, speed: 0.03 } as const;

/** Effective leak of a healthy cylinder of 0.5 L [m²], and how it grows with the size. Set by two readings of one experiment,
 *  read second hand, and by the model. */
export const healthyLeak = { area: 1e-6, at: 0.5e-3, power: 2 / 3, factor: 1.6 } as const;

/** A warm wall [K], the share of the way from air to wall that the gas has warmed by intake closing, and the factor by which
 *  the heat correlations differ. Choice. */
export const warmth = { wall: [355, 15], share: [0.4, 0.15], heatFactor: 1.4 } as const;

/** Bore and stroke of a cylinder of a size and shape. B³ = 4 V k/π, S = B/k, k = B/S */
export const boreAndStroke = (
  size: number,
  shape: number,
): { readonly bore: Length; readonly stroke: Length } => {
  const bore = Math.cbrt((4 * size * shape) / Math.PI);
  return { bore: length(bore), stroke: length(bore / shape) };
};

/** Effective leak of a healthy cylinder [m²]. CdA = 1 mm² (V/0.5 L)^(2/3) */
export const healthyLeakOf = (sizes: { readonly bore: Length; readonly stroke: Length }): number =>
  healthyLeak.area * (sweptVolume(sizes) / healthyLeak.at) ** healthyLeak.power;
