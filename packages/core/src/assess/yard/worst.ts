// The cylinders of an engine that stand out, and the one that is looked at first.

import { type Standing, worse } from "../../spread/index.ts";
import { median } from "../../statistics/index.ts";
import { belowOthers } from "../below-others.ts";
import type { LeakValue } from "../leak/assess-leak-down.ts";
import type { CylinderStanding, Standings } from "../standings.ts";
import type { LimitMissed } from "../assessment.ts";
import { isLow } from "../causes/assessed.ts";
import type { RepeatsWord } from "../values/repeats-apart.ts";

/** A cylinder that stands out, or the one that is looked at first. */
export interface YardWorst {
  readonly label: string;
  /** Absent in a test that is void. */
  readonly standing?: Standing;
  /** 1 - value / median of all, dry. */
  readonly belowMedian?: number;
  /** 1 - value / median of the other cylinders, dry: the figure of `show`. */
  readonly belowOthers?: number;
  /** Where the leak-down gave it its standing. */
  readonly leak?: YardLeak;
  readonly limitsMissed: readonly LimitMissed[];
  /** Its reading held nothing. */
  readonly held: "something" | "nothing";
  readonly flaggedBefore: boolean;
  /** Low beyond the chance of one reading. */
  readonly confirmed: boolean;
  /** Of the reading that gave it its standing, where it was taken more than once. */
  readonly repeats?: RepeatsWord;
}

/** The leak-down of a cylinder that it lets stand out, or of an engine that was tested no other way. */
export interface YardLeak {
  /** Part of the supply, 0 to 1. */
  readonly lost: number;
  /** 1 - part held / median of what the other cylinders held. */
  readonly belowOthers?: number;
  /** More is lost than the maker, or the master of that day, allows. */
  readonly overLimit: boolean;
}

const byStanding: readonly (Standing | undefined)[] = ["lagging", "suspect", "even", undefined];

/** The worst standing, and of those alike the one furthest below: dry, where the leak-down does not say more. Undefined where no
 *  cylinder was read. */
export const worstOf = (stand: Standings | undefined): YardWorst | undefined => {
  if (stand === undefined) return undefined;
  const all = stand.cylinders.map((one, i) => ({ one, i, leak: leakOf(stand, one, i) }));
  const [first] = all
    .filter(
      ({ one: { standing, belowMedian }, leak }) =>
        standing !== undefined || belowMedian !== undefined || leak !== undefined,
    )
    .toSorted(
      (a, b) =>
        byStanding.indexOf(a.one.standing) - byStanding.indexOf(b.one.standing) || below(b) - below(a),
    );
  return first === undefined ? undefined : told(stand, first);
};

/** All that lag or are suspect, in the engine's order. */
export const lowOf = (stand: Standings | undefined): readonly YardWorst[] =>
  stand === undefined
    ? []
    : stand.cylinders.flatMap((one, i) =>
        one.standing !== undefined && isLow({ standing: one.standing })
          ? [told(stand, { one, i, leak: leakOf(stand, one, i) })]
          : [],
      );

interface Read {
  readonly one: CylinderStanding;
  readonly i: number;
  readonly leak: LeakValue | undefined;
}

/** The leak-down that gave the cylinder its standing: it says worse than the dry reading, or there is no dry one. */
const leakOf = (
  { leak }: Standings,
  { dryStanding, standing, belowMedian }: CylinderStanding,
  i: number,
): LeakValue | undefined => {
  const own = leak.values[i];
  const isDry = standing === undefined ? belowMedian !== undefined : dryStanding !== undefined;
  const isWorse = worse([dryStanding, own?.standing]) !== dryStanding;
  return own !== undefined && (!isDry || isWorse) ? own : undefined;
};

const below = ({ one, leak }: Read): number => leak?.lost ?? one.belowMedian ?? 0;

const told = (stand: Standings, { one, i, leak }: Read): YardWorst => {
  const { label, standing, belowMedian, limitsMissed, verdict, flaggedBefore, confirmed } = one;
  const others = belowOthers(stand.pressures, i);
  const repeats = leak === undefined ? one.repeats : leak.repeats;
  return {
    label,
    ...(standing === undefined ? {} : { standing }),
    ...(belowMedian === undefined ? {} : { belowMedian }),
    ...(others === undefined ? {} : { belowOthers: others }),
    ...(leak === undefined ? {} : { leak: leakTold(stand, leak) }),
    limitsMissed,
    held: verdict?.kind === "no-compression" ? "nothing" : "something",
    flaggedBefore: leak?.flaggedBefore ?? flaggedBefore,
    confirmed: leak === undefined ? confirmed : isSure(leak),
    ...(repeats === undefined ? {} : { repeats }),
  };
};

const leakTold = ({ leak: { values } }: Standings, own: LeakValue): YardLeak => {
  const others = values.flatMap((one) => (one === undefined || one === own ? [] : [1 - one.lost]));
  const middle = others.length === 0 ? 0 : median(others);
  return {
    lost: own.lost,
    ...(middle > 0 ? { belowOthers: 1 - (1 - own.lost) / middle } : {}),
    overLimit: own.belowLimit,
  };
};

/** A limit is missed by one reading; all else that lags was shown twice, or does not seal at all. */
const isSure = ({ standing, flaggedBefore, belowLimit }: LeakValue): boolean =>
  standing === "lagging" && (flaggedBefore || !belowLimit);
