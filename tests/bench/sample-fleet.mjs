// A CSV of many invented engines to measure on: spark and diesel, four and six cylinders, some wearing, some with one bad reading.
// Same seed, same bytes.

import { closeSync, openSync, writeSync } from "node:fs";
import { evenly } from "../random.mjs";

const labels = ["1", "2", "3", "4", "5", "6"];
const conditions = "altitude_m,air_temp_C,crank_rpm,engine_temp";
const fleetHeader = `engine,ignition,test,date,meter,what,take,gauge,unit,${labels.map((label) => `c${label}`).join(",")},${conditions},by,set_aside,note\n`;

/** The rows of one engine. @param number - from 0: its name, and its readings by the seed */
const fleetEngine = (number, tests, seed = 20_261) => {
  const random = evenly(seed + number * 7919);
  const name = `e${String(number).padStart(6, "0")}`;
  const isDiesel = random() < 0.25;
  const cylinders = random() < 0.5 ? 4 : 6;
  const base = isDiesel ? 380 : 165;
  const scatter = () => (random() + random() + random() - 1.5) * 0.035 * base;
  const worn = random() < 0.1 ? Math.floor(random() * cylinders) : -1;
  const rows = Array.from({ length: tests }, (_, k) => {
    const date = `${String(1996 + Math.floor(k / 2))}-${k % 2 === 0 ? "04" : "10"}-${String(1 + Math.floor(random() * 28)).padStart(2, "0")}`;
    const day = scatter() / 2;
    const readings = labels.map((_, i) =>
      i >= cylinders
        ? ""
        : Math.round(
            base +
              day +
              scatter() / 2 -
              (i === worn ? base * 0.005 * k : 0) -
              (random() < 0.01 ? base * 0.08 : 0),
          ),
    );
    const speed = 210 + Math.round(random() * 30);
    return [
      ...[name, isDiesel ? "compression" : "spark", `${date}a`, date, 100 + k * 60],
      ...["dry", 1, "red", "psi", ...readings, 350, Math.round(8 + random() * 20), speed, "warm"],
      ...["me", "", ""],
    ].join(",");
  });
  return `${rows.join("\n")}\n`;
};

/** Writes the file. @param order - `contiguous`: engine by engine; `shuffled`: test by test over all engines */
export const writeFleet = (path, engines, tests, order = "contiguous") => {
  const file = openSync(path, "w");
  writeSync(file, fleetHeader);
  if (order === "contiguous") for (let i = 0; i < engines; i += 1) writeSync(file, fleetEngine(i, tests));
  else {
    const all = Array.from({ length: engines }, (_, i) => fleetEngine(i, tests).trimEnd().split("\n"));
    for (let k = 0; k < tests; k += 1) writeSync(file, `${all.map((rows) => rows[k]).join("\n")}\n`);
  }
  closeSync(file);
};
