// Second question: bores, pistons and rings.

import type { Length } from "../../quantity/index.ts";
import { deciding } from "../judging/limits.ts";
import { figuresText } from "../judging/figure-text.ts";
import { lengthNumber, lengthText } from "../length-text.ts";
import type { Oversize, OversizeAnswer } from "../asked-for.ts";
import type { TeardownFinding, TeardownItem } from "../teardown.ts";
import { airAndDust, hotTank } from "./cautions.ts";
import {
  type Answer,
  type Known,
  counted,
  figuresOf,
  isInside,
  isOutside,
  isUnfinished,
  isWorn,
  knownSoFar,
  labelsIn,
  seen,
  seenText,
  wears,
  whyText,
} from "./known.ts";

interface Spent {
  readonly figures: readonly TeardownItem[];
  readonly scores: readonly TeardownFinding[];
}

/** Bores that rings and a hone do not cure. */
export const spentBores = (known: Pick<Known, "figures" | "findings">): Spent => ({
  figures: figuresOf(known, "bore").filter(isWorn),
  scores: seen(known, "bore", "score", ["nail catches"]),
});

const isSpent = ({ figures, scores }: Spent): boolean => figures.length > 0 || scores.length > 0;

const cleansUp = ({ oversize }: Known): boolean =>
  oversize === undefined || oversize.answers.some(({ size }) => size !== undefined);

export const boreOversize = (known: Known): Answer | undefined => {
  const spent = spentBores(known);
  return !isSpent(spent) || !cleansUp(known)
    ? undefined
    : { ...asked(spent), text: boreText(known), caution: hotTank };
};

export const sleeveOrReplace = (known: Known): Answer | undefined => {
  const spent = spentBores(known);
  return !isSpent(spent) || cleansUp(known)
    ? undefined
    : {
        ...asked(spent),
        text: "no oversize that is offered cleans up: sleeve, or another block; ask the shop to measure first",
        caution: hotTank,
      };
};

const asked = ({ figures, scores }: Spent): Pick<Answer, "why" | "labels"> => ({
  why: whyText(figuresText(figures), seenText(scores)),
  labels: labelsIn([...figures, ...scores]),
});

/** @source makers bore all cylinders alike (Kia, Hyundai, Suzuki, GM), pistons measured first */
const boreText = (known: Known): string => {
  const { oversize, engine } = known;
  const first = "measure the new pistons before the shop bores";
  if (oversize === undefined)
    return `bore oversize; which sizes there are is not in engine.json (sealtrend engine set ${engine.id} limits.offered); ${first}`;
  const [answer, second] = oversize.answers;
  const { unit } = oversize;
  const told = answer?.size === undefined ? undefined : sizeText(answer, oversize, knownSoFar(known, "bore"));
  if (second?.size === undefined) return `bore all to ${told ?? "the next oversize"}; ${first}`;
  const centred = `+${lengthText(second.size, unit)} if the shop centres the bar in the worn bore`;
  return told === undefined
    ? `bore all to ${centred}, else no size cleans up: ask; ${first}`
    : `bore all to ${told}; ${centred}: ask; ${first}`;
};

const sizeText = (
  { size, finished, boreTo }: OversizeAnswer,
  { unit }: Oversize,
  soFar: string | undefined,
): string => {
  const sized = (length: Length | undefined): string =>
    length === undefined ? "" : lengthNumber(length, unit);
  const cut = `finish ${sized(finished)}, bore to ${sized(boreTo)}`;
  const told = `+${size === undefined ? "" : lengthText(size, unit)}`;
  return soFar === undefined ? `${told} (${cut})` : `${told} so far (${cut}; by ${soFar})`;
};

/** A bore inside, and its piston too loose. Knurling or coating: to ask for, not a default. */
export const newPistons = (known: Known): Answer | undefined => {
  const loose = figuresOf(known, "piston", "clearance").filter(isWorn);
  const bores = figuresOf(known, "bore");
  const sound = loose.filter(({ label }) => {
    const own = bores.filter((bore) => bore.label === label);
    return own.some(isInside) && !own.some(isOutside);
  });
  return isSpent(spentBores(known)) || sound.length === 0
    ? undefined
    : {
        text: `pistons for ${counted("cylinder", labelsIn(sound))}: measure new ones and choose by fit`,
        why: figuresText(sound),
        labels: labelsIn(sound),
      };
};

/** Rings and grooves outside, or the hone marks gone; the bores themselves are not.
 *  @source honing does not cure taper or out-of-round; main caps torqued: Mazda B4000 1997 */
export const reRing = (known: Known): Answer | undefined => {
  if (isSpent(spentBores(known))) return undefined;
  const worn = figuresOf(known, "ring", "end gap", "side clearance").filter(isWorn);
  const glazed = seen(known, "bore", "crosshatch", ["none"]);
  if (worn.length === 0 && glazed.length === 0) return undefined;
  const grooves = worn.some(({ quantity }) => quantity === "side clearance")
    ? "; side clearance with a new ring too: still outside, the groove is worn"
    : "";
  const how = `main caps at torque; new gaps at the smallest place, the bottom${grooves}`;
  return {
    // marks that are gone are a weak sign alone: the decision weighs them
    text:
      worn.length === 0
        ? `hone when rings go in new, ${how}; alone it is no reason for rings`
        : `re-ring and hone, ${how}`,
    why: whyText(figuresText(worn), seenText(glazed)),
    labels: labelsIn([...worn, ...glazed]),
    caution: airAndDust,
  };
};

/** New rings that do not have the gap they want. */
export const fileGaps = (known: Known): Answer | undefined => {
  const tight = figuresOf(known, "ring", "end gap").filter(
    (item) =>
      (isOutside(item) && !isWorn(item)) || (isUnfinished(item) && wears(item, deciding(item)) === "back"),
  );
  return tight.length === 0
    ? undefined
    : {
        text: `file the ring gaps of ${counted("cylinder", labelsIn(tight))} to size: too small a gap seizes`,
        why: figuresText(tight),
        labels: labelsIn(tight),
      };
};
