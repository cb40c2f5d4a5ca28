import { defineConfig } from "vitest/config";

const conditions = ["@sealtrend/source", "module", "node", "import", "default"];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: conditions } },
  test: { include: ["tests/**/*.test.ts"], testTimeout: 60_000 },
});
