// The contrasts as a chart shows them: every test that is not set aside, run-in and foreign sheets too.

import { at } from "./at.ts";
import { looContrasts } from "./contrasts.ts";
import type { Layout } from "./layout.ts";
import { readingTable } from "./reading-table.ts";
import { plainContrasts, type RelativeChannel } from "./relative-channel.ts";
import { placesOf } from "./series.ts";

export interface Shown {
  /** By cylinder, then by test; undefined where there is none. */
  readonly contrasts: readonly (readonly (number | undefined)[])[];
  readonly ratios: readonly (readonly (number | undefined)[])[];
}

/** @param channel - of the tests that count  @param plain - their plain contrasts */
export const shownContrasts = (
  { tests, columns, labels }: Layout,
  channel: RelativeChannel,
  plain: Float64Array,
): Shown => {
  const rows = placesOf(tests, (test) => test.use !== "set-aside");
  const spread = (values: Float64Array): readonly (readonly (number | undefined)[])[] => {
    const shown = labels.map(() => new Array<number | undefined>(tests.length).fill(undefined));
    rows.forEach((row, r) => {
      columns.forEach(({ cylinder }, c) => {
        const value = at(values, r * columns.length + c);
        if (!Number.isNaN(value)) at(shown, cylinder)[row] = value;
      });
    });
    return shown;
  };
  // every test that counts is shown: where they are as many, they are the same
  if (rows.length === channel.rows.length)
    return { contrasts: spread(channel.contrasts), ratios: spread(plain) };
  const table = readingTable(tests, rows, columns);
  return {
    contrasts: spread(looContrasts(table, channel.polish.levels)),
    ratios: spread(plainContrasts(table)),
  };
};
