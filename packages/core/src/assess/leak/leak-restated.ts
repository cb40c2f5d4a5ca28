// One leak-down test brought to the tester and supply of an earlier one, or why that is not possible.

import {
  type LeakReading,
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

/** Undefined where the two are not known well enough: a bore, a supply, a link; where one cylinder's reading must not be
 *  restated (handbook/leakdown.md H.2); or where the step leaves more doubt between the cylinders than sound ones scatter. */
export const restatedTest = (
  values: KindValues,
  {
    own,
    other,
    gauges,
  }: { readonly own: LeakInstrument; readonly other: LeakInstrument; readonly gauges: readonly Gauge[] },
): RestatedTest | undefined => {
  if (![own, other].every((one) => tellsSize(one) && !isByHoles(one))) return undefined;
  const step = stepOf(own, other, gauges);
  const supply = other.supplies.find((one) => one !== undefined);
  if (step === undefined || supply === undefined) return undefined;
  const cells = values.cells.map((cell, i) => {
    if (cell === undefined || cell.pegged) return "not-read";
    const reading = pressuresOf(own, i, cell.value);
    if (reading === undefined) return undefined;
    return reading.cylinder <= 0 ? "not-read" : carried(reading, { supply, step });
  });
  if (cells.includes(undefined)) return undefined;
  const read = cells.filter((cell) => typeof cell === "object");
  if (read.length === 0 || doubtBetween(read) > leakDownPrior.sigma) return undefined;
  return {
    lnHeld: cells.map((cell) => (typeof cell === "object" ? cell.lnHeld : undefined)),
    shared: median(read.map(({ shared }) => shared)),
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
): Carried | undefined => {
  if (reading.cylinder >= reading.supply) return { lnHeld: 0, shared: 0, band: 0 };
  const { restated, refused } = restate({ reading, restrictor: step.from }, { supply, restrictor: step.to });
  const mayBeTight = step.basis === "measured" && refused === "too-tight";
  if (restated === undefined || (refused !== undefined && !mayBeTight)) return undefined;
  const { lost } = restated.reading;
  if (restated.uLost / (1 - lost) > mostDoubt && refused !== undefined) return undefined;
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
