// How many readings some tests hold.

import type { ImportedTest } from "@sealtrend/core/parts";

/** Readings of some tests that were taken. */
export const readingsIn = (tests: readonly { readonly rows: ImportedTest["rows"] }[]): number =>
  tests.reduce(
    (sum, { rows }) =>
      sum +
      rows.reduce((of, { cells }) => of + cells.filter((cell) => cell !== "x" && cell !== "").length, 0),
    0,
  );
