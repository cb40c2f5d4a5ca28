// yard as a process of its own: threads, a pipe that is closed, and what is left of standard input.

import { spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { fleetEngine, fleetText } from "./fleet.ts";

const command = fileURLToPath(new URL("../../../packages/cli/bin/sealtrend.js", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "sealtrend-yard-test-"));
const file = join(folder, "fleet.csv");
const text = fleetText(Array.from({ length: 600 }, (_, i) => fleetEngine(i, 8)));

beforeAll(() => writeFileSync(file, text));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const typed = (words: readonly string[], input = "") =>
  spawnSync(process.execPath, [command, "yard", ...words, "--as-of", "2026-11-25"], {
    input,
    encoding: "utf8",
    env: { ...process.env, TMPDIR: folder },
  });

test("several threads answer as one does, byte for byte", () => {
  const one = typed([file, "--json"]);
  expect([one.status, one.stdout.split("\n")]).toEqual([0, expect.objectContaining({ length: 601 })]);
  for (const workers of ["2", "5"]) {
    const many = typed([file, "--json", "--workers", workers]);
    expect([many.status, many.stderr]).toEqual([0, one.stderr]);
    expect(many.stdout).toBe(one.stdout);
  }
});

test("of standard input nothing is left behind", () => {
  const piped = typed(["-", "--json"], text);
  expect(piped.stdout).toBe(typed([file, "--json"]).stdout);
  expect(readdirSync(folder)).toEqual(["fleet.csv"]);
});

test("whoever closes the pipe ends it, without a word", async () => {
  const child = spawn(process.execPath, [command, "yard", file, "--json"]);
  const said: string[] = [];
  child.stderr.on("data", (part: Buffer) => said.push(part.toString()));
  child.stdout.once("data", () => child.stdout.destroy());
  const code = await new Promise((then) => child.once("close", then));
  expect([code, said]).toEqual([0, []]);
});
