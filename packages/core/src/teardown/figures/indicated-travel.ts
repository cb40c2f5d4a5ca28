// Where a dial shows twice what is meant.

import { type Length, length } from "../../quantity/index.ts";

/** Bend of a shaft from the total travel of the dial over one turn: half of it.
 *  @source TM 10-3930-653-14&P @checked data/reference/teardown-published.csv */
export const bendOfRunout = (travel: Length): Length => length(travel / 2);

/** Clearance of a valve guide from the travel of a rocked stem: half of it. Some makers print the travel itself as the
 *  limit (Honda): then it is held against that, undivided.
 *  @source a service section of Ford */
export const clearanceOfRocking = (travel: Length): Length => length(travel / 2);
