// The leak-down tests of an engine as one series: as read where tester and supply stay, restated where that is allowed, and
// begun anew where it is not. Another tester stretches the numbers, it does not shift them.

import type { HistoryService } from "../../history/index.ts";
import type { EngineRecord, Gauge } from "../../record/index.ts";
import type { CountedTest } from "../years/counted-test.ts";
import { fractionLost } from "../values/values.ts";
import { type LeakInstrument, leakInstrument } from "./leak-instrument.ts";
import { type NotCarried, type RestatedTest, restatedTest } from "./leak-restated.ts";

export interface LeakSeriesTest {
  readonly instrument: LeakInstrument;
  /** Absent: as read. */
  readonly restated?: RestatedTest;
  /** The tester whose series it stands in. */
  readonly countsAs?: string;
  /** A new series begins with it, and why. */
  readonly begins?: "another tester" | "another supply pressure";
  /** Why it could not be brought to the series before; with `begins`. */
  readonly notCarried?: NotCarried;
}

/** Supplies this far apart are another setting; judgement. */
const sameSupply = 0.05;

interface Placed {
  readonly one: CountedTest;
  readonly instrument: LeakInstrument;
}

/** What a series is held against: its first tester and supply, and the last reading of each cylinder on them. */
interface Reference {
  readonly instrument: LeakInstrument;
  readonly held: readonly (number | undefined)[];
}

/** One for each test, in their order. Tests that follow each other at one setting stay together: all of them are restated,
 *  or with the first of them a new series begins. Only tests that count can begin one. @source handbook/statistics.md L.10 */
export const leakSeries = (
  record: EngineRecord,
  counted: readonly CountedTest[],
): readonly LeakSeriesTest[] => {
  const placed = counted.map((one) => ({ one, instrument: leakInstrument(record, one.test, one.values) }));
  const found = new Map<Placed, Stood>();
  let reference: Reference | undefined;
  for (const stretch of stretchesOf(placed.filter(({ one }) => one.use === "full"))) {
    const stood = stoodIn(stretch, reference, record.gauges);
    stretch.forEach((each, k) => {
      const test = stood.tests[k];
      if (test !== undefined) found.set(each, { test, reference: stood.reference });
    });
    reference = stood.reference;
  }
  let last: Reference | undefined;
  return placed.map((each): LeakSeriesTest => {
    const own = found.get(each);
    if (own === undefined) return beside(each, last, record.gauges);
    last = own.reference;
    return own.test;
  });
};

interface Stood {
  readonly test: LeakSeriesTest;
  readonly reference: Reference;
}

/** Tests that follow each other at one setting. */
const stretchesOf = (placed: readonly Placed[]): readonly (readonly Placed[])[] => {
  const stretches: Placed[][] = [];
  for (const each of placed) {
    const open = stretches.at(-1);
    const head = open?.[0];
    if (open !== undefined && head !== undefined && isSameSetting(each.instrument, head.instrument))
      open.push(each);
    else stretches.push([each]);
  }
  return stretches;
};

/** How the tests of a stretch stand to the series before them, and what the next stretch is held against. */
const stoodIn = (
  stretch: readonly Placed[],
  reference: Reference | undefined,
  gauges: readonly Gauge[],
): { readonly tests: readonly LeakSeriesTest[]; readonly reference: Reference } => {
  const instruments = stretch.map(({ instrument }) => instrument);
  const [own] = instruments;
  if (own === undefined) throw new TypeError("stoodIn: a stretch holds at least one test");
  const asRead = instruments.map((instrument): LeakSeriesTest => ({ instrument }));
  const held = stretch.map(heldOf);
  if (reference === undefined || isSameSetting(own, reference.instrument)) {
    const instrument = reference?.instrument ?? own;
    return { tests: asRead, reference: { instrument, held: latest([reference?.held ?? [], ...held]) } };
  }
  const { instrument: other, held: before } = reference;
  const restated = stretch.map(({ one, instrument }) =>
    restatedTest(one.values, { own: instrument, other, gauges, before }),
  );
  const refused = restated.find((each) => "reason" in each);
  if (refused !== undefined) {
    const begins = own.gauge === other.gauge ? "another supply pressure" : "another tester";
    const [, ...rest] = asRead;
    return {
      tests: [{ instrument: own, begins, notCarried: refused }, ...rest],
      reference: { instrument: own, held: latest(held) },
    };
  }
  const carried = restated.flatMap((each) => ("reason" in each ? [] : [each]));
  return {
    tests: carried.map((each, k) => carriedTest(instruments[k] ?? own, each, other)),
    reference: { instrument: other, held: latest([before, ...carried.map(({ lnHeld }) => lnHeld)]) },
  };
};

/** A test that is shown and does not count. */
const beside = (
  { one, instrument }: Placed,
  reference: Reference | undefined,
  gauges: readonly Gauge[],
): LeakSeriesTest => {
  if (reference === undefined || isSameSetting(instrument, reference.instrument)) return { instrument };
  const { instrument: other, held: before } = reference;
  const restated = restatedTest(one.values, { own: instrument, other, gauges, before });
  return "reason" in restated ? { instrument } : carriedTest(instrument, restated, other);
};

const carriedTest = (
  instrument: LeakInstrument,
  restated: RestatedTest,
  { gauge }: LeakInstrument,
): LeakSeriesTest => ({ instrument, restated, ...(gauge === undefined ? {} : { countsAs: gauge }) });

/** ln of the fraction held by each cylinder. */
const heldOf = ({ one: { values }, instrument }: Placed): readonly (number | undefined)[] =>
  values.cells.map((cell, i) => {
    if (cell === undefined || cell.pegged) return undefined;
    const lost = fractionLost(values.holds, cell.value, instrument.supplies[i]);
    return lost === undefined || lost >= 1 ? undefined : Math.log1p(-lost);
  });

/** Of each cylinder the last of some lists that knows it. */
const latest = (lists: readonly (readonly (number | undefined)[])[]): readonly (number | undefined)[] =>
  lists.reduce((before, now) => now.map((held, i) => held ?? before[i]), []);

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
