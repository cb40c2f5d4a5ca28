// Displacement and compression ratio, and what boring, skimming and decking do to them.

import { type Area, type Length, type Volume, volume } from "../../quantity/index.ts";

/** A volume that may be taken away as well as added; below 0 for a dome. [m3] */
type SignedVolume = number;

const disc = (diameter: Length): number => (Math.PI / 4) * diameter ** 2;

/** What stands above the piston at top dead centre. */
export interface ChamberParts {
  readonly head: Volume;
  readonly bore: Length;
  /** Bore and crushed thickness of the gasket. */
  readonly gasket: { readonly bore: Length; readonly thickness: Length };
  /** Of the piston at top dead centre below the deck; below 0 where it stands proud. */
  readonly deck: Length;
  /** Dish and valve pockets of the crown, a dome below 0. [m3] */
  readonly crown: SignedVolume;
}

/** Volume above the piston at top dead centre. V_c = V_head + π/4·D_g²·t + π/4·D²·z + V_crown
 *  @source Circle Track, February 2011 (head gasket) @checked data/reference/teardown-published.csv
 *  @throws RangeError where nothing is left */
export const chamberVolume = ({ head, bore, gasket, deck, crown }: ChamberParts): Volume =>
  volume(head + disc(gasket.bore) * gasket.thickness + disc(bore) * deck + crown);

/** Swept volume and what is left above it. CR = 1 + V_s/V_c
 *  @param clearance - V_c, above 0 @throws RangeError otherwise
 *  @source Montana 500 newsletter, July; Pontiac chamber-volume chart @checked data/reference/teardown-published.csv */
export const compressionRatio = (swept: Volume, clearance: Volume): number => {
  if (!(clearance > 0))
    throw new RangeError(`compressionRatio: clearance must be above 0 m3, got ${String(clearance)}`);
  return 1 + swept / clearance;
};

/** What the shop does to the volume above one piston. What is not stated stays as it was. */
export interface ChamberWork {
  /** D and D' [m]. */
  readonly bore: { readonly before: Length; readonly after: Length };
  /** Piston below the deck before the work, z; below 0 where proud [m]. */
  readonly deck: Length;
  /** Off the head, m, and the area that the chamber opens at its face, A; good for the first millimetre. */
  readonly headSkim?: { readonly off: Length; readonly opening: Area };
  /** Off the deck of the block, d [m]. */
  readonly deckSkim?: Length;
  /** Bore of the gasket, and its crushed thickness before and after, t and t' [m]. */
  readonly gasket: { readonly bore: Length; readonly before: Length; readonly after: Length };
  /** Of the new crown less the old one. [m3] */
  readonly crownChange?: SignedVolume;
}

/** Volume above the piston after the work.
 *  V_c' = V_c − A·m − π/4·D'²·d + π/4·(D'² − D²)·z + π/4·D_g²·(t' − t) + ΔV_crown
 *  @throws RangeError where nothing is left @checked data/reference/teardown-cases.json (computed) */
export const chamberAfterWork = (before: Volume, work: ChamberWork): Volume => {
  const { bore, deck, headSkim, deckSkim, gasket, crownChange } = work;
  return volume(
    before -
      (headSkim === undefined ? 0 : headSkim.opening * headSkim.off) -
      disc(bore.after) * (deckSkim ?? 0) +
      (disc(bore.after) - disc(bore.before)) * deck +
      disc(gasket.bore) * (gasket.after - gasket.before) +
      (crownChange ?? 0),
  );
};

export type RatioWarning = "ratio-up" | "piston-to-head";

/** Past these the work is to be thought over: ratio up by 0.3 (judgement); piston to head 1.0 mm (common practice). */
const ratioLimits = { rise: 0.3, pistonToHead: 1e-3 } as const;

/** What the work raises that can end an engine: knock, a piston that meets the head.
 *  z' + t' is the piston's distance to the flat of the head. */
export const ratioWarnings = (
  ratio: { readonly before: number; readonly after: number },
  { deck, deckSkim, gasket }: Pick<ChamberWork, "deck" | "deckSkim" | "gasket">,
): readonly RatioWarning[] => [
  ...(ratio.after - ratio.before > ratioLimits.rise ? (["ratio-up"] as const) : []),
  ...(deck - (deckSkim ?? 0) + gasket.after < ratioLimits.pistonToHead ? (["piston-to-head"] as const) : []),
];
