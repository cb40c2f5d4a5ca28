// One leak-down test brought to the tester and supply of an earlier one, or why that is not possible.

import {
  type LeakReading,
  type RestateRefusal,
  type Restrictor,
  boreUncertainty,
  dischargeOf,
  dischargeUncertainty,
  leakFigures,
  readingOfAlpha,
  restate,
} from "../../leakdown/index.ts";
import { length } from "../../quantity/index.ts";
import { type Gauge, gaugeStanding } from "../../record/index.ts";
import { leakDownPrior } from "../../spread/index.ts";
import { median } from "../../statistics/index.ts";
import { type LeakInstrument, isByHoles, pressuresOf, tellsSize } from "./leak-instrument.ts";
import type { KindValues } from "../values/values.ts";

export interface RestatedTest {
  /** In the engine's order: ln of the fraction held on the other tester; undefined where not read. */
  readonly lnHeld: readonly (number | undefined)[];
  /** What the doubt about the step from one tester to the other does to ln held, the middle cylinder. */
  readonly shared: number;
}

/** How leaks by one tester stand to leaks by the other. */
interface Step {
  readonly from: Restrictor;
  readonly to: Restrictor;
  /** Standard uncertainty of ln (leak by one / leak by the other). */
  readonly uncertainty: number;
  /** Whether the step was measured, or there is none: then tight cylinders may take it. */
  readonly basis: "measured" | "bores";
}

/** A restated reading may be no more in doubt than this by its dials [ln units]; judgement. */
const mostDoubt = 0.03;

/** Why a test stands in no series with an earlier one: the rule that forbids it, and the first cylinder it forbids it for;
 *  `no-size`: the tester tells a percent only, or goes by open holes. */
export interface NotCarried {
  readonly reason: RestateRefusal | "no-size";
  /** Place of the cylinder in the engine's order. */
  readonly cylinder?: number;
}

/** @param before - ln of the fraction held at the last test of that series, in the engine's order: what the restating
 *  leaves open between the cylinders is not told as a change  @source handbook/leakdown.md H.2 */
export const restatedTest = (
  values: KindValues,
  {
    own,
    other,
    gauges,
    before,
  }: {
    readonly own: LeakInstrument;
    readonly other: LeakInstrument;
    readonly gauges: readonly Gauge[];
    readonly before: readonly (number | undefined)[];
  },
): RestatedTest | NotCarried => {
  if (![own, other].every((one) => tellsSize(one) && !isByHoles(one))) return { reason: "no-size" };
  const step = stepOf(own, other, gauges);
  if (step === undefined) return { reason: "restrictor-unknown" };
  const supply = other.supplies.find((one) => one !== undefined);
  if (supply === undefined) return { reason: "supply-unknown" };
  const cells = values.cells.map((cell, i): Carried | RestateRefusal | undefined => {
    if (cell === undefined || cell.pegged) return undefined;
    const reading = pressuresOf(own, i, cell.value);
    if (reading === undefined) return "supply-unknown";
    return reading.cylinder <= 0 ? undefined : carried(reading, { supply, step });
  });
  const refused = cells.findIndex((cell) => typeof cell === "string");
  const reason = cells[refused];
  if (typeof reason === "string") return { reason, cylinder: refused };
  const read = cells.map((cell) => (typeof cell === "object" ? cell : undefined));
  const known = read.filter((cell) => cell !== undefined);
  return {
    lnHeld: nearestToBefore(read, before),
    shared: known.length === 0 ? 0 : median(known.map(({ shared }) => shared)),
  };
};

