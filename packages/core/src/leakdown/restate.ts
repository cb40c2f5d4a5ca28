// A reading on one tester told as it would be on another: a band, from a leak that is a hole to one that is a thin gap.

import type { AbsolutePressure, GaugePressure } from "../quantity/index.ts";
import { type LeakReading, alphaOf, alphaUncertainty, dropsOf } from "./alpha.ts";
import { type FlowModel, isentropicFlow } from "./flow-model.ts";
import { readingKind } from "./judge.ts";
import { laminarDrop } from "./laminar.ts";
import { type Tester, type TesterReading, balancedDrop, inflowOf, outflowOf, readingAt } from "./reading.ts";
import {
  type Restrictor,
  boreArea,
  boreUncertainty,
  cdSteepness,
  dischargeOf,
  dischargeUncertainty,
} from "./restrictor.ts";
import { noWarmth } from "./warmth.ts";

/** The other tester; what is left out is as on the first. */
export interface OtherTester {
  readonly supply?: GaugePressure;
  /** Left out: the same restrictor. */
  readonly restrictor?: Restrictor;
  readonly ambient?: AbsolutePressure;
}

export type RestateRefusal =
  | "supply-unknown"
  /** The bore of one of two restrictors is not known: there is no number at all. */
  | "restrictor-unknown"
  | "gauges-disagree"
  | "too-tight"
  | "no-seal"
  /** Restrictors of two makes, and no discharge coefficient. */
  | "makes-differ"
  /** How the leak flows decides too much. */
  | "band-wide"
  /** The dials leave the leak too uncertain. */
  | "dials-coarse";

export interface Restated {
  /** By the orifice model. */
  readonly reading: TesterReading;
  /** Fraction lost if the leak is viscous. */
  readonly laminarLost: number;
  /** Standard uncertainty of the part lost, by dials and bores. */
  readonly uLost: number;
}

export interface Restatement {
  /** Absent where no number can be computed. */
  readonly restated?: Restated;
  readonly refused?: RestateRefusal;
}

/** Judgement, with the handbook's laws of flow computed to both ends. */
const widest = { factor: 2, lost: 0.1 } as const;
const coarsest = 0.25;

/** What `reading` on a tester with `restrictor` would be on the other; a refusal keeps the numbers.
 *  @throws RangeError where a supply is not above 0 @checked tests/published/leakdown.test.ts */
export const restate = (
  { reading, restrictor }: { readonly reading: LeakReading; readonly restrictor: Restrictor },
  other: OtherTester,
  model: FlowModel = isentropicFlow,
): Restatement => {
  const from: Tester = { supply: reading.supply, ambient: reading.ambient, restrictor };
  const to: Tester = { ...from, ...other };
  if (!(from.supply > 0 && to.supply > 0)) throw new RangeError("restate: both supplies must be above 0");
  const throats = throatsOf(restrictor, other.restrictor);
  const open = reading.cylinder > 0 && reading.cylinder <= reading.supply;
  const restated =
    throats === undefined || !open ? undefined : restatedOf({ reading, from, to }, throats, model);
  const refused = refusalOf({ reading, restrictor, other, restated, model });
  return { ...(restated === undefined ? {} : { restated }), ...(refused === undefined ? {} : { refused }) };
};

interface Throats {
  readonly from: number;
  readonly to: number;
}

/** Areas of the two bores, or 1 and 1 where it is one restrictor of unknown bore. */
const throatsOf = (from: Restrictor, to: Restrictor | undefined): Throats | undefined => {
  if (from.bore !== undefined && to?.bore !== undefined)
    return { from: boreArea(from.bore), to: boreArea(to.bore) };
  if (to !== undefined) return undefined;
  return from.bore === undefined
    ? { from: 1, to: 1 }
    : { from: boreArea(from.bore), to: boreArea(from.bore) };
};

interface Case {
  readonly reading: LeakReading;
  readonly from: Tester;
  readonly to: Tester;
}

const restatedOf = (one: Case, throats: Throats, model: FlowModel): Restated => {
  const { reading, from, to } = one;
  const { restrictor: drop } = dropsOf(reading);
  // Warmth is left out on both sides: it is the same cylinder, equally warm.
  const seen = alphaOf({ ...reading, warmth: noWarmth }, model);
  const leak = seen * dischargeOf(from.restrictor, 1 - drop).cd * throats.from;
  const inflow = inflowOf(to, throats.to, model);
  const outflow = outflowOf(leak, to.ambient, model);
  const restated = readingAt(to, leak === 0 ? 0 : balancedDrop({ inflow, outflow }, to.supply), model);
  return {
    reading: restated,
    laminarLost: leak === 0 ? 0 : laminarDrop(one, throats, model) / to.supply,
    uLost: leak === 0 ? 0 : restatedUncertainty(one, restated.cylinder, model),
  };
};

/** u(lost) = p2/(S·P1)·u(ln leak) on the other tester; the bores count where there are two restrictors. */
const restatedUncertainty = (
  { reading, from, to }: Case,
  cylinder: GaugePressure,
  model: FlowModel,
): number => {
  const { restrictor, leak, cylinder: between } = dropsOf({ ...to, cylinder });
  const s =
    1 + model.steepness(restrictor) + model.steepness(leak) + cdSteepness(to.restrictor, 1 - restrictor);
  const dials = alphaUncertainty({ ...reading, warmth: noWarmth }, model);
  const given = [from, to].map((tester) =>
    tester.restrictor.cd === undefined ? 0 : dischargeUncertainty(dischargeOf(tester.restrictor, 1)),
  );
  const makes =
    from.restrictor === to.restrictor
      ? []
      : [
          boreUncertainty(from.restrictor),
          boreUncertainty(to.restrictor),
          ...(from.restrictor.cd === to.restrictor.cd ? [] : given),
        ];
  return (between / (s * to.supply)) * Math.hypot(dials, ...makes);
};

interface Facts {
  readonly reading: LeakReading;
  readonly restrictor: Restrictor;
  readonly other: OtherTester;
  readonly restated: Restated | undefined;
  readonly model: FlowModel;
}

/** The first reason that stands in the way. */
const refusalOf = ({ reading, restrictor, other, restated, model }: Facts): RestateRefusal | undefined => {
  const kind = readingKind(reading);
  if (kind === "disagree") return "gauges-disagree";
  if (kind === "tight") return "too-tight";
  if (kind === "no-seal") return "no-seal";
  if (restated === undefined) return "restrictor-unknown";
  if (other.restrictor !== undefined && !oneFamily(restrictor, other.restrictor)) return "makes-differ";
  if (bandTooWide(restated)) return "band-wide";
  if (alphaUncertainty({ ...reading, warmth: noWarmth }, model) > coarsest) return "dials-coarse";
  return undefined;
};

/** Made alike, or both coefficients are known. */
const oneFamily = (a: Restrictor, b: Restrictor): boolean =>
  a.cd !== undefined && b.cd !== undefined
    ? true
    : a.cd === undefined && b.cd === undefined && (a.profile ?? "unknown") === (b.profile ?? "unknown");

const bandTooWide = ({ reading: { lost }, laminarLost }: Restated): boolean => {
  const low = Math.min(lost, laminarLost);
  const high = Math.max(lost, laminarLost);
  return high >= widest.factor * low || high - low >= widest.lost;
};
