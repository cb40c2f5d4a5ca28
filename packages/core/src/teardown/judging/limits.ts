// Every figure against each limit that is given for it, new and wear apart.

import { type Length, length } from "../../quantity/index.ts";
import { type Engine, type LengthUnit, type LimitPair, isLimitFor } from "../../record/index.ts";
import { type FigureOf, bothSides, limitVerdict } from "../conformity/index.ts";
import { isMisprinted } from "../consistency/limit-misprint.ts";
import { lengthText } from "../length-text.ts";
import type { ItemStanding, LimitVerdict, TeardownItem } from "../teardown.ts";
import type { Made } from "./made.ts";

/** Differences that may go either way: a limit T holds from −T to T. */
const signed: readonly string[] = ["taper", "out-of-round"];

/** @param size - of the part, where it was bored or ground */
export const judged = (
  made: Made,
  { clearances }: Pick<Engine, "clearances">,
  size?: Length,
): TeardownItem => {
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
        const standard = sided(limit[kind], item.quantity);
        if (standard === undefined) return [];
        const { source } = limit;
        const limits = size === undefined ? standard : shifted(standard, size);
        const verdict = limitVerdict(item, { kind, limits, ...(source === undefined ? {} : { source }) }, of);
        return [
          {
            ...verdict,
            ...(size === undefined ? {} : { size, limitFor: `limits for ${sizeText(size, item.unit)}` }),
            ...(isMisprinted(limit, kind) ? { waits: true } : {}),
          },
        ];
      }),
    );
  return { ...item, verdicts };
};

/** @source undersize ranges shift by the undersize: TM 5-3805-262-34 p. 4-24, TM 10-3930-638-24&P p. 4-29 */
const shifted = ({ low, high }: LimitPair, size: Length): LimitPair => ({
  ...(low === undefined ? {} : { low: length(low + size) }),
  ...(high === undefined ? {} : { high: length(high + size) }),
});

/** `+0.50 mm`, `-0.010 in`. */
const sizeText = (size: Length, unit: LengthUnit): string =>
  `${size < 0 ? "-" : "+"}${lengthText(Math.abs(size), unit)}`;

/** A gap under the straightedge is one of many: the face is judged by the deepest. What never wore has no wear. */
const isHeldAgainstLimits = ({ part, quantity, at }: TeardownItem): boolean =>
  !((part === "head" || part === "deck") && quantity === "gap") && at?.startsWith("unworn") !== true;

const sided = (limits: LimitPair | undefined, quantity: string): LimitPair | undefined => {
  if (limits === undefined || (limits.low === undefined && limits.high === undefined)) return undefined;
  return signed.includes(quantity) && limits.high !== undefined && (limits.low ?? 0) >= 0
    ? bothSides(limits.high)
    : limits;
};

/** Whether a part may stay in: the verdict of the wear limit, else of the new one. Two limits of one kind: the worse.
 *  Undefined without a limit, and where the limit waits. */
export const staying = (item: TeardownItem): LimitVerdict | undefined => sound(ruling(item, ["wear", "new"]));

/** What is asked of a part as it is now: of a new or machined one the new limit first, of any other whether it may stay. */
export const deciding = (item: TeardownItem): LimitVerdict | undefined => sound(ruling(item, asked(item)));

/** Whether what would decide is misprinted. A new limit that is misprinted leaves the wear limit as it is. */
export const waitsForLimit = (item: TeardownItem): boolean => ruling(item, asked(item))?.waits === true;

const asked = (item: TeardownItem): readonly LimitVerdict["kind"][] =>
  isFresh(item) ? ["new", "wear"] : ["wear", "new"];

/** New, or as the machine shop gave it back. */
export const isFresh = ({ state }: Pick<TeardownItem, "state">): boolean =>
  state === "new part" || state === "after machining";

const ruling = (item: TeardownItem, kinds: readonly LimitVerdict["kind"][]): LimitVerdict | undefined =>
  kinds.map((kind) => worst(item, kind)).find((verdict) => verdict !== undefined);

const sound = (verdict: LimitVerdict | undefined): LimitVerdict | undefined =>
  verdict?.waits === true ? undefined : verdict;

/** One that waits only where there is no other. */
const worst = ({ verdicts }: TeardownItem, kind: LimitVerdict["kind"]): LimitVerdict | undefined =>
  verdicts
    .filter((one) => one.kind === kind)
    .toSorted(
      (a, b) => Number(a.waits ?? false) - Number(b.waits ?? false) || a.probability - b.probability,
    )[0];

/** In one word; undefined without a limit, unless it waits for its figures.
 *  @source handbook/teardown.md, first lines: new and wear are judged apart */
export const standingOf = (item: TeardownItem): ItemStanding | undefined => {
  const first = ruling(item, asked(item));
  if (first === undefined) return item.waits === true ? "waits" : undefined;
  if (item.waits === true || first.waits === true) return "waits";
  if (first.verdict === "outside") return "outside";
  if (first.verdict === "too-close-to-tell") return "too-close";
  if (first.kind === "new") return "inside";
  const fresh = sound(worst(item, "new"));
  if (fresh === undefined) return "inside-wear";
  if (fresh.verdict === "outside") return "worn";
  return fresh.verdict === "inside" ? "inside" : "close-as-new";
};
