// What a teardown says of wear in each place: beyond a limit, all of it inside, or open.

import type { Engine, MeasuredPart } from "../record/index.ts";
import { isComplete } from "./consistency/part-counts.ts";
import { staying } from "./judging/limits.ts";
import { decidingFigures } from "./judging/which-decide.ts";
import { spoiltParts } from "./spoilt.ts";
import type { TeardownAssessment, TeardownItem } from "./teardown.ts";
import { wears } from "./works/known.ts";

export type MeasuredPlace = "bore" | "rings" | "bottom" | "top";

/** What a teardown says of wear in one place. */
export interface WearFound {
  readonly place: MeasuredPlace;
  /** Figures past the limit, as a part wears. */
  readonly beyond: readonly TeardownItem[];
  /** Too close to tell, or a contradiction stands before it. */
  readonly open: readonly TeardownItem[];
  /** Each one of its kind was measured, and all are inside. */
  readonly within: "yes" | "no";
  /** What was held against a limit: `taper`, `wear` … */
  readonly quantities: readonly string[];
}

interface Kind {
  readonly part: MeasuredPart;
  /** What tells of wear there. */
  readonly quantities: readonly string[];
  /** One of these at least, before all of it is inside; none: it never is. */
  readonly proof: readonly string[];
}

const kind = (part: MeasuredPart, quantities: readonly string[], proof: readonly string[] = []): Kind => ({
  part,
  quantities,
  proof,
});

const bores = kind(
  "bore",
  ["diameter", "taper", "out-of-round", "wear", "cylindricity"],
  ["diameter", "taper", "wear", "cylindricity"],
);
const pistons = kind("piston", ["clearance"]);
const rings = kind("ring", ["end gap", "side clearance"], ["end gap"]);
const [mains, pins] = (["main", "pin"] as const).map((part) =>
  kind(part, ["diameter", "taper", "out-of-round"], ["diameter"]),
);
const [mainBearings, rodBearings] = (["main bearing", "rod bearing"] as const).map((part) =>
  kind(part, ["clearance", "thread clearance"], ["clearance", "thread clearance"]),
);
const topEnd = [
  kind("head", ["flatness", "flatness 150"]),
  kind("deck", ["flatness", "flatness 150"]),
  kind("guide", ["clearance", "bore"]),
  kind("stem", ["diameter"]),
  kind("seat", ["width", "runout"]),
  kind("valve", ["margin"]),
];

interface PlaceKinds {
  readonly place: MeasuredPlace;
  /** All of these lists have to be proved, each by one of its kinds; none: nothing is. */
  readonly needed: readonly (readonly (Kind | undefined)[])[];
  readonly kinds: readonly (Kind | undefined)[];
  /** Parts that leave a place unsound once they are spoilt, whatever its sizes. */
  readonly spoilt: readonly MeasuredPart[];
}

/** Mains and pins each by their size or by the clearance over them.  @source handbook/decision.md 2, rows J */
const places: readonly PlaceKinds[] = [
  {
    place: "bore",
    needed: [[bores]],
    kinds: [bores, pistons],
    spoilt: ["bore"],
  },
  { place: "rings", needed: [[rings]], kinds: [rings], spoilt: [] },
  {
    place: "bottom",
    needed: [
      [mains, mainBearings],
      [pins, rodBearings],
    ],
    kinds: [mains, pins, mainBearings, rodBearings],
    spoilt: ["main", "pin", "main bearing", "rod bearing"],
  },
  { place: "top", needed: [], kinds: topEnd, spoilt: [] },
];

/** Of each place where something was held against a limit. */
export const wearFound = (
  { items, derived, counts, findings }: Pick<TeardownAssessment, "items" | "derived" | "counts" | "findings">,
  engine: Pick<Engine, "clearances">,
): readonly WearFound[] => {
  const now = items.filter(({ superseded }) => superseded === undefined);
  const figures = decidingFigures([...now, ...derived], engine).filter(({ verdicts }) => verdicts.length > 0);
  const seen = spoiltParts({ items, findings });
  return places.flatMap(({ place, needed, kinds, spoilt }): readonly WearFound[] => {
    const own = figures.filter((item) => kinds.some((one) => isOf(item, one)));
    const isWhole =
      !seen.some(({ part }) => spoilt.includes(part)) &&
      needed.length > 0 &&
      needed.every((either) => either.some((one) => isProved(one, figures, counts)));
    return own.length === 0
      ? []
      : [
          {
            place,
            beyond: own.filter(isBeyond),
            open: own.filter((item) => !isBeyond(item) && !isWithin(item) && isDoubtful(item)),
            within: isWhole && own.every(isWithin) ? "yes" : "no",
            quantities: [...new Set(own.map(({ quantity }) => quantity))],
          },
        ];
  });
};

/** Of wear the limit that tells what may stay in is asked, of a new or machined part too. */
const isBeyond = (item: TeardownItem): boolean => {
  const verdict = staying(item);
  return item.waits === undefined && verdict?.verdict === "outside" && wears(item, verdict) === "on";
};
const isWithin = (item: TeardownItem): boolean =>
  item.waits === undefined && staying(item)?.verdict === "inside";
const isDoubtful = (item: TeardownItem): boolean =>
  item.waits === true || staying(item)?.verdict === "too-close-to-tell";

const isOf = ({ part, quantity }: TeardownItem, one: Kind | undefined): boolean =>
  one?.part === part && one.quantities.includes(quantity);

/** Each one of the part measured, and each has a verdict on all that any of them has one on. */
const isProved = (
  one: Kind | undefined,
  figures: readonly TeardownItem[],
  counts: TeardownAssessment["counts"],
): boolean => {
  const own = figures.filter((item) => isOf(item, one));
  const quantities = [...new Set(own.map(({ quantity }) => quantity))];
  const labelsOf = (items: readonly TeardownItem[]): number => new Set(items.map(({ label }) => label)).size;
  const count = counts.find(({ part, quantity }) => part === one?.part && quantity !== "side clearance");
  return (
    count !== undefined &&
    isComplete(count) &&
    quantities.some((quantity) => one?.proof.includes(quantity)) &&
    // of a bearing one was measured by thread and another by its sizes
    (one?.proof.includes("thread clearance") === true
      ? labelsOf(own) >= count.expected
      : quantities
          .filter((quantity) => quantity !== "side clearance")
          .every((quantity) => labelsOf(own.filter((item) => item.quantity === quantity)) >= count.expected))
  );
};
