// An engine with so many cylinders and one test of it, invented.

import { type EngineRecord, readEngineRecord } from "@sealtrend/core";

export const recordOf = (cylinders: number): EngineRecord => {
  const labels = Array.from({ length: cylinders }, (_, i) => String(i + 1));
  const engine = { file: "engine.json", text: JSON.stringify({ cylinders: labels, ignition: "spark" }) };
  const header = ["test", "date", "what", "unit", ...labels.map((label) => `c${label}`)];
  const row = ["2026-05-03a", "2026-05-03", "dry", "psi", ...labels.map((_, i) => String(150 + (i % 3)))];
  const tests = { file: "tests.csv", text: `${header.join(",")}\n${row.join(",")}\n` };
  const { record } = readEngineRecord({ id: "pump", engine, tests }, [], { demo: false });
  if (record === undefined) throw new Error("recordOf: no record");
  return record;
};
