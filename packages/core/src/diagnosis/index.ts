// Diagnosis: from findings to ranked causes and the next test.

export { diagnose } from "./diagnose.ts";
export { quickestFirst } from "./next/proposed-tests.ts";
export type { Diagnosis, ProposedTest, RankedCause, Reason as CauseReason } from "./diagnosis.ts";
export type { CylinderEvidence, Evidence, SeenFinding } from "./evidence.ts";
export {
  type Cause,
  type CauseGroup,
  type Circumstance,
  type Faults,
  type FaultStatus,
  type FindingName,
  type FurtherTest,
  type Obstacle,
  type OnsetReport,
  type SignName,
} from "./faults/faults.ts";
export { faultSheets, readFaults } from "./faults/read-faults.ts";
export { shippedFaults } from "./faults/shipped-faults.ts";
