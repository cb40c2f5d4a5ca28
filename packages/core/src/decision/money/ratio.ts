// Without any price: how dear getting in again must be against the work, for acting now to pay.

import { jobs, type Job } from "../words.ts";

/** alpha = access again / work, phi = share of the access still to be paid, q = chance that the repair does not hold:
 *  p* = [1 + phi alpha + q (1 + alpha)] / [(1 + alpha)(1 + q)].  @source handbook/decision.md 3 (derived, computed) */
export const breakEvenChance = (alpha: number, { phi, q }: AccessLeft): number =>
  (1 + phi * alpha + q * (1 + alpha)) / ((1 + alpha) * (1 + q));

/** The ratio at which a chance breaks even: alpha* = (1 + q)(1 - p) / (p (1 + q) - q - phi); open, phi = 0, the handbook's
 *  1/(p (1 + q) - q) - 1.
 *  @returns undefined where no ratio does: in place always; open where p (1 + q) <= q, so that spoiling a good engine is
 *  likelier than needing it  @source handbook/decision.md 3; with phi solved from p* here */
export const flipRatio = (p: number, { phi, q }: AccessLeft): number | undefined => {
  const rest = p * (1 + q) - q - phi;
  return rest > 0 ? ((1 + q) * (1 - p)) / rest : undefined;
};

export interface AccessLeft {
  /** phi */
  readonly phi: number;
  /** q */
  readonly q: number;
}

/** Share of the jobs of that work still to do, all counted alike as nothing is priced; the engine out counts where it is.
 *  (our judgement) */
export const shareToOpen = (done: readonly Job[], act: "topEnd" | "reRing"): number => {
  const needed: readonly Job[] =
    act === "topEnd" ? ["headOff"] : done.includes("engineOut") ? jobs : ["headOff", "bottomOpen"];
  return needed.filter((job) => !done.includes(job)).length / needed.length;
};
