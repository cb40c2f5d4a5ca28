// What the readings can carry: whether anything but a cranking gauge speaks for the target, and whether a loss that is the
// same in all cylinders would show at all.

import type { Evidence } from "../evidence.ts";
import type { FindingName } from "../faults/faults.ts";

/** Read from a gauge while the engine is cranked: now, again under other conditions, or over the years. */
const whileCranking: readonly FindingName[] = [
  "level",
  "wet",
  "first-stroke",
  "repeats",
  "onset",
  "second-gauge",
  "warm",
  "conditions",
  "release",
];

/** Direct evidence is anything on the target but gauge readings while cranking. Gas in the coolant is of the whole engine,
 *  and so direct only where the engine is that one cylinder. @source handbook/diagnosis.md, head */
export const hasDirectEvidence = (
  found: readonly { readonly finding: FindingName }[],
  { cylinders, gas }: Evidence,
): boolean =>
  found.some(({ finding }) => !whileCranking.includes(finding)) ||
  (cylinders.length === 1 && gas !== undefined);

/** Dry readings need an expectation. Leak-down readings alone need a tester whose bore is known, or a loss in all of them
 *  may be the tester's. @source handbook/diagnosis.md 3, 5 */
export const evenLossOf = ({
  cylinders,
  expected,
  restrictor,
}: Evidence): "can be seen" | "cannot be seen" => {
  const [cranked, pressurised] = [
    cylinders.some(({ dry = [] }) => dry.length > 0),
    cylinders.some(({ leak }) => leak !== undefined),
  ];
  const seen = cranked ? expected !== undefined : pressurised && restrictor === "known";
  return seen ? "can be seen" : "cannot be seen";
};
