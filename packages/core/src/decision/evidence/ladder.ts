// The ladder of evidence: what speaks for wear and against it, and how strongly. Evidence only, never money.

import type { LadderRow } from "./row.ts";
import { rowsOfParts } from "./rows-of-parts.ts";
import { rowsOfRunning } from "./rows-of-running.ts";
import { rowsOfTests } from "./rows-of-tests.ts";

const rows = { ...rowsOfTests, ...rowsOfRunning, ...rowsOfParts };

/** The rows of the ladder of evidence, by name. */
export type EvidenceId = keyof typeof rows;

/** The rows by id. Power loss, fuel use and hard starting alone are none (published: a maker's gasoline manual, second hand
 *  in handbook/trade.md F1). */
export const ladder: Readonly<Record<EvidenceId, LadderRow>> = rows;
