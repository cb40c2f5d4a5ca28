// What every part of the report has in common: it counts, shows what failed, and ends with two lines that the report reads.

import { existsSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";

const shownFailures = 20;
/** Memory of the whole process, Node itself included. */
const mostMemory_MB = 300;

/** The options of a part: `--count N --seed N` and what it names itself, all with a default. */
export const options = (defaults) => {
  const names = Object.entries({ seed: "1", ...defaults });
  const { values } = parseArgs({
    options: Object.fromEntries(names.map(([name, value]) => [name, { type: "string", default: value }])),
  });
  return values;
};

/** A folder to work in, in memory where that is to be had: thousands of small files would only wait for a disk. */
export const newScratch = (name) => {
  const memory = "/dev/shm";
  return mkdtempSync(join(existsSync(memory) ? memory : tmpdir(), `sealtrend-${name}-`));
};

export const begin = () => {
  let passed = 0;
  let failed = 0;
  const fail = (what) => {
    failed += 1;
    if (failed <= shownFailures) process.stdout.write(`failed: ${printable(what)}\n`);
  };
  return {
    /** One thing tried; `fault` says what is wrong, undefined where nothing is. */
    tried: (label, fault) => {
      if (fault === undefined) passed += 1;
      else fail(`${label}: ${fault}`);
    },
    fail,
    /** Prints the counts, peak memory and time among them, and whether all went well. */
    end: (counts) => {
      const peak_MB = Math.round(process.resourceUsage().maxRSS / 1024);
      const { user, system } = process.cpuUsage();
      if (peak_MB > mostMemory_MB)
        fail(`${String(peak_MB)} MB at its peak, at most ${String(mostMemory_MB)}`);
      const all = { ...counts, peak_MB, cpu_s: Math.round((user + system) / 1e5) / 10 };
      process.stdout.write(`counts: ${JSON.stringify(all)}\n`);
      process.stdout.write(`${String(passed)} passed, ${String(failed)} failed\n`);
      process.exitCode = failed === 0 ? 0 : 1;
    },
  };
};

const printable = (text) =>
  String(text)
    .slice(0, 600)
    .replace(/[^\x20-\x7e\u00a1-\u024f]/g, (sign) => `\\u{${sign.codePointAt(0).toString(16)}}`);
