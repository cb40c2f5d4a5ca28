// Figures that are not inside, one a line: where a table would not fit.

import type { Block } from "./teardown-rows.ts";
import { limitsText } from "./teardown-limits.ts";
import { standingOf, standingWords, standings } from "./teardown-standing.ts";
import { numberOf, writtenOf } from "./teardown-table.ts";
import { partNamed } from "./teardown-words.ts";

/** `pin 6 taper -0.0039 in outside (wear up to 0.0010)`, the worst first; of each label its worst figure before the others. */
export const figureTexts = (blocks: readonly Block[], units: string | undefined): readonly string[] => {
  const figures = blocks.flatMap(({ part, labels, rows }) =>
    labels.flatMap((label) =>
      rows
        .flatMap((row) => {
          const item = row.cells.get(label);
          const standing = item === undefined ? "no-limit" : standingOf(item);
          if (item === undefined || standing === "inside" || standing === "no-limit") return [];
          const written = writtenOf(row, units);
          const number = `${numberOf(item, written)}\u00a0${written.unit}`;
          const named = partNamed(part, label === "" ? [] : [label]);
          const text = `${named} ${row.name} ${number} ${standingWords[standing]} (${limitsText(item, written)})`;
          return [{ text, standing }];
        })
        .map((figure, nth) => ({ ...figure, nth })),
    ),
  );
  return figures
    .toSorted((a, b) => a.nth - b.nth || standings.indexOf(a.standing) - standings.indexOf(b.standing))
    .map(({ text }) => text);
};
