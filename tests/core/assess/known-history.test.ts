// A history that is known already saves work and changes nothing. Engines generated.

import { type EngineRecord, assessHistory, assessTest, readEngineRecord } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { fleetEngine } from "../../cli/yard/fleet.ts";

const services = { file: "services.csv", text: "date,what\n2099-01-01,oil change\n" };

const fleetRecord = (number: number, later?: typeof services): EngineRecord => {
  const { id, cylinders, ignition, tests } = fleetEngine(number);
  const engine = { file: "engine.json", text: JSON.stringify({ cylinders, ignition }) };
  const files = { id, engine, tests: { file: "tests.csv", text: tests } };
  const { record } = readEngineRecord({ ...files, ...(later === undefined ? {} : { services: later }) }, [], {
    demo: false,
  });
  if (record === undefined) throw new Error(`${id} has no record`);
  return record;
};

test("the last test, an earlier one and one before a service are assessed the same with it", () => {
  let told = 0;
  for (let number = 0; number < 40; number += 1) {
    for (const record of [fleetRecord(number), fleetRecord(number, services)]) {
      const history = assessHistory(record);
      for (const one of record.tests.slice(-2)) {
        const alone = assessTest(record, one);
        expect(assessTest(record, one, { history })).toEqual(alone);
        if (alone.evidence?.cylinders.some(({ onset }) => onset !== undefined) === true) told += 1;
      }
    }
  }
  expect(told).toBeGreaterThan(10);
});
