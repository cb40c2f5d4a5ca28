// The demo logbook and one rule sheet as texts, for the job of main-job.ts.

import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const data = fileURLToPath(new URL("../../data", import.meta.url));
const read = (...parts) => readFileSync(join(data, ...parts), "utf8");

/** @returns {Readonly<Record<string, string>>} texts by their path in the logbook */
export const demoTexts = () => {
  const files = readdirSync(join(data, "demo"), { recursive: true }).filter((file) =>
    /\.(csv|json)$/.test(file),
  );
  const texts = files.map((file) => [file.replaceAll("\\", "/"), read("demo", file)]);
  return Object.fromEntries([...texts, ["rules.csv", read("rules", "general.csv")]]);
};
