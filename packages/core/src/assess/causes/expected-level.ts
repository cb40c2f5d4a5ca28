// What a sound engine would read on the day: its own first tests, else the maker's figure, else an estimate from its
// compression ratio. Without any of them an even loss cannot be seen.

import { expectedFault, expectedPressure } from "../../cranking/index.ts";
import type { Evidence } from "../../diagnosis/index.ts";
import { absolutePressure, speed as rpm } from "../../quantity/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import { mean, median } from "../../statistics/index.ts";
import type { EngineFigures } from "../figures.ts";
import { linkOrUnnamed } from "../gauges/linked-gauge.ts";
import { dryPair } from "../speed/dry-pair.ts";
import { coldAgainst } from "../trust/cold.ts";
import { isCompared, comparedPressure } from "../values/pressure-values.ts";
import { valuesOf } from "../values/values.ts";
import { workBreaks } from "../years/history-breaks.ts";
import { useOf } from "../years/history-input.ts";
import type { Assessed } from "./assessed.ts";

type Expected = NonNullable<Evidence["expected"]>;

/** At the speed the readings of the test are compared at, so that both stand on one footing; undefined where nothing
 *  tells. */
export const expectedLevel = (assessed: Assessed, figures: EngineFigures): Expected | undefined => {
  if (!assessed.cylinders.some(({ pressures: { dry } }) => isCompared(dry) && dry.value > 0))
    return undefined;
  return baseline(assessed, figures) ?? makers(assessed) ?? estimate(assessed);
};

/** So many of the first tests: one alone may have been a bad day; judgement. */
const first = 3;

/** ln of (the value cylinders are compared by / the fully corrected one), of the middle cylinder: what brings a figure at
 *  the reference speed to the speed of the day. Undefined where speed was refused. */
const toTheDay = ({ cylinders }: Assessed): number | undefined => {
  const shifts = cylinders.flatMap(({ pressures: { dry } }) =>
    isCompared(dry) && dry.full !== undefined ? [Math.log(comparedPressure(dry) / dry.full.corrected)] : [],
  );
  return shifts.length === 0 ? undefined : median(shifts);
};

/** The mean level of the first tests since the last work on all cylinders, by this gauge or one linked to it, or by none that was
 *  ever named, made as warm as this one or warmer. */
const baseline = (assessed: Assessed, figures: EngineFigures): Expected | undefined => {
  const { record, test } = assessed;
  const gauge = valuesOf(test, "dry")?.gauge;
  const levels: number[] = [];
  for (const before of testsBefore(record, test)) {
    if (levels.length === first) break;
    const link = linkOrUnnamed(record.gauges, valuesOf(before, "dry")?.gauge, gauge);
    const counts = useOf(record, before, figures) === "full" && coldAgainst(record, before) === undefined;
    if (link === undefined || !counts) continue;
    const pair = dryPair(record, figures, before, test);
    const read = pair.before.filter((ln) => ln !== undefined);
    if (read.length > 0) levels.push(median(read) + link.shift + footing(assessed, pair.after));
  }
  return levels.length === 0 ? undefined : { level: Math.exp(mean(levels)), from: "baseline" };
};

/** From the footing of a pair of tests to that of the readings of the day: ln, of the middle cylinder. */
const footing = ({ cylinders }: Assessed, after: readonly (number | undefined)[]): number => {
  const shifts = cylinders.flatMap(({ pressures: { dry } }, i) => {
    const paired = after[i];
    return isCompared(dry) && dry.value > 0 && paired !== undefined
      ? [Math.log(comparedPressure(dry)) - paired]
      : [];
  });
  return shifts.length === 0 ? 0 : median(shifts);
};

/** With dry readings, earlier days, since the last work that began a new history for all cylinders. */
const testsBefore = (record: EngineRecord, test: Test): readonly Test[] => {
  const tests = record.tests.flatMap((one) => (valuesOf(one, "dry") === undefined ? [] : [{ test: one }]));
  const place = tests.findIndex((one) => one.test === test);
  const starts = workBreaks(record, tests)
    .filter(({ newBaseline }) => newBaseline.length === record.engine.cylinders.length)
    .map(({ afterTests }) => afterTests)
    .filter((afterTests) => afterTests <= place);
  return tests
    .slice(Math.max(0, ...starts), Math.max(0, place))
    .flatMap((one) => (one.test.date < test.date ? [one.test] : []));
};

const makers = (assessed: Assessed): Expected | undefined => {
  const { new: asNew } = assessed.record.engine.compressionLimits;
  if (asNew === undefined || asNew <= 0) return undefined;
  return { level: asNew * Math.exp(toTheDay(assessed) ?? 0), from: "maker" };
};

/** Of a four-stroke with valves, from its compression ratio and whatever else is known. @source cranking, computed */
const estimate = ({ record, correction, speed, test }: Assessed): Expected | undefined => {
  const { geometry, ignition, use, cycle, porting } = record.engine;
  const { compressionRatio, ...sizes } = geometry;
  if (compressionRatio === undefined || ignition === "unknown") return undefined;
  if (cycle !== "four-stroke" || porting !== "valves") return undefined;
  const gauge = record.gauges.find(({ id }) => id === valuesOf(test, "dry")?.gauge);
  const turns = speed?.uneven?.to ?? speed?.from;
  const known = {
    kind: ignition === "spark" && use === "motorcycle" ? "motorcycle" : ignition,
    compressionRatio,
    ...sizes,
    airPressure: absolutePressure(correction.reference),
    ...(turns === undefined ? {} : { speed: rpm(turns) }),
    ...(gauge?.valveEnd === "gauge" && gauge.hose !== undefined ? { hose: gauge.hose } : {}),
  } as const;
  if (expectedFault(known) !== undefined) return undefined;
  const { expected, standing } = expectedPressure(known);
  return standing === "usable" ? { level: expected, from: "estimate" } : undefined;
};
