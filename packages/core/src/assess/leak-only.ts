// Whether a test was made without cranking for pressure.

import type { Test } from "../record/index.ts";

/** Leak-downs alone: no pressure of cranking or running in it. */
export const isLeakOnly = ({ rows }: Pick<Test, "rows">): boolean =>
  rows.length > 0 && rows.every(({ what }) => what.startsWith("leak-down"));
