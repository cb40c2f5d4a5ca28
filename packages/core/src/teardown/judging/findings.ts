// What was seen and not measured: hone marks, scores, shells, cracks.

import type { Measurement } from "../../record/index.ts";
import { placeOnly } from "../places.ts";
import type { TeardownFinding } from "../teardown.ts";
import { pieceOf } from "./superseded.ts";

/** In the order of looking. */
export const findingsOf = (measurements: readonly Measurement[]): readonly TeardownFinding[] =>
  measurements.flatMap((one): readonly TeardownFinding[] =>
    one.value.kind === "word"
      ? [
          {
            date: one.date,
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

/** Of parts as they are now: of one that was machined or renewed since, only what was seen of it then; of a bore that was
 *  looked at again, what was seen last.
 *  @param rows - all that was measured and seen */
export const currentFindings = (
  findings: readonly TeardownFinding[],
  rows: readonly Row[],
): readonly TeardownFinding[] =>
  findings.filter(
    (finding, i) =>
      (isLate(finding) || !rows.some((other) => isLate(other) && pieceOf(other) === pieceOf(finding))) &&
      !findings.some((later, j) => isOvertaken(finding, later, j > i ? "behind" : "before")),
  );

/** Marks and scores of a bore exclude each other at one place; shells may be wiped and one-sided at once. On one day only
 *  the same place is the same look. */
const isOvertaken = (one: TeardownFinding, later: TeardownFinding, row: "behind" | "before"): boolean =>
  one.part === "bore" &&
  later.part === one.part &&
  later.label === one.label &&
  later.quantity === one.quantity &&
  (later.date === one.date
    ? row === "behind" && later.at === one.at
    : later.date > one.date && (later.at === one.at || later.at === undefined || one.at === undefined));

const isLate = ({ state }: Pick<TeardownFinding, "state">): boolean =>
  state === "new part" || state === "after machining";
