// A part of many readings against one limit: all of them must conform, whether or not they depend on each other.

import { allConform } from "../conformity/index.ts";
import type { LimitVerdict, PartVerdict, TeardownItem } from "../teardown.ts";

const kinds = ["new", "wear"] as const;

/** Of each labelled part, and of all of a kind together. @param items - that count: of the parts as they are now */
export const partVerdictsOf = (items: readonly TeardownItem[]): readonly PartVerdict[] => {
  const quantities = [...new Map(items.map((item) => [quantityKey(item), item])).values()];
  return quantities.flatMap(({ part, quantity }) => {
    const own = items.filter((item) => item.part === part && item.quantity === quantity);
    const labels = [...new Set(own.flatMap(({ label }) => (label === undefined ? [] : [label])))];
    return kinds.flatMap((kind) => [
      ...labels.flatMap((label) => {
        const verdict = verdictOver(
          own.filter((item) => item.label === label),
          kind,
        );
        return verdict === undefined ? [] : [{ part, label, quantity, kind, ...verdict }];
      }),
      ...whole(own, kind).map((verdict) => ({ part, quantity, kind, ...verdict })),
    ]);
  });
};

const quantityKey = ({ part, quantity }: TeardownItem): string => `${part}|${quantity}`;

type Over = Pick<PartVerdict, "atLeast" | "atMost" | "verdict" | "decidedBy">;

const whole = (own: readonly TeardownItem[], kind: LimitVerdict["kind"]): readonly Over[] => {
  const verdict = verdictOver(own, kind);
  return verdict === undefined ? [] : [verdict];
};

/** Two limits of one kind both have to be met. */
const verdictOver = (own: readonly TeardownItem[], kind: LimitVerdict["kind"]): Over | undefined => {
  const held = own.flatMap((item) =>
    item.verdicts
      .filter((verdict) => verdict.kind === kind && verdict.waits === undefined)
      .map(({ probability, verdict }) => ({ item, probability, verdict })),
  );
  const [first] = held;
  if (first === undefined) return undefined;
  const { atLeast, atMost, verdict, decidedBy } = allConform(held.map(({ probability }) => probability));
  // a face without both diagonals is too close to tell, whatever its chance
  const isOpen = verdict === "inside" && held.some((one) => one.verdict === "too-close-to-tell");
  return {
    atLeast,
    atMost,
    verdict: isOpen ? "too-close-to-tell" : verdict,
    decidedBy: held[decidedBy]?.item ?? first.item,
  };
};
