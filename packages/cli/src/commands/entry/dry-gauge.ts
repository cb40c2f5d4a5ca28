// Oiled readings and first strokes that are added to a test without a gauge: they say something only beside the dry ones, so they are
// taken as read by the same gauge, and that is said.

import { type Gauge, type Test, gaugeUnits } from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import { readingOptions } from "./entry-options.ts";
import type { Target } from "./entry-target.ts";

interface WithGauge {
  readonly args: Args;
  readonly asides: readonly string[];
}

/** Kinds that are held against the dry readings of their test. */
const besideDry: readonly string[] = ["wet", "first-stroke"];

/** @param earlier - tests of the engine, by date  @param gauges - those of gauges.csv */
export const withDryGauge = (
  args: Args,
  target: Target,
  { earlier, gauges }: { readonly earlier: readonly Test[]; readonly gauges: readonly Gauge[] },
): WithGauge => {
  const left: WithGauge = { args, asides: [] };
  const kinds = readingOptions.filter(({ name }) => args.list(name).length > 0).map(({ name }) => name);
  const isBeside = kinds.length > 0 && kinds.every((kind) => besideDry.includes(kind));
  if (target.kind === "new" || args.text("gauge") !== undefined || !isBeside) return left;
  const test = target.kind === "latest" ? earlier.at(-1) : earlier.find(({ id }) => id === target.test);
  const rows = test?.rows.filter(({ what }) => what === "dry") ?? [];
  const [name, ...others] = [...new Set(rows.map(({ gauge }) => gauge))];
  if (test === undefined || name === undefined || others.length > 0) return left;
  const own = gauges.find(({ id }) => id === name)?.unit;
  const unit = gaugeUnits.find((one) => one.toLowerCase() === args.text("unit")?.toLowerCase());
  // a dial in another unit is another gauge
  if (own !== undefined && unit !== undefined && unit !== own) return left;
  return {
    args: { ...args, text: (option) => (option === "gauge" ? name : args.text(option)) },
    asides: [`no gauge was named: ${name} is taken, which read the dry ones of ${test.id}`],
  };
};
