// Damaged logbooks: read by the library, every twentieth by the whole command as well.
//   node tests/hard/mutation.mjs [--count 20000] [--seed 1] [--case N]      (--case tries one again and shows it)
// A damaged file is read or its faults are named, in the file and under the time allowed; nothing throws, no number is none,
// nothing is printed raw. Also measured: how long the reading of each logbook as it stands takes.

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { faultOfRun, type } from "./shared/command.mjs";
import { faultOfNumbers, faultOfPlaces, faultOfPrototypes, timed } from "./shared/judge.mjs";
import { mutate } from "./shared/mutate.mjs";
import { begin, newScratch, options } from "./shared/part.mjs";
import { loadProgram } from "./shared/program.mjs";
import { randomOf } from "../random.mjs";
import { readBook } from "./shared/read-book.mjs";
import { seedBooks } from "./shared/seed-books.mjs";

const { count, seed, case: only } = options({ count: "20000", case: "" });
const mostTime_ms = 50;
const everySoMany = 20;

const program = await loadProgram();
const books = seedBooks();
const part = begin();
const scratch = newScratch("mutation");
const lines = [
  ["show", "pump"],
  ["history", "pump"],
  ["decide", "pump"],
  ["proofread"],
  ["teardown", "pump", "--no-input"],
  ["page", "pump", "--for", "file", "-o", "page.txt"],
  ["show", "pump", "--why"],
  ["engine", "show", "pump"],
];

/** The logbook with one file damaged; seven times in eight only what that file is read with. */
const damaged = (random) => {
  const { name, files } = random.pick(books);
  const file = random.pick(Object.keys(files));
  const { bytes, what } = mutate(random, files[file]);
  const whole = random.chance(1 / 8);
  const kept = Object.entries(files).filter(
    ([other]) => whole || [file, "engine.json", "gauges.csv"].includes(other),
  );
  return { label: `${name}, ${file}, ${what}`, files: { ...Object.fromEntries(kept), [file]: bytes } };
};

const faultOfReading = (files) => {
  try {
    let read;
    const took = timed(() => (read = readBook(program, files)), mostTime_ms);
    if (took > mostTime_ms) return `${took.toFixed(0)} ms`;
    return (
      faultOfPlaces(read.problems, read.texts) ??
      faultOfNumbers({ record: read.record, gauges: read.gauges }) ??
      faultOfPrototypes()
    );
  } catch (error) {
    return `throws ${error.stack}`;
  }
};

const putOnDisk = (folder, files) => {
  const logbook = join(folder, "logbook");
  mkdirSync(join(logbook, "pump"), { recursive: true });
  for (const [name, bytes] of Object.entries(files))
    writeFileSync(join(logbook, /^(logbook|gauges)\./.test(name) ? "" : "pump", name), bytes);
};

const faultOfCommand = async (nth, files, words) => {
  const cwd = mkdtempSync(join(scratch, `${String(nth)}-`));
  putOnDisk(cwd, files);
  const ended = await type(program, words, { cwd, home: scratch });
  if (only !== "")
    process.stdout.write(`${words.join(" ")}: ${String(ended.exit)}\n${ended.out}${ended.err}`);
  rmSync(cwd, { recursive: true });
  return faultOfRun(ended, words);
};

const tryCase = async (nth, everyLine) => {
  const random = randomOf(Number(seed), nth);
  const { label, files } = damaged(random);
  const again = `case ${String(nth)} of seed ${seed} (${label})`;
  part.tried(again, faultOfReading(files));
  const mine = everyLine ? lines : nth % everySoMany === 0 ? [random.pick(lines)] : [];
  for (const words of mine) {
    const typed = random.chance(1 / 3) ? [...words, "--json"] : words;
    part.tried(again, await faultOfCommand(nth, files, typed));
  }
};

const median = (numbers) => numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)];

/** Milliseconds for each logbook as it stands; the first rounds let the engine make itself ready. */
const speeds = () => {
  for (let round = 0; round < 15; round += 1) for (const { files } of books) readBook(program, files);
  return books.map(({ files }) =>
    median(
      Array.from({ length: 15 }, () => {
        const begun = performance.now();
        readBook(program, files);
        return performance.now() - begun;
      }),
    ),
  );
};

for (const { name, files } of books) {
  const { problems } = readBook(program, files);
  part.tried(name, problems.length === 0 ? undefined : `as it stands: ${problems[0].found}`);
}
const took = speeds();
if (only === "") for (let nth = 1; nth <= Number(count); nth += 1) await tryCase(nth, false);
else await tryCase(Number(only), true);
rmSync(scratch, { recursive: true, force: true });
part.end({
  mutations: only === "" ? Number(count) : 1,
  books: books.length,
  read_ms: Math.round(median(took) * 10) / 10,
  slowest_ms: Math.round(Math.max(...took) * 10) / 10,
});
