// How much of the chamber the oil of a wet test filled, and what it adds to a reading by its room alone.

import { type OilAmount, knownChamber, oilAmount, oilRise } from "../../cranking/index.ts";
import type { Volume } from "../../quantity/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";

/** The oil of one cylinder; what is not known is absent. */
export interface OilShare {
  /** As recorded. */
  readonly oil?: Volume;
  /** Oil over chamber, where bore, stroke and compression ratio are recorded too. */
  readonly share?: number;
  readonly amount?: OilAmount;
  /** The most by which that oil raises a reading on a sound cylinder, as a share of it; absent where it is too much. */
  readonly alone?: number;
}

/** In the engine's order. */
export const oilShares = ({ engine }: EngineRecord, { perCylinder }: Test): readonly OilShare[] => {
  const chamber = knownChamber(engine.geometry);
  const { compressionRatio } = engine.geometry;
  return engine.cylinders.map((_, i): OilShare => {
    const oil = perCylinder.oil?.[i];
    if (oil === undefined) return {};
    if (chamber === undefined || compressionRatio === undefined) return { oil };
    const share = oil / chamber;
    const amount = oilAmount(share);
    return {
      oil,
      share,
      amount,
      ...(amount === "too-much" ? {} : { alone: oilRise(compressionRatio, share) }),
    };
  });
};
