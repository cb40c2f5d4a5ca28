// How much of what a master orifice lets by that day does a cylinder use?

import {
  type LeakJudgement,
  type LeakReading,
  alphaOf,
  cylinderOfLost,
  marginOverSupplies,
  masterMargin,
} from "../../leakdown/index.ts";
import { type GaugePressure, gaugePressure } from "../../quantity/index.ts";
import { type Test, dayOf } from "../../record/index.ts";
import { type LeakInstrument, pressuresOf } from "./leak-instrument.ts";
import { trueReading } from "../values/values.ts";

/** Leak of the cylinder over leak of the master. */
export type MasterUse =
  | { readonly kind: "margin"; readonly margin: number; readonly uMargin: number }
  /** Tighter than the dials can show: no more than this. */
  | { readonly kind: "at-most"; readonly margin: number }
  /** The supply is not known: the margin at 30 psi and at 100 psi. */
  | { readonly kind: "span"; readonly low: number; readonly high: number }
  /** It holds nothing: more than any master lets by. */
  | { readonly kind: "beyond" };

/** Undefined where no master was read that day, or it tells nothing.
 *  @param reading - one cylinder: its place, its value as the instrument holds it, and what the dials allow to be said */
export const masterUse = (
  test: Test,
  instrument: LeakInstrument,
  {
    cylinder,
    value,
    judgement,
  }: {
    readonly cylinder: number;
    readonly value: number;
    readonly judgement: LeakJudgement | undefined;
  },
): MasterUse | undefined => {
  const { master: asRead, masterLost } = dayOf(test, instrument.gauge);
  const master =
    asRead === undefined ? undefined : gaugePressure(trueReading(asRead, instrument.tester?.readsHigh ?? 0));
  const reading = pressuresOf(instrument, cylinder, value);
  if (reading === undefined || judgement === undefined)
    return instrument.holds === "lost" && masterLost !== undefined
      ? overSupplies(value, masterLost, instrument)
      : undefined;
  const reads = master ?? (masterLost === undefined ? undefined : cylinderOfLost(reading.supply, masterLost));
  return reads === undefined || reads <= 0 || reads >= reading.supply
    ? undefined
    : against(reading, { reads, judgement, instrument });
};

const against = (
  reading: LeakReading,
  {
    reads,
    judgement,
    instrument: { restrictor, uDial },
  }: {
    readonly reads: GaugePressure;
    readonly judgement: LeakJudgement;
    readonly instrument: LeakInstrument;
  },
): MasterUse | undefined => {
  switch (judgement.kind) {
    case "measured":
      return { kind: "margin", ...masterMargin(reading, { reads, uReads: uDial }, { restrictor }) };
    case "tight":
      return {
        kind: "at-most",
        margin: judgement.limit.alpha / alphaOf({ ...reading, cylinder: reads }),
      };
    case "no-seal":
      return { kind: "beyond" };
    case "disagree":
      return undefined;
  }
};

const overSupplies = (lost: number, master: number, { ambient }: LeakInstrument): MasterUse | undefined => {
  if (master <= 0 || master >= 1 || lost <= 0) return undefined;
  return lost >= 1 ? { kind: "beyond" } : { kind: "span", ...marginOverSupplies({ lost, master }, ambient) };
};

/** The margin as one number: the middle of a span, the most that a tight one may be. */
export const marginOf = (use: MasterUse | undefined): number | undefined => {
  if (use === undefined) return undefined;
  switch (use.kind) {
    case "margin":
    case "at-most":
      return use.margin;
    case "span":
      return (use.low + use.high) / 2;
    case "beyond":
      return undefined;
  }
};

/** Whether a cylinder leaks more than the master of that day allows. */
export const isBeyondMaster = (use: MasterUse | undefined): boolean =>
  use?.kind === "beyond" || (use?.kind !== "at-most" && (marginOf(use) ?? 0) > 1);
