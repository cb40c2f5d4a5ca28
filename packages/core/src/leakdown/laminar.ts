// The other law a leak may follow: through a long thin gap the flow goes with the difference of squared pressures.

import type { LeakReading } from "./alpha.ts";
import type { FlowModel } from "./flow-model.ts";
import { type Tester, balancedDrop, inflowOf } from "./reading.ts";

/** Where the same leak stands on another tester if it is viscous: flow = k·(p2² − pa²).
 *  @param from - the tester that gave the reading @param throats - bore areas of the two, in one unit
 *  @returns the drop on the other tester [Pa] @source viscous flow of a gas through a gap, any textbook */
export const laminarDrop = (
  { reading, from, to }: { readonly reading: LeakReading; readonly from: Tester; readonly to: Tester },
  throats: { readonly from: number; readonly to: number },
  model: FlowModel,
): number => {
  const { supply, cylinder, ambient } = reading;
  const perSquare = inflowOf(from, throats.from, model)(supply - cylinder) / squares(cylinder, ambient);
  return balancedDrop(
    {
      inflow: inflowOf(to, throats.to, model),
      outflow: (pressure) => perSquare * squares(pressure, to.ambient),
    },
    to.supply,
  );
};

/** p2² − pa² from the gauge pressure. */
const squares = (gauge: number, ambient: number): number => gauge * (gauge + 2 * ambient);
