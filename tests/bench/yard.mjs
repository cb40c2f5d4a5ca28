// What a yard costs, against csv-parse alone on the same file in the same run: one thread and two, and how time and memory grow.
// Medians of interleaved rounds and the peak of memory of each process.

import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { against, interleaved } from "./rounds.mjs";
import { writeFleet } from "./sample-fleet.mjs";

const [engines, tests, rounds] = [10_000, 40, 3];
/** SEALTREND_BENCH_FLEET=100000 adds the growth to a hundred thousand engines, which takes many minutes. */
const growth = [1_000, engines, Number(process.env.SEALTREND_BENCH_FLEET ?? 0)].filter((many) => many > 0);
const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const command = join(root, "packages", "cli", "bin", "sealtrend.js");
/** Loaded before each process: says at its end how much memory it had at most [KiB]. */
const noted = `if (require("node:worker_threads").isMainThread) process.on("exit", () =>
  require("node:fs").writeFileSync(process.env.PEAK_IN, String(process.resourceUsage().maxRSS)));`;

/** csv-parse on whole lines, a quarter of a megabyte at a time, rows as arrays, thrown away. */
const csvParse = createRequire(join(root, "packages", "core", "package.json")).resolve("csv-parse/sync");
const bare = `import { openSync, readSync } from "node:fs";
import { parse } from ${JSON.stringify(pathToFileURL(csvParse).href)};
const fd = openSync(process.argv[2], "r");
const part = Buffer.alloc(1 << 18);
let [held, rows] = [0, 0];
for (;;) {
  const count = readSync(fd, part, held, part.length - held, null);
  held += count;
  const end = count === 0 ? held : part.lastIndexOf(10, held - 1) + 1;
  rows += parse(part.toString("utf8", 0, end)).length;
  part.copyWithin(0, end, held);
  held -= end;
  if (count === 0) break;
}
process.stdout.write(String(rows));`;

const onFile = (file, ...more) => [command, "yard", file, "--json", "--as-of", "2026-11-25", ...more];

/** Milliseconds and the peak [MiB] of one process. */
const timed = (folder, words) => {
  const peak = join(folder, "peak");
  const start = process.hrtime.bigint();
  const { status, stderr } = spawnSync(process.execPath, ["--require", join(folder, "noted.cjs"), ...words], {
    encoding: "utf8",
    maxBuffer: 2 ** 30,
    env: { ...process.env, PEAK_IN: peak },
  });
  if (status !== 0) throw new Error(`${words.join(" ")} ended with ${String(status)}: ${stderr}`);
  const took = Number(process.hrtime.bigint() - start) / 1e6;
  return { took, mebibytes: Number(readFileSync(peak, "utf8")) / 1024 };
};

/** Once each, one thread: how time and memory grow, and what rows in any order cost. */
const grown = (folder) =>
  [...growth.map((many) => [many, "contiguous"]), [1_000, "shuffled"]].map(([many, order]) => {
    const file = join(folder, "grown.csv");
    writeFleet(file, many, tests, order);
    const { took, mebibytes } = timed(folder, onFile(file));
    const name = `${String(many)} engines${order === "shuffled" ? ", rows in any order" : ""}, once`;
    return [name, (took / 1000).toFixed(2), "", mebibytes.toFixed(0), order === "shuffled" ? "" : "150 MiB"];
  });

export const measure = () => {
  const folder = mkdtempSync(join(tmpdir(), "sealtrend-bench-yard-"));
  try {
    const [file, base] = [join(folder, "fleet.csv"), join(folder, "base.mjs")];
    writeFileSync(join(folder, "noted.cjs"), noted);
    writeFileSync(base, bare);
    writeFleet(file, engines, tests);
    const variants = [
      { name: "csv-parse alone", words: [base, file] },
      { name: "yard, one thread", words: onFile(file), target: "7, aim 4.5" },
      { name: "yard, two threads", words: onFile(file, "--workers", "2") },
    ];
    const peaks = new Map();
    const all = interleaved(variants, rounds, ({ name, words }) => {
      const { took, mebibytes } = timed(folder, words);
      peaks.set(name, mebibytes);
      return took;
    });
    const rows = variants.map(({ name, target = "" }) => {
      const { milliseconds, ratio } = against(all, name, variants[0].name);
      return [name, (milliseconds / 1000).toFixed(2), ratio.toFixed(2), peaks.get(name).toFixed(0), target];
    });
    const size = (statSync(file).size / 1e6).toFixed(0);
    return {
      title: `Yard, ${String(engines)} engines x ${String(tests)} tests in one CSV of ${size} MB, no decisions; medians of ${String(rounds)} interleaved rounds`,
      head: ["", "s", "ratio", "peak MiB", "target"],
      rows: [...rows, ...grown(folder)],
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
