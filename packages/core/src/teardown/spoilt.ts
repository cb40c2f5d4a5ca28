// What was seen of a part that leaves it unsound, whatever its sizes.

import type { MeasuredPart } from "../record/index.ts";
import { currentFindings } from "./judging/findings.ts";
import { partNamed } from "./places.ts";
import type { Spoilt, TeardownAssessment, TeardownFinding } from "./teardown.ts";

const marked = ["scored", "blued", "wiped", "cracked or flaking", "copper showing"];

/** Words by part. @source handbook/teardown.md 5 */
const spoilingWords: Readonly<Partial<Record<MeasuredPart, readonly string[]>>> = {
  bore: ["nail catches"],
  main: marked,
  pin: marked,
  "main bearing": marked,
  "rod bearing": marked,
  crack: ["dye", "magnetic", "pressure", "seen"],
};

/** What costs most to put right comes first. */
const inOrder: readonly MeasuredPart[] = ["crack", "bore", "main", "pin", "main bearing", "rod bearing"];

/** Of parts as they are now, a part once, in the order of what stops the job first. */
export const spoiltParts = ({
  items,
  findings,
}: Pick<TeardownAssessment, "items" | "findings">): readonly Spoilt[] => {
  const now = currentFindings(findings, [...items, ...findings]).filter(isSpoiling);
  const parts = [...new Map(now.map((one) => [partNamed(one), one])).values()].toSorted(
    (a, b) => inOrder.indexOf(a.part) - inOrder.indexOf(b.part),
  );
  return parts.map(({ part, label }) => {
    const own = now.filter((one) => one.part === part && one.label === label);
    const words = [...new Set(own.map(({ word }) => word))].join(", ");
    const named = partNamed({ part, ...(label === undefined ? {} : { label }) });
    return {
      part,
      ...(label === undefined ? {} : { label }),
      date:
        own
          .map(({ date }) => date)
          .toSorted()
          .at(-1) ?? "",
      text: part === "crack" ? `a crack in the ${label ?? "casting"}` : `${named}: ${words}`,
    };
  });
};

export const isSpoiling = ({ part, word }: Pick<TeardownFinding, "part" | "word">): boolean =>
  spoilingWords[part]?.includes(word) === true;
