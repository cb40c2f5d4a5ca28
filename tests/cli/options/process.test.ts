// The program as a process: bundled as it ships, started as a shell starts it.

import { spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { afterAll, beforeAll, expect, test } from "vitest";

let folder = "";
let program = "";

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "sealtrend-"));
  program = join(folder, "sealtrend.cjs");
  await build({
    entryPoints: [join(import.meta.dirname, "../../../packages/cli/src/main.ts")],
    outfile: program,
    bundle: true,
    platform: "node",
    target: "node20.19",
    format: "cjs",
    conditions: ["@sealtrend/source"],
    define: { __SEALTREND_VERSION__: '"0.0.0-test"', "import.meta.url": "importMetaUrl" },
    banner: { js: 'const importMetaUrl = require("node:url").pathToFileURL(__filename).href;' },
    external: ["mathjs"],
    logLevel: "error",
  });
});

afterAll(() => rm(folder, { recursive: true }));

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

const start = (words: readonly string[], stdout: "read" | "closed" = "read"): Promise<Ended> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [program, ...words], {
      cwd: folder,
      stdio: ["ignore", "pipe", "pipe"],
    });
    let out = "";
    let err = "";
    if (stdout === "closed") child.stdout.destroy();
    child.stdout.on("data", (chunk: Buffer) => (out += chunk.toString()));
    child.stderr.on("data", (chunk: Buffer) => (err += chunk.toString()));
    child.on("error", reject);
    child.on("close", (code) => {
      resolve({ code, out, err });
    });
  });

test("--version prints the version, wherever it stands before --", async () => {
  const version = { code: 0, out: "sealtrend 0.0.0-test\n", err: "" };
  expect(await start(["--version"])).toEqual(version);
  expect(await start(["--json", "--version"])).toEqual(version);
  expect((await start(["--", "--version"])).code).toBe(2);
});

test("no words at all print the short help and end with 0", async () => {
  const { code, out, err } = await start([]);
  expect([code, err]).toEqual([0, ""]);
  expect(out).toContain("All commands: sealtrend help.");
});

test("a fault of the command line ends with 2 and says so on stderr alone", async () => {
  const { code, out, err } = await start(["xylophone"]);
  expect([code, out]).toEqual([2, ""]);
  expect(err).toMatch(/^no command `xylophone`\n/);
});

test("a reader who closes the pipe is no fault", async () => {
  expect(await start(["help"], "closed")).toEqual({ code: 0, out: "", err: "" });
  expect(await start(["--version"], "closed")).toEqual({ code: 0, out: "", err: "" });
});
