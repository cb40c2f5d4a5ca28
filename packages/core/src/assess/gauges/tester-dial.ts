// The dials of a leak-down tester as far as gauges.csv describes them.

import { type Dial, classLimit } from "../../leakdown/index.ts";
import type { Gauge } from "../../record/index.ts";

/** What is not described is left out: dialUncertainty has a usual figure for it. */
export const testerDial = (tester: Gauge | undefined): Dial => {
  const { classPercent, fullScale, division, matched } = tester ?? {};
  return {
    ...(classPercent === undefined || fullScale === undefined
      ? {}
      : { limit: classLimit(classPercent, fullScale) }),
    ...(division === undefined ? {} : { division }),
    ...(matched === undefined ? {} : { matched }),
  };
};
