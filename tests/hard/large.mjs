// Files as large as they may be, sound and wrong throughout: read by the command as it is shipped, each in a process of its own that
// says itself how much memory it took. None takes more than 300 MB; nothing is lost, and of very many faults the rest is counted.
//   node tests/hard/large.mjs [--texts short]      (short: one sheet and one logbook)

import { readFileSync, writeFileSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import { begin, options } from "./shared/part.mjs";
import { flat, realCommand } from "./shared/real-command.mjs";

const { texts } = options({ texts: "long" });
const mostMemory_MB = 300;
const { scratch, sealtrend } = realCommand("large");
const part = begin();
const peaks = [];

const witness = join(scratch, "witness.cjs");
const seen = join(scratch, "peak");
writeFileSync(
  witness,
  'process.on("exit", () => require("node:fs").writeFileSync(process.env.PEAK, String(process.resourceUsage().maxRSS)));',
);
const more = { NODE_OPTIONS: `--require=${witness}`, PEAK: seen };

/** A day of 1950 to 2023, another for each number. */
const day = (i) => new Date(Date.UTC(1950, 0, 1) + (i % 27_000) * 86_400_000).toISOString().slice(0, 10);
const figure = (i, cylinder) => 140 + ((i * 7 + cylinder * 3) % 15);
const figures = (i, count) => Array.from({ length: count }, (_, at) => figure(i, at + 1));
const lines = (head, count, line) =>
  `${head}\n${Array.from({ length: count }, (_, i) => line(i)).join("\n")}\n`;

/** 200,000 readings each, or four short of it where a row is one: with the heading no file has more rows. */
const sheets = {
  "a row a reading": {
    readings: 199_996,
    text: () =>
      lines("Machine,Date,Cyl,Psi", 199_996, (i) => {
        const row = i >> 2;
        return `machine ${row % 40},${day((row / 40) * 20)},${(i % 4) + 1},${figure(row, i % 4)}`;
      }),
  },
  "a row a test": {
    readings: 200_000,
    text: () =>
      lines("Machine,Date,Hours,1,2,3,4,Remarks", 50_000, (i) => {
        const nth = Math.floor(i / 40);
        return `machine ${i % 40},${day(nth * 20)},${100 + nth},${figures(i, 4)},${i % 10 === 0 ? `cold morning ${i}` : ""}`;
      }),
  },
  "one engine": {
    readings: 200_000,
    text: () =>
      lines("Machine,Date,Hours,1,2,3,4,5,6,7,8,Mechanic,Remarks", 25_000, (i) => {
        return `big one,${day(i)},${100 + i},${figures(i, 8)},A${i % 7},remark ${i}`;
      }),
  },
  "in quotes": {
    readings: 200_000,
    text: () =>
      lines('"Machine","Date","1","2","3","4"', 50_000, (i) => {
        return `"machine ${i % 1_000}","${day(Math.floor(i / 1_000) * 200)}",${figures(i, 4)}`;
      }),
  },
};

const wrong = (i) => `1q${i % 10},2w${i % 7},149,151`;
const faultySheet = lines("Machine,Date,1,2,3,4", 100_000, (i) => `m${i % 40},${day(i / 6)},${wrong(i)}`);
const faultyTests = lines("test,date,what,gauge,unit,c1,c2,c3,c4,note", 100_000, (i) => {
  return `${day(i)}${String.fromCharCode(97 + Math.floor(i / 27_000))},${day(i)},dry,red,psi,${wrong(i)},`;
});

let desks = 0;
const newDesk = () => {
  const cwd = join(scratch, `desk-${String((desks += 1))}`);
  mkdirSync(cwd);
  return cwd;
};

/** @param check - what is wrong with how it ended; undefined where nothing is */
const attempt = async (label, words, { cwd, check }) => {
  const ended = await sealtrend([...words, "--logbook", join(cwd, "logbook")], { cwd, more });
  const peak_MB = Math.round(Number(readFileSync(seen, "utf8")) / 1024);
  peaks.push(peak_MB);
  const tooMuch =
    peak_MB > mostMemory_MB ? `${String(peak_MB)} MB, at most ${String(mostMemory_MB)}` : undefined;
  part.tried(`${label}: ${words.join(" ")}`, check(ended) ?? tooMuch);
};

const added =
  (readings) =>
  ({ exit, out, err }) =>
    exit === 0 && flat(out).includes(`${String(readings)} readings`)
      ? undefined
      : `ends with ${String(exit)}: ${(err + out).slice(0, 300)}`;

const isShort = texts === "short";
for (const [label, { readings, text }] of Object.entries(sheets).slice(0, isShort ? 1 : undefined)) {
  const cwd = newDesk();
  writeFileSync(join(cwd, "old.csv"), text());
  const words = ["import", "old.csv", "--unit", "psi", "--what", "dry"];
  if (!isShort) await attempt(label, words, { cwd, check: added(readings) });
  await attempt(label, [...words, "--write"], { cwd, check: added(readings) });
}

/** 200,000 faults: the first are told, and all of them counted. */
const faults = 200_000;
const countOf = ({ problems = [], more: rest = { count: 0 } }) => problems.length + rest.count;
const told = (count) => (ended) => {
  const { exit, out, err } = ended;
  if (exit !== 1) return `ends with ${String(exit)}: ${(err + out).slice(0, 300)}`;
  if (out.length > 1_000_000) return `${String(out.length)} characters`;
  const found = count(JSON.parse(out));
  return found === faults ? undefined : `tells of ${String(found)} faults`;
};
const book = newDesk();
mkdirSync(join(book, "logbook", "pump"), { recursive: true });
for (const [name, text] of [
  ["logbook.json", "{}"],
  ["gauges.csv", "gauge,kind,unit\nred,compression,psi\n"],
  ["pump/engine.json", '{ "cylinders": ["1", "2", "3", "4"], "ignition": "spark" }'],
  ["pump/tests.csv", faultyTests],
])
  writeFileSync(join(book, "logbook", name), text);
await attempt("wrong throughout", ["proofread", "--json"], { cwd: book, check: told(countOf) });
if (!isShort) {
  await attempt("wrong throughout", ["show", "pump", "--json"], { cwd: book, check: told(countOf) });
  writeFileSync(join(book, "old.csv"), faultySheet);
  await attempt("wrong throughout", ["import", "old.csv", "--unit", "psi", "--what", "dry", "--json"], {
    cwd: book,
    check: told(({ leftOut, moreLeftOut }) => leftOut.length + moreLeftOut.count),
  });
}

part.end({ large: peaks.length, largest_MB: Math.max(...peaks) });
