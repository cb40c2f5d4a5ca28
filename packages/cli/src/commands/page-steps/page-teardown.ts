// The teardown a page tells of: as it was found, and as it is now.

import { type EngineRecord, type PartState, judgeTeardown } from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import type { PageTeardown } from "../../render/page/page-input.ts";
import { recordedTeardown } from "../teardown-steps/which-teardown.ts";

/** States before any work was done on a part. */
const before: readonly PartState[] = ["as found", "cleaned"];

/** Absent where nothing was measured.  @throws Stop 2 for a number that is not recorded, 1 where none is and one was named */
export const pageTeardown = (args: Args, record: EngineRecord): PageTeardown | undefined => {
  const { engine, measurements } = record;
  const isNamed = args.text("teardown") !== undefined;
  if (measurements.length === 0 && !isNamed) return undefined;
  const number = recordedTeardown(args, measurements, engine.id);
  const now = judgeTeardown(record, number);
  if (now === undefined) return undefined;
  const old = measurements.filter(({ state }) => before.includes(state));
  const found = judgeTeardown({ engine, measurements: old }, number);
  const others = [...new Set(measurements.map(({ teardown }) => teardown))]
    .filter((one) => one !== number)
    .toSorted((a, b) => a - b);
  return {
    now,
    ...(found === undefined ? {} : { found }),
    others: others.map((teardown) => ({
      teardown,
      date: measurements
        .filter((one) => one.teardown === teardown)
        .map(({ date }) => date)
        .reduce((so, date) => (date < so ? date : so)),
    })),
  };
};
