// New readings that look mistyped: they come in as the sheet has them, and are told with the words that `enter` has for them.

import type { Engine, Place, Test } from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import type { RowValues } from "../entry/entry-context.ts";
import { slipMend, slipSaid, slipsIn } from "../entry/entry-slips.ts";

/** A row as it goes into tests.csv. */
export interface PlacedRow {
  readonly values: RowValues;
  /** Where its first reading stands in the sheet. */
  readonly from: Place;
  readonly engine: string;
  /** The name of its test. */
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
  return rows.flatMap(({ values, from, engine: id, id: test }) => {
    const i = at.get(test) ?? 0;
    const earlier = inOrder.slice(Math.max(0, i - lookedBack), i);
    return slipsIn([values], engine, earlier).map((slip) => ({
      said: {
        code: "import-odd",
        severity: "caution",
        found: slipSaid(slip, values.what ?? ""),
        expected: "the figure that the gauge showed",
        ...(slip.label === undefined ? from : placeOf(slip.text, from)),
      },
      amend: slipMend(slip, values, { id, test }),
      isOfUnit: slip.label === undefined,
    }));
  });
};

/** Where a figure stands in the line of the first reading of its row, if it can be one place only; a sheet with a row a reading has it
 *  in another line. */
const placeOf = (text: string, { file, line, excerpt }: Place): Place => {
  const shape = text.replace(/[^\d.]/g, "").replace(".", "[.,]");
  const found = [...(excerpt?.text ?? "").matchAll(new RegExp(`(?<!\\d|\\d\\.)${shape}(?!\\.?\\d)`, "g"))];
  const [first] = found;
  const of = file === undefined ? {} : { file };
  if (first === undefined || line === undefined || excerpt === undefined) return of;
  if (found.length > 1) return { ...of, line };
  const from = first.index + 1;
  return { ...of, line, column: from, excerpt: { ...excerpt, from, to: first.index + first[0].length } };
};
