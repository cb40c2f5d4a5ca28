// The library's README shows what its examples really print.

import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { afterAll, expect, test } from "vitest";
import { asModule, examples } from "./examples.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const scratch = mkdtempSync(join(tmpdir(), "sealtrend-library-"));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** Printed after each example, and by none of them. */
const end = "-- end of the example --";

test("every example of the README prints what is shown below it", async () => {
  const shown = examples();
  const markdown = readFileSync(join(root, "packages", "core", "README.md"), "utf8");
  expect(shown.length).toBe(markdown.match(/^```ts$/gm)?.length);
  expect(shown.length).toBeGreaterThanOrEqual(5);
  const { outputFiles } = await build({
    stdin: {
      contents: asModule(shown, `\nconsole.log(${JSON.stringify(end)});`),
      loader: "ts",
      resolveDir: root,
    },
    bundle: true,
    write: false,
    platform: "node",
    format: "esm",
    conditions: ["@sealtrend/source"],
  });
  const file = join(scratch, "examples.mjs");
  writeFileSync(file, outputFiles[0]?.contents ?? "");
  const printed = execFileSync(process.execPath, [file], { encoding: "utf8" }).split(`${end}\n`);
  expect(printed).toEqual([...shown.map(({ output }) => output), ""]);
});
