// Names of engines that differ by capitals and blanks only: they may be one engine, and nobody but its owner knows.

import { byKey } from "@sealtrend/core/parts";

type Runs = ReadonlyMap<string, readonly [{ readonly line: number }, ...unknown[]]>;

/** What such names have in common. */
export const likeName = (name: string): string => name.normalize("NFC").toLowerCase().replace(/\s+/g, " ");

/** A sentence for each set of such names. @param runs - of each name, in the order of the file */
export const alikeNames = (runs: Runs): readonly string[] =>
  [...byKey([...runs], ([name]) => likeName(name)).values()]
    .filter((alike) => alike.length > 1)
    .map((alike) => {
      // two blanks are to be seen as two
      const names = alike.map(
        ([name, [{ line }]]) => `${JSON.stringify(name).replaceAll(" ", "\u00a0")} (line ${String(line)})`,
      );
      return `${names.join(", ")} differ by capitals or blanks only: ${String(alike.length)} engines here; if they are one, write one name in all its rows`;
    });
