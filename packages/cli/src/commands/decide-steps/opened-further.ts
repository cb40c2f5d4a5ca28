// The engine as it was measured lately may be open further than was said.

import { type EngineRecord, type Opening, dayNumber, judgeTeardown } from "@sealtrend/core/parts";
import { openingOf } from "../../render/teardown/teardown-next.ts";

/** Days after which a teardown is taken for closed again, as `teardown` begins the next one then (judgement). */
const lately = 90;

/** A line to say beside the answer; empty where what was measured fits what was said. */
export const openedFurther = (
  { engine, measurements }: Pick<EngineRecord, "engine" | "measurements">,
  opened: Opening | undefined,
  today: string,
): string => {
  if (opened === undefined || opened === "pistons-out" || opened === "crank-out") return "";
  const now = judgeTeardown({ engine, measurements: measurements.filter(({ date }) => date <= today) });
  if (now === undefined || dayNumber(today) - dayNumber(now.to) > lately) return "";
  const measured = openingOf(now);
  return measured === "pistons-out" || measured === "crank-out"
    ? `teardown ${String(now.teardown)} measured parts that only come out with the pistons: if they are out still, --opened ${measured}\n`
    : "";
};
