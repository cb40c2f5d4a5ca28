// The sizes to bore and to grind to, where a bore or a journal is past its limit and sizes are offered.

import { type Length, length } from "../../quantity/index.ts";
import type { Engine } from "../../record/index.ts";
import { bendOfRunout, chooseOversize, chooseUndersize, usualHoneStock } from "../figures/index.ts";
import type { BarOffset, Oversize, Undersize } from "../asked-for.ts";
import { standardSize } from "../standard-size.ts";
import type { TeardownItem } from "../teardown.ts";
import { byLabel } from "./made.ts";
import { boredBefore, originalBore, standardBore } from "./original-bore.ts";
import type { Reading } from "./reading.ts";
import { isUnworn } from "./round-parts.ts";

interface Asked {
  /** Of the parts as they are now. */
  readonly readings: readonly Reading[];
  readonly engine: Engine;
}

/** Undefined where no size is offered, or nothing tells what the bores were. */
export const oversizeFor = ({ readings, engine }: Asked): Oversize | undefined => {
  const offered = engine.offered.bore;
  const original = originalBore(readings, engine);
  if (offered === undefined || original === undefined) return undefined;
  const bores = [...byLabel(readings, "bore", "diameter")].flatMap(([label, own]) => {
    const worn = own.filter((reading) => !isUnworn(reading)).map(({ item }) => item);
    const [largest] = worn.toSorted((a, b) => b.value - a.value);
    return largest === undefined ? [] : [{ label, largest }];
  });
  if (bores.length === 0) return undefined;
  const already = boredBefore(original, engine);
  const standard = standardBore(engine);
  const honeStock = usualHoneStock(offered.unit);
  const answerFor = (offset: BarOffset) =>
    chooseOversize({
      cylinders: bores.map(({ label, largest }) => wornBore(label, largest, readings)),
      original: original.value,
      ...(standard === undefined ? {} : { nominal: standard.value }),
      offered: offered.sizes,
      offset,
      honeStock,
    });
  const [worst, none] = [answerFor("worst"), answerFor("none")];
  return {
    original: original.value,
    originalFrom: original.from,
    ...(already === undefined ? {} : { alreadyBored: already }),
    unit: offered.unit,
    honeStock,
    answers: worst.size === none.size ? [worst] : [worst, none],
  };
};

const wornBore = (label: string, largest: TeardownItem, readings: readonly Reading[]) => {
  const scores = (byLabel(readings, "bore", "score depth").get(label) ?? []).map(({ item }) => item.value);
  return {
    label,
    largest: largest.value,
    uncertainty: largest.uncertainty,
    ...(scores.length === 0 ? {} : { score: length(Math.max(...scores)) }),
  };
};

/** Undefined where no size is offered, or the standard range is not known. */
export const undersizeFor = (part: "main" | "pin", { readings, engine }: Asked): Undersize | undefined => {
  const offered = engine.offered[part];
  const standard = standardSize(part, engine);
  if (offered === undefined || standard?.low === undefined || standard.high === undefined) return undefined;
  const journals = [...byLabel(readings, part, "diameter")].map(([label, own]) => ({
    label,
    smallest: length(Math.min(...own.map(({ item }) => item.value))),
  }));
  const bend = part === "main" ? bendOf(readings) : undefined;
  return chooseUndersize({
    part,
    journals,
    low: standard.low,
    high: standard.high,
    offered: offered.sizes,
    unit: offered.unit,
    ...(bend === undefined ? {} : { bend }),
  });
};

/** Mains are ground true to each other: what the crank is bent comes off as well. */
const bendOf = (readings: readonly Reading[]): Length | undefined => {
  const runouts = [...byLabel(readings, "crank", "runout").values()].flat().map(({ item }) => item.value);
  return runouts.length === 0 ? undefined : bendOfRunout(length(Math.max(...runouts)));
};
