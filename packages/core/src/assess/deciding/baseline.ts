// How a cylinder reads against its own first tests.

import { mean } from "../../statistics/index.ts";
import type { Deciding } from "./deciding.ts";

/** So many first tests make a baseline: one alone may have been a bad day; judgement. */
const first = 3;

/** Places of earlier tests that count, in order. */
export const tellingTests = ({ history }: Deciding, before: number): readonly number[] =>
  (history.cranking?.result.tests ?? []).flatMap(({ use }, at) =>
    use === "full" && at < before ? [at] : [],
  );

/** Reading of the test over the mean of the first ones since the last work on the cylinder, at most three; undefined where
 *  it is among the first itself and alone. */
export const baselineShare = (deciding: Deciding, label: string, test: string): number | undefined => {
  const { result } = deciding.history.cranking ?? {};
  const own = result?.cylinders.find((one) => one.label === label);
  const place = result?.tests.findIndex(({ ids }) => ids.includes(test)) ?? -1;
  const now = own?.levels[place];
  if (own === undefined || now === undefined) return undefined;
  const before = tellingTests(deciding, place)
    .filter((at) => at >= (own.since ?? 0))
    .flatMap((at) => own.levels[at] ?? [])
    .slice(0, first);
  return before.length === 0 ? undefined : Math.exp(now - mean(before));
};
