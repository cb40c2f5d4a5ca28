// What `history` says where the readings stand as cranked: a slower starter looks like a worn engine.

import type { KindHistory } from "@sealtrend/core";
import { count, counted, joined } from "../words.ts";

/** Fastest to slowest, from which speeds differ; some 1 % of a reading. */
const differs = 1.03;

/** Why the whole engine may only seem to fall. Empty where its tests are too few for a word, or stand at one speed. */
export const crankedSentence = ({ counted: tests, speeds, result }: KindHistory): readonly string[] => {
  const { word, since } = result.common;
  if (word === "too-short-to-tell") return [];
  const ids = new Set(result.tests.slice(since).flatMap(({ ids: own }) => own));
  const stand = tests.flatMap(({ test, use }, i) => {
    const own = speeds[i];
    return use === "full" && own?.counts === "air" && ids.has(test.id) && own.speed !== undefined
      ? [{ id: test.id, from: own.speed.from }]
      : [];
  });
  const known = stand.flatMap(({ from }) => from ?? []);
  const blank = stand.flatMap(({ id, from }) => (from === undefined ? [id] : []));
  if (stand.length > 0 && known.length === 0)
    return [
      word === "falling"
        ? "Cranking speed not recorded: the fall is more than a usual slower starter makes, yet a part of it may be that."
        : `Cranking speed not recorded: a slower starter would look like wear${result.cylinders.length === 1 ? "" : " of all"}.`,
    ];
  const [first = 0, last = 0] = [known[0], known.at(-1)];
  const differ = Math.max(...known) > differs * Math.min(...known);
  if (blank.length === 0 && !differ) return [];
  const not =
    blank.length === 0
      ? ""
      : `; ${blank.length > 2 ? counted(blank.length, "test") : joined(blank)} not recorded`;
  const rpm = (speed: number): string => speed.toFixed(0);
  const may =
    word === "falling"
      ? "the fall is more than that usually makes, yet a part of it may be that"
      : "a fall of the whole engine may be that alone";
  const stood = `and the readings stand as cranked: ${may}.`;
  if (!differ)
    return [
      `Cranking speed not recorded in ${count(blank.length)} of ${counted(stand.length, "test")}, ${stood}`,
    ];
  return first > differs * last
    ? [`Cranked slower over the years (${rpm(first)} to ${rpm(last)} rpm${not}), ${stood}`]
    : [
        `Speeds differ or are not known (${rpm(Math.min(...known))} to ${rpm(Math.max(...known))} rpm${not}), ${stood}`,
      ];
};
