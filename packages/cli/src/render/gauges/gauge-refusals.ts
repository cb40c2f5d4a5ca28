// Why two gauges cannot be linked by the readings of a test, and what would mend that.

import type { GaugePair } from "@sealtrend/core/parts";
import { count, fixed, joined, signedPercent } from "../words.ts";

export interface RefusalWords {
  readonly found: string;
  readonly expected: string;
  readonly mend: string;
}

export interface RefusedAt {
  readonly engine: string;
  /** How many cylinders it has. */
  readonly of: number;
  readonly test: string;
}

/** @throws TypeError for a pair that was measured */
export const refusalWords = (pair: GaugePair, at: RefusedAt): RefusalWords => {
  const { what, gauge = "no name", to = "no name", cylinders, standing } = pair;
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
        mend: `${amend} --what ${what} --regulated 80psi --because "was left out"`,
      };
    case "too-few":
      return {
        found: `${both} were both read on ${count(cylinders.length)} cylinder${cylinders.length === 1 ? "" : "s"} of test ${at.test}${what === "leak-down" ? ", with a leak that both show" : ""}`,
        expected: `${count(standing.needed)} cylinders or more, none of them doubtful or off the scale`,
        mend:
          at.of < standing.needed
            ? `compare them on an engine of ${count(standing.needed)} cylinders or more: with ${count(at.of)}, one bad reading would pass for a difference of gauges`
            : `the cylinders that are missing, x for the others: sealtrend enter ${at.engine} --test ${at.test} --gauge ${gauge} --${what} READINGS`,
      };
    case "cylinders-disagree": {
      const { labels } = standing;
      const those = `cylinder${labels.length === 1 ? "" : "s"} ${joined(labels)}`;
      return {
        found: `${both} do not stand alike on all cylinders: ${ratiosText(what, cylinders)}; ${those} ${labels.length === 1 ? "does" : "do"} not go with the others${interactionText(
          pair,
        )
          .map((text) => `; ${text}`)
          .join("")}`,
        expected: "about one ratio on every cylinder, as far as repeats tell",
        mend: `read ${those} again with both, one right after the other; a slip of the pen: ${amend}`,
      };
    }
  }
};

/** Above it a difference between cylinders may be chance. */
const byChance = 0.05;

/** That one gauge reads some cylinders otherwise than the other does, where the repeats show it. */
export const interactionText = ({
  gauge = "no name",
  to = "no name",
  study,
}: GaugePair): readonly string[] => {
  const { p } = study?.interaction ?? {};
  if (p === undefined || p >= byChance) return [];
  const chance = p < 0.001 ? "less than 1 in 1000" : `about 1 in ${String(Math.round(1 / p))}`;
  return [
    `${gauge} and ${to} differ more on some cylinders than on others, as their repeats tell (${chance} by chance): a hose, an adapter or a needle that does not start at zero does that`,
  ];
};

/** `1 +50.0 %, 2 0.0 %`, of leaks `1 x 0.84`. */
const ratiosText = (what: GaugePair["what"], cylinders: GaugePair["cylinders"]): string =>
  cylinders
    .map(({ label, ratio }) =>
      what === "leak-down" ? `${label} x ${fixed(ratio, 2)}` : `${label} ${signedPercent(ratio - 1, 1)} %`,
    )
    .join(", ");
