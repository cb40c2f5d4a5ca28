// In which unit a row of readings is, and whether the gauge that was named can have made it. Nothing is guessed.

import { type Gauge, type Test, type UnitName, gaugeUnits } from "@sealtrend/core/parts";
import type { Args, Fault } from "../../command.ts";
import { usageFault } from "../usage.ts";

export const isLeak = (what: string): boolean => what.startsWith("leak-down");

/** A gauge that is not in gauges.csv may be either. */
export const fitsGauge = (what: string, gauge: Gauge | undefined): boolean =>
  gauge === undefined || (gauge.kind === "leak-down") === isLeak(what);

/** Gauges that can have made such a reading, and whose unit is known. @param test - that is added to: those it used, where it did */
export const namesFor = (what: string, gauges: readonly Gauge[], test?: Test): readonly string[] => {
  const names = gauges
    .filter((gauge) => fitsGauge(what, gauge) && gauge.unit !== undefined)
    .map(({ id }) => id);
  const used = names.filter((name) => test?.rows.some(({ gauge }) => gauge === name));
  return used.length === 0 ? names : used;
};

/** A fault where the gauge can have made none of the rows. @param kinds - the kinds of reading given */
export const gaugeFault = (gauge: Gauge | undefined, kinds: readonly string[]): Fault | undefined => {
  if (gauge === undefined || kinds.length === 0 || kinds.some((what) => fitsGauge(what, gauge)))
    return undefined;
  const [is, wanted] =
    gauge.kind === "leak-down"
      ? ["a leak-down tester", "a compression gauge"]
      : ["a compression gauge", "a leak-down tester"];
  const found = `--gauge ${gauge.id} is ${is}, but the readings are ${kinds.join(", ")}`;
  return usageFault("gauge-kind", found, wanted, "name the gauge that was used, or leave --gauge out");
};

/** The unit that was typed, else that of the gauge; for a leak-down also that of its supply.
 *  @param inLine - the unit after the last reading of a row */
export const unitFor = (
  what: string,
  args: Args,
  { gauge, inLine }: { readonly gauge: Gauge | undefined; readonly inLine?: string | undefined },
): UnitName | "%" | undefined => {
  const typed = inLine ?? args.text("unit");
  if (typed !== undefined) return typed === "%" ? "%" : unitNamed(typed);
  const own = fitsGauge(what, gauge) ? gauge : undefined;
  if (own?.dial !== undefined && own.dial !== "pressure") return "%";
  if (own?.unit !== undefined || !isLeak(what)) return own?.unit;
  return unitNamed(/^[\d.,]+\s*(\S+)$/.exec(args.text("regulated")?.trim() ?? "")?.[1]);
};

const unitNamed = (text: string | undefined): UnitName | undefined =>
  gaugeUnits.find((name) => name.toLowerCase() === text?.toLowerCase());
