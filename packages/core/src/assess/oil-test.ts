// What oil did to the readings: the rise of a low cylinder less that of a sound one, for oil takes up room and raises any
// reading.

import { mean } from "../statistics/index.ts";
import type { CylinderAssessment, OilEvidence, OilRise, OilTest } from "./assessment.ts";

/** Net rise from which on: judgement, between published thresholds that differ: 10 psi, 10 %, 20 to 25 %.
 *  @source handbook/trade.md B3 */
const bands: readonly { readonly from: number; readonly evidence: OilEvidence }[] = [
  { from: 0.25, evidence: "strong" },
  { from: 0.1, evidence: "rings" },
  { from: 0.05, evidence: "weak" },
];

/** Undefined where no cylinder was read both dry and with oil. */
export const oilTest = (cylinders: readonly CylinderAssessment[]): OilTest | undefined => {
  const risen = cylinders.flatMap((cylinder) => {
    const rise = riseOf(cylinder);
    return rise === undefined ? [] : [{ cylinder, rise }];
  });
  if (risen.length === 0) return undefined;
  const controls = risen.filter(({ cylinder }) => cylinder.dryStanding === "even");
  const controlRise = controls.length === 0 ? undefined : mean(controls.map(({ rise }) => rise));
  return {
    cylinders: risen.map(({ cylinder: { label, dryStanding }, rise }): OilRise => {
      const isLow = dryStanding === "suspect" || dryStanding === "lagging";
      if (!isLow) return { label, rise };
      if (controlRise === undefined) return { label, rise, evidence: weakAtMost(rise) };
      const net = rise - controlRise;
      return { label, rise, net, evidence: evidenceOf(net) };
    }),
    controls: controls.map(({ cylinder }) => cylinder.label),
    ...(controlRise === undefined ? {} : { controlRise }),
  };
};

const riseOf = ({ pressures: { dry, wet } }: CylinderAssessment): number | undefined =>
  dry === undefined || wet === undefined || dry.value <= 0 || dry.pegged || wet.pegged
    ? undefined
    : wet.value / dry.value - 1;

const evidenceOf = (net: number): OilEvidence => bands.find(({ from }) => net >= from)?.evidence ?? "none";

/** Without a control the rise may be that of the oil's own volume. */
const weakAtMost = (rise: number): OilEvidence => (evidenceOf(rise) === "none" ? "none" : "weak");
