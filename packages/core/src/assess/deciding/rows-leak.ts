// Rows B of the ladder: what the leak-down says of each cylinder, and of all.

import type { Engine } from "../../record/index.ts";
import type { CylinderAssessment, TestAssessment } from "../assessment.ts";
import type { LeakValue } from "../leak/assess-leak-down.ts";
import type { LeakPart } from "../leak/leak-parts.ts";
import { type Deciding, renewedAfter, restsOnOf } from "./deciding.ts";
import { type Row, percent } from "./row.ts";

type Found = Omit<Row, "from" | "restsOn">;

/** Parts lost: healthy up to the first; more than the second is too much where the maker states no limit.
 *  @source handbook/trade.md B5 (10: several trade texts; 25: AC 43.13-1B, aircraft) */
const bands = { healthy: 0.1, usualLimit: 0.25 } as const;
/** Of the leak's area that oil has to take. @source handbook/decision.md 2, B5 (judgement) */
const third = 1 / 3;

/** A cylinder that leaks too much, and nobody heard where. */
export interface UnplacedLeak {
  readonly label: string;
  /** Part of the supply, 0 to 1. */
  readonly lost: number;
}

export interface LeaksFound {
  readonly rows: readonly Row[];
  /** Those that make no row. */
  readonly unplaced: readonly UnplacedLeak[];
}

/** Of all only where none was renewed since: sound ones that are left say nothing of that one.  @source handbook/decision.md 2 */
export const leaksFound = (deciding: Deciding): LeaksFound => {
  const { leakDown: test } = deciding;
  const read = readIn(deciding);
  if (test === undefined || read.length === 0) return { rows: [], unplaced: [] };
  const restsOn = restsOnOf(deciding, test);
  const isOfAll = read.length === test.cylinders.filter(({ leakDown }) => leakDown !== undefined).length;
  const each = read.map((one) => ({ one, size: sizeOf(one, test), rows: rowsOf(test, one) }));
  return {
    rows: [...(isOfAll ? allHealthy(read) : []), ...each.flatMap(({ rows }) => rows)].map((row): Row => ({
      ...row,
      from: `test ${test.test.id}`,
      restsOn,
    })),
    unplaced: each.flatMap(({ one: { label, leakDown }, size, rows }) =>
      leakDown === undefined || size !== "above" || rows.length > 0 ? [] : [{ label, lost: leakDown.lost }],
    ),
  };
};

/** Cylinders of the leak-down that speaks, but for those renewed since. */
const readIn = (deciding: Deciding): readonly CylinderAssessment[] => {
  const { leakDown: test, today } = deciding;
  if (test === undefined || test.trust.voids !== undefined) return [];
  const renewed = renewedAfter(deciding, { date: test.test.date, today });
  return test.cylinders.filter(({ leakDown, label }) => leakDown !== undefined && !renewed.has(label));
};

/** A leak that was placed, between what is healthy and what is too much. */
export const leaksBetween = (deciding: Deciding): readonly (UnplacedLeak & { readonly place: string })[] => {
  const { leakDown: test } = deciding;
  if (test === undefined) return [];
  return readIn(deciding).flatMap((one) => {
    const heard = one.heard?.find(({ place, faint }) => !faint && placed.includes(place));
    const { lost = 0 } = one.leakDown ?? {};
    return heard === undefined || lost <= bands.healthy || sizeOf(one, test) !== "between"
      ? []
      : [{ label: one.label, lost, place: heard.place }];
  });
};

const placed: readonly string[] = ["intake", "exhaust", "crankcase", "coolant"];

type Size = "healthy" | "between" | "above";

const sizeOf = (cylinder: CylinderAssessment, test: TestAssessment): Size => {
  const { leakDown } = cylinder;
  if (leakDown === undefined) return "between";
  if (leaksTooMuch(leakDown, test.record.engine)) return "above";
  return isHealthy(cylinder) ? "healthy" : "between";
};

