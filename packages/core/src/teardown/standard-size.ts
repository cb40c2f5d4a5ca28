// What a round part measures when new, by the maker's limits: undersizes and oversizes are counted from it.

import type { Engine, LimitPair, MeasuredPart } from "../record/index.ts";

/** Undefined where engine.json has no new limit of its diameter. */
export const standardSize = (
  part: MeasuredPart,
  { clearances }: Pick<Engine, "clearances">,
): LimitPair | undefined =>
  clearances.find((limit) => limit.part === part && limit.quantity === "diameter" && limit.new !== undefined)
    ?.new;
