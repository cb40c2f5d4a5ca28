// The leak-down tests of an engine as one series: as read where tester and supply stay, restated where that is allowed, and
// begun anew where it is not. Another tester stretches the numbers, it does not shift them.

import type { HistoryService } from "../../history/index.ts";
import type { EngineRecord } from "../../record/index.ts";
import type { CountedTest } from "../years/counted-test.ts";
import { type LeakInstrument, leakInstrument } from "./leak-instrument.ts";
import { type RestatedTest, restatedTest } from "./leak-restated.ts";

export interface LeakSeriesTest {
  readonly instrument: LeakInstrument;
  /** Absent: as read. */
  readonly restated?: RestatedTest;
  /** The tester whose series it stands in. */
  readonly countsAs?: string;
  /** A new series begins with it, and why. */
  readonly begins?: "another tester" | "another supply pressure";
}

/** Supplies this far apart are another setting; judgement. */
const sameSupply = 0.05;

/** One for each test, in their order. Only tests that count can begin a series. @source handbook/statistics.md L.10 */
export const leakSeries = (
  record: EngineRecord,
  counted: readonly CountedTest[],
): readonly LeakSeriesTest[] => {
  let reference: LeakInstrument | undefined;
  return counted.map(({ test, values, use }): LeakSeriesTest => {
    const instrument = leakInstrument(record, test, values);
    if (reference === undefined || isSameSetting(instrument, reference)) {
      if (use === "full") reference ??= instrument;
      return { instrument };
    }
    const restated = restatedTest(values, { own: instrument, other: reference, gauges: record.gauges });
    if (restated !== undefined) {
      const { gauge } = reference;
      return { instrument, restated, ...(gauge === undefined ? {} : { countsAs: gauge }) };
    }
    if (use !== "full") return { instrument };
    const why = instrument.gauge === reference.gauge ? "another supply pressure" : "another tester";
    reference = instrument;
    return { instrument, begins: why };
  });
};

const isSameSetting = (one: LeakInstrument, other: LeakInstrument): boolean => {
  const [a, b] = [one, other].map(({ supplies }) => supplies.find((supply) => supply !== undefined));
  return (
    one.gauge === other.gauge && (a === undefined || b === undefined || Math.abs(a / b - 1) <= sameSupply)
  );
};

/** Contrasts begin anew with each series. */
export const seriesBreaks = (
  { engine }: EngineRecord,
  series: readonly LeakSeriesTest[],
): readonly HistoryService[] => {
  const all = engine.cylinders.map((_, i) => i);
  return series.flatMap(({ begins }, place) =>
    begins === undefined
      ? []
      : [{ afterTests: place, touched: all, newBaseline: all, why: begins, scale: "another" as const }],
  );
};
