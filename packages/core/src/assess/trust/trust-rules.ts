// What makes a test void or doubtful, a rule at a time (the words of trust). A condition that was not recorded is no
// reason here: it is listed as missing instead.

import { usualDivision } from "../../leakdown/index.ts";
import type { Test } from "../../record/index.ts";
import { rangeUpperTail } from "../../statistics/index.ts";
import { coldAgainst } from "./cold.ts";
import { scatterBeside } from "../figures.ts";
import { beyondEngine, slipped } from "./trust-implausible.ts";
import { tooMuchOil } from "../oil/oil-caution.ts";
import { trustReason } from "./trust-reason.ts";
import type { TrustRule, TrustView } from "./trust-view.ts";
import { trustWords } from "./trust-words.ts";
import { supplyOf, valuesOf } from "../values/values.ts";

const throttle: TrustRule = ({ record, test }) =>
  record.engine.ignition === "spark" && test.conditions.throttle === "closed"
    ? trustReason("void", "throttle-closed", trustWords["throttle-closed"]())
    : undefined;

/** Figures taken without the release: another test of this engine, or the maker's minimum. */
const release: TrustRule = ({ record, test, others }) => {
  if (test.conditions.release !== "active") return undefined;
  const against =
    others.some(({ conditions }) => conditions.release === "defeated") ||
    record.engine.compressionLimits.minimum !== undefined;
  return against ? trustReason("void", "release-active", trustWords["release-active"]()) : undefined;
};

const wrongStroke: TrustRule = ({ record, test }) => {
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

const slow: TrustRule = ({ test, dry, figures }) => {
  const speeds = [test.conditions.crankSpeed, ...(test.perCylinder.speed ?? [])].filter(
    (speed) => speed !== undefined,
  );
  if (dry === undefined || speeds.length === 0) return undefined;
  const slowest = Math.min(...speeds);
  if (slowest < 100) return trustReason("void", "too-slow", trustWords["too-slow"]({ rpm: slowest }));
  const reference = figures.referenceSpeed;
  return reference !== undefined && slowest < 0.8 * reference
    ? trustReason("doubtful", "slow", trustWords.slow({ rpm: slowest, reference }))
    : undefined;
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

/** Repeats of one cylinder further apart than chance brings once in 20 times: the range of m readings against the
 *  scatter of one (for two readings this is the limit 1.96 sqrt(2) s). @source handbook/statistics.md F */
const repeatsApart: TrustRule = ({ record, test, dry, figures }) => {
  const repeated = (dry?.cells ?? []).some((cell) => cell !== undefined && cell.readings.length > 1);
  if (!repeated) return undefined;
  const s = scatterBeside(test, figures);
  const apart = (dry?.cells ?? []).flatMap((cell, i) => {
    if (cell === undefined || cell.readings.length < 2) return [];
    const [low, high] = [Math.min(...cell.readings), Math.max(...cell.readings)];
    if (high === low) return [];
    const isFar = low <= 0 || rangeUpperTail(Math.log(high / low) / s, cell.readings.length) < 0.05;
    return isFar ? [{ label: record.engine.cylinders[i] ?? "", share: 1 - low / high }] : [];
  });
  return apart.length === 0
    ? undefined
    : trustReason("doubtful", "repeats-apart", trustWords["repeats-apart"]({ apart }));
};

/** Rules that can make a test void. */
export const voidRules: readonly TrustRule[] = [throttle, release, wrongStroke, slow, pegged];

/** In the order they are printed. */
export const trustRules: readonly TrustRule[] = [
  ...voidRules,
  setAside,
  slipped,
  beyondEngine,
  doubtfulCell,
  dialsDisagree,
  cold,
  strokes,
  seller,
  repeatsApart,
  tooMuchOil,
];
