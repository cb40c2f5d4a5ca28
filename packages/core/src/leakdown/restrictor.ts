// The restrictor of a leak-down tester: its bore, its make, and how much of the bore the air uses.

import { type Area, type Length, area } from "../quantity/index.ts";

/** `thin-plate`: a hole in a sheet thinner than the hole is wide. */
export type RestrictorProfile = "coned" | "square" | "thin-plate" | "unknown";

/** The restrictor of a leak-down tester, as far as it is known; nothing of it is guessed. */
export interface Restrictor {
  /** Absent = not known, and never guessed. */
  readonly bore?: Length;
  /** Half-width of what is known of the bore; absent: a thousandth of an inch. */
  readonly tolerance?: Length;
  readonly length?: Length;
  /** Absent: unknown. */
  readonly profile?: RestrictorProfile;
  /** Discharge coefficient, where it was measured. */
  readonly cd?: number;
  /** Half-width of it. */
  readonly cdHalfWidth?: number;
}

/** How much of a bore the air uses: the discharge coefficient. */
export interface Discharge {
  readonly cd: number;
  /** Half-width, rectangular. */
  readonly halfWidth: number;
}

/** Half-width of a bore of which no tolerance is known: 0.001 in, judgement. */
const usualTolerance = 0.0000254;

/** Of a coefficient that was measured: judgement. */
const measuredHalfWidth = 0.02;

/** By make. The square edge and the cone are estimates from inlet loss and pipe friction (computed), no measurement of
 *  these restrictors was found; the half-widths are judgement. */
const byMake = {
  coned: { cd: 0.87, halfWidth: 0.06 },
  square: { cd: 0.8, halfWidth: 0.05 },
  unknown: { cd: 0.82, halfWidth: 0.08 },
} as const;
/** Where a thin plate cannot be excluded. */
const perhapsThin: Discharge = { cd: 0.82, halfWidth: 0.15 };
/** Of the polynomial: judgement. */
const thinHalfWidth = 0.02;

/** Cd of a thin sharp-edged plate over r = p_down/p_up.
 *  @source Perry's relation, coefficients as a modelling manual prints them @checked tests/published/leakdown.test.ts */
export const thinPlateCd = (ratio: number): number =>
  0.8414 + ratio * (-0.1002 + ratio * (0.8415 + ratio * (-3.9 + ratio * (4.6001 - 1.6827 * ratio))));

const thinPlateSlope = (ratio: number): number =>
  -0.1002 + ratio * (2 * 0.8415 + ratio * (3 * -3.9 + ratio * (4 * 4.6001 - 5 * 1.6827 * ratio)));

const variesWithRatio = ({ profile, cd }: Restrictor): boolean =>
  cd === undefined && profile === "thin-plate";

/** The discharge coefficient at p_down/p_up of the restrictor. */
export const dischargeOf = (restrictor: Restrictor, ratio: number): Discharge => {
  const { cd, cdHalfWidth, profile = "unknown", length, bore } = restrictor;
  if (cd !== undefined) return { cd, halfWidth: cdHalfWidth ?? measuredHalfWidth };
  if (profile === "thin-plate") return { cd: thinPlateCd(ratio), halfWidth: thinHalfWidth };
  if (profile === "unknown" && length !== undefined && bore !== undefined && length < bore)
    return perhapsThin;
  return byMake[profile];
};

/** −d ln Cd / d ln r: 0 but for a thin plate. */
export const cdSteepness = (restrictor: Restrictor, ratio: number): number =>
  variesWithRatio(restrictor) ? (-ratio * thinPlateSlope(ratio)) / thinPlateCd(ratio) : 0;

/** Area of the bore, without the discharge coefficient. @throws RangeError where the bore is not above 0 */
export const boreArea = (bore: Length): Area => {
  if (!(bore > 0)) throw new RangeError(`boreArea: bore must be above 0, got ${String(bore)} m`);
  return area((Math.PI / 4) * bore ** 2);
};

/** u(ln area) of the bore: 2t/(d√3). */
export const boreUncertainty = ({ bore, tolerance }: Restrictor): number =>
  bore === undefined ? 0 : (2 * (tolerance ?? usualTolerance)) / (bore * Math.sqrt(3));

/** u(ln Cd): c/(Cd√3). */
export const dischargeUncertainty = ({ cd, halfWidth }: Discharge): number => halfWidth / (cd * Math.sqrt(3));
