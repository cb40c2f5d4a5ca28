import type { KnipConfig } from "knip";

const config: KnipConfig = {
  // A type that nobody names costs nothing, and whoever calls the function may want to name it.
  rules: { types: "off" },
  // Run by tests/check.mjs by their files, without a shell.
  ignoreDependencies: ["@arethetypeswrong/cli", "prettier", "publint"],
  ignoreBinaries: ["mkfifo"],
  workspaces: {
    ".": {
      entry: ["tests/**/*.test.ts", "tests/hard/*.{mjs,ts}", "data/demo/generate.mjs"],
      project: ["tests/**/*.{ts,mjs}", "data/**/*.mjs"],
    },
    "packages/core": { project: ["src/**/*.ts", "*.mjs"] },
    "packages/cli": { entry: ["src/main.ts"], project: ["src/**/*.ts", "*.mjs"] },
  },
};

export default config;
