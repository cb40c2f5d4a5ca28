// Where a figure stands: by the wear limit, which says what may stay in, where there is one; else by the limit for new.

import type { LimitVerdict, TeardownAssessment, TeardownItem } from "@sealtrend/core";

export type Standing = "outside" | "close" | "waits" | "worn" | "inside" | "no-limit";

/** The worst first: the order in which they are told. */
export const standings: readonly Standing[] = ["outside", "close", "waits", "worn", "inside", "no-limit"];

/** The verdict that decides whether a part may stay in. */
export const rulingVerdict = ({ verdicts }: Pick<TeardownItem, "verdicts">): LimitVerdict | undefined =>
  verdicts.find(({ kind }) => kind === "wear") ?? verdicts[0];

export const standingOf = (item: TeardownItem): Standing => {
  const ruling = rulingVerdict(item);
  if (ruling === undefined) return "no-limit";
  if (item.waits === true) return "waits";
  if (ruling.verdict === "outside") return "outside";
  if (ruling.verdict === "too-close-to-tell") return "close";
  const isWorn = item.verdicts.some(({ kind, verdict }) => kind === "new" && verdict === "outside");
  return isWorn ? "worn" : "inside";
};

/** Of one word, as it stands under a figure. */
export const standingWords: Readonly<Record<Standing, string>> = {
  outside: "outside",
  close: "close",
  waits: "waits",
  worn: "worn",
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
