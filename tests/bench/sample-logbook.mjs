// A logbook to measure on: 60 dry tests of an invented six-cylinder engine, one cylinder wearing. Same seed, same bytes.

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { evenly } from "../random.mjs";

const labels = ["1", "2", "3", "4", "5", "6"];
const seed = 20_261;

const engine = {
  schema: "sealtrend/engine@1",
  name: "Bench engine (invented)",
  use: "road",
  cylinders: labels,
  banks: [labels],
  firingOrder: ["1", "5", "3", "6", "2", "4"],
  cycle: "four-stroke",
  porting: "valves",
  ignition: "spark",
  meter: "km",
  homeAltitude_m: 350,
  compressionRelease: "none",
  limits: { compression: { minimum: "120psi", lowestToHighest: 0.75, source: "invented" } },
};

const conditions =
  "altitude_m,station_pressure_hPa,air_temp_C,crank_rpm,strokes,engine_temp,throttle,plugs_out";
const header = `test,date,meter,what,take,gauge,unit,${labels.map((label) => `c${label}`).join(",")},${conditions},by,set_aside,note`;

const row = (number, random) => {
  const date = `${String(2006 + Math.floor(number / 3))}-${["03", "07", "11"][number % 3]}-12`;
  const noise = () => (random() + random() + random() - 1.5) * 4;
  const readings = labels.map((label) => Math.round(170 - (label === "3" ? number * 0.4 : 0) + noise()));
  const weather = [350, Math.round(965 + noise()), Math.round(15 + noise()), Math.round(230 + noise())];
  return [
    `${date}a`,
    date,
    80_000 + number * 2_500,
    "dry",
    1,
    "red",
    "psi",
    ...readings,
    ...weather,
    6,
    "warm",
    "open",
    "all",
    "me",
    "",
    "",
  ].join(",");
};

/** Writes the logbook into `folder`. */
export const writeSampleLogbook = (folder, tests = 60) => {
  const random = evenly(seed);
  const rows = Array.from({ length: tests }, (_, number) => row(number, random));
  mkdirSync(join(folder, "bench"), { recursive: true });
  writeFileSync(
    join(folder, "logbook.json"),
    `${JSON.stringify({ schema: "sealtrend/logbook@1", homeAltitude_m: 350 })}\n`,
  );
  writeFileSync(
    join(folder, "gauges.csv"),
    "gauge,kind,unit,full_scale,class_percent\nred,compression,psi,300,2.5\n",
  );
  writeFileSync(join(folder, "bench", "engine.json"), `${JSON.stringify(engine, null, 2)}\n`);
  writeFileSync(join(folder, "bench", "tests.csv"), `${[header, ...rows].join("\n")}\n`);
  writeFileSync(join(folder, "bench", "services.csv"), "date,meter,what,cylinders,new_baseline,by,note\n");
};
