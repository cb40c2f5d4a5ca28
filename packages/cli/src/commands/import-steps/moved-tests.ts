// New tests whose figures stand on another day already, a day that the sheet no longer has: its date may have been corrected there.

import {
  type Engine,
  type ImportedTest,
  type Test,
  byKey,
  readingsKey,
  recordedKey,
} from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import { typedLine } from "../../options/quote.ts";
import { readingPlace } from "./reading-place.ts";
import type { Standing } from "./recorded-standing.ts";

interface Records {
  readonly engine: Engine;
  readonly now: readonly Test[];
}

/** One whose day may have been corrected, without its mend: that depends on whether it is in. */
export interface MovedTest {
  readonly said: Omit<Fault, "mend">;
  /** The command that corrects the day of the recorded one. */
  readonly amend: string;
}

/** One for each; a recorded test is named once. @param standing - parallel to the tests */
export const movedTests = (
  tests: readonly ImportedTest[],
  standing: readonly Standing[],
  { engine, now }: Records,
): readonly MovedTest[] => {
  const days = new Set(tests.map(({ date }) => date));
  const gone = now.filter(({ date, setAside }) => !days.has(date) && setAside === undefined);
  if (gone.length === 0) return [];
  const byReadings = byKey(gone, (one) => recordedKey(one, engine.cylinders));
  const named = new Set<string>();
  return tests.flatMap((test, i) => {
    if (standing[i] !== undefined) return [];
    const there = (byReadings.get(readingsKey(test)) ?? []).find(
      (one) => !named.has(one.id) && isSameMeter(test, one),
    );
    if (there === undefined) return [];
    named.add(there.id);
    const line = ["--test", there.id, "--date", test.date, "--because", "the sheet says so"];
    return [
      {
        said: {
          code: "import-moved",
          severity: "caution",
          found: `the figures of ${test.engine} on ${test.date} are recorded on ${there.date} (${there.id}), a day that the sheet does not have`,
          expected: "a test once, on its day",
          ...readingPlace(test, 0),
        },
        amend: typedLine(["amend", test.engine, ...line]),
      },
    ];
  });
};

const isSameMeter = ({ meter }: ImportedTest, there: Test): boolean =>
  meter === undefined || there.meter === undefined || Number(meter) === there.meter;
