// What was seen and not measured: hone marks, scores, shells, cracks.

import type { Measurement } from "../../record/index.ts";
import { placeOnly } from "../places.ts";
import type { TeardownFinding } from "../teardown.ts";
import { pieceOf } from "./readings.ts";

/** In the order of looking. */
export const findingsOf = (measurements: readonly Measurement[]): readonly TeardownFinding[] =>
  measurements.flatMap((one): readonly TeardownFinding[] =>
    one.value.kind === "word"
      ? [
          {
            ...placeOnly(one),
            part: one.part,
            quantity: one.quantity,
            word: one.value.word,
            ...(one.note === undefined ? {} : { note: one.note }),
            state: one.state,
          },
        ]
      : [],
  );

type Row = Pick<Measurement, "part" | "label" | "at" | "state">;

/** Of parts as they are now: of one that was machined or renewed since, only what was seen of it then.
 *  @param rows - all that was measured and seen */
export const currentFindings = (
  findings: readonly TeardownFinding[],
  rows: readonly Row[],
): readonly TeardownFinding[] =>
  findings.filter(
    (finding) =>
      isLate(finding) || !rows.some((other) => isLate(other) && pieceOf(other) === pieceOf(finding)),
  );

const isLate = ({ state }: Pick<TeardownFinding, "state">): boolean =>
  state === "new part" || state === "after machining";
