// What is wrong with the readings beside their trust: guards G3, G4 and G5.

import type { DecisionInput } from "../../decision/index.ts";
import type { TestAssessment } from "../assessment.ts";
import type { Deciding } from "./deciding.ts";
import { type LowEverywhere, lowEverywhereOf } from "./low-everywhere.ts";
import { type NotItself, notItselfOf } from "./not-itself.ts";
import { type OddTest, oddTestOf } from "./odd-test.ts";
import type { Row } from "./row.ts";

export interface DoubtsFound {
  readonly doubts: NonNullable<DecisionInput["doubts"]>;
  readonly oddTest?: OddTest;
  /** What the engine was not itself for; the last that befell it first. */
  readonly notItself?: NotItself;
  readonly lowEverywhere?: LowEverywhere;
}

/** All at once low everywhere with all of it proved is no doubt about the readings, but asks for a second method while no
 *  leak-down speaks.  @param rows - that were found to hold  @source handbook/decision.md 2 */
export const doubtsOf = (deciding: Deciding, rows: readonly Row[]): DoubtsFound => {
  const { dry, leakDown, record } = deciding;
  const oddTest = oddTestOf(deciding, rows);
  const notItself = dry !== undefined && isLow(dry) ? notItselfOf(dry, deciding).at(-1) : undefined;
  const lowEverywhere = dry === undefined ? undefined : lowEverywhereOf(dry, deciding);
  const isProved = lowEverywhere?.unproved.length === 0;
  const isAlone =
    lowEverywhere?.sudden === "yes" &&
    leakDown === undefined &&
    record.engine.leakDownTest?.allowed !== false;
  return {
    doubts: [
      ...(oddTest === undefined ? [] : (["one-odd-test"] as const)),
      ...(notItself === undefined ? [] : (["not-itself"] as const)),
      ...(lowEverywhere === undefined || isProved ? [] : (["low-everywhere"] as const)),
      ...(isProved && isAlone ? (["one-method-only"] as const) : []),
    ],
    ...(oddTest === undefined ? {} : { oddTest }),
    ...(notItself === undefined ? {} : { notItself }),
    ...(lowEverywhere === undefined ? {} : { lowEverywhere }),
  };
};

const isLow = ({ cylinders, levelSince }: TestAssessment): boolean =>
  levelSince !== undefined ||
  cylinders.some(({ flagged, limitsMissed }) => flagged || limitsMissed.length > 0);
