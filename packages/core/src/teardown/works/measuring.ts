// Before any work: what has to be measured better, and what was not measured at all.

import type { MeasuredPart } from "../../record/index.ts";
import { figuresText } from "../judging/figure-text.ts";
import { deciding } from "../judging/limits.ts";
import { lengthText } from "../length-text.ts";
import { partNamed } from "../places.ts";
import { measuredTogether, timesMeasured } from "../measured-together.ts";
import { isSpoiling } from "../spoilt.ts";
import type { PartCount, TeardownItem } from "../teardown.ts";
import {
  type Answer,
  type Known,
  counted,
  isDecided,
  isTooClose,
  isUnfinished,
  isWorn,
  knownSoFar,
  labelsIn,
  wears,
} from "./known.ts";

/** Too close to tell is never work: what would settle it, a line a part and quantity.
 *  @param parts - of the group that is asked  @param settled - parts that are machined or replaced anyhow */
export const measureBetter = (
  known: Known,
  parts: readonly MeasuredPart[],
  settled: readonly MeasuredPart[],
): readonly Answer[] => {
  const open = known.figures.filter(
    (item) =>
      parts.includes(item.part) &&
      !settled.includes(item.part) &&
      isTooClose(item) &&
      !isDecided(item, known.figures),
  );
  const kinds = [...new Map(open.map((item) => [`${item.part}|${item.quantity}`, item])).values()];
  return kinds.map(({ part, quantity }) => {
    const own = open
      .filter((item) => item.part === part && item.quantity === quantity)
      .toSorted((a, b) => neededBy(a) - neededBy(b));
    const labels = labelsIn(open.filter((item) => own.includes(item)));
    const which = labels.length === 0 ? part : counted(part, labels);
    const [nearest] = own;
    const settlement = nearest === undefined ? undefined : deciding(nearest)?.settlement;
    return {
      text: `measure ${which} ${quantity} better: ${settlement?.text ?? "again"}`,
      why: `too close to tell: ${figuresText(own, 1)}`,
      labels,
      part,
    };
  });
};

/** What settles the figure nearest to its limit settles the others. */
const neededBy = (item: TeardownItem): number => deciding(item)?.settlement?.needed ?? 0;

/** Parts past the limit of which a bore is machined or a crank ground. */
const dear: readonly MeasuredPart[] = ["bore", "piston", "main", "pin", "main bearing", "rod bearing"];

/** One part alone, read once, past its limit: no boring and no grinding on that. Two parts, or two readings, are enough, and
 *  so is a score beside it.  @source handbook/decision.md 2, G2 (judgement) */
export const measureAgain = (known: Known, parts: readonly MeasuredPart[]): Answer | undefined => {
  const worn = known.figures.filter((item) => dear.includes(item.part) && isWorn(item));
  const [only, ...others] = measuredTogether(worn, known.engine);
  const isSeen = known.findings.some((one) => one.part === "bore" && isSpoiling(one));
  if (only === undefined || others.length > 0 || timesMeasured(only) > 1 || isSeen) return undefined;
  const [{ part, label }] = only;
  if (!parts.includes(part)) return undefined;
  return {
    text: `measure ${partNamed(only[0])} once more, set up anew, before you order`,
    why: `read once, and past the limit: ${figuresText(only)}`,
    labels: label === undefined ? [] : [label],
    part,
  };
};

/** Figures that contradict: measured again, or asked about, before anything follows from them. */
export const clearConflicts = (known: Known, parts: readonly MeasuredPart[]): readonly Answer[] =>
  known.conflicts
    .filter(
      ({ code, weight, part }) =>
        weight === "conflict" &&
        parts.includes(part) &&
        // a misprint of a part that nobody measured stops nothing
        (code !== "limit-misprint" || known.figures.some((item) => item.part === part)),
    )
    .map(({ text, mend, label, part }) => ({
      text: naming(mend, partNamed({ part, ...(label === undefined ? {} : { label }) })),
      why: text,
      labels: label === undefined ? [] : [label],
      part,
    }));

/** A mend that does not name its part gets the name before it. */
const naming = (mend: string, named: string): string => (mend.includes(named) ? mend : `${named}: ${mend}`);

/** What the shop gave back or the box held, outside what is wanted of it: told to whoever made it, before assembly. */
export const returned = (known: Known, parts: readonly MeasuredPart[]): readonly Answer[] => {
  const off = known.figures.filter(
    (item) => parts.includes(item.part) && isUnfinished(item) && !isFiled(item),
  );
  const kinds = [...new Map(off.map((item) => [`${item.part}|${item.state}`, item])).values()];
  return kinds.map(({ part, state }) => {
    const own = off.filter((item) => item.part === part && item.state === state);
    const labels = labelsIn(own);
    const which = labels.length === 0 ? part : counted(part, labels);
    return {
      text:
        state === "new part"
          ? `${which}, new: not what is wanted; the right part? Measure again before it goes in`
          : `${which}, as the shop gave it back: not what is wanted; show the shop, measure together`,
      why: figuresText(own),
      labels,
    };
  });
};

/** Too small a gap of a new ring is filed, not sent back. */
const isFiled = (item: TeardownItem): boolean =>
  item.part === "ring" && item.quantity === "end gap" && wears(item, deciding(item)) === "back";

/** Never taken for good: the one that was left out may be the worst.  @param renewed - parts that are replaced anyhow */
export const measureMissing = (
  known: Known,
  parts: readonly MeasuredPart[],
  renewed: readonly MeasuredPart[],
): readonly Answer[] =>
  known.counts
    .filter(({ part, missing }) => parts.includes(part) && !renewed.includes(part) && missing.length > 0)
    .map((count) => ({
      text: `measure ${missingText(count)}${soFarText(count, known)}`,
      why: whyMissing(count, known),
      labels: count.missing,
    }));

/** A size to machine all of them to is not known before all of them are. */
const soFarText = ({ part }: PartCount, known: Known): string => {
  const soFar = knownSoFar(known, part);
  if (soFar === undefined) return "";
  const size = part === "bore" ? boreSize(known) : known.undersizes.find((one) => one.part === part);
  if (size?.size === undefined) return "";
  return `, first: ${part === "bore" ? "+" : "-"}${lengthText(size.size, size.unit)} by ${soFar} so far`;
};

const boreSize = ({ oversize }: Known) =>
  oversize === undefined ? undefined : { unit: oversize.unit, size: oversize.answers[0]?.size };

const missingText = ({ part, quantity, missing }: PartCount): string => {
  if (part === "crank" && quantity !== undefined && missing.some(Boolean))
    return `${quantity} at ${counted("main", missing)}`;
  return `${missing.length === 1 ? partNamed({ part, label: missing[0] ?? "" }) : counted(part, missing)}${quantity === undefined ? "" : `, ${quantity}`}`;
};

const whyMissing = (
  { part, expected, measured, from, otherCounts }: PartCount,
  { engine }: Known,
): string => {
  const told = `${String(measured)} of ${String(expected)} measured`;
  const field = part === "pin" ? "layout.pins" : "layout.mains";
  // of the runout the ends count for nothing, so that it tells no number of mains
  if (from !== "usual for the layout" || part === "crank") return told;
  const others = otherCounts === undefined ? "" : `, ${otherCounts.join(" or ")} by another layout`;
  return `${told}, the usual number${others}; if this engine has fewer: sealtrend engine set ${engine.id} ${field} ${String(measured)}`;
};
