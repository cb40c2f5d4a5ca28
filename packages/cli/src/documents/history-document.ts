// The JSON of `history`, sealtrend/history@1: slopes and contrasts in ln units, a year on dates, a 1000 units on a meter.

import {
  type CylinderHistory,
  type HistoryAssessment,
  type KindHistory,
  type NextTest,
  type ServiceResult,
  type TestSpeed,
  fromSi,
  linkedGauges,
  placeText,
} from "@sealtrend/core/parts";
import { holesDocument, testerChangesDocument } from "./leak-history-document.ts";
import { speedDocument } from "./speed-document.ts";

/** The top level is the cranking history, or the leak-down where there is no other.
 *  @param step - what `show` names first of the newest test, where a cylinder alarms */
export const historyDocument = (assessment: HistoryAssessment, step?: Omit<NextTest, "by">): object => {
  const { record, cranking, leakDown } = assessment;
  const { interval, ...figures } = assessment.repeatability;
  const repeatability = { ...figures, low: interval?.low, high: interval?.high };
  const main = cranking ?? leakDown;
  const head = { schema: "sealtrend/history@1", engine: { id: record.engine.id, name: record.engine.name } };
  if (main === undefined) return { ...head, tests: [], cylinders: [], epochs: [], repeatability };
  const second = cranking === undefined ? undefined : leakDown;
  return {
    ...head,
    kind: cranking === undefined ? "leak-down" : "cranking",
    ...kindDocument(main),
    gaugeLinks: linksDocument(record, [cranking, leakDown]),
    repeatability,
    leakDown: second === undefined ? undefined : kindDocument(second),
    next: step === undefined ? undefined : { code: step.code, text: step.text, minutes: step.minutes },
  };
};

/** How each gauge that was brought to another one stands to it. */
const linksDocument = (
  { gauges }: HistoryAssessment["record"],
  kinds: readonly (KindHistory | undefined)[],
) => {
  const links = linkedGauges(
    gauges,
    kinds.flatMap((kind) => kind ?? []),
  );
  return links.length === 0
    ? undefined
    : links.map(({ gauge, counts, factor, uncertainty }) => ({
        gauge,
        countsAs: counts,
        factor,
        u_lnFactor: uncertainty,
      }));
};

const nulls = (values: readonly (number | undefined)[]): (number | null)[] =>
  values.map((value) => value ?? null);

const kindDocument = (kind: KindHistory) => {
  const { result, counted } = kind;
  const place = (x: number | undefined): string | number | undefined =>
    x === undefined ? undefined : placeText(kind, x);
  const dateOf = (index: number | undefined): string | undefined => {
    const id = index === undefined ? undefined : result.tests[index]?.ids[0];
    return counted.find(({ test }) => test.id === id)?.test.date;
  };
  const { trend, word, effects } = result.common;
  return {
    axis: {
      kind: result.axis.kind,
      unit: result.axis.unit,
      slopePer: result.axis.slopePer,
      perYear: result.axis.perYear,
    },
    tests: result.tests.map(({ ids, use, gauge, countsAs, x }) => {
      const place = counted.findIndex((one) => one.test.id === ids[0]);
      const test = counted[place]?.test;
      return {
        id: ids[0],
        ids,
        date: test?.date,
        meter: test?.meter,
        x,
        usedFor: use,
        gauge,
        countsAs,
        ...speedOfTest(kind.speeds[place]),
      };
    }),
    cylinders: result.cylinders.map((cylinder) => ({
      ...cylinderDocument(cylinder, place, dateOf),
      ...levelsDocument(kind, cylinder),
      ...holesDocument(kind, cylinder.label),
    })),
    common: {
      word,
      slope: trend?.slope,
      u_slope: trend?.standardError,
      p: trend?.p,
      t: trend?.t,
      df: trend?.df,
      lossBound: trend?.lossBound,
      lossLeast: trend?.lossLeast,
      leastLossShown: trend?.leastLossShown,
      effects: nulls(effects),
    },
    epochs: result.epochs.map(({ from, to, cylinders, why }) => ({
      from: dateOf(from),
      to: dateOf(to),
      fromTest: from === undefined ? undefined : result.tests[from]?.ids[0],
      toTest: to === undefined ? undefined : result.tests[to]?.ids[0],
      cylinders,
      why,
    })),
    services: result.services.map((service) => ({
      ...serviceDocument(service, dateOf),
      fromTest: result.tests[service.before]?.ids[0],
    })),
    testerChanges: testerChangesDocument(kind),
    weakest: result.weakest,
    further: furtherDocument(kind),
    scatter: result.scatter,
    manyLooks: result.manyLooks === "yes",
  };
};