/** More than the maker allows, or the usual limit where none is stated; not by less than its own doubt. */
export const leaksTooMuch = (
  { belowLimit, lost, standing, atLimit }: Pick<LeakValue, "belowLimit" | "lost" | "standing" | "atLimit">,
  { leakDownLimits }: Pick<Engine, "leakDownLimits">,
): boolean =>
  atLimit !== true &&
  (belowLimit || lost > (leakDownLimits.lost ?? bands.usualLimit) || standing === "lagging");

const isHealthy = ({ leakDown, heard = [] }: CylinderAssessment): boolean =>
  leakDown?.standing === "even" &&
  leakDown.lost <= bands.healthy &&
  heard.every(({ place, faint }) => place === "none" || (place === "crankcase" && faint));

const allHealthy = (read: readonly CylinderAssessment[]): readonly Found[] => {
  if (read.length === 0 || !read.every(isHealthy)) return [];
  const most = Math.max(...read.map(({ leakDown }) => leakDown?.lost ?? 0));
  return [{ row: "B1", text: `no cylinder lost more than ${percent(most)}` }];
};

const rowsOf = (test: TestAssessment, cylinder: CylinderAssessment): readonly Found[] => {
  const { label, heard = [], leakDown } = cylinder;
  const size = sizeOf(cylinder, test);
  const lost = `cylinder ${label} lost ${percent(leakDown?.lost ?? 0)}`;
  const at = (place: string): boolean => heard.some((one) => one.place === place && !one.faint);
  if (size === "between" && heard.some(({ place, faint }) => place === "crankcase" && faint))
    return [{ row: "B8", cylinder: label, text: `${lost}, a faint hiss at the crankcase` }];
  if (size !== "above") return [];
  const valve = (["exhaust", "intake"] as const).find(at);
  const gasket = at("coolant") ? "bubbles in the coolant" : bothWays(test, cylinder);
  const rows: readonly (readonly [Row["row"], string | undefined])[] = [
    ["B2", valve === undefined ? undefined : `air at the ${valve}`],
    ["B3", gasket],
    ...(at("crankcase") ? crankcaseRows(test, label) : []),
  ];
  return rows.flatMap(([row, where]) =>
    where === undefined ? [] : [{ row, cylinder: label, text: `${lost}, ${where}` }],
  );
};

/** Air heard at a neighbour counts where the neighbour, indexed by itself, sends it back: through a shared manifold one open
 *  valve does it too.  @source handbook/trade.md C2, the trap */
const bothWays = (
  { cylinders }: TestAssessment,
  { label, heard = [] }: CylinderAssessment,
): string | undefined => {
  const to = heard.flatMap(({ place, neighbour }) =>
    place === "neighbour" && neighbour !== undefined ? [neighbour] : [],
  );
  const back = cylinders.find(
    (other) => to.includes(other.label) && other.heard?.some(({ neighbour }) => neighbour === label),
  );
  return back === undefined ? undefined : `air at cylinder ${back.label}, and back`;
};

const crankcaseRows = (test: TestAssessment, label: string): readonly (readonly [Row["row"], string])[] => {
  const part = (what: LeakPart["what"]): LeakPart | undefined =>
    test.leak?.parts.find((one) => one.label === label && one.what === what);
  const [oiled, lower] = [part("oiled"), part("lower")];
  const took = oiled?.shown === "yes" ? (oiled.share ?? 0) : 0;
  const isSame = oiled?.shown === "no" && oiled.isLessThanHalf;
  return [
    ["B4", "air at the crankcase"],
    ...(took >= third
      ? [["B5", `air at the crankcase, oil took ${percent(took)} of the leak`] as const]
      : []),
    ...(isSame ? [["B6", "air at the crankcase, the same with oil"] as const] : []),
    ...(lower?.shown === "yes" && (lower.share ?? 0) > 0
      ? [["B7", "air at the crankcase, less with the piston lower"] as const]
      : []),
  ];
};
