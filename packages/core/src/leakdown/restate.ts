// A reading on one tester told as it would be on another: a band, from a leak that is a hole to one that is a thin gap.

import type { AbsolutePressure, GaugePressure, Length } from "../quantity/index.ts";
import { type LeakReading, alphaOf, alphaUncertainty, dropsOf } from "./alpha.ts";
import { type Restated, carryLeak } from "./carry-leak.ts";
import { type FlowModel, isentropicFlow } from "./flow-model.ts";
import { readingKind } from "./judge.ts";
import {
  type Restrictor,
  boreArea,
  boreUncertainty,
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
  /** Takes the place of bores and coefficients: the two were compared on the same leaks. */
  readonly compared?: ComparedTesters;
}

/** Two testers by the areas of their restrictors. */
export interface ComparedTesters {
  /** Effective area of the other restrictor / of the first. */
  readonly areaRatio: number;
  /** Standard uncertainty of its logarithm. */
  readonly uncertainty: number;
}

/** Why a reading cannot be told as another tester would show it. */
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

/** A reading told as it would be on another tester, or why not. */
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
  const { supply = reading.supply, ambient = reading.ambient } = other;
  if (!(reading.supply > 0 && supply > 0)) throw new RangeError("restate: both supplies must be above 0");
  const pair = pairOf(restrictor, other);
  const isOpen = reading.cylinder > 0 && reading.cylinder <= reading.supply;
  // Warmth is left out on both sides: it is the same cylinder, equally warm.
  const cool = { ...reading, warmth: noWarmth };
  const doubt = isOpen ? alphaUncertainty(cool, model) : 0;
  const restated =
    pair === undefined || !isOpen ? undefined : restatedOf(cool, { pair, supply, ambient, doubt, model });
  const unfit = refusalOfReading(reading);
  const refused = unfit ?? (isUnchanged(reading, other) ? undefined : refusalOf({ pair, restated, doubt }));
  return { ...(restated === undefined ? {} : { restated }), ...(refused === undefined ? {} : { refused }) };
};

/** Whether the other tester is the first one again, at the same supply and height: then it reads the same. */
export const isUnchanged = (
  reading: Pick<LeakReading, "supply" | "ambient">,
  { supply = reading.supply, ambient = reading.ambient, restrictor, compared }: OtherTester,
): boolean =>
  restrictor === undefined &&
  compared === undefined &&
  Math.abs(supply / reading.supply - 1) < alike &&
  Math.abs(ambient / reading.ambient - 1) < alike;

/** Rounding of a unit. */
const alike = 1e-9;

/** What can be carried over to another tester whose restrictor is known: an equal hole, made like that restrictor.
 *  @param hole - with its standard uncertainty [m], read at this pressure @source handbook/leakdown.md H.2 (d) */
export const restateHole = (
  {
    hole,
    uHole,
    cylinder,
    ambient,
  }: Pick<LeakReading, "cylinder" | "ambient"> & { readonly hole: Length; readonly uHole: number },
  { supply, restrictor, ambient: air = ambient }: OtherTester,
  model: FlowModel = isentropicFlow,
): Restatement => {
  if (restrictor?.bore === undefined) return { refused: "restrictor-unknown" };
  if (supply === undefined) return { refused: "supply-unknown" };
  const asHole: Restrictor = {};
  const doubt = (2 * uHole) / hole;
  const restated = carryLeak(
    {
      leak: dischargeOf(asHole, 1).cd * boreArea(hole),
      uncertainty: Math.hypot(doubt, boreUncertainty(restrictor)),
      cylinder,
      ambient,
    },
    { supply, ambient: air, restrictor },
    { throat: boreArea(restrictor.bore), model },
  );
  const refused = refusalOf({ pair: { makes: makesOf(asHole, restrictor) }, restated, doubt });
  return { restated, ...(refused === undefined ? {} : { refused }) };
};

