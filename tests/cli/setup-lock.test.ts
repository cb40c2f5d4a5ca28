// Two set-ups of one folder at once, each a process of its own.

import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL, fileURLToPath } from "node:url";
import { afterEach, beforeEach, expect, test } from "vitest";

const module = pathToFileURL(
  join(dirname(fileURLToPath(import.meta.url)), "..", "..", "packages", "cli", "setup-lock.mjs"),
).href;

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "sealtrend-setup-"));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** Holds the lock for so long, and notes when it came and went. */
const setUp = (name: string, milliseconds: number): ChildProcess => {
  const [lock, log] = [join(folder, "lock"), join(folder, "log")].map((path) => JSON.stringify(path));
  const note = (what: string): string =>
    `appendFileSync(${log ?? ""}, ${JSON.stringify(`${name} ${what}\n`)});`;
  const code = `import { appendFileSync } from "node:fs";
    import { whileLocked } from ${JSON.stringify(module)};
    await whileLocked(${lock ?? ""}, (text) => console.error(text), async () => {
      ${note("in")} await new Promise((done) => setTimeout(done, ${String(milliseconds)})); ${note("out")}
    });`;
  return spawn(process.execPath, ["--input-type=module", "-e", code]);
};

const ended = (child: ChildProcess): Promise<string> =>
  new Promise((done) => {
    let text = "";
    child.stderr?.on("data", (part) => (text += String(part)));
    child.on("close", () => {
      done(text);
    });
  });

const until = async (holds: () => boolean): Promise<void> => {
  while (!holds()) await new Promise((done) => setTimeout(done, 20));
};

const log = (): readonly string[] =>
  existsSync(join(folder, "log")) ? readFileSync(join(folder, "log"), "utf8").trimEnd().split("\n") : [];

test("the second waits until the first is done, and says for whom", async () => {
  const first = setUp("first", 600);
  const firstEnds = ended(first);
  await until(() => log().includes("first in"));
  const said = await ended(setUp("second", 0));
  await firstEnds;
  expect(log()).toEqual(["first in", "first out", "second in", "second out"]);
  expect(said).toBe(
    `sealtrend: another set-up of this folder is at work (process ${String(first.pid)}); waiting for it ...\n`,
  );
  expect(existsSync(join(folder, "lock"))).toBe(false);
});

test("a lock left by one that was killed is taken over", async () => {
  const killed = setUp("killed", 60_000);
  const killedEnds = ended(killed);
  await until(() => log().includes("killed in"));
  killed.kill("SIGKILL");
  await killedEnds;
  expect(existsSync(join(folder, "lock"))).toBe(true);
  expect(await ended(setUp("next", 0))).toBe("");
  expect(log()).toEqual(["killed in", "next in", "next out"]);
});

test("five at once find one lock left behind: they still take turns", async () => {
  writeFileSync(join(folder, "lock"), "999999999");
  await Promise.all(["a", "b", "c", "d", "e"].map((name) => ended(setUp(name, 30))));
  const lines = log();
  expect(lines).toHaveLength(10);
  const turns = lines.filter((_, i) => i % 2 === 0).map((line) => line.split(" ")[0] ?? "");
  expect(lines).toEqual(turns.flatMap((name) => [`${name} in`, `${name} out`]));
  expect(turns.toSorted()).toEqual(["a", "b", "c", "d", "e"]);
});
