// New readings that look mistyped: they come in as the sheet has them, and are told with the words that `enter` has for them.

import type { Engine, ImportedTest, Test } from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import type { RowValues } from "../entry/entry-context.ts";
import { slipsIn } from "../entry/entry-slips.ts";
import { slipMend, slipSaid } from "../entry/slip-words.ts";
import { readingPlace } from "./reading-place.ts";

/** A row as it goes into tests.csv. */
export interface PlacedRow {
  readonly values: RowValues;
  /** The test of the sheet that it is of. */
  readonly test: ImportedTest;
  /** Which of the test's rows. */
  readonly at: number;
  /** The name of the test in tests.csv. */
  readonly id: string;
}

/** As many tests before a reading are looked at for the last of its kind. */
const lookedBack = 8;

/** A reading that looks mistyped, without its mend: that depends on whether it is in. */
export interface PlacedSlip {
  readonly said: Omit<Fault, "mend">;
  /** The command that mends it once it is in. */
  readonly amend: string;
  /** The unit of the whole row is in doubt, not one reading. */
  readonly isOfUnit: boolean;
}

/** @param tests - all of the engine, the new ones included */
export const placedSlips = (
  rows: readonly PlacedRow[],
  tests: readonly Test[],
  engine: Engine,
): readonly PlacedSlip[] => {
  const inOrder = tests.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  const at = new Map(inOrder.map(({ id }, i) => [id, i] as const));
  return rows.flatMap(({ values, test, at: row, id }) => {
    const i = at.get(id) ?? 0;
    const earlier = inOrder.slice(Math.max(0, i - lookedBack), i);
    return slipsIn([values], engine, earlier).map((slip) => ({
      said: {
        code: "import-odd",
        severity: "caution",
        found: slipSaid(slip, values.what ?? ""),
        expected: "the figure that the gauge showed",
        ...readingPlace(test, row, slip.label),
      },
      amend: slipMend(slip, values, { id: test.engine, test: id }),
      isOfUnit: slip.label === undefined,
    }));
  });
};