/** How many further tests would show a loss, 8 chances in 10: of one cylinder, and as `whole` of all alike. */
const furtherDocument = ({ further }: KindHistory) => {
  if (further === undefined) return undefined;
  const { spacing, one, ...rest } = further;
  return { ...rest, spacing_years: spacing, spacing_months: 12 * spacing, ...one };
};

/** `correctedFor` says which value stands in the numbers: fully corrected only where speed was refused for no test of the
 *  stretch between two works on all cylinders. */
const speedOfTest = (own: TestSpeed | undefined) =>
  own === undefined
    ? {}
    : {
        correctedFor: own.counts === "full" ? "air and speed" : "air",
        speed: speedDocument(own.speed),
      };

/** Degrees of freedom of a scatter that was assumed, not measured, are no number: left out. */
const serviceDocument = (
  { why, against, steps, adjoining }: ServiceResult,
  dateOf: (place: number) => string | undefined,
) => ({
  why,
  against,
  steps: steps.map(({ df, ...step }) => ({ ...step, ...(Number.isFinite(df) ? { df } : {}) })),
  adjoining: adjoining?.map(({ from, to, ...rise }) => ({ ...rise, from: dateOf(from), to: dateOf(to) })),
});

/** Its own readings, as pressures or as the part held. */
const levelsDocument = ({ kind }: KindHistory, { levels }: CylinderHistory) => {
  const values = levels.map((ln) => (ln === undefined ? null : Math.exp(ln)));
  return kind === "dry"
    ? { corrected_kPa: values.map((value) => (value === null ? null : fromSi(value, "kPa"))) }
    : { held: values };
};

const cylinderDocument = (
  cylinder: CylinderHistory,
  place: (x: number | undefined) => string | number | undefined,
  dateOf: (index: number | undefined) => string | undefined,
) => {
  const { theilSen, limit, absolute, change, shape } = cylinder;
  return {
    label: cylinder.label,
    course: cylinder.course,
    leaning: cylinder.leaning,
    mirrored: cylinder.mirrored === "no" ? undefined : cylinder.mirrored,
    alarm: cylinder.alarms.length > 0,
    alarms: cylinder.alarms,
    since: dateOf(cylinder.since),
    count: cylinder.count,
    contrasts: nulls(cylinder.contrasts),
    ratios: nulls(cylinder.ratios),
    meanRatio: cylinder.meanRatio,
    noCompression: cylinder.noCompression.map(dateOf),
    theilSen,
    pooled: cylinder.pooled,
    ownScatter: cylinder.ownScatter,
    twoBelow: cylinder.twoBelow,
    lossBound: cylinder.lossBound,
    leastLossShown: cylinder.leastLossShown,
    change:
      change === undefined
        ? undefined
        : { t: change.t, flagged: change.flagged, change: change.change, test: dateOf(change.test) },
    early:
      cylinder.early === undefined ? undefined : { ...cylinder.early, test: dateOf(cylinder.early.test) },
    wentOn: dateOf(cylinder.wentOn),
    cameBack: dateOf(cylinder.cameBack),
    lowAgain: dateOf(cylinder.lowAgain),
    shape: shape === undefined ? undefined : { ...shape, firstAfter: dateOf(shape.firstAfter) },
    limit:
      limit === undefined
        ? undefined
        : {
            kind: limit.kind,
            value: limit.value,
            lastRatio: limit.lastRatio,
            ...crossingDocument(limit, place),
          },
    absolute:
      absolute === undefined
        ? undefined
        : {
            kind: "minimum",
            minimum_kPa: fromSi(Math.exp(absolute.minimum), "kPa"),
            last_kPa: fromSi(Math.exp(absolute.last), "kPa"),
            test: dateOf(absolute.test),
            slope: absolute.trend?.slope,
            u_slope: absolute.trend?.standardError,
            p: absolute.trend?.p,
            df: absolute.trend?.df,
            ...(absolute.trend === undefined ? {} : crossingDocument(absolute.trend, place)),
            stays: absolute.stays,
          },
    stays: cylinder.stays,
  };
};

type Crossing = Omit<NonNullable<CylinderHistory["limit"]>, "kind" | "value" | "lastRatio">;

const crossingDocument = (
  { decline, leastLossShown, crossing, low, high, notBefore }: Crossing,
  place: (x: number | undefined) => string | number | undefined,
) => ({
  decline,
  leastLossShown,
  crossing: place(crossing),
  low: place(low),
  high: place(high),
  notBefore: place(notBefore),
});
