// An amount of money as a person types it.

import { readNumber } from "../quantity/index.ts";

/** A number of 0 or more that can be read in one way only: 1,200 and 1.200 cannot. */
export const amountOf = (typed: string): number | undefined => {
  const read = readNumber(typed);
  return read.ok && read.thousands === undefined && read.value >= 0 ? read.value : undefined;
};
