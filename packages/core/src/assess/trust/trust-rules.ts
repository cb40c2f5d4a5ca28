// What makes a test void or doubtful, a rule at a time (the words of trust). A condition that was not recorded is no
// reason here: it is listed as missing instead.

import { usualDivision } from "../../leakdown/index.ts";
import type { Speed } from "../../quantity/index.ts";
import type { Test } from "../../record/index.ts";
import { coldAgainst } from "./cold.ts";
import { scatterBeside } from "../figures.ts";
import { areTakesApart, takesLost } from "../leak/leak-takes.ts";
import { belowEngine, beyondEngine, slipped } from "./trust-implausible.ts";
import { tooMuchOil } from "../oil/oil-caution.ts";
import { leastCranked, speedsOf } from "../speed/speeds.ts";
import { trustReason } from "./trust-reason.ts";
import type { TrustRule, TrustView } from "./trust-view.ts";
import { trustWords } from "./trust-words.ts";
import { isApart } from "../values/repeats-apart.ts";
import { supplyOf, valuesOf } from "../values/values.ts";

const throttle: TrustRule = ({ record, test }) =>
  record.engine.ignition === "spark" && test.conditions.throttle === "closed"
    ? trustReason("void", "throttle-closed", trustWords["throttle-closed"]())
    : undefined;

/** Figures taken without the release: another test of this engine, or the maker's minimum. */
const release: TrustRule = ({ record, test, others }) => {
  if (test.conditions.release !== "active") return undefined;
  const against =
    others().some(({ conditions }) => conditions.release === "defeated") ||
    record.engine.compressionLimits.minimum !== undefined;
  return against ? trustReason("void", "release-active", trustWords["release-active"]()) : undefined;
};

const wrongStroke: TrustRule = ({ record, test }) => {
  if (test.heard === undefined) return undefined;
  const at = record.engine.cylinders.filter((_, i) => {
    const places = new Set(test.heard?.[i]?.map(({ place }) => place));
    return places.has("intake") && places.has("exhaust");
  });
  return at.length === 0
    ? undefined
    : trustReason("void", "wrong-stroke", trustWords["wrong-stroke"]({ cylinders: at }));
};

/** Labels of the cylinders whose dry or leak-down reading is of this sort, and how many cells were read in all. */
const cellsWith = (
  { record, test, dry }: TrustView,
  sort: "pegged" | "doubtful",
): { at: string[]; all: boolean } => {
  const kinds = [dry, valuesOf(test, "leak-down")].map((values) => values?.cells ?? []);
  // nearly every test: seen without a list of cylinders
  if (!kinds.some((cells) => cells.some((cell) => cell?.[sort] === true))) return { at: [], all: false };
  const at = record.engine.cylinders.filter((_, i) => kinds.some((cells) => cells[i]?.[sort] === true));
  const all = kinds.every((cells) => cells.every((cell) => cell === undefined || cell[sort]));
  return { at, all };
};

const pegged: TrustRule = (view) => {
  const { at, all } = cellsWith(view, "pegged");
  if (at.length === 0) return undefined;
  return all
    ? trustReason(
        "void",
        "all-pegged",
        trustWords["all-pegged"]({ cylinders: at, of: view.record.engine.cylinders.length }),
      )
    : trustReason("doubtful", "pegged", trustWords.pegged({ cylinders: at }));
};

const doubtfulCell: TrustRule = (view) => {
  const { at } = cellsWith(view, "doubtful");
  return at.length === 0
    ? undefined
    : trustReason("doubtful", "doubtful-cell", trustWords["doubtful-cell"]({ cylinders: at }));
};

/** The least cranking speed at which any maker read for the handbook lets a cylinder be tested [rpm]; most ask for 200 to 300.
 *  @source gm-duramax (handbook/trade.md A1) */
const leastOfMakers = 140;

/** All of them, or those that were cranked so slowly themselves. Held against this engine's speed, and where its maker states
 *  none against the least that any maker allows. */
const slow: TrustRule = ({ record, test, dry, figures }) => {
  const speeds = dry === undefined ? [] : speedsOf(test, dry);
  const speedRead = (i: number): Speed | undefined => (dry?.cells[i] === undefined ? undefined : speeds[i]);
  let slowest = Infinity;
  for (let i = 0; i < record.engine.cylinders.length; i += 1)
    slowest = Math.min(slowest, speedRead(i) ?? Infinity);
  const ofEngine = 0.8 * (figures.referenceSpeed ?? 0);
  const isBelowAll = record.engine.compressionLimits.speed === undefined && ofEngine < leastOfMakers;
  const least = isBelowAll ? leastOfMakers : ofEngine;
  if (slowest < leastCranked)
    return trustReason("void", "too-slow", trustWords["too-slow"]({ rpm: slowest }));
  if (slowest >= least) return undefined;
  const read = record.engine.cylinders.flatMap((label, i) => {
    const speed = speedRead(i);
    return speed === undefined ? [] : [{ label, speed }];
  });
  const low = read.filter(({ speed }) => speed < least);
  const [from, to] = [slowest.toFixed(0), Math.max(...low.map(({ speed }) => speed)).toFixed(0)];
  return trustReason(
    "doubtful",
    "slow",
    trustWords.slow({
      rpm: from === to ? from : `${from} to ${to}`,
      ...(isBelowAll
        ? { reference: leastOfMakers, heldAgainst: "least-of-makers" }
        : { reference: figures.referenceSpeed ?? 0, heldAgainst: "this-engine" }),
      cylinders: low.length === read.length ? [] : low.map(({ label }) => label),
    }),
  );
};

