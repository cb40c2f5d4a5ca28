// What a running engine does not forgive, and what nobody may close up before its source is found.

import type { EvidenceId } from "../evidence/ladder.ts";
import type { Grounds } from "./grounds.ts";

const stopping: readonly EvidenceId[] = ["F3", "G1", "H2"];

/** Chunks in the filter, heavy knock or combustion gas in the coolant, whatever the verdict.
 *  @source handbook/decision.md 8 */
export const isStopped = ({ evidence }: Pick<Grounds, "evidence">): boolean =>
  evidence.counted.some(({ id }) => stopping.includes(id));

/** Bearing metal: no stop, and yet nothing to load before the bearings were looked at (our judgement). */
export const isSpared = ({ evidence }: Pick<Grounds, "evidence">): boolean =>
  evidence.counted.some(({ id }) => id === "F1");

/** New rings do not cure what was seen in a bore: it is measured first.  @source handbook/teardown.md 5 */
export const isRenewedScored = ({ evidence: { scores }, due }: Pick<Grounds, "evidence" | "due">): boolean =>
  due?.act === "reRing" && scores.bore.state === "developing" && scores.bore.linesFor.includes("sight");

/** Told to stop, or with damage that no row weighs, it is neither left nor watched, and no readings in doubt come before it
 *  (our judgement: a word that closes it up contradicts the stop of handbook/decision.md 8). */
export const isSourceAsked = (grounds: Pick<Grounds, "evidence" | "input">): boolean =>
  isStopped(grounds) || grounds.input.damage !== undefined;
