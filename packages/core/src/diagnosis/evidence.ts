// What was found, as the diagnosis takes it: plain values, nothing of files, units or dates.

import type { Circumstance, Obstacle, OnsetReport, SignName } from "./faults/faults.ts";
import type { HeardPlace } from "../record/index.ts";

/** What was found on one cylinder; what is absent was not looked at and says nothing. */
export interface CylinderEvidence {
  /** Dry takes by one gauge, corrected [Pa gauge]; their mean is its level. */
  readonly dry?: readonly number[];
  /** With oil, corrected as the dry ones [Pa gauge]. */
  readonly wet?: number;
  /** First stroke, corrected as the dry ones [Pa gauge]. */
  readonly firstStroke?: number;
  /** Running on the other cylinders [Pa gauge]. */
  readonly running?: number;
  /** alpha on the usual restrictor, and u(ln alpha); absent doubt: the table's. Nothing left in the cylinder: alpha 8. */
  readonly leak?: { readonly alpha: number; readonly doubt?: number };
  /** Where air came out; an empty list or `none` is a finding, absence is not. */
  readonly heard?: readonly { readonly place: HeardPlace; readonly faint: boolean }[];
  /** alpha with oil / alpha without. */
  readonly oiled?: number;
  /** alpha with the piston lower / alpha at the top. */
  readonly lower?: number;
  /** What the history of this cylinder reports. */
  readonly onset?: OnsetReport;
  /** A finding that is one word of its classes. */
  readonly seen?: Readonly<Partial<Record<SeenFinding, string>>>;
}
export type SeenFinding =
  "lash" | "borescope" | "second-gauge" | "warm" | "conditions" | "reseat" | "reindex" | "release";

/** What was found on an engine, as the diagnosis takes it: plain values, places in the order of the cylinders. */
export interface Evidence {
  readonly cylinders: readonly CylinderEvidence[];
  /** Places of cylinders along each head, in physical order; places in `cylinders`. */
  readonly banks: readonly (readonly number[])[];
  /** Whether neighbours along a bank share a gasket. */
  readonly sharedGasket: boolean;
  /** What shifts the chances; where it touched only some cylinders, their places. */
  readonly circumstances: readonly {
    readonly when: Circumstance;
    readonly cylinders?: readonly number[];
  }[];
  /** The level a sound engine is expected to read [Pa gauge, corrected as the dry readings]. */
  readonly expected?: { readonly level: number; readonly from: "baseline" | "maker" | "estimate" };
  /** What the oil that went in raises a sound reading by through its room alone; absent: unknown. */
  readonly oilRise?: number;
  /** Whether the bore of the leak-down restrictor is known. */
  readonly restrictor: "known" | "unknown";
  readonly signs: Readonly<Partial<Record<SignName, "present" | "absent">>>;
  /** Combustion gas, or loss of pressure, looked for in the coolant of the engine. */
  readonly gas?: "positive" | "negative";
  /** Owned, by the names of the tests' table. */
  readonly tools: readonly string[];
  /** What keeps some tests from being proposed. */
  readonly obstacles: readonly Obstacle[];
}
