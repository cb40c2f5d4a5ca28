// Whether a test was made without cranking for pressure.

import type { Test } from "../record/index.ts";

const cranked: readonly Test["rows"][number]["what"][] = [
  "dry",
  "wet",
  "first-stroke",
  "running",
  "snap-throttle",
];

/** No pressure of cranking or running in it: leak-downs, and where their air was heard. */
export const isLeakOnly = ({ rows }: Pick<Test, "rows">): boolean =>
  rows.length > 0 && rows.every(({ what }) => !cranked.includes(what));
