// Entries of the list of engines in a map that contradict each other: one name twice, or one engine that fires in two ways.

import type { EngineOfSheet } from "./import-map.ts";

export interface AtOdds {
  /** Its place in the list, from 0. */
  readonly at: number;
  readonly field: "sheet" | "ignition";
  readonly text: string;
  readonly expected: string;
}

/** @param engines - undefined where an entry could not be read */
export const enginesAtOdds = (engines: readonly (EngineOfSheet | undefined)[]): readonly AtOdds[] => {
  const [ids, fires] = [new Map<string, string>(), new Map<string, string>()];
  return engines.flatMap((one, at): readonly AtOdds[] => {
    if (one === undefined) return [];
    const { sheet, engine, ignition = "unknown" } = one;
    const earlier = ids.get(sheet) ?? engine;
    ids.set(sheet, engine);
    const known = fires.get(engine) ?? ignition;
    const isSaid = engine !== "" && ignition !== "unknown";
    if (isSaid) fires.set(engine, ignition);
    const twice: AtOdds = { at, field: "sheet", text: sheet, expected: "each name of the sheet once" };
    const expected = `"${known}", as another name of ${engine} has it`;
    return [
      ...(earlier === engine ? [] : [twice]),
      ...(isSaid && known !== ignition ? [{ at, field: "ignition", text: ignition, expected } as const] : []),
    ];
  });
};
