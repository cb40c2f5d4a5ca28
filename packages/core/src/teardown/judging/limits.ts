// Every figure against each limit that is given for it, new and wear apart.

import { type Engine, type LimitPair, isLimitFor } from "../../record/index.ts";
import { type FigureOf, bothSides, limitVerdict } from "../conformity/index.ts";
import type { LimitVerdict, TeardownItem } from "../teardown.ts";
import type { Made } from "./made.ts";

/** Differences that may go either way: a limit T holds from −T to T. */
const signed: readonly string[] = ["taper", "out-of-round"];

export const judged = (made: Made, { clearances }: Pick<Engine, "clearances">): TeardownItem => {
  const { item } = made;
  if (!isHeldAgainstLimits(item)) return item;
  const of: FigureOf = {
    part: item.part,
    quantity: item.quantity,
    kind: made.kind,
    unit: item.unit,
    ...(made.size === undefined ? {} : { size: made.size }),
    ...(made.instrument === undefined ? {} : { instrument: made.instrument }),
  };
  const verdicts = clearances
    .filter((limit) => isLimitFor(limit, item))
    .flatMap((limit) =>
      (["new", "wear"] as const).flatMap((kind): readonly LimitVerdict[] => {
        const limits = sided(limit[kind], item.quantity);
        const { source } = limit;
        return limits === undefined
          ? []
          : [limitVerdict(item, { kind, limits, ...(source === undefined ? {} : { source }) }, of)];
      }),
    );
  return { ...item, verdicts };
};

/** A gap under the straightedge is one of many: the face is judged by the deepest. What never wore has no wear. */
const isHeldAgainstLimits = ({ part, quantity, at }: TeardownItem): boolean =>
  !((part === "head" || part === "deck") && quantity === "gap") && at?.startsWith("unworn") !== true;

const sided = (limits: LimitPair | undefined, quantity: string): LimitPair | undefined => {
  if (limits === undefined || (limits.low === undefined && limits.high === undefined)) return undefined;
  return signed.includes(quantity) && limits.high !== undefined && (limits.low ?? 0) >= 0
    ? bothSides(limits.high)
    : limits;
};

/** Whether a part may stay in: the verdict of the wear limit, else of the new one. Two limits of one kind: the worse. */
export const staying = (item: TeardownItem): LimitVerdict | undefined =>
  worst(item, "wear") ?? worst(item, "new");

/** What is asked of a part as it is now: of a new or machined one the new limit first, of any other whether it may stay. */
export const deciding = (item: TeardownItem): LimitVerdict | undefined =>
  isFresh(item) ? (worst(item, "new") ?? worst(item, "wear")) : staying(item);

/** New, or as the machine shop gave it back. */
export const isFresh = ({ state }: Pick<TeardownItem, "state">): boolean =>
  state === "new part" || state === "after machining";

const worst = ({ verdicts }: TeardownItem, kind: LimitVerdict["kind"]): LimitVerdict | undefined =>
  verdicts.filter((one) => one.kind === kind).toSorted((a, b) => a.probability - b.probability)[0];
