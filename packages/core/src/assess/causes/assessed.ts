// What of an assessed test the search for causes goes by.

import type { TestAssessment } from "../assessment.ts";

export type Assessed = Pick<
  TestAssessment,
  | "record"
  | "test"
  | "trust"
  | "cylinders"
  | "correction"
  | "speed"
  | "oil"
  | "buildUp"
  | "leak"
  | "comparisons"
>;

/** Whether one of the cylinders is not even among its fellows. */
export const isLow = ({ standing }: Assessed["cylinders"][number]): boolean =>
  standing === "lagging" || standing === "suspect";
