// Where air was heard, without what cannot be: a valve in an engine that has none, a neighbour that does not stand next.

import type { Heard } from "../../record/index.ts";
import type { Assessed } from "./assessed.ts";

/** In the engine's order; undefined where nobody listened, or where nothing heard can be so. */
export const heardEvidence = ({
  record: { engine },
  test,
  trust,
}: Pick<Assessed, "record" | "test" | "trust">): readonly (readonly Heard[] | undefined)[] =>
  engine.cylinders.map((label, i) => {
    const heard = trust.voids === undefined ? test.heard?.[i] : undefined;
    const kept = heard?.filter(({ place, neighbour }) => {
      if (place === "intake") return engine.porting === "valves";
      if (place === "exhaust") return engine.porting !== "ports";
      return place !== "neighbour" || neighbour === undefined || !standApart(engine.banks, label, neighbour);
    });
    return heard === undefined || (kept?.length === 0 && heard.length > 0) ? undefined : kept;
  });

/** Whether two cylinders stand in the banks, and not next to each other. Never by their numbers.
 *  @source handbook/trade.md D */
export const standApart = (banks: readonly (readonly string[])[], label: string, other: string): boolean => {
  const known = banks.flat();
  if (!known.includes(label) || !known.includes(other)) return false;
  return !banks.some((bank) => {
    const [one, two] = [bank.indexOf(label), bank.indexOf(other)];
    return one !== -1 && two !== -1 && Math.abs(one - two) === 1;
  });
};
