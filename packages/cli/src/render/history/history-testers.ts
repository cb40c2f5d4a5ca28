// Where the leak-down tester changed in a history: what became of the readings, and what the leaks say as holes.

import type { KindHistory } from "@sealtrend/core";
import { count, fixed, joined } from "../words.ts";

type Change = KindHistory["testerChanges"][number];

/** @param shown - labels of the cylinders that the screen is about */
export const testerSentences = (
  { testerChanges, counted }: KindHistory,
  shown: readonly string[],
): readonly string[] =>
  testerChanges.flatMap((change) => {
    const since = counted.find(({ test }) => test.id === change.toTest)?.test.date.slice(0, 7) ?? "";
    const restated =
      change.carried === "restated"
        ? [
            `From ${since} on by another tester${namesText(change)}: its readings are restated, the history goes on.`,
          ]
        : [];
    return [...restated, ...holesText(change, shown)];
  });

const namesText = ({ fromGauge, toGauge }: Change): string =>
  fromGauge === undefined || toGauge === undefined ? "" : ` (${toGauge}, before ${fromGauge})`;

const mm = (metres: number): string => fixed(metres * 1e3, 2);

const noneIn = (rest: readonly string[], of: number): string => {
  if (rest.length === of) return of === 1 ? "" : " in any";
  return ` in ${rest.length > 4 ? `the other ${count(rest.length)}` : joined(rest)}`;
};

/** Holes that changed beyond the dials and the day stand by name, the others in one clause. */
const holesText = ({ holes }: Change, labels: readonly string[]): readonly string[] => {
  const own = holes.filter(({ label }) => labels.includes(label));
  const moved = own.filter(({ shown }) => shown === "yes");
  const [first] = own;
  if (first === undefined) return [];
  const each = (moved.length > 0 ? moved : own.slice(0, 1)).map(
    ({ label, before, after }) =>
      `${label} ${mm(before.hole)} ± ${mm(before.uHole)}, then ${mm(after.hole)} ± ${mm(after.uHole)} mm`,
  );
  const rest = own.filter(({ shown }) => shown === "no").map(({ label }) => label);
  const among = own.length > 1 && moved.length === 0 ? "such as " : "";
  const none = rest.length === 0 ? "" : `; no change shown${noneIn(rest, own.length)}`;
  return [`As holes across that change: ${among}${each.join("; ")}${none}.`];
};
