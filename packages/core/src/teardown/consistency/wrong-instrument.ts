// A caliper on a bore or a journal: it has no feel there, and its jaws are no gauge of a round.

import type { MeasuredPart } from "../../record/index.ts";
import { instrumentNamed } from "../conformity/index.ts";
import { isSize } from "../places.ts";
import type { TeardownConflict, TeardownItem } from "../teardown.ts";

/** @source handbook/teardown.md 3.3 ("never for bores or journals") */
const instead: Readonly<Partial<Record<MeasuredPart, string>>> = {
  bore: "a caliper is never for bores: use a bore gauge",
  "main bearing": "a caliper is never for bearings: use a bore gauge",
  "rod bearing": "a caliper is never for bearings: use a bore gauge",
  housing: "a caliper is never for bearings: use a bore gauge",
  main: "a caliper is never for journals: use a micrometer",
  pin: "a caliper is never for journals: use a micrometer",
};

/** What to take instead; undefined where a caliper does. */
export const notByCaliper = ({ part, quantity }: Pick<TeardownItem, "part" | "quantity">): string | undefined =>
  isSize({ quantity }) ? instead[part] : undefined;

/** A kind of part once. */
export const wrongInstruments = (items: readonly TeardownItem[]): readonly TeardownConflict[] => {
  const wrong = items.filter(
    ({ instrument = "", part, quantity }) =>
      instrumentNamed(instrument)?.code === "caliper" && notByCaliper({ part, quantity }) !== undefined,
  );
  const kinds = [...new Map(wrong.map((item) => [item.part, item])).values()];
  return kinds.map(({ part, quantity }): TeardownConflict => {
    const labels = [...new Set(wrong.filter((item) => item.part === part).map(({ label = "" }) => label))];
    return {
      code: "wrong-instrument",
      part,
      ...(labels.length === 1 && labels[0] !== "" ? { label: labels[0] } : {}),
      quantity,
      text: `${part} ${labels.join(", ")} measured with a caliper`,
      mend: notByCaliper({ part, quantity }) ?? "",
      weight: "doubtful",
    };
  });
};
