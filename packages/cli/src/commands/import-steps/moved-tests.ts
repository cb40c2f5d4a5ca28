// New tests whose figures stand on another day already, a day that the sheet no longer has: its date may have been corrected there.

import { type Engine, type ImportedTest, type Test, readingsKey, recordedKey } from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import { typedLine } from "../../options/quote.ts";
import { byKey } from "./by-key.ts";
import { readingPlace } from "./reading-place.ts";
import type { Standing } from "./recorded-standing.ts";

interface Records {
  readonly engine: Engine;
  readonly now: readonly Test[];
}

/** A caution for each; a recorded test is named once. @param standing - parallel to the tests */
export const movedTests = (
  tests: readonly ImportedTest[],
  standing: readonly Standing[],
  { engine, now }: Records,
): readonly Fault[] => {
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
        code: "import-moved",
        severity: "caution",
        found: `the figures of ${test.engine} on ${test.date} are recorded on ${there.date} (${there.id}), a day that the sheet does not have`,
        expected: "a test once, on its day",
        mend: `if only its day was corrected: ${typedLine(["amend", test.engine, ...line])}`,
        ...readingPlace(test, 0),
      },
    ];
  });
};

const isSameMeter = ({ meter }: ImportedTest, there: Test): boolean =>
  meter === undefined || there.meter === undefined || Number(meter) === there.meter;
