// The JSON of `yard`, sealtrend/yard@1: one document an engine, each on a line of its own.

import type { YardRow } from "@sealtrend/core/parts";
import type { YardAnswer } from "../yard/answer-job.ts";
import { toldEntries } from "../render/faults.ts";
import { decisionText, whyText } from "../render/yard/yard-words.ts";

/** What is undefined is left out when the document is written. */
export const yardDocument = ({ engine, row, problems }: YardAnswer) => {
  const errors = problems.filter(({ severity }) => severity === "error");
  return {
    schema: "sealtrend/yard@1",
    engine,
    ...(row === undefined ? { why: "its record has a fault" } : rowDocument(row, engine)),
    ...(errors.length === 0 ? { problems: undefined, more: undefined } : toldEntries(errors)),
  };
};

const rowDocument = (row: YardRow, engine: string) => {
  const { worst, course, decision, due, meter, test } = row;
  return {
    name: row.name === engine ? undefined : row.name,
    cylinders: row.cylinders,
    tests: row.tests,
    last: test?.date,
    test: test?.id,
    trust: test?.trust,
    trustReasons: test?.reasons,
    datedAhead: row.ahead,
    meter: meter?.reading,
    meterUnit: meter?.unit,
    worst:
      worst === undefined
        ? undefined
        : {
            label: worst.label,
            standing: worst.standing,
            belowMedian: worst.belowMedian,
            belowOthers: worst.belowOthers,
            lost: worst.leak?.lost,
            heldBelowOthers: worst.leak?.belowOthers,
          },
    low: row.low?.map((one) => ({
      label: one.label,
      standing: one.standing,
      belowOthers: one.belowOthers,
      held: one.held === "nothing" ? one.held : undefined,
      lost: one.leak?.lost,
      limitsMissed: one.limitsMissed.length === 0 ? undefined : one.limitsMissed,
      repeats: one.repeats,
    })),
    leaking: row.leaking,
    unread: row.unread,
    course: course?.code,
    courseOf: course?.label,
    courseWentOn: course?.wentOn,
    courseCameBack: course?.cameBack,
    courseMirrored: course?.mirrored,
    slopePerYear: course?.perYear,
    slopeLowPerYear: course?.perYearLow,
    slopeHighPerYear: course?.perYearHigh,
    decision: decision === undefined ? undefined : { ...decision, text: decisionText(decision) },
    why: whyText(row),
    due: due.date,
    dueSince: due.since,
    dueOf: due.of,
    dueMeter: due.meter,
    licensed: row.licensed,
    byLuck: row.byLuck,
    byLuckIs: row.byLuckIs,
  };
};
