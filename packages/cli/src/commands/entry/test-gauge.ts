// Readings that are added to a test without a gauge: repeats of it, and oiled ones and first strokes, which say something only beside
// the dry ones. They are taken as read by the gauge that read those, and that is said.

import { type Gauge, type PressureRow, type Test, gaugeUnits } from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import { kindsGiven } from "./entry-options.ts";
import { unitApart } from "./entry-readings.ts";
import type { Target } from "./entry-target.ts";

interface WithGauge {
  readonly args: Args;
  readonly asides: readonly string[];
}

/** Kinds that are held against the dry readings of their test. */
const besideDry: readonly string[] = ["wet", "first-stroke"];

/** @param earlier - tests of the engine, by date  @param gauges - those of gauges.csv */
export const withTestGauge = (
  args: Args,
  target: Target,
  { earlier, gauges }: { readonly earlier: readonly Test[]; readonly gauges: readonly Gauge[] },
): WithGauge => {
  const left: WithGauge = { args, asides: [] };
  const test = testMeant(target, earlier);
  const kinds = kindsGiven(args);
  if (test === undefined || kinds.length === 0 || args.text("gauge") !== undefined) return left;
  const named = kinds.map((kind) => gaugeAmong(rowsBeside(test, kind)));
  const [name] = named;
  if (name === undefined || named.some((other) => other !== name)) return left;
  const rows = kinds.flatMap((kind) => rowsBeside(test, kind));
  const units = [gauges.find(({ id }) => id === name)?.unit, ...rows.map(({ unit }) => unit)];
  // a dial in another unit is another gauge
  if (typedUnits(args, kinds).some((typed) => units.every((unit) => unit?.toLowerCase() !== typed)))
    return left;
  const read = [...new Set(rows.map(({ what }) => what))].join(" and ");
  return {
    args: { ...args, text: (option) => (option === "gauge" ? name : args.text(option)) },
    asides: [`no gauge was named: ${name} is taken, which read the ${read} ones of ${test.id}`],
  };
};

/** The gauge of readings of this kind in the test that is added to; undefined where they are by none that is named, or by two. */
export const gaugeOfTest = (kind: string, target: Target, earlier: readonly Test[]): string | undefined => {
  const test = testMeant(target, earlier);
  return test === undefined ? undefined : gaugeAmong(rowsBeside(test, kind));
};

/** The test that is added to, where there is one. */
export const testMeant = (target: Target, earlier: readonly Test[]): Test | undefined => {
  if (target.kind === "new") return undefined;
  return target.kind === "latest" ? earlier.at(-1) : earlier.find(({ id }) => id === target.test);
};

/** The rows that such readings stand beside. */
const rowsBeside = ({ rows }: Test, kind: string): readonly PressureRow[] => {
  const own = rows.filter(({ what }) => what === kind);
  return own.length > 0 || !besideDry.includes(kind) ? own : rows.filter(({ what }) => what === "dry");
};

const gaugeAmong = (rows: readonly PressureRow[]): string | undefined => {
  const [name, ...others] = new Set(rows.map(({ gauge }) => gauge));
  return others.length > 0 ? undefined : name;
};

/** In small letters; a unit that is none is told of elsewhere. */
const typedUnits = (args: Args, kinds: readonly string[]): readonly string[] => {
  const inLines = kinds.flatMap((kind) => args.list(kind).map((line) => unitApart(line)?.inLine));
  const known = [...gaugeUnits, "%"].map((unit) => unit.toLowerCase());
  return [args.text("unit"), ...inLines].flatMap((unit) => {
    const small = unit?.toLowerCase();
    return small !== undefined && known.includes(small) ? [small] : [];
  });
};
