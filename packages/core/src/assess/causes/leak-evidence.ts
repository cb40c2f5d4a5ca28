// The leak of one cylinder as evidence: beside the restrictor that is usual for its bore, so that a leak means the same
// whatever it was measured with.

import { type LeakReading, alphaOf, dischargeOf } from "../../leakdown/index.ts";
import { type Length, gaugePressure, toSi } from "../../quantity/index.ts";
import type { CylinderEvidence } from "../../diagnosis/index.ts";
import { type LeakInstrument, isByHoles, pressuresOf, withUsualSupply } from "../leak/leak-instrument.ts";
import { valuesOf } from "../values/values.ts";
import type { Assessed } from "./assessed.ts";

export interface LeakEvidence {
  /** In the engine's order. */
  readonly cylinders: readonly Pick<CylinderEvidence, "leak" | "oiled" | "lower">[];
  readonly restrictor: "known" | "unknown";
}

/** Restrictors by the bore of the engine: .040 in below 5 in, .060 in from there on; .250 in long with an entry of 60°.
 *  @source FAA Safety Team, compression testers, 2011 (handbook/trade.md A10) */
const usualRestrictors = { below: toSi(0.04, "in"), from: toSi(0.06, "in"), bore: toSi(5, "in") } as const;

/** Everything that one side leaks away. @source handbook/diagnosis.md 3 (no reading counts as alpha 8) */
const noSeal = { alpha: 8 } as const;
/** By how far a dial may be out, both ways, and the least doubt of ln alpha. @source handbook/diagnosis.md 3 */
const dial = { reach: toSi(1, "psi"), least: 0.05 } as const;

/** Nothing in a test whose leak-down is void. */
export const leakEvidence = (assessed: Assessed): LeakEvidence => {
  const { test, trust, cylinders, leak, record } = assessed;
  const instrument = leak?.instrument;
  if (instrument === undefined || trust.voids !== undefined)
    return { cylinders: cylinders.map(() => ({})), restrictor: "unknown" };
  const { bore } = record.engine.geometry;
  const cells = valuesOf(test, "leak-down")?.cells ?? [];
  const scale = scaleOf(instrument, bore);
  return {
    restrictor: scale === undefined ? "unknown" : "known",
    cylinders: cylinders.map(({ label, leakDown }, i) => {
      const cell = cells[i];
      const isSure =
        cell !== undefined && !cell.doubtful && !cell.pegged && leakDown?.repeats !== "contradict";
      const found = isSure ? leakOf(instrument, i, cell.value) : undefined;
      return {
        ...(found === undefined ? {} : { leak: { ...found, alpha: found.alpha * (scale ?? 1) } }),
        ...partsOf(assessed, label),
      };
    }),
  };
};

/** Effective area of the tester's restrictor over that of the usual one; undefined where either is not known. */
const scaleOf = (instrument: LeakInstrument, bore: Length | undefined): number | undefined => {
  const { restrictor } = instrument;
  if (restrictor.bore === undefined || bore === undefined) return undefined;
  const usual = bore < usualRestrictors.bore ? usualRestrictors.below : usualRestrictors.from;
  const [own, coned] = [restrictor, { profile: "coned" } as const].map((one) => dischargeOf(one, ratio).cd);
  return (((own ?? 1) / (coned ?? 1)) * restrictor.bore ** 2) / usual ** 2;
};
/** Absolute pressure behind a restrictor over that before it, of a sound cylinder. */
const ratio = 0.9;

/** @param value - as the instrument holds it */
const leakOf = (
  instrument: LeakInstrument,
  cylinder: number,
  value: number,
): { readonly alpha: number; readonly doubt?: number } | undefined => {
  if (isByHoles(instrument)) return undefined;
  const reading = pressuresOf(withUsualSupply(instrument), cylinder, value);
  if (reading === undefined || reading.cylinder > reading.supply + (reading.uCylinder ?? 0) * 2)
    return undefined;
  if (reading.cylinder < dial.reach / 5) return noSeal;
  const alpha = alphaAt(reading, 0);
  const doubt = Math.abs(alphaAt(reading, -dial.reach) - alphaAt(reading, dial.reach)) / (2 * alpha);
  return alpha > 0 ? { alpha, doubt: Math.max(dial.least, doubt) } : { alpha };
};

/** With the cylinder's dial so far off; never above the supply, never at nothing. */
const alphaAt = (reading: LeakReading, off: number): number => {
  const cylinder = Math.min(reading.supply, Math.max(reading.cylinder + off, reading.cylinder / 2));
  return alphaOf({ ...reading, cylinder: gaugePressure(cylinder) });
};

/** What oil, or the piston lower in its bore, left of the leak; as far as the dials tell. */
const partsOf = ({ leak }: Assessed, label: string): Pick<CylinderEvidence, "oiled" | "lower"> =>
  Object.fromEntries(
    (leak?.parts ?? []).flatMap((part) => {
      const isTold = part.shown === "yes" || (part.shown === "no" && part.isLessThanHalf);
      return part.label === label && part.share !== undefined && isTold
        ? [[part.what, Math.max(least, 1 - part.share)] as const]
        : [];
    }),
  );
/** What is left of a leak is never told as less than this share: nearly all of it is gone. */
const least = 0.02;
