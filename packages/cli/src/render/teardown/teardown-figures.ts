// Figures that are not inside, one a line, and without any limit the range of each: where a table would not fit.

import type { Block } from "./teardown-rows.ts";
import { limitsText } from "./teardown-limits.ts";
import { type Standing, standingOf, standingWords, standings } from "./teardown-standing.ts";
import { numberOf, writtenOf } from "./teardown-table.ts";
import { partNamed, partsName } from "./teardown-words.ts";

/** `bores 86.52 to 86.62 mm`, of parts that have no limit. */
export const valueTexts = (blocks: readonly Block[], units: string | undefined): readonly string[] =>
  blocks.flatMap(({ part, rows }) =>
    rows.map((row) => {
      const written = writtenOf(row, units);
      const all = [...row.cells.values()].toSorted((a, b) => a.value - b.value);
      const [low, high] = [all[0], all.at(-1)].map((item) =>
        item === undefined ? "" : numberOf(item, written),
      );
      const range = low === high ? (low ?? "") : `${low ?? ""} to ${high ?? ""}`;
      const name = row.name === "diameter" ? "" : `, ${row.name}`;
      return `${partsName(part)}${name} ${range}\u00a0${written.unit}`;
    }),
  );

/** What may stay in as it is; of what is only worn the figure is told. */
const quiet: readonly Standing[] = ["near", "inside", "no-limit"];

/** `pin 6 taper -0.0039 in outside (wear up to 0.0010)`, the worst first; of each label its worst figure before the others. */
export const figureTexts = (blocks: readonly Block[], units: string | undefined): readonly string[] => {
  const figures = blocks.flatMap(({ part, labels, rows }) =>
    labels.flatMap((label) =>
      rows
        .flatMap((row) => {
          const item = row.cells.get(label);
          const standing = item === undefined ? "no-limit" : standingOf(item);
          if (item === undefined || quiet.includes(standing)) return [];
          const written = writtenOf(row, units);
          const number = `${numberOf(item, written)}\u00a0${written.unit}`;
          const named = partNamed(part, label === "" ? [] : [label]);
          const limits = limitsText(item, written);
          const text = `${named} ${row.name} ${number} ${standingWords[standing]}${limits === "" ? "" : ` (${limits})`}`;
          return [{ text, standing }];
        })
        .map((figure, nth) => ({ ...figure, nth })),
    ),
  );
  return figures
    .toSorted((a, b) => a.nth - b.nth || standings.indexOf(a.standing) - standings.indexOf(b.standing))
    .map(({ text }) => text);
};
