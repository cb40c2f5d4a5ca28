// Third question: crank, bearings and rods.

import { quantityOf } from "../../record/index.ts";
import type { Undersize } from "../asked-for.ts";
import { figuresText } from "../judging/figure-text.ts";
import { lengthText, rangeText } from "../length-text.ts";
import { standardSize } from "../standard-size.ts";
import { capsNumbered, heavyParts } from "./cautions.ts";
import {
  type Answer,
  type Known,
  counted,
  figuresOf,
  isInside,
  isOutside,
  isWorn,
  knownSoFar,
  labelsIn,
  seen,
  seenText,
  whyText,
} from "./known.ts";

const journals = ["main", "pin"] as const;
const bearings = { main: "main bearing", pin: "rod bearing" } as const;
type Journal = (typeof journals)[number];

/** Of one kind: size, taper or out-of-round past the limit, scored, blued. */
export const spentJournals = (known: Pick<Known, "figures" | "findings">, part: Journal) => ({
  figures: figuresOf(known, part).filter(isWorn),
  marks: seen(known, part, "appearance", ["scored", "blued"]),
});

const isSpent = (known: Known, part: Journal): boolean => {
  const { figures, marks } = spentJournals(known, part);
  return figures.length > 0 || marks.length > 0;
};

/** @source cracks first: makers' manuals and common practice; grind all of a kind: TM 5-3805-262-34 */
export const grindCrank = (known: Known): Answer | undefined => {
  const spent = journals.filter((part) => isSpent(known, part));
  if (spent.length === 0) return undefined;
  const all = spent.map((part) => spentJournals(known, part));
  const [figures, marks] = [all.flatMap((one) => one.figures), all.flatMap((one) => one.marks)];
  const sizes = spent.map((part) => grindText(part, known)).join("; ");
  return {
    text: `look for cracks before paying, then ${sizes}; shells of the same size, fillets as they were`,
    why: whyText(figuresText(figures), seenText(marks)),
    labels: labelsIn([...figures, ...marks]),
    caution: heavyParts,
  };
};

const grindText = (part: Journal, known: Known): string => {
  const { undersizes, engine } = known;
  const soFar = knownSoFar(known, part);
  const found = undersizes.find((one) => one.part === part);
  if (found === undefined) return `grind all ${part}s, or exchange the crank (${missingText(part, engine)})`;
  return found.size === undefined
    ? `exchange the crank: ${part}s need ${lengthText(found.needed, found.unit)} off, more than is offered`
    : `grind all ${part}s to -${lengthText(found.size, found.unit)}${sizesText(found, soFar)}`;
};

/** What is not known of the size to grind to, and how it gets known. */
const missingText = (part: Journal, engine: Known["engine"]): string => {
  const { id, offered } = engine;
  if (offered[part] === undefined) return `sizes offered: sealtrend engine set ${id} limits.offered.${part}`;
  const fresh = standardSize(part, engine);
  return fresh?.low === undefined || fresh.high === undefined
    ? `size when new: sealtrend engine set ${id} limits.${part}.diameter.new`
    : `which size: measure the ${part}s, the smallest decides`;
};

const sizesText = ({ low, high, unit }: Undersize, soFar: string | undefined): string => {
  if (low === undefined || high === undefined) return "";
  const range = rangeText(low, high, unit);
  return soFar === undefined ? ` (${range})` : ` so far (${range}; by ${soFar})`;
};

/** Journals measured, inside, and nothing of them outside. */
const isSound = (known: Known, part: Journal): boolean =>
  !isSpent(known, part) && figuresOf(known, part).some(isInside);

/** The clearance outside with the journal inside: shells, or the housing behind them. */
export const fineSteps = (known: Known): Answer | undefined => {
  const off = journals
    .filter((part) => isSound(known, part))
    .flatMap((part) => figuresOf(known, bearings[part], "clearance", "thread clearance").filter(isOutside));
  if (off.length === 0) return undefined;
  const isLoose = off.some(isWorn);
  return {
    text: isLoose
      ? "new shells, a fine step thicker where the maker has them; still loose: measure the housing bore and its cap"
      : "too tight: right shells, right caps the right way round, nothing behind the shell? Then measure again",
    why: figuresText(off),
    labels: labelsIn(off),
    caution: capsNumbered,
  };
};

/** Words of a shell that goes out: all but one. */
const doubtful = (quantityOf("main bearing", "appearance")?.words ?? []).filter((word) => word !== "normal");

/** Shells doubtful, journals inside.  @source bearing makers, Engine Builder June 2011 (what wears shells) */
export const newBearings = (known: Known): Answer | undefined => {
  const shells = journals
    .filter((part) => !isSpent(known, part))
    .flatMap((part) => seen(known, bearings[part], "appearance", doubtful));
  if (shells.length === 0) return undefined;
  const proved = journals.every(
    (part) => !shells.some((shell) => shell.part === bearings[part]) || isSound(known, part),
  );
  return {
    text: `new bearing shells${proved ? "" : ", once the journals are measured"}; find the cause first: dirt, oil supply, a bent rod or cap`,
    why: seenText(shells),
    labels: labelsIn(shells),
    caution: capsNumbered,
  };
};

/** Runout is measured after the journals passed.  @source Ford */
export const straighten = (known: Known): Answer | undefined => {
  const bent = figuresOf(known, "crank", "runout", "bend").filter(isWorn);
  return bent.length === 0
    ? undefined
    : {
        text: "crank bent: straighten where the maker allows it, or replace; measure again after the journals pass",
        why: figuresText(bent),
        labels: labelsIn(bent),
        caution: heavyParts,
      };
};

export const thrustWashers = (known: Known): Answer | undefined => {
  const off = figuresOf(known, "crank", "end play").filter(isOutside);
  return off.length === 0
    ? undefined
    : {
        text: off.some(isWorn)
          ? "thicker thrust washers or a thrust shell; the flange worn too: grind it"
          : "end play too small: look for dirt and for the wrong washers",
        why: figuresText(off),
        labels: [],
      };
};

export const rodWork = (known: Known): Answer | undefined => {
  const side = figuresOf(known, "rod", "side clearance").filter(isOutside);
  const housings = figuresOf(known, "housing").filter(isOutside);
  const off = [...side, ...housings];
  return off.length === 0
    ? undefined
    : {
        text: [
          ...(side.length > 0
            ? [`side play of ${counted("rod", labelsIn(side))}: rod or flange of the pin, measure both`]
            : []),
          ...(housings.length > 0
            ? [`housing bores of ${labelsIn(housings).join(", ")}: resize, caps at torque`]
            : []),
        ].join("; "),
        why: figuresText(off),
        labels: labelsIn(off),
        caution: capsNumbered,
      };
};
