// A record as it stood on a day gone by.

import type { EngineRecord } from "@sealtrend/core";

/** What was recorded until the end of a day; all of it where none is named. */
export const recordAsOf = (record: EngineRecord, day: string | undefined): EngineRecord =>
  day === undefined
    ? record
    : {
        ...record,
        tests: record.tests.filter(({ date }) => date <= day),
        services: record.services.filter(({ date }) => date <= day),
        notes: record.notes.filter(({ date }) => date <= day),
        measurements: record.measurements.filter(({ date }) => date <= day),
      };
