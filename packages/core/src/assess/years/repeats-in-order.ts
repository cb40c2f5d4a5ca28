// Repeats of each cylinder by one gauge in one test, in the order they were taken.

import type { EngineRecord } from "../../record/index.ts";

/** Dry readings on the scale, of tests that are not set aside; cells of one reading are left out. */
export const repeatsInOrder = ({ tests, engine }: EngineRecord): readonly (readonly number[])[] =>
  tests
    .filter(({ setAside }) => setAside === undefined)
    .flatMap(({ rows }) => {
      const dry = rows.filter(({ what }) => what === "dry").toSorted((a, b) => a.take - b.take);
      const gauges = [...new Set(dry.map(({ gauge }) => gauge))];
      return gauges.flatMap((gauge) =>
        engine.cylinders.map((_, i) =>
          dry.flatMap((row) => {
            const cell = row.cells[i];
            return row.gauge === gauge && cell?.kind === "reading" && !cell.pegged ? [cell.value] : [];
          }),
        ),
      );
    })
    .filter((values) => values.length > 1);
