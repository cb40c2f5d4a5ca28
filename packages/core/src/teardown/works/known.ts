// What the work list is asked of: the figures that decide, what was seen, and the sizes to machine to.

import type { Engine, MeasuredPart } from "../../record/index.ts";
import { deciding, isFresh, staying } from "../judging/limits.ts";
import type { Oversize, Undersize, WorkLine } from "../asked-for.ts";
import type {
  LimitVerdict,
  PartCount,
  TeardownConflict,
  TeardownFinding,
  TeardownItem,
} from "../teardown.ts";

export interface Known {
  readonly engine: Engine;
  /** Of parts as they are now, each clearance by the way that is known best. */
  readonly figures: readonly TeardownItem[];
  readonly findings: readonly TeardownFinding[];
  readonly counts: readonly PartCount[];
  readonly conflicts: readonly TeardownConflict[];
  readonly oversize?: Oversize;
  readonly undersizes: readonly Undersize[];
  /** Least to take off a face, as told: by part and label. */
  readonly skims: readonly { readonly part: MeasuredPart; readonly label: string; readonly text: string }[];
}

export type Answer = Omit<WorkLine, "code">;

/** Figures that decide, of some quantities of a part; of all where none are named. */
export const figuresOf = (
  { figures }: Pick<Known, "figures">,
  part: MeasuredPart,
  ...quantities: readonly string[]
): readonly TeardownItem[] =>
  figures.filter(
    (item) => item.part === part && (quantities.length === 0 || quantities.includes(item.quantity)),
  );

/** Past what may stay in. What the shop gave back is never machined again on one measurement of the owner's: see isUnfinished. */
export const isOutside = (item: TeardownItem): boolean =>
  item.waits === undefined && item.state !== "after machining" && staying(item)?.verdict === "outside";

/** Inside what is asked of it as it is now. */
export const isInside = (item: TeardownItem): boolean =>
  item.waits === undefined && deciding(item)?.verdict === "inside";

export const isTooClose = (item: TeardownItem): boolean =>
  item.waits === undefined && !isOutside(item) && deciding(item)?.verdict === "too-close-to-tell";

/** Parts of which one quantity says nothing of what the others ask for: a gap goes with the ring, a groove stays. */
const apart: readonly MeasuredPart[] = ["ring", "crank"];

/** Whether the part is past its limit at some place: whatever its other places read, it is worked on or replaced. */
export const isDecided = (item: TeardownItem, figures: readonly TeardownItem[]): boolean =>
  figures.some(
    (other) =>
      other.part === item.part &&
      other.label === item.label &&
      (!apart.includes(item.part) || other.quantity === item.quantity) &&
      isOutside(other),
  );

/** Nothing is asked that could change nothing. */
export const withoutIdleSettlements = (item: TeardownItem, figures: readonly TeardownItem[]): TeardownItem =>
  isDecided(item, figures)
    ? { ...item, verdicts: item.verdicts.map(({ settlement: _, ...verdict }) => verdict) }
    : item;

/** New or machined, and outside what is wanted of it, though it might stay in. */
export const isUnfinished = (item: TeardownItem): boolean =>
  item.waits === undefined && isFresh(item) && !isOutside(item) && deciding(item)?.verdict === "outside";

/** Past the limit as a part wears; a fit too tight or a gap too small is outside and not worn. */
export const isWorn = (item: TeardownItem): boolean => isOutside(item) && wears(item, staying(item)) === "on";

/** Differences wear either way, the rest to one side: holes and gaps grow, shafts shrink. */
const eitherWay: readonly string[] = ["taper", "out-of-round"];

/** On which side of its limits a figure lies: where wear leads to, or the other. */
export const wears = (item: TeardownItem, limits: LimitVerdict | undefined): "on" | "back" => {
  const { low, high } = limits ?? {};
  if (eitherWay.includes(item.quantity)) return "on";
  const isOn = isShrinking(item)
    ? low !== undefined && item.value < low
    : high !== undefined && item.value > high;
  return isOn ? "on" : "back";
};

const isShrinking = ({ part, quantity }: TeardownItem): boolean =>
  (quantity === "diameter" && part !== "bore") || quantity === "margin" || quantity === "free length";

export const labelsIn = (items: readonly { readonly label?: string }[]): readonly string[] => [
  ...new Set(items.flatMap(({ label }) => (label === undefined ? [] : [label]))),
];

/** Findings of some words. */
export const seen = (
  { findings }: Pick<Known, "findings">,
  part: MeasuredPart,
  quantity: string,
  words: readonly string[],
): readonly TeardownFinding[] =>
  findings.filter((one) => one.part === part && one.quantity === quantity && words.includes(one.word));

/** `bore 3 score: nail catches`. */
export const seenText = (findings: readonly TeardownFinding[]): string =>
  findings
    .map(({ part, label, at, quantity, word }) =>
      [[part, label, at, quantity].filter(Boolean).join(" "), word].join(": "),
    )
    .join("; ");

/** What speaks for a work: figures and findings. */
export const whyText = (...parts: readonly string[]): string => parts.filter(Boolean).join("; ");

/** `cylinder 3`, `pins 2 and 5`. */
export const counted = (word: string, labels: readonly string[]): string =>
  `${word}${labels.length === 1 ? "" : "s"} ${labels.length < 2 ? labels.join("") : `${labels.slice(0, -1).join(", ")} and ${labels.at(-1) ?? ""}`}`;

/** `2 of 4`: of how many a size to machine all of them to is known so far; undefined where it is of all.
 *  A figure that waits, and one that was not measured, may be the worst. */
export const knownSoFar = (known: Known, part: MeasuredPart): string | undefined => {
  const count = known.counts.find((one) => one.part === part && one.quantity === "diameter");
  const sized = labelsIn(figuresOf(known, part).filter(({ waits }) => waits === undefined));
  const isAll = count === undefined || (count.missing.length === 0 && sized.length >= count.measured);
  return isAll ? undefined : `${String(sized.length)} of ${String(count.expected)}`;
};
