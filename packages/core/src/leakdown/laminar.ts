// The other law a leak may follow: through a long thin gap the flow goes with the difference of squared pressures.

import type { AbsolutePressure, GaugePressure } from "../quantity/index.ts";
import { balancedDrop } from "./reading.ts";

/** What a leak passed, and at which pressure. */
export interface LeakFlow {
  /** In the unit of the inflow below. */
  readonly flow: number;
  readonly cylinder: GaugePressure;
  readonly ambient: AbsolutePressure;
}

/** Where the same leak stands on another tester if it is viscous: flow = k·(p2² − pa²), k by what it passed.
 *  @param to - the other tester: its supply, its air, and what it passes by the drop [Pa]
 *  @returns the drop on it [Pa] @source viscous flow of a gas through a gap, any textbook */
export const laminarDrop = (
  { flow, cylinder, ambient }: LeakFlow,
  to: {
    readonly supply: GaugePressure;
    readonly ambient: AbsolutePressure;
    readonly inflow: (drop: number) => number;
  },
): number => {
  const perSquare = flow / squares(cylinder, ambient);
  const outflow = (pressure: number): number => perSquare * squares(pressure, to.ambient);
  return balancedDrop({ inflow: to.inflow, outflow }, to.supply);
};

/** p2² − pa² from the gauge pressure. */
const squares = (gauge: number, ambient: number): number => gauge * (gauge + 2 * ambient);
