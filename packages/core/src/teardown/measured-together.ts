// Which figures one measurement carries: of a bore with the clearance of its piston, of a journal with that of its bearing.

import type { Engine } from "../record/index.ts";
import { pinOf } from "./consistency/journal-counts.ts";
import type { TeardownItem } from "./teardown.ts";

export type Together = readonly [TeardownItem, ...TeardownItem[]];

/** Figures that stand and fall with one measuring, by part. What was read by thread was measured on its own. */
export const measuredTogether = (items: readonly TeardownItem[], engine: Engine): readonly Together[] => {
  const parts = new Map<string, Together>();
  for (const item of items) {
    const key = measuredOf(item, engine);
    const own = parts.get(key);
    parts.set(key, own === undefined ? [item] : [...own, item]);
  }
  return [...parts.values()];
};

/** How often it was measured, each time anew: each reading of a place is one. */
export const timesMeasured = (items: Together): number => Math.max(...items.map(({ readings }) => readings));

const measuredOf = ({ part, label = "", quantity }: TeardownItem, engine: Engine): string => {
  const isWorkedOut = quantity === "clearance";
  if (part === "piston" && isWorkedOut) return `bore|${label}`;
  if (part === "main bearing" && isWorkedOut) return `main|${label}`;
  if (part === "rod bearing" && isWorkedOut) return `pin|${pinOf(engine, label) ?? label}`;
  return `${part}|${label}`;
};
