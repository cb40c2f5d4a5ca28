// What is said of a cylinder against a minimum of pressure.

import type { Stay } from "./chances.ts";
import type { Crossing } from "./forecast.ts";

export interface AbsoluteCourse {
  /** ln of the minimum and of the last reading of the epoch, in the unit of the input. */
  readonly minimum: number;
  readonly last: number;
  /** Place of the test of that reading. */
  readonly test: number;
  /** From four tests at three places on; places on the axis. */
  readonly trend?: Crossing & {
    /** ln units a year, or a 1000 units of the meter. */
    readonly slope: number;
    readonly standardError: number;
    readonly df: number;
    /** One-sided, small when it loses. */
    readonly p: number;
  };
  /** Chance of still being above the minimum; absent where the trend is. */
  readonly stays?: readonly Stay[];
}
