// The rows of the ladder that hold, from every record, and how each was used.

import { type Decision, ladder } from "../../decision/index.ts";
import { byText } from "../../problem/index.ts";
import type { Deciding } from "./deciding.ts";
import type { FoundRow } from "./decision-assessment.ts";
import type { Row } from "./row.ts";
import { crankingRows } from "./rows-cranking.ts";
import { type LeaksFound, leaksFound } from "./rows-leak.ts";
import { measuredRows } from "./rows-measured.ts";
import { runningRows } from "./rows-running.ts";
import { sightRows } from "./rows-sight.ts";

/** In the order of the ladder; and the leaks that nobody placed, which make no row. */
export const rowsFound = (deciding: Deciding): LeaksFound => {
  const leak = leaksFound(deciding);
  const rows = [
    ...crankingRows(deciding),
    ...leak.rows,
    ...runningRows(deciding, leak.rows),
    ...sightRows(deciding),
    ...measuredRows(deciding),
  ].toSorted((a, b) => byText(a.row, b.row));
  return { rows, unplaced: leak.unplaced };
};

const noPoints = { top: 0, rings: 0, bore: 0, bottom: 0 } as const;

/** Each with its points, and whether the decision set it aside. */
export const usedRows = (rows: readonly Row[], { suspended }: Decision): readonly FoundRow[] =>
  rows.map(({ row, cylinder, text, from }) => {
    const { line, points, status, source } = ladder[row];
    return {
      row,
      line,
      ...(cylinder === undefined ? {} : { cylinder }),
      text,
      from,
      points: { ...noPoints, ...points },
      status,
      source,
      use: suspended.some(({ id }) => id === row) ? "set-aside" : "counted",
    };
  });
