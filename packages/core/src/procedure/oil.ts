// How much oil a wet test takes, and when it is refused.

import { oilAmount, oilRise, suggestedOil } from "../cranking/index.ts";
import { type Volume, volume, writeQuantity } from "../quantity/index.ts";
import type { Engine } from "../record/index.ts";
import type { Situation } from "./line.ts";

const usualOil = volume(5e-6);

/** Oil for each cylinder: the maker's amount, else 4 % of the known chamber (1 to 10 ml), else 5 ml.
 *  @source 5 ml: Ford Probe 1997, Nissan, Yamaha XVS1100; share of the chamber: judgement of this project (3 to 5 %) */
export const oilFor = (engine: Engine, chamber: Volume | undefined): Volume => {
  if (engine.wetTest?.oil !== undefined) return engine.wetTest.oil;
  if (chamber === undefined) return usualOil;
  const millilitres = Math.round(suggestedOil(chamber).middle * 1e6);
  return volume(Math.min(10, Math.max(1, millilitres)) * 1e-6);
};

/** Oil as a share of the chamber; undefined while the chamber is not known. */
export const oilShare = ({ oil, chamber }: Situation): number | undefined =>
  chamber === undefined ? undefined : oil / chamber;

/** The most by which that oil raises a sound cylinder by its room alone; undefined unless chamber and compression ratio are
 *  known. */
export const oilAlone = (situation: Situation): number | undefined => {
  const share = oilShare(situation);
  const { compressionRatio } = situation.engine.geometry;
  return share === undefined || share >= 1 || compressionRatio === undefined
    ? undefined
    : oilRise(compressionRatio, share);
};

/** Why no oil goes into this engine, or undefined where it may.
 *  @source GM Duramax ("do not": engine damage) against Kubota WSM, Suzuki RHZ, Mazda CX-30 (a small amount): makers of
 *  diesels disagree, so the engine's own maker must allow it and say how much. Half the chamber: judgement of this project. */
export const whyNoOil = (situation: Situation): string | undefined => {
  const { engine, oil } = situation;
  if (engine.wetTest?.allowed === false)
    return `Oil in the cylinders is ruled out for this engine (${engine.wetTest.source ?? "engine.json"}).`;
  if (engine.ignition === "unknown")
    return "It is not known whether this is a diesel, and a diesel gets no oil: liquid in its small chamber bends rods.";
  if (engine.ignition === "compression" && engine.wetTest?.allowed !== true)
    return "No oil in a diesel unless its maker allows it: liquid in so small a chamber can lock the engine and bend rods.";
  if (engine.ignition === "compression" && engine.wetTest?.oil === undefined)
    return "The maker allows oil in this diesel, but how much is not recorded: wetTest.oil_ml in engine.json.";
  if (oilAmount(oilShare(situation) ?? 0) === "too-much")
    return `${writeQuantity(oil, "ml")} of oil would fill more than half of the chamber and could lock the engine.`;
  return undefined;
};
