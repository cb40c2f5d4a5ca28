// One clearance measured in two ways: by gauging thread, and as bearing less journal.

import type { LengthUnit } from "../../record/index.ts";
import type { TeardownConflict, TeardownItem } from "../teardown.ts";
import { lengthText } from "../length-text.ts";

export interface Estimate {
  /** [m] */
  readonly value: number;
  /** Standard uncertainty. [m] */
  readonly uncertainty: number;
}

/** z = |a − b| / √(u_a² + u_b²): how far two estimates of one length are apart.
 *  @source GUM (difference of independent quantities); bounds in handbook/teardown.md 4.1 (judgement)
 *  @checked handbook/teardown.md 4.1, computed by this project */
export const apartBy = (one: Estimate, other: Estimate): number =>
  Math.abs(one.value - other.value) / Math.hypot(one.uncertainty, other.uncertainty);

/** Up to 2 they agree, up to 3 it is doubtful, beyond that both cannot be right. @source handbook/teardown.md 4.1 (judgement) */
const bounds = { agree: 2, doubtful: 3 } as const;

/** @param byThread - items of thread clearance  @param bySizes - clearances made of bearing and journal */
export const twoWayConflicts = (
  byThread: readonly TeardownItem[],
  bySizes: readonly TeardownItem[],
): readonly TeardownConflict[] =>
  byThread.flatMap((thread): readonly TeardownConflict[] => {
    const [sizes] = bySizes
      .filter(
        ({ part, label, state }) => part === thread.part && label === thread.label && state === thread.state,
      )
      // of the smallest and the largest clearance the nearer one: the thread lies at one angle
      .toSorted((a, b) => apartBy(thread, a) - apartBy(thread, b));
    if (sizes === undefined) return [];
    const apart = apartBy(thread, sizes);
    if (apart <= bounds.agree) return [];
    const { unit } = thread;
    const isConflict = apart > bounds.doubtful;
    return [
      {
        code: "two-ways",
        part: thread.part,
        ...(thread.label === undefined ? {} : { label: thread.label }),
        quantity: "clearance",
        text: `${named(thread)}: ${lengthText(thread.value, unit)} by thread, ${lengthText(sizes.value, unit)} as bearing less journal${difference(thread, sizes, unit)}`,
        mend: isConflict
          ? "measure both again: thread dry, cap at full torque, shaft not turned; bore gauge set in the micrometer that measures the journal"
          : "measure once more, both ways, before going by it",
        weight: isConflict ? "conflict" : "doubtful",
      },
    ];
  });

const named = ({ part, label }: TeardownItem): string => (label === undefined ? part : `${part} ${label}`);

const difference = (one: Estimate, other: Estimate, unit: LengthUnit): string =>
  `; ${lengthText(Math.abs(one.value - other.value), unit)} apart, these instruments explain ${lengthText(2 * Math.hypot(one.uncertainty, other.uncertainty), unit)}`;
