// Findings that no sound cylinder gives, on one whose likeliest cause is none at all: its other readings are good, and the
// chances follow them. Such a finding is told for itself and not waved away.

import type { Diagnosis } from "../../diagnosis/index.ts";
import type { Heard } from "../../record/index.ts";
import { mean, median } from "../../statistics/index.ts";
import type { CylinderAssessment } from "../assessment.ts";
import { type Assessed, isLow } from "./assessed.ts";
import { heardEvidence } from "./heard-evidence.ts";
import type { Unexplained } from "./unexplained-finding.ts";

type Found = Omit<Unexplained, "label">;

/** Teaching texts call a leak of this part much; rings that oil seals raise a reading by this over sound ones; amounts of oil
 *  further apart do not compare. @source handbook/trade.md A10, B3; judgement */
const limits = { lost: 0.2, oil: 0.1, sameAmount: 0.2 } as const;
/** A running reading is low below this share of its fellows, by more than twice its doubt, beside so many of them.
 *  @source handbook/diagnosis.md 3; judgement */
const running = { low: 0.85, doubt: 0.04, fellows: 2 } as const;

/** In the engine's order; none where no cause was looked for.
 *  @source handbook/trade.md C2 (air in the coolant), A6 (running and snap), B3 (oil) */
export const unexplainedIn = (
  assessed: Assessed & { readonly diagnosis?: Diagnosis },
): readonly Unexplained[] => {
  const { diagnosis, cylinders } = assessed;
  if (diagnosis === undefined) return [];
  const heard = heardEvidence(assessed);
  return cylinders.flatMap((cylinder, place): readonly Unexplained[] => {
    const chances = diagnosis.cylinders[place] ?? [];
    const isSound = (chances[0] ?? 0) >= Math.max(...chances);
    const air = heard[place]?.some((one) => one.place === "coolant") === true;
    const found: readonly Found[] = [
      ...(air && (isSound || !isLow(cylinder)) ? [{ finding: "air-in-coolant" } as const] : []),
      ...(isSound ? leak(assessed, cylinder, heard[place]) : []),
      ...(isSound ? runningLow(assessed, cylinder) : []),
      ...(isSound ? oilRise(assessed, cylinder) : []),
    ];
    return found.map((one) => ({ label: cylinder.label, ...one }));
  });
};

/** One that stands out and is large. Air in the coolant says more than its size. */
const leak = (
  { cylinders }: Assessed,
  { leakDown, label }: CylinderAssessment,
  heard: readonly Heard[] | undefined,
): readonly Found[] => {
  if (leakDown?.flagged !== true || leakDown.lost < limits.lost || leakDown.repeats === "contradict")
    return [];
  // where the air goes comes first
  if (heard === undefined) return [];
  const fellows = cylinders.flatMap((one) => (one.label === label ? [] : (one.leakDown?.lost ?? [])));
  const places = heard.map(({ place }) => place);
  if (places.includes("coolant")) return [];
  return [
    {
      finding: places.every((place) => place === "none") ? "leak-heard-nowhere" : "leak-heard",
      own: leakDown.lost,
      ...(fellows.length === 0 ? {} : { others: median(fellows) }),
    },
  ];
};

/** It cranks well and does not fill when it runs. */
const runningLow = ({ cylinders }: Assessed, own: CylinderAssessment): readonly Found[] => {
  if (own.dryStanding !== "even" || own.leakDown?.flagged === true) return [];
  const shares = (["running", "snap-throttle"] as const).flatMap((kind) => {
    const reading = own.pressures[kind];
    const fellows = cylinders.flatMap(({ label, pressures: { [kind]: other } }) =>
      label === own.label || other === undefined || other.doubtful || other.pegged ? [] : [other.corrected],
    );
    if (reading === undefined || reading.doubtful || reading.pegged || fellows.length < running.fellows)
      return [];
    const middle = median(fellows);
    return middle > 0 ? [reading.corrected / middle] : [];
  });
  const least = Math.min(...shares);
  return least * (1 + 2 * running.doubt) < running.low ? [{ finding: "running-low", own: least }] : [];
};

/** Oil raised it as it raises one with worn rings, and it read well without. */
const oilRise = ({ oil }: Assessed, { label, dryStanding }: CylinderAssessment): readonly Found[] => {
  const own = oil?.cylinders.find((one) => one.label === label);
  if (own === undefined || dryStanding !== "even" || own.amount === "too-much") return [];
  // oil lowers no reading: where one fell, none of that day tells of oil
  if (oil?.cylinders.some(({ doubts }) => doubts.includes("fell")) === true) return [];
  const fellows = (oil?.cylinders ?? []).filter(
    (one) =>
      one !== own &&
      one.amount !== "too-much" &&
      (one.oil === undefined ||
        own.oil === undefined ||
        Math.abs(one.oil - own.oil) <= limits.sameAmount * Math.max(one.oil, own.oil)),
  );
  if (fellows.length === 0) return [];
  const others = mean(fellows.map(({ rise }) => rise));
  return own.rise - others >= limits.oil ? [{ finding: "oil-rise", own: own.rise, others }] : [];
};
