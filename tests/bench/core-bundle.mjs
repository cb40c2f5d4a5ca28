// The library as one file, from its sources as they stand, so that no earlier build is measured.

import { rmSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** Everything that `@sealtrend/core/parts` exports, and what the named files of its sources export beside it. */
export const coreFromSource = async (...files) => {
  const folder = mkdtempSync(join(tmpdir(), "sealtrend-bench-"));
  try {
    const outfile = join(folder, "core.mjs");
    await build({
      stdin: {
        contents: ["parts.ts", ...files].map((file) => `export * from "./${file}";`).join("\n"),
        resolveDir: join(root, "packages", "core", "src"),
      },
      outfile,
      bundle: true,
      platform: "node",
      format: "esm",
      target: "node20",
      logLevel: "warning",
    });
    return await import(pathToFileURL(outfile).href);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};
