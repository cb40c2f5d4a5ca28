// The library as it is published, in a browser: in a page and in a module worker it says of the demo what it says in Node, and
// asks for nothing that only Node has. Page and worker agree byte for byte; with Node every word and every figure to nine digits,
// for the language leaves the last ones of a power or a logarithm to whoever computes it. Chromium as in run.mjs.

import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { chromium } from "playwright-core";
import { demoTexts } from "../library/demo-texts.mjs";

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const scratch = mkdtempSync(join(tmpdir(), "sealtrend-core-"));
const job = join(scratch, "main-job.js");

/** Notes whoever asks for what is Node's; but for `global`, which csv-parse looks for and does without. */
const traps = `globalThis.touched = [];
for (const name of ["process", "Buffer", "require", "module", "__dirname", "setImmediate"])
  Object.defineProperty(globalThis, name, { get: () => void globalThis.touched.push(name) });`;

const worker = `${traps}
onmessage = async ({ data }) => {
  const { mainJob } = await import("/main-job.js");
  postMessage({ answer: await mainJob(data), touched: globalThis.touched });
};`;

const pages = {
  "/": ["text/html", () => `<!doctype html><title>library</title><script>${traps}</script>`],
  "/main-job.js": ["text/javascript", () => readFileSync(job)],
  "/worker.js": ["text/javascript", () => worker],
};

/** Bundles the job with the built library, whose types and code are what the package holds. */
const bundled = async () => {
  const tsc = join(root, "node_modules", "typescript", "bin", "tsc");
  const { status, stdout } = spawnSync(process.execPath, [tsc, "-b", "packages/core"], {
    cwd: root,
    encoding: "utf8",
  });
  if (status !== 0) throw new Error(stdout);
  const { metafile } = await build({
    entryPoints: [join(root, "tests", "library", "main-job.ts")],
    outfile: job,
    bundle: true,
    platform: "browser",
    format: "esm",
    metafile: true,
  });
  const fromSource = Object.keys(metafile.inputs).filter((path) => path.startsWith("packages/core/src/"));
  if (fromSource.length > 0) throw new Error(`not the built library: ${fromSource[0]}`);
};

const served = (request, response) => {
  const [type, body] = pages[request.url] ?? ["text/plain", () => ""];
  response.writeHead(pages[request.url] === undefined ? 404 : 200, { "content-type": type });
  response.end(body());
};

const inPage = async (texts) => {
  const { mainJob } = await import(`${location.origin}/main-job.js`);
  return { answer: await mainJob(texts), touched: globalThis.touched };
};

const inWorker = (texts) =>
  new Promise((resolve, reject) => {
    const thread = new Worker("/worker.js", { type: "module" });
    thread.onmessage = ({ data }) => resolve(data);
    thread.onerror = ({ message }) => reject(new Error(message));
    thread.postMessage(texts);
  });

const run = async (program) => {
  await bundled();
  const texts = demoTexts();
  const { mainJob } = await import(pathToFileURL(job).href);
  const expected = await mainJob(texts);
  const server = createServer(served).listen(0, "127.0.0.1");
  // as root, which continuous integration is, chromium runs without its sandbox only; the page is our own
  const browser = await chromium.launch({ executablePath: program, args: ["--no-sandbox"] });
  let failed = 0;
  try {
    const page = await browser.newPage();
    await page.goto(`http://127.0.0.1:${server.address().port}/`);
    const answers = [];
    for (const [name, way] of Object.entries({ "in a page": inPage, "in a worker": inWorker })) {
      const { answer, touched } = await page.evaluate(way, texts);
      answers.push(answer);
      const faults = [
        ...differences(JSON.parse(answer), JSON.parse(expected)),
        ...[...new Set(touched)].map((global) => `asks for ${global}`),
        ...(answer === answers[0] ? [] : ["not byte for byte as in the page"]),
      ];
      if (faults.length > 0) failed += 1;
      const shown = faults.slice(0, 5).map((fault) => `    ${fault}\n`);
      process.stdout.write(`${faults.length === 0 ? "ok    " : "failed"} ${name}\n${shown.join("")}`);
    }
  } finally {
    await browser.close();
    server.close();
  }
  process.stdout.write(
    `${expected.length} characters of ${Object.keys(texts).length} texts; ${2 - failed} ok, ${failed} failed\n`,
  );
  return failed === 0 ? 0 : 1;
};

/** Where two answers differ by more than the last digits of a figure. */
const differences = (one, other, at = "") => {
  if (typeof one === "number" && typeof other === "number") {
    const most = 1e-9 * Math.max(Math.abs(one), Math.abs(other)) + 1e-12;
    return Math.abs(one - other) <= most ? [] : [`${at}: ${one} for ${other}`];
  }
  if (typeof one !== "object" || one === null || typeof other !== "object" || other === null)
    return one === other ? [] : [`${at}: ${String(one)} for ${String(other)}`];
  const keys = new Set([...Object.keys(one), ...Object.keys(other)]);
  return [...keys].flatMap((key) => differences(one[key], other[key], `${at}.${key}`));
};

const program = process.env.CHROMIUM ?? spawnSync("which", ["chromium"], { encoding: "utf8" }).stdout.trim();
try {
  if (program === "") throw new Error("chromium is not to be had here: the library was not run in it");
  process.exitCode = await run(program);
} catch (error) {
  process.stdout.write(`${error.message}\n0 ok, 1 failed\n`);
  process.exitCode = 1;
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
