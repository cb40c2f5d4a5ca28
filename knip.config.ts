import type { KnipConfig } from "knip";

const config: KnipConfig = {
  // A type that nobody names costs nothing, and whoever calls the function may want to name it.
  rules: { types: "off" },
  // Run by tests/check.mjs by their files, without a shell; axe-core is handed to a browser as text.
  ignoreDependencies: ["@arethetypeswrong/cli", "axe-core", "prettier", "publint", "typedoc"],
  ignoreBinaries: ["groff", "mkfifo", "parallel", "pdftotext", "script"],
  workspaces: {
    ".": {
      entry: [
        "tests/**/*.test.ts",
        "tests/hard/*.{mjs,ts}",
        "tests/bench/{start,history,model,yard}.mjs",
        "tests/browser/{core,run}.mjs",
        "tests/check-packed.mjs",
        "data/demo/generate.mjs",
      ],
      project: ["tests/**/*.{ts,mjs}", "data/**/*.mjs"],
    },
    // what neither the command, nor a test, nor an example uses is no part of the public surface
    "packages/core": { project: ["src/**/*.ts", "*.mjs"], includeEntryExports: true },
    "packages/cli": { entry: ["src/main.ts"], project: ["src/**/*.ts", "*.mjs"] },
  },
};

export default config;
