// The shards of a yard, answered side by side under GNU parallel, are byte for byte what one process answers; so are its
// threads, and rows in any order.
//   node tests/hard/yard.mjs [--engines 400]
// The last line is `N passed, N failed`. Where parallel is not to be had it says so and proves the rest.

import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { writeFleet } from "../bench/sample-fleet.mjs";

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const command = join(root, "packages", "cli", "bin", "sealtrend.js");
const { values } = parseArgs({ options: { engines: { type: "string", default: "400" } } });
const engines = Number(values.engines);
const folder = mkdtempSync(join(tmpdir(), "sealtrend-yard-"));
const file = join(folder, "fleet.csv");
const mixed = join(folder, "mixed.csv");
const shards = 8;
const count = { passed: 0, failed: 0 };

const checked = (name, good) => {
  if (good) count.passed += 1;
  else count.failed += 1;
  process.stdout.write(`${good ? "ok    " : "failed"} ${name}\n`);
};

const said = (program, words) => {
  const { status, stdout } = spawnSync(program, words, { encoding: "utf8", maxBuffer: 2 ** 28 });
  return status === 0 ? stdout : `ended with ${String(status)}`;
};
const yard = (...words) =>
  said(process.execPath, [command, "yard", ...words, "--as-of", "2026-11-25", "--json"]);
const sorted = (text) => text.split("\n").slice(0, -1).sort().join("\n");

try {
  writeFleet(file, engines, 12);
  writeFleet(mixed, engines, 12, "shuffled");
  const one = yard(file);
  checked(`${String(engines)} engines have a line each`, one.split("\n").length === engines + 1);
  checked("two threads answer the same", yard(file, "--workers", "2") === one);
  checked("rows in any order answer the same", yard(mixed) === one);
  if (spawnSync("parallel", ["--version"]).status === 0) {
    const numbers = Array.from({ length: shards }, (_, i) => String(i + 1));
    const line = [process.execPath, command, "yard", file, "--as-of", "2026-11-25", "--json", "--shard"];
    const words = ["--will-cite", "--jobs", "2", ...line, `{}/${String(shards)}`, ":::", ...numbers];
    const together = said("parallel", words);
    checked(
      `${String(shards)} shards under parallel, sorted, are the whole, sorted`,
      sorted(together) === sorted(one),
    );
  } else process.stdout.write("GNU parallel is not to be had here: the shards were left out\n");
} finally {
  rmSync(folder, { recursive: true, force: true });
}
process.stdout.write(`${String(count.passed)} passed, ${String(count.failed)} failed\n`);
if (count.failed > 0) process.exitCode = 1;