const cold: TrustRule = ({ record, test }) => {
  const against = coldAgainst(record, test);
  return against === undefined ? undefined : trustReason("doubtful", "cold", trustWords.cold({ against }));
};

const strokes: TrustRule = ({ test }) => {
  const counted = (test.perCylinder.strokes ?? []).filter((count) => count !== undefined);
  const [least, most] = [Math.min(...counted), Math.max(...counted)];
  return counted.length > 1 && least !== most
    ? trustReason("doubtful", "strokes-differ", trustWords["strokes-differ"]({ least, most }))
    : undefined;
};

/** More than a division of the dial above the supply; no leak is less than none. @source handbook/statistics.md L.10 */
const dialsDisagree: TrustRule = ({ record, test }) => {
  const values = valuesOf(test, "leak-down");
  if (values?.holds !== "pressure") return undefined;
  const division = record.gauges.find(({ id }) => id === values.gauge)?.division ?? usualDivision;
  const at = record.engine.cylinders.filter((_, i) => {
    const [value, supply] = [values.cells[i]?.value, supplyOf(test, i, values.gauge)];
    return value !== undefined && supply !== undefined && value - supply > division * (1 + 1e-9);
  });
  return at.length === 0
    ? undefined
    : trustReason("doubtful", "dials-disagree", trustWords["dials-disagree"]({ cylinders: at }));
};

export const isSellers = (test: Test): boolean => test.by?.trim().toLowerCase() === "seller";

const seller: TrustRule = ({ test }) =>
  isSellers(test) ? trustReason("doubtful", "seller", trustWords.seller()) : undefined;

const setAside: TrustRule = ({ test }) =>
  test.setAside === undefined
    ? undefined
    : trustReason("doubtful", "set-aside", trustWords["set-aside"]({ reason: test.setAside }));

const repeatsApart: TrustRule = ({ record, test, dry, figures }) => {
  const repeated = (dry?.cells ?? []).some((cell) => cell !== undefined && cell.readings.length > 1);
  if (!repeated) return undefined;
  const s = scatterBeside(test, figures);
  const apart = (dry?.cells ?? []).flatMap((cell, i) => {
    if (cell === undefined || !isApart(cell.readings, s)) return [];
    const share = 1 - Math.min(...cell.readings) / Math.max(...cell.readings);
    return [{ label: record.engine.cylinders[i] ?? "", share }];
  });
  return apart.length === 0
    ? undefined
    : trustReason("doubtful", "repeats-apart", trustWords["repeats-apart"]({ apart }));
};

const leakRepeatsApart: TrustRule = ({ record, test }) => {
  const values = valuesOf(test, "leak-down");
  if (values === undefined) return undefined;
  const apart = record.engine.cylinders.flatMap((label, cylinder) => {
    const takes = takesLost(test, { values, cylinder });
    return areTakesApart(takes) ? [{ label, takes }] : [];
  });
  return apart.length === 0
    ? undefined
    : trustReason("doubtful", "leak-repeats-apart", trustWords["leak-repeats-apart"]({ apart }));
};

/** Beyond the scatter of two readings: strokes add to what the gauge holds, they take nothing away. */
const firstAboveLast: TrustRule = ({ record, test, dry, figures }) => {
  const first = valuesOf(test, "first-stroke");
  if (dry === undefined || first === undefined || first.gauge !== dry.gauge) return undefined;
  const s = scatterBeside(test, figures);
  const at = record.engine.cylinders.filter((_, i) => {
    const [own, last] = [first.cells[i], dry.cells[i]];
    return own !== undefined && last !== undefined && !last.pegged && own.value > last.value
      ? isApart([own.value, last.value], s)
      : false;
  });
  return at.length === 0
    ? undefined
    : trustReason("doubtful", "first-above-last", trustWords["first-above-last"]({ cylinders: at }));
};

/** Rules that can make a test void. */
export const voidRules: readonly TrustRule[] = [throttle, release, wrongStroke, slow, pegged];

/** In the order they are printed. */
export const trustRules: readonly TrustRule[] = [
  ...voidRules,
  setAside,
  slipped,
  beyondEngine,
  belowEngine,
  doubtfulCell,
  dialsDisagree,
  cold,
  strokes,
  seller,
  repeatsApart,
  leakRepeatsApart,
  firstAboveLast,
  tooMuchOil,
];
