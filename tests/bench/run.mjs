// What a start costs, against starting Node alone: each round runs every variant once, in random order, so that a
// busy machine slows them alike. Prints the median time and the median of the ratios within a round; asserts nothing.

import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { against, interleaved } from "./rounds.mjs";
import { writeSampleLogbook } from "./sample-logbook.mjs";

const rounds = 15;
const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const command = join(root, "packages", "cli", "bin", "sealtrend.js");
const logbook = mkdtempSync(join(tmpdir(), "sealtrend-bench-"));
writeSampleLogbook(logbook);

const on = (name) => [command, name, "bench", "--logbook", logbook, "--as-of", "2026-11-25", "--no-input"];
const variants = [
  { name: "node -e 0", args: ["-e", "0"] },
  { name: "--version", args: [command, "--version"], target: 1.2 },
  { name: "show", args: on("show"), target: 1.8 },
  { name: "history", args: on("history"), target: 2.1 },
];

const milliseconds = ({ name, args }) => {
  const start = process.hrtime.bigint();
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: "utf8" });
  if (status !== 0) throw new Error(`${name} ended with ${String(status)}: ${stderr}`);
  return Number(process.hrtime.bigint() - start) / 1e6;
};

try {
  const all = interleaved(variants, rounds, milliseconds);
  const base = variants[0].name;
  const line = (...cells) =>
    process.stdout.write(
      `${cells.map((cell, i) => (i === 0 ? cell.padEnd(14) : cell.padStart(9))).join("")}\n`,
    );
  process.stdout.write(
    `Node ${process.versions.node}, medians of ${String(rounds)} interleaved rounds; 60 tests, 6 cylinders\n`,
  );
  line("", "ms", "ratio", "of minima", "target");
  for (const { name, target } of variants) {
    const times = all.map((times) => times.get(name));
    const { milliseconds: middle, ratio } = against(all, name, base);
    const minima = Math.min(...times) / Math.min(...all.map((times) => times.get(base)));
    line(name, middle.toFixed(0), ratio.toFixed(2), minima.toFixed(2), target?.toFixed(1) ?? "");
  }
} finally {
  rmSync(logbook, { recursive: true, force: true });
}