const stepOf = (own: LeakInstrument, other: LeakInstrument, gauges: readonly Gauge[]): Step | undefined => {
  const whole = length(1);
  if (own.gauge === other.gauge)
    return { from: { bore: whole }, to: { bore: whole }, uncertainty: 0, basis: "measured" };
  const a = gaugeStanding(gauges, own.gauge ?? "");
  const b = gaugeStanding(gauges, other.gauge ?? "");
  if (a.counts === b.counts && a.counts !== "") {
    const links = new Map([...a.links, ...b.links].map(({ gauge, link }) => [gauge, link.uncertainty]));
    return {
      // leak by own / leak by other = area of the other's restrictor / area of its own
      from: { bore: whole },
      to: { bore: length(whole * Math.sqrt(a.factor / b.factor)) },
      uncertainty: Math.hypot(...links.values()),
      basis: "measured",
    };
  }
  const [from, to] = [own.restrictor, other.restrictor];
  if (from.bore === undefined || to.bore === undefined) return undefined;
  const makes = [from, to].map((one) =>
    one.cd === undefined ? 0 : dischargeUncertainty(dischargeOf(one, 0.8)),
  );
  return {
    from,
    to,
    uncertainty: Math.hypot(boreUncertainty(from), boreUncertainty(to), ...makes),
    basis: "bores",
  };
};

interface Carried {
  readonly lnHeld: number;
  /** What the step's standard uncertainty does to it. */
  readonly shared: number;
  /** How much lower it would be if the leak were a thin gap and no hole. */
  readonly band: number;
}

const carried = (
  reading: LeakReading,
  { supply, step }: { readonly supply: LeakReading["supply"]; readonly step: Step },
): Carried | RestateRefusal => {
  if (reading.cylinder >= reading.supply) return { lnHeld: 0, shared: 0, band: 0 };
  const { restated, refused } = restate({ reading, restrictor: step.from }, { supply, restrictor: step.to });
  if (restated === undefined) return refused ?? "restrictor-unknown";
  const mayBeTight = step.basis === "measured" && refused === "too-tight";
  if (refused !== undefined && !mayBeTight) return refused;
  const { lost } = restated.reading;
  if (restated.uLost / (1 - lost) > mostDoubt && refused !== undefined) return refused;
  const lnHeld = Math.log1p(-lost);
  const alpha = leakFigures({ ...reading, supply, cylinder: restated.reading.cylinder }, {}).alpha;
  const more = readingOfAlpha({ supply, ambient: reading.ambient }, alpha * Math.exp(step.uncertainty));
  return {
    lnHeld,
    shared: Math.log1p(-more.lost) - lnHeld,
    band: Math.log1p(-Math.min(0.99, restated.laminarLost)) - lnHeld,
  };
};

/** By how much the doubt about the step moves the cylinders against each other. */
const doubtBetween = (cells: readonly Carried[]): number => {
  const range = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  return Math.hypot(range(cells.map(({ shared }) => shared)), range(cells.map(({ band }) => band)));
};

/** The values as restated. Where the step leaves more doubt between the cylinders than sound ones scatter, of what is open
 *  for a cylinder (the law of its leak, two standard uncertainties of the step) that is taken which stands nearest to where
 *  it stood among the others before: only what lies beyond is a change. */
const nearestToBefore = (
  cells: readonly (Carried | undefined)[],
  before: readonly (number | undefined)[],
): readonly (number | undefined)[] => {
  const known = cells.filter((cell) => cell !== undefined);
  const both = cells.flatMap((cell, i) => {
    const held = before[i];
    return cell === undefined || held === undefined ? [] : [{ ...cell, held }];
  });
  if (both.length === 0 || doubtBetween(known) <= leakDownPrior.sigma)
    return cells.map((cell) => cell?.lnHeld);
  const middle = {
    moved: median(both.map(({ lnHeld, held }) => lnHeld - held)),
    shared: median(known.map(({ shared }) => shared)),
    band: median(known.map(({ band }) => band)),
  };
  return cells.map((cell, i) => {
    const held = before[i];
    if (cell === undefined || held === undefined) return cell?.lnHeld;
    const { lnHeld, shared, band } = cell;
    const law = band - middle.band;
    const step = 2 * Math.abs(shared - middle.shared);
    const [low, high] = [lnHeld + Math.min(0, law) - step, lnHeld + Math.max(0, law) + step];
    return Math.min(0, Math.max(low, Math.min(high, held + middle.moved)));
  });
};
