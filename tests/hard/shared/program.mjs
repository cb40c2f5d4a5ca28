// The library and the command as one file, from their sources as they stand, to be called many times in one process.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { nativeBuffer } from "../../../packages/cli/bundle.mjs";

export const root = dirname(dirname(dirname(dirname(fileURLToPath(import.meta.url)))));

/** What is called beside the public entries: the gates that every file and every text passes. */
const inside = {
  core: [
    "quantity/number.ts",
    "record/reading-cell.ts",
    "rules/formula.ts",
    "rules/parse-formula.ts",
    "rules/evaluate-formula.ts",
  ],
  cli: ["run.ts", "logbook/encoding.ts", "logbook/engine-id.ts", "render/clean.ts", "json-text.ts"],
};
const entry = [
  'export * from "@sealtrend/core/parts";',
  ...Object.entries(inside).flatMap(([name, files]) =>
    files.map((file) => `export * from "./packages/${name}/src/${file}";`),
  ),
].join("\n");

/** Builds it into `folder`, which must exist. @param plugins - of esbuild, more than its own  @returns the path of the file */
export const buildProgram = async (folder, plugins = []) => {
  const outfile = join(folder, "program.mjs");
  await build({
    stdin: { contents: entry, resolveDir: root },
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    target: "node20",
    conditions: ["@sealtrend/source"],
    banner: {
      js: 'import { createRequire as requireFrom } from "node:module";\nconst require = requireFrom(import.meta.url);',
    },
    plugins: [nativeBuffer, ...plugins],
    logLevel: "warning",
  });
  return outfile;
};

/** The program, as built by the report that started this part, or built here. */
export const loadProgram = async (built = process.env.SEALTREND_BUILT) => {
  if (built !== undefined) return import(pathToFileURL(built).href);
  const folder = mkdtempSync(join(tmpdir(), "sealtrend-program-"));
  try {
    return await import(pathToFileURL(await buildProgram(folder)).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
