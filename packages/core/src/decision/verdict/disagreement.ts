// Leak-down and cranking that contradict each other.

import type { EvidenceId } from "../evidence/ladder.ts";
import type { EvidenceRow } from "../input.ts";

const leaking: readonly EvidenceId[] = ["B2", "B3", "B4", "B5", "B6", "B7"];
const low: readonly EvidenceId[] = ["A2", "A3", "A4", "A5", "A6", "A7"];

/** What the leak-down says where cranking says the reverse.  @source handbook/decision.md 2, G7 */
export const disagreement = (rows: readonly Pick<EvidenceRow, "id">[]): "leaks" | "healthy" | undefined => {
  const has = (ids: readonly EvidenceId[]): boolean => rows.some(({ id }) => ids.includes(id));
  if (has(["A1"]) && has(leaking)) return "leaks";
  return has(["B1"]) && has(low) ? "healthy" : undefined;
};
