// Which low cylinders are to be read again before they are believed: not those that another instrument has shown low as well,
// not those of which enough is known, and none in which oil lies.

import type { CylinderAssessment, TestAssessment } from "./assessment.ts";
import { isLow } from "./causes/assessed.ts";
import { isHeardToLeak } from "./low-without-leak.ts";

type Found = Pick<TestAssessment, "cylinders" | "high" | "diagnosis">;

/** Labels in the engine's order: those that read high where some do, else the suspects, and those at a limit where nothing
 *  is surer than that. */
export const readAgain = (found: Found): readonly string[] => {
  const { cylinders, high } = found;
  if (high !== undefined) return high;
  const low = cylinders.filter(isLow);
  const suspects = low.filter(({ standing }) => standing === "suspect");
  const close = low.every((one) => one.standing === "suspect" || isTooClose(one)) ? low : suspects;
  const known = knownEnough(found);
  return close
    .filter((one) => !isOiled(one) && (isTorn(one) || (!isConfirmed(one) && !known.includes(one))))
    .map(({ label }) => label);
};

/** Its word comes from a limit that lies within its doubt, and neither repeats nor the test before confirm it. */
const isTooClose = ({ atLimit, repeats, confirmed, leakDown }: CylinderAssessment): boolean =>
  (atLimit === true && repeats === undefined && confirmed !== true) || leakDown?.atLimit === true;

/** A dry reading of it is one no longer. */
const isOiled = ({ dryStanding, pressures: { wet } }: CylinderAssessment): boolean =>
  wet !== undefined && dryStanding !== undefined && dryStanding !== "even";

/** Of repeats that contradict each other another instrument confirms neither. */
const isTorn = ({ repeats, leakDown }: CylinderAssessment): boolean =>
  repeats === "contradict" || leakDown?.repeats === "contradict";

/** Low by gauge and by leak-down, or by one of them and by ear. */
const isConfirmed = (one: CylinderAssessment): boolean => {
  const [dry, leak] = [one.dryStanding, one.leakDown?.standing].map(
    (standing) => standing === "suspect" || standing === "lagging",
  );
  return (dry === true && leak === true) || isHeardToLeak(one);
};

/** Nothing left would change what to do about them, more than cranking readings speak, and something is wrong with them. */
const knownEnough = ({ cylinders, diagnosis }: Found): readonly CylinderAssessment[] => {
  const [first] = diagnosis?.causes ?? [];
  if (diagnosis?.enough !== true || diagnosis.capped || first === undefined || first.group === "nothing")
    return [];
  return cylinders.filter((_, i) => i === diagnosis.target || first.cylinders.includes(i));
};
