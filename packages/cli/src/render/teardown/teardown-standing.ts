// Where a figure stands, as the core says it, in the words of the screen.

import type { ItemStanding, LimitVerdict, TeardownAssessment, TeardownItem } from "@sealtrend/core/parts";

/** `near`: may stay in, and too close to tell as new. */
export type Standing = "outside" | "close" | "waits" | "worn" | "near" | "inside" | "no-limit";

/** The worst first: the order in which they are told. */
export const standings: readonly Standing[] = [
  ...(["outside", "close", "waits", "worn", "near", "inside", "no-limit"] as const),
];

const standingsOf: Readonly<Record<ItemStanding, Standing>> = {
  outside: "outside",
  "too-close": "close",
  waits: "waits",
  worn: "worn",
  "close-as-new": "near",
  "inside-wear": "inside",
  inside: "inside",
};

/** The verdict that decides whether a part may stay in; of one that was machined or is new, whether it is as wanted. */
export const rulingVerdict = ({
  verdicts,
  state,
}: Pick<TeardownItem, "verdicts" | "state">): LimitVerdict | undefined => {
  const [first, second] = state === "new part" || state === "after machining" ? rules : rules.toReversed();
  const sound = verdicts.filter(({ waits }) => waits === undefined);
  return sound.find(({ kind }) => kind === first) ?? sound.find(({ kind }) => kind === second) ?? verdicts[0];
};

const rules = ["new", "wear"] as const;

export const standingOf = ({ standing }: Pick<TeardownItem, "standing">): Standing =>
  standing === undefined ? "no-limit" : standingsOf[standing];

/** Of one word, as it stands under a figure. */
export const standingWords: Readonly<Record<Standing, string>> = {
  outside: "outside",
  close: "close",
  waits: "waits",
  worn: "worn",
  near: "usable",
  inside: "inside",
  "no-limit": "",
};

export const worst = (list: readonly Standing[]): Standing =>
  standings.find((standing) => list.includes(standing)) ?? "no-limit";

/** What counts: of a part as it is now, and where one thing was measured in two ways the better of them. */
export const counting = ({
  items,
  derived,
  parts,
}: Pick<TeardownAssessment, "items" | "derived" | "parts">): readonly TeardownItem[] => {
  const judged = new Set(parts.map(({ part, label, quantity }) => `${part}|${label ?? ""}|${quantity}`));
  return [...items, ...derived].filter(
    ({ superseded, verdicts, part, label = "", quantity }) =>
      superseded === undefined && (verdicts.length === 0 || judged.has(`${part}|${label}|${quantity}`)),
  );
};
