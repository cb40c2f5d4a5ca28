// What no reading of this logbook can see, and faults that are none of sealing.

import type { Deciding } from "./deciding.ts";
import type { CannotSee, OtherFault } from "./decision-assessment.ts";
import { unmeasuredParts } from "./measured-not-seen.ts";
import type { WearFound } from "./wear.ts";

/** As noted, however long ago: nothing in the logbook tells that one was mended. */
export const otherFaultsOf = ({ record: { notes }, today }: Deciding): readonly OtherFault[] =>
  notes
    .filter(({ what, date }) => what === "other fault" && date <= today)
    .map(({ date, value, note }) => ({ date, text: [value, note].filter(Boolean).join(", ") }));

/** @param others - faults of the same engine */
export const cannotSeeOf = (
  deciding: Deciding,
  others: readonly OtherFault[],
  { evenWear }: Pick<WearFound, "evenWear">,
): readonly CannotSee[] => [
  ...(others.length > 0 ? (["the other fault"] as const) : []),
  "ring tension",
  ...unmeasuredParts(deciding),
  ...(evenWear === "cannot be seen" ? (["wear of all cylinders alike"] as const) : []),
  "sudden faults",
];
