// Rows J of the ladder: what was measured against its limits.

import type { EvidenceId } from "../../decision/index.ts";
import {
  type MeasuredPlace,
  type Together,
  figureText,
  measuredTogether,
  stayingVerdict,
  timesMeasured,
} from "../../teardown/index.ts";
import type { Deciding } from "./deciding.ts";
import { listed } from "../labels.ts";
import { cylinderMeasured } from "./measured-now.ts";
import type { Row } from "./row.ts";

interface Ids {
  readonly beyond: EvidenceId;
  readonly within?: EvidenceId;
  /** What was measured, where all of it is inside. */
  readonly text: string;
}

/** @source handbook/decision.md 2 */
const rowOf: Readonly<Record<MeasuredPlace, Ids>> = {
  bore: { beyond: "J1", within: "J2", text: "every bore measured" },
  rings: { beyond: "J3", within: "J4", text: "rings measured in every cylinder" },
  bottom: { beyond: "J5", within: "J6", text: "every main and rod bearing measured" },
  // of valves and faces nothing speaks against wear of the rest of the top end
  top: { beyond: "J7", text: "" },
};

/** Parts beyond a limit a row each; where each one of a kind is inside, one row for all. What is too close to tell is none. */
export const measuredRows = (deciding: Deciding): readonly Row[] => {
  const { measured } = deciding;
  if (measured === undefined) return [];
  const { teardown, to } = measured.assessment;
  const from = `teardown ${String(teardown)}, ${to}`;
  return measured.found.flatMap((found): readonly Row[] => {
    const { beyond, within, text } = rowOf[found.place];
    const worn = measuredTogether(found.beyond, deciding.record.engine).map((items): Row => {
      const [first] = items;
      const cylinder = cylinderMeasured(first, deciding.record.engine.cylinders);
      return {
        row: beyond,
        ...(cylinder === undefined ? {} : { cylinder }),
        text: textOf(items),
        from,
        restsOn: "other-records",
        times: timesMeasured(items),
      };
    });
    const isSound = found.within === "yes" && within !== undefined;
    return isSound
      ? [
          ...worn,
          {
            row: within,
            text: `${text}, inside: ${listed(found.quantities)}`,
            from,
            restsOn: "other-records",
          },
        ]
      : worn;
  });
};

/** Of one part the figure that is furthest beyond, and how many more there are. */
const textOf = (items: Together): string => {
  const [first, ...others] = items;
  return others.length === 0
    ? figureText(first, stayingVerdict(first))
    : `${figureText(first, stayingVerdict(first))}; ${String(others.length)} more beyond`;
};
