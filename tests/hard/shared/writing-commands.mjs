// Every command that writes, each with what it begins from; invented engines.

const readings = ["--dry", "150,149,148,147", "--unit", "psi"];
/** A sheet of 40 engines, one column each: imported in one command. */
const fortyEngines = [
  `date,cylinder,${Array.from({ length: 40 }, (_, n) => `Mill ${String(n + 1)}`).join()}`,
  ...["1", "2"].map(
    (label) => `2024-03-12,${label},${Array.from({ length: 40 }, (_, n) => String(130 + n)).join()}`,
  ),
].join("\n");
const oneEngine = "date,c1,c2,c3,c4,unit\n2019-05-03,150,149,151,148,psi\n2020-05-03,149,148,150,147,psi\n";

export const sheets = {
  "old.csv": `${oneEngine}`,
  "forty.csv": `${fortyEngines}\n`,
  "lines.txt": "bore 3: 86.62 86.58 86.56 86.55 86.53 86.52\nrod bearing 2: 0.06\n",
};

/** Typed one after the other: the logbook that every trial begins from. */
export const preparing = [
  ["engine", "add", "pump", "--cylinders", "4", "--ignition", "spark"],
  ["gauge", "add", "red", "--kind", "compression", "--unit", "psi", "--full-scale", "300psi"],
  ["gauge", "add", "blue", "--kind", "compression", "--unit", "psi", "--full-scale", "300psi"],
  ["gauge", "add", "tester", "--kind", "leak-down", "--unit", "psi", "--full-scale", "100psi", "--regulated", "80psi"],
  ["enter", "pump", ...readings, "--gauge", "red", "--date", "2026-05-03"],
  ["enter", "pump", "--dry", "152,151,150,149", "--unit", "psi", "--gauge", "blue", "--same-test"],
]; // prettier-ignore

/** `keeps`: what was typed must be given back where it could not be saved. `answers`: typed on a terminal, which then ends. */
export const writing = {
  enter: { words: ["enter", "pump", ...readings, "--wet", "160 159 158 157", "--by", "me"], keeps: /150,149,148,147/ },
  "enter, with a column more": { words: ["enter", "pump", ...readings, "--station-pressure", "29.9inHg"], keeps: /150,149,148,147/ },
  "enter --new": {
    makes: true, words: ["enter", "mill", "--new", "--cylinders", "2", "--ignition", "spark", "--dry", "118 121", "--unit", "psi"], keeps: /118 121/ },
  "enter, left": { words: ["enter", "pump", "--unit", "psi", "--gauge", "red"], answers: ["150", "149"], isLeft: true },
  service: { words: ["service", "pump", "--what", "valve job", "--meter", "640"], keeps: /valve job/ },
  note: { words: ["note", "pump", "--what", "smoke", "--value", "blue", "--note", "on the overrun"], keeps: /on the overrun/ },
  teardown: { words: ["teardown", "pump", "--from", "lines.txt", "--unit", "mm", "--instrument", "bore gauge"], keeps: /86.62|lines.txt/ },
  "teardown, left": { words: ["teardown", "pump", "--unit", "mm", "--instrument", "bore gauge"], answers: ["bore 3: 86.62 86.58 86.56 86.55 86.53 86.52"], isLeft: true },
  "gauge add": { words: ["gauge", "add", "new", "--kind", "compression", "--unit", "bar"], keeps: /new/ },
  "gauge calibrate": { words: ["gauge", "calibrate", "tester", "--hole", "0.8mm:74psi 1.0mm:66psi 1.25mm:52psi"], keeps: /0\.8mm:74psi/ },
  "gauge calibrate, two speeds": { words: ["gauge", "calibrate", "red", "--engine", "pump", "--slow", "180rpm", "--slow-reads", "161 162 162", "--fast", "260rpm", "--fast-reads", "180 181 180", "--unit", "psi", "--altitude", "0m"], keeps: /161 162 162/ },
  "gauge compare": { words: ["gauge", "compare", "pump", "--test", "latest"] },
  amend: { words: ["amend", "pump", "--test", "latest", "--what", "dry", "--of-gauge", "red", "--cylinder", "4", "--to", "141", "--because", "paper says 141"], keeps: /paper says 141/ },
  "amend, a fact": { words: ["amend", "pump", "--test", "latest", "--altitude", "350m", "--because", "was left out"], keeps: /was left out/ },
  "engine add": { makes: true, words: ["engine", "add", "baler", "--cylinders", "2", "--ignition", "spark"] },
  "engine set": { words: ["engine", "set", "pump", "geometry.bore", "86mm"] },
  "engine set, a cylinder more": { words: ["engine", "set", "pump", "cylinders", "1 2 3 4 5"] },
  "import --map": { apart: true, words: ["import", "old.csv", "--map", "map.json", "--engine", "pump", "--what", "dry"] },
  "import, one engine": { words: ["import", "old.csv", "--engine", "pump", "--what", "dry", "--write"] },
  "import, forty engines": {
    makes: true, words: ["import", "forty.csv", "--unit", "psi", "--what", "dry", "--write"] },
  page: { apart: true, words: ["page", "pump", "--for", "file", "-o", "pump.html"] },
  "page, over one": { apart: true, words: ["page", "pump", "--for", "file", "-o", "old.html", "--force"] },
  demo: { words: ["demo", "shown"], next: ["demo", "shown"] },
}; // prettier-ignore

/** What `undo` takes back of each of these. */
export const undone = [
  "enter",
  "enter, with a column more",
  "enter --new",
  "service",
  "teardown",
  "gauge calibrate",
  "gauge calibrate, two speeds",
  "gauge compare",
  "amend",
  "engine add",
  "engine set, a cylinder more",
  "import, forty engines",
];
