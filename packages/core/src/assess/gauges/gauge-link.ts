// From two gauges measured side by side to the link that is kept of them.

import { type Gauge, gaugeStanding } from "../../record/index.ts";
import type { GaugePair } from "./compare-gauges.ts";

/** Two gauges tied together by one comparison, as gauges.csv keeps it. */
export interface NewLink {
  /** The gauge whose readings count as those of the other from now on. */
  readonly gauge: string;
  readonly to: string;
  /** reading of the gauge / reading of the other; of leak-down testers alpha / alpha. */
  readonly factor: number;
  /** Standard uncertainty of ln factor. */
  readonly uncertainty: number;
}

/** The link of a measured pair: the gauge that counts less in the test is linked to the other, or the other way round where
 *  that one counts as it already: links never lead in a circle.  @returns undefined where the pair was refused */
export const gaugeLink = (
  gauges: readonly Gauge[],
  { gauge, to, standing }: GaugePair,
): NewLink | undefined => {
  if (gauge === undefined || to === undefined || standing.kind === "refused") return undefined;
  const { factor, uncertainty } = standing;
  const leadsHere = gaugeStanding(gauges, to).links.some(({ link }) => link.to === gauge);
  return leadsHere
    ? { gauge: to, to: gauge, factor: 1 / factor, uncertainty }
    : { gauge, to, factor, uncertainty };
};
