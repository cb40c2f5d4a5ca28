// Bores and journals that were measured with a caliper.

import { instrumentNamed, notByCaliper } from "../conformity/index.ts";
import type { TeardownConflict, TeardownItem } from "../teardown.ts";

const wrongOf = (item: TeardownItem) => notByCaliper(item, instrumentNamed(item.instrument ?? "")?.code);

/** A kind of part once. */
export const wrongInstruments = (items: readonly TeardownItem[]): readonly TeardownConflict[] => {
  const parts = [...new Set(items.filter((item) => wrongOf(item) !== undefined).map(({ part }) => part))];
  return parts.flatMap((part): readonly TeardownConflict[] => {
    const own = items.filter((item) => item.part === part && wrongOf(item) !== undefined);
    const [first] = own;
    const wrong = first === undefined ? undefined : wrongOf(first);
    if (first === undefined || wrong === undefined) return [];
    const labels = [...new Set(own.flatMap(({ label }) => label ?? []))];
    const [only] = labels;
    return [
      {
        code: "wrong-instrument",
        part,
        ...(labels.length === 1 && only !== undefined ? { label: only } : {}),
        quantity: first.quantity,
        text: `${[part, labels.join(", ")].filter(Boolean).join(" ")} measured with a caliper`,
        mend: `${wrong.never}: ${wrong.use}`,
        weight: "doubtful",
      },
    ];
  });
};
