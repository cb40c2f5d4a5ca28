// The faults of many engines: those of the first are kept, the rest only counted.

import type { Problem } from "@sealtrend/core/parts";
import type { Fault } from "../command.ts";
import type { YardAsked } from "../commands/yard-steps/yard-options.ts";

export interface FaultsTold {
  /** Of the first engines that have some, and of none. */
  readonly problems: readonly (Problem | Fault)[];
  /** How many engines with a fault are not among them. */
  readonly untold: number;
  /** All faults that are not among them, by their codes. */
  readonly rest: ReadonlyMap<string, number>;
}

export interface FaultsOfMany {
  /** @param found - of one engine, of one logbook, or of none; cautions are no faults */
  add(found: readonly (Problem | Fault)[]): void;
  told(): FaultsTold;
}

/** More are only counted: a file of another kind would fill the screen for minutes. Beside a table that is to fit on a screen
 *  a few show where to begin. */
const most = { all: { engines: 20, each: 5 }, "one-screen": { engines: 2, each: 1 } } as const;

export const faultsOfMany = (length: YardAsked["length"]): FaultsOfMany => {
  const { engines, each } = most[length];
  const problems: (Problem | Fault)[] = [];
  const rest = new Map<string, number>();
  let [faulty, untold] = [0, 0];
  return {
    add: (found) => {
      const errors = found.filter(({ severity }) => severity === "error");
      if (errors.length === 0) return;
      faulty += 1;
      const shown = faulty <= engines ? each : 0;
      problems.push(...errors.slice(0, shown));
      if (shown === 0) untold += 1;
      for (const { code } of errors.slice(shown)) rest.set(code, (rest.get(code) ?? 0) + 1);
    },
    told: () => ({ problems, untold, rest }),
  };
};
