// Writes the invented demo logbook: `node data/demo/generate.mjs [DIR]`, byte for byte the same on every run.

import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

import { boat } from "./generator/boat.mjs";
import { gauges, logbook } from "./generator/farm.mjs";
import { mill } from "./generator/mill.mjs";
import { pump } from "./generator/pump.mjs";
import { normalFrom, uniformFrom } from "./generator/random.mjs";
import { conditionColumns, rowsOf } from "./generator/tests.mjs";
import { tractor } from "./generator/tractor.mjs";
import { ultralight } from "./generator/ultralight.mjs";
import { van } from "./generator/van.mjs";

/** One seed for the whole logbook; each engine draws from its own stream, seed + its place. */
const seed = 2026;

const engines = [tractor, van, boat, mill, pump, ultralight];

const gaugeColumns = (
  "gauge,kind,unit,full_scale,class_percent,division,reads_high,valve_end,hose_cm3,restrictor_mm," +
  "restrictor_length_mm,profile,restrictor_cd,regulated,dial,matched,known_holes,restrictor_tol_mm," +
  "link_to,link_factor,link_u,link_date,note"
).split(",");
const serviceColumns = ["date", "meter", "what", "cylinders", "new_baseline", "by", "note"];
const noteColumns = ["date", "meter", "what", "value", "unit", "cylinders", "by", "note"];
const measurementColumns =
  "teardown,date,part,label,at,quantity,value,unit,instrument,resolution,by,state,note".split(",");

const quoted = (cell) => (/[",\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
const csv = (columns, rows) =>
  [columns, ...rows].map((row) => row.map((cell) => quoted(String(cell ?? ""))).join(",")).join("\n") + "\n";

/** `[null, 0.1]` on a line of its own, as a person writes it. */
const withPairsOnALine = (json) =>
  json.replace(/\[\s+((?:null|[\d.]+)(?:,\s+(?:null|[\d.]+))*)\s+\]/g, (_, pair) => `[${pair.replace(/\s+/g, " ")}]`);

const filesOf = (engine, place) => {
  const normal = normalFrom(uniformFrom(seed + place));
  const cells = engine.json.cylinders.map((label) => `c${label}`);
  const testColumns = [
    ...["test", "date", "meter", "what", "take", "gauge", "unit"],
    ...cells,
    ...conditionColumns,
    ...["by", "set_aside", "note"],
  ];
  const tests = engine.tests.flatMap((test) => rowsOf(engine, test, normal));
  return [
    [`${engine.id}/engine.json`, `${withPairsOnALine(JSON.stringify(engine.json, undefined, 2))}\n`],
    [`${engine.id}/tests.csv`, csv(testColumns, tests)],
    [`${engine.id}/services.csv`, csv(serviceColumns, engine.services)],
    [`${engine.id}/notes.csv`, csv(noteColumns, engine.notes)],
    ...(engine.measurements === undefined
      ? []
      : [[`${engine.id}/measurements.csv`, csv(measurementColumns, engine.measurements)]]),
  ];
};

const gaugeRows = gauges.map((gauge) => gaugeColumns.map((column) => gauge[column]));
const files = [
  ["logbook.json", `${JSON.stringify(logbook, undefined, 2)}\n`],
  ["gauges.csv", csv(gaugeColumns, gaugeRows)],
  ...engines.flatMap((engine, place) => filesOf(engine, place)),
];

const target = process.argv[2] ?? dirname(fileURLToPath(import.meta.url));
for (const [name, text] of files) {
  const path = join(target, name);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}
