// Why two gauges cannot be linked by the readings of a test, and what would mend that.

import type { GaugePair } from "@sealtrend/core";
import { count } from "../words.ts";

export interface RefusalWords {
  readonly found: string;
  readonly expected: string;
  readonly mend: string;
}

/** @throws TypeError for a pair that was measured */
export const refusalWords = (
  { what, gauge = "no name", to = "no name", cylinders, standing }: GaugePair,
  at: { readonly engine: string; readonly test: string },
): RefusalWords => {
  if (standing.kind !== "refused") throw new TypeError("refusalWords: the pair was measured");
  const both = `${gauge} and ${to}`;
  const amend = `sealtrend amend ${at.engine} --test ${at.test}`;
  switch (standing.code) {
    case "set-aside":
      return {
        found: `test ${at.test} is set aside`,
        expected: "a test that counts",
        mend: `${amend} --set-aside - --because "it counts after all"`,
      };
    case "gauge-not-named":
      return {
        found: `a row of ${what} in test ${at.test} names no gauge`,
        expected: "the name of the gauge in each row",
        mend: `${amend} --what ${what} --gauge NAME --because "was left out"`,
      };
    case "day-differs":
      return {
        found: `${both} were not read in the same state: the ${standing.by} differs`,
        expected: "both gauges on the same warm engine, cranked alike, one after the other",
        mend: "read the engine with both again, warm",
      };
    case "supply-unknown":
      return {
        found: `the supply pressure of ${both} is not known for both`,
        expected: "what each tester was set to",
        mend: `${amend} --what ${what} --of-gauge ${gauge} --regulated 80psi --because "was left out"`,
      };
    case "too-few":
      return {
        found: `${both} were both read on ${count(cylinders.length)} cylinder${cylinders.length === 1 ? "" : "s"} of test ${at.test}${what === "leak-down" ? ", with a leak that both show" : ""}`,
        expected: `${count(standing.needed)} cylinders or more, none of them doubtful or off the scale`,
        mend: `sealtrend enter ${at.engine} --test ${at.test} --gauge ${gauge} --${what} with the cylinders that are missing`,
      };
  }
};
