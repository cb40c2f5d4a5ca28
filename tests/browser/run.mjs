// The pages in a real browser: nothing runs, nothing is asked of the network, nothing breaks out of somebody's text; they can be
// read by ear, stand on A4, Letter and a telephone, and print without a blank page.
//   node tests/browser/run.mjs        needs Debian's chromium; pdftotext (poppler-utils) to look for blank pages
// Every fault is a line; the last line is `N ok, N failed`.

import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import * as checks from "./checks.mjs";
import { hostile, writeLogbooks } from "./logbooks.mjs";

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const command = join(root, "packages", "cli", "bin", "sealtrend.js");
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const scratch = mkdtempSync(join(tmpdir(), "sealtrend-browser-"));
const count = { ok: 0, failed: 0 };

const found = (name) => spawnSync("which", [name], { encoding: "utf8" }).stdout.trim();
const hasPdfText = found("pdftotext") !== "";

const checked = (page, name, faults) => {
  if (faults.length === 0) count.ok += 1;
  else {
    count.failed += 1;
    const shown = [...new Set(faults)].slice(0, 5).map((fault) => `    ${fault}\n`);
    process.stdout.write(`failed ${page}: ${name}\n${shown.join("")}`);
  }
};

/** One page as the command writes it. */
const written = (engine, purpose, logbook, more = []) => {
  const file = join(scratch, `${engine}-${purpose}${more.join("")}.html`);
  const words = [
    command,
    "page",
    engine,
    "--for",
    purpose,
    "-o",
    file,
    "--logbook",
    logbook,
    "--as-of",
    "2026-11-25",
    ...more,
  ];
  const { status, stderr } = spawnSync(process.execPath, words, { encoding: "utf8", cwd: scratch });
  checked(`${engine} for ${purpose}`, "is written", status === 0 ? [] : [stderr]);
  return status === 0 ? file : undefined;
};

// content boxes of paper with our margins, in units of 1/96 in
const papers = { A4: 695, Letter: 717 };
const telephone = 360;

/** How many pages each may have at most. */
const mostPages = (name) =>
  name.startsWith("large-") && !name.startsWith("large-once") ? 9 : name.includes("-file") ? 5 : 3;

/** Pages of a usual engine that one sheet holds. */
const oneSheet = ["mill-buyer", "ultralight-buyer"];

const blankPages = (pdf, name) => {
  const file = join(scratch, `${name}.pdf`);
  writeFileSync(file, pdf);
  const { stdout } = spawnSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
  const pages = stdout.split("\f").slice(0, -1);
  return { pages: pages.length, blank: pages.filter((text) => text.trim().length < 40).length };
};

const examine = async (browser, file) => {
  const name = file.slice(scratch.length + 1).replace(/\.html$/, "");
  const context = await browser.newContext({ bypassCSP: false });
  const page = await context.newPage();
  const said = [];
  const asked = [];
  page.on("console", (message) => said.push(message.text()));
  page.on("pageerror", (error) => said.push(error.message));
  page.on("dialog", (dialog) => (said.push(dialog.message()), dialog.dismiss()));
  page.on("request", (request) => asked.push(request.url()));
  const address = pathToFileURL(file).href;
  await page.goto(address);
  const bytes = statSync(file).size;
  checked(name, "below 200 kB", bytes < 200_000 ? [] : [`${bytes} bytes`]);
  for (const check of ["strangers", "structure", "tables", "drawings", "contrast"])
    checked(name, check, await page.evaluate(checks[check]));
  await page.setViewportSize({ width: telephone, height: 800 });
  checked(name, "on a telephone", await page.evaluate(checks.overflow, "scroll"));
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.emulateMedia({ media: "print" });
  for (const [paper, width] of Object.entries(papers)) {
    await page.setViewportSize({ width, height: 1000 });
    checked(name, `on ${paper}`, await page.evaluate(checks.overflow, "nothing"));
    const { pages, blank } = hasPdfText
      ? blankPages(await page.pdf({ format: paper }), name)
      : { pages: 1, blank: 0 };
    checked(name, `printed on ${paper}`, [
      ...(blank > 0 ? [`${blank} blank pages`] : []),
      ...(pages > (oneSheet.includes(name) ? 1 : mostPages(name)) ? [`${pages} pages`] : []),
    ]);
  }
  await page.emulateMedia({ media: "screen" });
  await page.setViewportSize({ width: 1280, height: 900 });
  if (name.startsWith("hostile"))
    checked(
      name,
      "hostile text is shown as text",
      missing(await page.evaluate(() => document.body.textContent), name),
    );
  await page.evaluate(axe);
  const { violations } = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
  checked(
    name,
    "accessible by axe",
    violations.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 100)}`),
  );
  checked(name, "silent", said);
  checked(
    name,
    "asks nothing of anybody",
    asked.filter((url) => url !== address),
  );
  await context.close();
};

/** As a page shows it: what steers is written out. */
const shown = (text) =>
  text.replace(
    /[\u0000-\u001f\u007f-\u009f\u202a-\u202e]/g,
    (sign) => `\\u{${sign.codePointAt(0).toString(16)}}`,
  );

/** What was said by whom stands on every page but the shop's; that has its owner's tools and names. */
const missing = (text, name) =>
  (name.includes("-shop") ? [hostile[4], hostile[1]] : hostile)
    .map(shown)
    .filter((one) => !text.includes(one))
    .map((one) => `not shown: ${one}`);

const run = async () => {
  const program = process.env.CHROMIUM ?? found("chromium");
  if (program === "") {
    process.stdout.write("chromium is not to be had here: the pages were not looked at\n0 ok, 1 failed\n");
    return 1;
  }
  if (!hasPdfText) process.stdout.write("pdftotext is not to be had here: printed pages are not looked at\n");
  const logbook = join(scratch, "logbook");
  const demo = join(scratch, "demo");
  writeLogbooks(logbook);
  cpSync(join(root, "data", "demo"), demo, { recursive: true });
  const files = [
    ...["single", "large", "empty", "hostile"].flatMap((engine) =>
      ["shop", "buyer", "file"].map((purpose) => written(engine, purpose, logbook)),
    ),
    ...["single-years", "large-once"].map((engine) => written(engine, "buyer", logbook)),
    written("hostile", "buyer", logbook, ["--with-notes"]),
    ...["mill", "boat", "ultralight"].map((engine) => written(engine, "buyer", demo)),
    ...["pump", "tractor"].flatMap((engine) =>
      ["shop", "buyer", "file"].map((purpose) => written(engine, purpose, demo)),
    ),
  ].filter((file) => file !== undefined);
  // as root, which continuous integration is, chromium runs without its sandbox only; the pages are our own
  const browser = await chromium.launch({ executablePath: program, args: ["--no-sandbox"] });
  try {
    const left = [...files];
    const worker = async () => {
      for (let file = left.shift(); file !== undefined; file = left.shift()) await examine(browser, file);
    };
    await Promise.all([worker(), worker()]);
  } finally {
    await browser.close();
  }
  process.stdout.write(`${count.ok} ok, ${count.failed} failed\n`);
  return count.failed === 0 ? 0 : 1;
};

try {
  process.exitCode = await run();
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
