// Invented engines as one CSV and as logbooks, the same readings in both. Same number, same engine.

import { evenly } from "../../random.mjs";

const labels = ["1", "2", "3", "4", "5", "6"];
const conditions = "altitude_m,air_temp_C,crank_rpm,engine_temp";
const columns = (own: readonly string[]): string =>
  `test,date,meter,what,take,gauge,unit,${own.map((label) => `c${label}`).join(",")},${conditions},by,set_aside,note`;

export const fleetHeader = `engine,ignition,${columns(labels)}\n`;

export interface FleetEngine {
  readonly id: string;
  readonly ignition: "spark" | "compression";
  readonly cylinders: readonly string[];
  /** Its rows as one CSV of many engines has them, without line ends. */
  readonly rows: readonly string[];
  /** The same as the tests.csv of a logbook. */
  readonly tests: string;
}

/** Healthy, wearing, read twice, without a cranking speed, pegged, with a test set aside or void, as the number falls out. */
export const fleetEngine = (number: number, most = 14): FleetEngine => {
  const random = evenly(977 + number * 7919);
  const chance = (share: number): boolean => random() < share;
  const ignition = chance(0.3) ? "compression" : "spark";
  const cylinders = labels.slice(0, [1, 2, 3, 4, 4, 6][Math.floor(random() * 6)]);
  const base = ignition === "compression" ? 400 : 165;
  const worn = chance(0.3) ? Math.floor(random() * cylinders.length) : -1;
  const isSpeedKnown = chance(0.7);
  const count = 1 + Math.floor(random() * most);
  const cells = Array.from({ length: count }, (_, k) => {
    const date = `${String(2006 + k)}-0${String(1 + Math.floor(random() * 9))}-1${String(Math.floor(random() * 9))}`;
    const day = (random() - 0.5) * 0.04 * base;
    const takes = chance(0.15) ? [1, 2] : [1];
    const facts = [
      350,
      5 + Math.floor(random() * 25),
      isSpeedKnown ? 200 + Math.floor(random() * 60) : "",
      chance(0.9) ? "warm" : "cold",
    ];
    const aside = chance(0.04) ? "wrong adapter" : "";
    return takes.map((take) => {
      const readings = cylinders.map((_label, i) => {
        const loss = i === worn ? base * 0.015 * k : 0;
        const bad = chance(0.02) ? base * 0.2 : 0;
        const read = String(Math.round(base + day + (random() - 0.5) * 0.05 * base - loss - bad));
        return chance(0.01) ? `>${read}` : chance(0.01) ? "x" : read;
      });
      const before = [`${date}a`, date, "", "dry", take, chance(0.8) ? "red" : "", "psi"];
      return { before, readings, after: [...facts, "me", aside, ""] };
    });
  }).flat();
  const id = `e${String(number).padStart(4, "0")}`;
  const blank = labels.slice(cylinders.length).map(() => "");
  return {
    id,
    ignition,
    cylinders,
    rows: cells.map(({ before, readings, after }) =>
      [id, ignition, ...before, ...readings, ...blank, ...after].join(","),
    ),
    tests:
      [
        columns(cylinders),
        ...cells.map(({ before, readings, after }) => [...before, ...readings, ...after].join(",")),
      ].join("\n") + "\n",
  };
};

/** All engines in one CSV. */
export const fleetText = (engines: readonly FleetEngine[]): string =>
  fleetHeader + engines.flatMap(({ rows }) => rows.map((row) => `${row}\n`)).join("");
