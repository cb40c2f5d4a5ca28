import { defineConfig } from "vitest/config";

const conditions = ["@sealtrend/source", "module", "node", "import", "default"];

/** Last line of `npm test`: what it leaves to `.ci/run`, since it needs more than Node. */
const whatIsLeft = {
  onTestRunEnd: () => {
    process.stdout.write(
      "Left to .ci/run: the kill loop of tests/hard, the pages in a browser, and the checks of `npm run check`.\n",
    );
  },
};

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
  test: {
    include: ["tests/**/*.test.ts"],
    setupFiles: ["tests/setup.ts"],
    testTimeout: 60_000,
    // no test keeps or changes anything of a module; loading every module anew for each file took more than half the time
    isolate: false,
    reporters: ["default", whatIsLeft],
  },
});