/** Two restrictors side by side. */
interface Pair {
  readonly from: Restrictor;
  readonly to: Restrictor;
  /** Areas of the two bores, in one unit. */
  readonly throats: { readonly from: number; readonly to: number };
  /** Standard uncertainty of ln of their ratio. */
  readonly doubt: number;
  readonly makes: Makes;
}

type Makes = "alike" | "differ";

/** Undefined where a bore that is needed is not known; on one restrictor none is. */
const pairOf = (from: Restrictor, { restrictor: to, compared }: OtherTester): Pair | undefined => {
  if (compared !== undefined) {
    const whole: Restrictor = { cd: 1 };
    const throats = { from: 1, to: compared.areaRatio };
    return { from: whole, to: whole, throats, doubt: compared.uncertainty, makes: "alike" };
  }
  if (to === undefined) {
    const throat = from.bore === undefined ? 1 : boreArea(from.bore);
    return { from, to: from, throats: { from: throat, to: throat }, doubt: 0, makes: "alike" };
  }
  if (from.bore === undefined || to.bore === undefined) return undefined;
  const coefficients = [from, to].map((one) =>
    one.cd === undefined || from.cd === to.cd ? 0 : dischargeUncertainty(dischargeOf(one, 1)),
  );
  return {
    from,
    to,
    throats: { from: boreArea(from.bore), to: boreArea(to.bore) },
    doubt: Math.hypot(boreUncertainty(from), boreUncertainty(to), ...coefficients),
    makes: makesOf(from, to),
  };
};

interface Way {
  readonly pair: Pair;
  readonly supply: GaugePressure;
  readonly ambient: AbsolutePressure;
  /** u(ln alpha) by the dials. */
  readonly doubt: number;
  readonly model: FlowModel;
}

const restatedOf = (reading: LeakReading, { pair, supply, ambient, doubt, model }: Way): Restated => {
  const { from, to, throats } = pair;
  const { cd } = dischargeOf(from, 1 - dropsOf(reading).restrictor);
  return carryLeak(
    {
      leak: alphaOf(reading, model) * cd * throats.from,
      uncertainty: Math.hypot(doubt, pair.doubt),
      cylinder: reading.cylinder,
      ambient: reading.ambient,
    },
    { supply, ambient, restrictor: to },
    { throat: throats.to, model },
  );
};

/** What the reading alone forbids. */
const refusalOfReading = (reading: LeakReading): RestateRefusal | undefined => {
  switch (readingKind(reading)) {
    case "disagree":
      return "gauges-disagree";
    case "tight":
      return "too-tight";
    case "no-seal":
      return "no-seal";
    case "measured":
      return undefined;
  }
};

interface Facts {
  readonly pair: Pick<Pair, "makes"> | undefined;
  readonly restated: Restated | undefined;
  /** u(ln alpha) by the dials. */
  readonly doubt: number;
}

/** The first reason that stands in the way. */
const refusalOf = ({ pair, restated, doubt }: Facts): RestateRefusal | undefined => {
  if (pair === undefined || restated === undefined) return "restrictor-unknown";
  if (pair.makes === "differ") return "makes-differ";
  if (bandTooWide(restated)) return "band-wide";
  return doubt > coarsest ? "dials-coarse" : undefined;
};

/** Made alike, or both coefficients are known. */
const makesOf = (a: Restrictor, b: Restrictor): Makes => {
  if (a.cd !== undefined && b.cd !== undefined) return "alike";
  const isOne =
    a.cd === undefined && b.cd === undefined && (a.profile ?? "unknown") === (b.profile ?? "unknown");
  return isOne ? "alike" : "differ";
};

const bandTooWide = ({ reading: { lost }, laminarLost }: Restated): boolean => {
  const low = Math.min(lost, laminarLost);
  const high = Math.max(lost, laminarLost);
  return high >= widest.factor * low || high - low >= widest.lost;
};
