// Which tests of a sheet are recorded already, also where the record was amended since.

import {
  type Engine,
  type ImportedTest,
  type Recorded,
  type Test,
  alreadyRecorded,
} from "@sealtrend/core/parts";

/** How a test of the sheet stands to the logbook; undefined where nothing of it is there. */
export type Standing = Recorded | undefined;

export interface Records {
  readonly engine: Engine;
  readonly now: readonly Test[];
  /** The same before any amendment; the same list where there was none. */
  readonly first: readonly Test[];
}

/** Parallel to the tests. */
export const standings = (
  tests: readonly ImportedTest[],
  { engine, now, first }: Records,
): readonly Standing[] => {
  const plain = alreadyRecorded(tests, { engine, tests: now });
  const open = tests.flatMap((test, at) => (plain[at]?.match === "same" ? [] : [{ test, at }]));
  if (first === now || open.length === 0) return plain.map(judged);
  const taken = new Set(plain.flatMap((one) => (one?.match === "same" ? [one.id] : [])));
  const earlier = alreadyRecorded(
    open.map(({ test }) => test),
    { engine, tests: first.filter(({ id }) => !taken.has(id)) },
  );
  const amended = new Map(open.map(({ at }, i) => [at, earlier[i]] as const));
  return tests.map((_, i) => {
    const before = amended.get(i);
    const isThere = before?.match === "same" || (before?.match === "part" && before.missing.length === 0);
    return isThere ? before : judged(plain[i]);
  });
};

/** A test of that day without a reading of the same kind is another test. One that has some of the rows and others of the same
 *  kind besides may have been changed by hand: then nobody can say what the missing rows are. */
const judged = (standing: Standing): Standing => {
  if (standing === undefined || standing.match === "same") return standing;
  const { match, missing, others } = standing;
  const isChanged = missing.some(({ what }) => others.includes(what));
  if (match === "other") return isChanged ? standing : undefined;
  return isChanged ? { ...standing, match: "other" } : standing;
};
