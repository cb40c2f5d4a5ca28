// The room left above the piston at top dead centre, where somebody stated enough to know it.

import { type Volume, volume } from "../../quantity/index.ts";
import { type CylinderSizes, sweptVolume } from "../cycle/cylinder.ts";

/** Clearance volume; undefined unless bore, stroke and compression ratio are known. V_c = V_d/(CR − 1)
 *  @throws RangeError for a bore or stroke of 0 or less, or a compression ratio of 1 or less @source geometry */
export const knownChamber = ({ bore, stroke, compressionRatio }: CylinderSizes): Volume | undefined => {
  if (bore === undefined || stroke === undefined || compressionRatio === undefined) return undefined;
  if (compressionRatio <= 1)
    throw new RangeError(`knownChamber: compression ratio must be above 1, got ${String(compressionRatio)}`);
  return volume(sweptVolume({ bore, stroke }) / (compressionRatio - 1));
};
