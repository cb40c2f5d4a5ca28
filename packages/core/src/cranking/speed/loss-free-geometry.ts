// P_0 from the sizes of the engine: what its trapped charge would be pressed to with next to no loss.

import {
  type Angle,
  type Length,
  type Volume,
  angle,
  gaugePressure,
  length,
  volume,
} from "../../quantity/index.ts";
import { seaLevelPressure } from "../../air/index.ts";
import { trappedRatio } from "../cycle/cylinder.ts";
import { type EngineKind, assumptions } from "../expected/expected-assumptions.ts";
import type { LossFreePressure } from "./loss-free-pressure.ts";

/** Rod, intake closing and hose are assumed as for an expected pressure where they are not stated. */
export interface StatedSizes {
  readonly bore: Length;
  readonly stroke: Length;
  readonly compressionRatio: number;
  readonly rod?: Length;
  readonly intakeCloses?: Angle;
  /** Volume ahead of the check valve: part of the chamber at every stroke. */
  readonly hose?: Volume;
}

/** p_ref(r'^n0 - 1), r' the trapped ratio with the hose, n0 = 1.36 (spark) or 1.35 (diesel). In reference air.
 *  u(ln P_0) = 0.06 where the intake closing is known, else 0.11.
 *  @throws RangeError for sizes that cannot be
 *  @source cycle model of the handbook (computed) */
export const lossFreeFromGeometry = (sizes: StatedSizes, kind: EngineKind): LossFreePressure => {
  const { bore, stroke, compressionRatio, intakeCloses } = sizes;
  const usual = assumptions[kind];
  const rod = sizes.rod ?? length(usual.rod[0] * stroke);
  const ratio = trappedRatio(
    { bore, stroke, compressionRatio, rod },
    intakeCloses ?? angle(usual.intakeCloses[0]),
    sizes.hose ?? volume(usual.hose[0]),
  );
  const exponent = kind === "compression" ? 1.35 : 1.36;
  return {
    pressure: gaugePressure(seaLevelPressure * (ratio ** exponent - 1)),
    uncertainty: intakeCloses === undefined ? 0.11 : 0.06,
    sources: ["geometry"],
    ownShare: 0,
  };
};
