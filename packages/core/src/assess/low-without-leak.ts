// A cylinder that cranks low though its leak-down is no worse than that of its fellows: the air is not lost past rings or
// valves, it never came in, or the chamber or the hose differs.

import type { Diagnosis, Faults } from "../diagnosis/index.ts";
import type { Heard } from "../record/index.ts";
import type { CylinderAssessment, TestAssessment } from "./assessment.ts";
import type { LeakAndCranking } from "./leak/leak-and-cranking.ts";

type Found = Pick<TestAssessment, "cylinders" | "leak" | "diagnosis">;

/** The cylinders again, those marked whose low reading does not look like a leak; not one whose air was heard where only a
 *  leak sends it, nor one whose leading cause lets air out.
 *  @param faults - the tables that the diagnosis goes by */
export const withLowWithoutLeak = (
  { cylinders, leak, diagnosis }: Found,
  faults: Faults,
): readonly CylinderAssessment[] => {
  const leaksRead = cylinders.filter(({ leakDown }) => leakDown !== undefined).length;
  const leaking = leadingLeak(diagnosis, faults);
  return cylinders.map((one, i): CylinderAssessment => {
    const isTight = hasTightLeakDown(one, { cranking: leak?.cranking, leaksRead });
    return isLowDry(one) && isTight && !isHeardToLeak(one) && !leaking.includes(i)
      ? { ...one, lowWithoutLeak: true }
      : one;
  });
};

const isLowDry = ({ dryStanding, pressures: { dry } }: CylinderAssessment): boolean =>
  (dryStanding === "lagging" || dryStanding === "suspect") && (dry?.value ?? 0) > 0;

/** By the sizes of engine and tester where they are known, else by the bare comparison of the parts lost, for which at least
 *  one fellow was read. */
const hasTightLeakDown = (
  { label, leakDown }: CylinderAssessment,
  { cranking, leaksRead }: { readonly cranking: LeakAndCranking | undefined; readonly leaksRead: number },
): boolean => {
  // a leak that stands out is one, even where it is too small for all of the low reading
  if (leakDown?.standing === "lagging" || leakDown?.standing === "suspect") return false;
  const explained = cranking?.cylinders.find((one) => one.label === label);
  return explained === undefined
    ? leaksRead > 1 && leakDown?.standing === "even" && !leakDown.flagged
    : explained.kind === "does-not-explain";
};

/** A hiss in the crankcase is that of sound rings as well. @source handbook/trade.md C2 */
export const isHeardToLeak = ({ heard = [] }: { readonly heard?: readonly Heard[] }): boolean =>
  heard.some(({ place }) => place !== "none" && place !== "crankcase");

/** Places of the cylinders that the leading cause is about, where it is one that lets air out. */
const leadingLeak = (diagnosis: Diagnosis | undefined, faults: Faults): readonly number[] => {
  const [first] = diagnosis?.causes ?? [];
  return first !== undefined && diagnosis?.leads === "cause" && letsAirOut(first.code, faults)
    ? first.cylinders
    : [];
};

/** Whether a leak as small as a sound cylinder's is the rarer with it; what is none of the causes is no leak either. */
const letsAirOut = (code: string, { causes, findings: { leak } }: Faults): boolean => {
  const place = causes.findIndex((cause) => cause.code === code);
  const normal = leak.columns[place]?.chances[leak.classes.indexOf("normal")] ?? 1;
  return causes[place]?.group !== "unlisted" && normal < 0.5;
};
