// Fisher's F distribution: whether a variance is larger than another by more than chance.

import { checkDegrees } from "./guard.ts";
import { incompleteBeta } from "./incomplete-beta.ts";

/** P(F > f) for `upper` and `lower` degrees of freedom: I_x(lower/2, upper/2), x = lower/(lower + upper f). Relative error
 *  below 1e-11.
 *  @throws RangeError unless f is 0 or more, both degrees of freedom finite and above 0
 *  @checked tests/published/statistics-distributions.test.ts */
export const fisherUpperTail = (f: number, upper: number, lower: number): number => {
  checkDegrees("fisherUpperTail", upper);
  checkDegrees("fisherUpperTail", lower);
  if (upper === Infinity || lower === Infinity)
    throw new RangeError("fisherUpperTail: degrees of freedom must be finite");
  if (!(f >= 0)) throw new RangeError(`fisherUpperTail: f is ${String(f)}`);
  if (f === 0) return 1;
  if (f === Infinity) return 0;
  const odds = (upper * f) / lower;
  return incompleteBeta({ lnX: -Math.log1p(odds), lnRest: -Math.log1p(1 / odds) }, lower / 2, upper / 2);
};
