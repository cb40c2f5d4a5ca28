// What of an assessed test the search for causes goes by.

import type { Standing } from "../../spread/index.ts";
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

/** Whether it is not even among its fellows: a cylinder by all its readings, or its leak-down by itself. */
export const isLow = ({ standing }: { readonly standing?: Standing }): boolean =>
  standing === "lagging" || standing === "suspect";
