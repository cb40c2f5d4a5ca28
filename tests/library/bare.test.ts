// The library asks nothing of where it runs: the whole way gives the same bytes in Node, in a context that has nothing but the
// language itself, and in a worker. In a browser: tests/browser/core.mjs.

import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { createContext, runInContext } from "node:vm";
import { Worker } from "node:worker_threads";
import { build } from "esbuild";
import { beforeAll, expect, test } from "vitest";
import { type Texts, mainJob } from "./main-job.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));

const { demoTexts } = (await import(new URL("demo-texts.mjs", import.meta.url).href)) as {
  readonly demoTexts: () => Texts;
};
const texts = demoTexts();
let expected = "";
let bundle = "";

beforeAll(async () => {
  expected = await mainJob(texts);
  const { outputFiles } = await build({
    entryPoints: [join(root, "tests", "library", "main-job.ts")],
    bundle: true,
    write: false,
    platform: "browser",
    format: "iife",
    globalName: "library",
    conditions: ["@sealtrend/source"],
  });
  bundle = outputFiles[0]?.text ?? "";
}, 60_000);

test("the whole way says something of every engine of the demo", () => {
  const { engines } = JSON.parse(expected) as { readonly engines: readonly { readonly decision?: object }[] };
  expect(engines.length).toBe(Object.keys(texts).filter((file) => file.endsWith("engine.json")).length);
  expect(engines.every(({ decision }) => decision !== undefined)).toBe(true);
});

test("in a context with nothing but the language it says the same", async () => {
  const context = createContext({ texts });
  const answer: unknown = await runInContext(`${bundle}; library.mainJob(texts)`, context);
  expect(answer).toBe(expected);
});

test("in a worker it says the same", async () => {
  const code = `${bundle}; const { parentPort, workerData } = require("node:worker_threads");
    library.mainJob(workerData).then((answer) => parentPort.postMessage(answer));`;
  const worker = new Worker(code, { eval: true, workerData: texts });
  const answer = await new Promise((resolve, reject) => {
    worker.once("message", resolve);
    worker.once("error", reject);
  });
  await worker.terminate();
  expect(answer).toBe(expected);
});
