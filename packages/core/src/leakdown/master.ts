// A master orifice read on the same tester that day: how much of what it allows does the cylinder use?

import { type GaugePressure, type Length, length } from "../quantity/index.ts";
import { type LeakReading, alphaOf, dropsOf, sensitivityOf } from "./alpha.ts";
import { type FlowModel, isentropicFlow } from "./flow-model.ts";
import { type Restrictor, cdSteepness, dischargeOf } from "./restrictor.ts";
import { noWarmth } from "./warmth.ts";

/** A master orifice read on the same tester that day. */
export interface MasterReading {
  /** Cylinder-side dial with the master fitted, at the same supply on the same day. */
  readonly reads: GaugePressure;
  /** Standard uncertainty [Pa]. */
  readonly uReads?: number;
  /** Of the master; absent = not known. */
  readonly bore?: Length;
}

/** A leak beside what the master allows. */
export interface MasterMargin {
  /** Leak of the cylinder over leak of the master; above 1 it leaks more than the master allows. */
  readonly margin: number;
  readonly uMargin: number;
  /** The hole, made like the master, that leaks like the cylinder: master bore·√m. */
  readonly hole?: Length;
}

/** m = α(P2)/α(M): whatever the bore of the restrictor is, and at any height. A thin plate's coefficient moves with the
 *  reading and is allowed for; the master breathes supply air, so warmth is the cylinder's alone.
 *  u(m)/m = √((S2·u2/p2)² + (S_M·u_M/p_M)² + ((S2 − S_M)·u1/p1)² + u_T²)
 *  @throws RangeError unless both readings lie between the air and the supply, the master's below it */
export const masterMargin = (
  reading: LeakReading,
  { reads, uReads = 0, bore }: MasterReading,
  {
    restrictor = {},
    model = isentropicFlow,
  }: { readonly restrictor?: Restrictor; readonly model?: FlowModel } = {},
): MasterMargin => {
  const { warmth = noWarmth, uSupply = 0, uCylinder = 0 } = reading;
  const master: LeakReading = { supply: reading.supply, cylinder: reads, ambient: reading.ambient };
  const own = dropsOf(reading);
  const masters = dropsOf(master);
  const cdRatio =
    dischargeOf(restrictor, 1 - own.restrictor).cd / dischargeOf(restrictor, 1 - masters.restrictor).cd;
  const margin = (alphaOf(reading, model) / alphaOf(master, model)) * cdRatio;
  if (!Number.isFinite(margin)) throw new RangeError("masterMargin: the master loses nothing");
  const s = withCd(reading, restrictor, model);
  const sMaster = withCd(master, restrictor, model);
  const relative = Math.hypot(
    (s.cylinder * uCylinder) / own.cylinder,
    (sMaster.cylinder * uReads) / masters.cylinder,
    ((s.supply - sMaster.supply) * uSupply) / own.supply,
    warmth.uncertainty,
  );
  return {
    margin,
    uMargin: margin === 0 ? 0 : margin * relative,
    ...(bore === undefined ? {} : { hole: length(bore * Math.sqrt(margin)) }),
  };
};

const withCd = (reading: LeakReading, restrictor: Restrictor, model: FlowModel) => {
  const s = sensitivityOf(reading, model);
  const shift = cdSteepness(restrictor, 1 - dropsOf(reading).restrictor);
  return { supply: s.supply + shift, cylinder: s.cylinder + shift };
};
