// Leak-down tests to measure on, as the text of a logbook: an invented engine whose cylinder 3 leaks more each time.

import { evenly } from "../random.mjs";

const seed = 20_262;

/** The files of an engine with so many cylinders and tests, as readEngineRecord takes them. Same counts, same text. */
export const leakDownTexts = (cylinders, tests) => {
  const random = evenly(seed);
  const labels = Array.from({ length: cylinders }, (_, i) => String(i + 1));
  const engine = {
    schema: "sealtrend/engine@1",
    name: "Bench radial (invented)",
    use: "aircraft",
    cylinders: labels,
    cycle: "four-stroke",
    ignition: "spark",
    homeAltitude_m: 350,
  };
  const row = (number) => {
    const date = `${String(2006 + Math.floor(number / 3))}-${["03", "07", "11"][number % 3]}-12`;
    const cell = (label) => (75 - (label === "3" ? number * 0.3 : 0) + 2 * random()).toFixed(1);
    return [`${date}a`, date, "leak-down", 1, "psi", ...labels.map(cell), 80, 350].join(",");
  };
  const header = `test,date,what,take,unit,${labels.map((label) => `c${label}`).join(",")},regulated_psi,altitude_m`;
  const rows = Array.from({ length: tests }, (_, number) => row(number));
  return {
    id: "bench",
    engine: { file: "engine.json", text: JSON.stringify(engine) },
    tests: { file: "tests.csv", text: `${[header, ...rows].join("\n")}\n` },
  };
};
