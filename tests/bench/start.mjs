// What a start costs, against starting Node alone: each round runs every variant once, in random order, so that a
// busy machine slows them alike. Measures the built command.

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

const milliseconds = ({ name, args }) => {
  const start = process.hrtime.bigint();
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: "utf8" });
  if (status !== 0) throw new Error(`${name} ended with ${String(status)}: ${stderr}`);
  return Number(process.hrtime.bigint() - start) / 1e6;
};

export const measure = () => {
  const logbook = mkdtempSync(join(tmpdir(), "sealtrend-bench-"));
  const on = (name) => [command, name, "bench", "--logbook", logbook, "--as-of", "2026-11-25", "--no-input"];
  const variants = [
    { name: "node -e 0", args: ["-e", "0"] },
    { name: "--version", args: [command, "--version"], target: 1.2 },
    { name: "show", args: on("show"), target: 1.8 },
    { name: "history", args: on("history"), target: 2.1 },
  ];
  try {
    writeSampleLogbook(logbook);
    const all = interleaved(variants, rounds, milliseconds);
    const base = variants[0].name;
    return {
      title: `Start-up, 60 tests of 6 cylinders; medians of ${String(rounds)} interleaved rounds`,
      head: ["", "ms", "ratio", "of minima", "target"],
      rows: variants.map(({ name, target }) => {
        const times = all.map((round) => round.get(name));
        const { milliseconds: middle, ratio } = against(all, name, base);
        const minima = Math.min(...times) / Math.min(...all.map((round) => round.get(base)));
        return [name, middle.toFixed(0), ratio.toFixed(2), minima.toFixed(2), target?.toFixed(1) ?? ""];
      }),
    };
  } finally {
    rmSync(logbook, { recursive: true, force: true });
  }
};
