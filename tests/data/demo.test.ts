import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

import { afterAll, expect, test } from "vitest";

const demo = fileURLToPath(new URL("../../data/demo/", import.meta.url));
const copy = mkdtempSync(join(tmpdir(), "sealtrend-demo-"));
afterAll(() => {
  rmSync(copy, { recursive: true });
});

const engines = ["boat", "mill", "pump", "tractor", "ultralight", "van"];
const read = (name: string): string => readFileSync(join(demo, name), "utf8");
const lines = (name: string): string[] => read(name).trimEnd().split("\n");
const written = [
  "logbook.json",
  "gauges.csv",
  ...engines.flatMap((engine) =>
    ["engine.json", "tests.csv", "services.csv", "notes.csv"].map((file) => `${engine}/${file}`),
  ),
  "pump/measurements.csv",
];

test("The demo logbook is what its generator writes, byte for byte", () => {
  execFileSync(process.execPath, [join(demo, "generate.mjs"), copy]);
  for (const name of written)
    expect(readFileSync(join(copy, name)), name).toEqual(readFileSync(join(demo, name)));
});

test("The generator writes every file of the demo logbook and no other", () => {
  const found = readdirSync(copy, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  expect(found).toHaveLength(written.length);
});

test("The demo logbook is small", () => {
  const bytes = [...written, "README.md"].reduce((sum, name) => sum + Buffer.byteLength(read(name)), 0);
  expect(bytes).toBeLessThan(60_000);
});

test("The demo logbook says that it is invented, and so does each engine", () => {
  expect(read("logbook.json")).toMatch(/"demo": true/);
  const names = ["logbook.json", ...engines.map((engine) => `${engine}/engine.json`)];
  expect(names.filter((name) => !/"name": ".*invented/.test(read(name)))).toEqual([]);
});

// Header: the logbook format, as the project's contract fixes it.
test.each(engines)("The tests of the %s stand under the full header of a logbook", (engine) => {
  const { cylinders } = JSON.parse(read(`${engine}/engine.json`)) as { cylinders: string[] };
  const [header, ...rows] = lines(`${engine}/tests.csv`);
  expect(header).toBe(
    [
      "test,date,meter,what,take,gauge,unit",
      ...cylinders.map((label) => `c${label}`),
      "altitude_m,station_pressure_hPa,qnh_hPa,air_temp_C,crank_rpm,crank_V,strokes,engine_temp,engine_temp_C",
      "throttle,plugs_out,release,regulated_psi,master_psi,by,set_aside,note",
    ].join(","),
  );
  const width = header?.split(",").length;
  for (const row of rows.filter((text) => !text.includes('"')))
    expect(row.split(","), row).toHaveLength(width ?? 0);
});

test.each(engines)(
  "The last test of the %s is clean: nothing pegged, doubtful, cold or set aside",
  (engine) => {
    const rows = lines(`${engine}/tests.csv`);
    const id = rows.at(-1)?.split(",")[0] ?? "";
    for (const row of rows.filter((text) => text.startsWith(id)))
      expect(row).not.toMatch(/[>?]|,cold,|set aside|half shut/);
  },
);

// Arithmetic by hand on the written readings, cylinder 3 over the mean of 1, 2 and 4, first take:
// 2014 125 / 125.67 = 0.995; 2026 95 / 118.67 = 0.80.
test("Anyone can see in the tractor's plain readings that cylinder 3 has lost a fifth", () => {
  const share = (id: string): number => {
    const cells = lines("tractor/tests.csv")
      .find((row) => row.startsWith(`${id},`))
      ?.split(",")
      .slice(7, 11)
      .map(Number);
    const [one = NaN, two = NaN, three = NaN, four = NaN] = cells ?? [];
    return three / ((one + two + four) / 3);
  };
  expect(share("2014-10-04a")).toBeCloseTo(0.995, 2);
  expect(share("2026-10-03a")).toBeCloseTo(0.8, 2);
});

test("The demo holds each kind of entry a logbook knows", () => {
  const all = engines.flatMap((engine) => lines(`${engine}/tests.csv`)).join("\n");
  for (const sample of [
    ",dry,",
    ",wet,",
    ",first-stroke,",
    ",leak-down,",
    ",heard,",
    ",oil,",
    ",>300,",
    "133?",
    ",seller,",
    ",cold,",
  ])
    expect(all).toContain(sample);
  for (const unit of ["psi", "kPa", "bar"]) expect(all).toContain(`,${unit},`);
});
