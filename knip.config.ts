import type { KnipConfig } from "knip";

const config: KnipConfig = {
  // A type that nobody names costs nothing, and whoever calls the function may want to name it.
  rules: { types: "off" },
  // Run by tests/check.mjs by their files, without a shell; axe-core is handed to a browser as text.
  ignoreDependencies: ["@arethetypeswrong/cli", "axe-core", "prettier", "publint"],
  ignoreBinaries: ["mkfifo", "pdftotext"],
  workspaces: {
    ".": {
      entry: [
        "tests/**/*.test.ts",
        "tests/hard/*.{mjs,ts}",
        "tests/browser/run.mjs",
        "data/demo/generate.mjs",
      ],
      project: ["tests/**/*.{ts,mjs}", "data/**/*.mjs"],
    },
    "packages/core": { project: ["src/**/*.ts", "*.mjs"] },
    "packages/cli": { entry: ["src/main.ts"], project: ["src/**/*.ts", "*.mjs"] },
  },
};

export default config;
