// Run by check.mjs on packages that were packed and installed in a folder of their own: `check-packed.mjs FOLDER command` or
// `library`. Says what it misses and ends with 1.

import { execFileSync } from "node:child_process";
import { existsSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const [folder = "", part] = process.argv.slice(2);
const installed = (...path) => join(folder, "node_modules", ...path);
const node = (args) => execFileSync(process.execPath, args, { cwd: folder, encoding: "utf8" });
const manifestOf = (name) => JSON.parse(readFileSync(installed(name, "package.json"), "utf8"));

const faults = [];
const expectThat = (holds, fault) => {
  if (!holds) faults.push(fault);
};

const command = () => {
  const { version, bin, man } = manifestOf("sealtrend");
  const sealtrend = (...words) => node([installed("sealtrend", bin.sealtrend), ...words]);
  expectThat(sealtrend("--version").includes(version), "--version does not tell the version");
  sealtrend("demo");
  const shown = JSON.parse(sealtrend("show", "pump", "--logbook", "sealtrend-demo", "--json"));
  expectThat(shown.schema === "sealtrend/show@1", `show pump --json is ${shown.schema}`);
  expectThat(
    sealtrend("show", "pump", "--logbook", "sealtrend-demo").includes("pump"),
    "show pump does not name the engine",
  );
  expectThat(existsSync(installed("sealtrend", man)), "the page of the manual is missing");
  expectThat(readFileSync(installed("sealtrend", man), "utf8").includes(".TH SEALTREND 1"), "no manual page");
  expectThat(readdirSync(installed("sealtrend", "schemas")).length > 20, "schemas are missing");
};

/** What an importer of the two entry points sees, and one who reaches past them. */
const importer = `import { pressureAtAltitude, length } from "@sealtrend/core";
import { altimeterSetting } from "@sealtrend/core/parts";
const home = length(350);
const past = await import("@sealtrend/core/dist/air/index.js").then(() => "let in", ({ code }) => code);
console.log(JSON.stringify({ height: altimeterSetting(pressureAtAltitude(home), home), past }));
`;

const library = () => {
  const file = join(folder, "importer.mjs");
  writeFileSync(file, importer);
  const { height, past } = JSON.parse(node([file]));
  // the standard atmosphere's own pressure at a height has the standard setting: 1013.25 hPa (ICAO Doc 7488)
  expectThat(Math.abs(height - 101_325) < 1e-6, `another setting than 101325 Pa: ${height}`);
  expectThat(past === "ERR_PACKAGE_PATH_NOT_EXPORTED", `what is not exported is ${past}`);
  const { dependencies } = manifestOf("@sealtrend/core");
  for (const name of Object.keys(dependencies))
    expectThat(existsSync(installed(name)), `${name} was not installed with the library`);
};

({ command, library })[part]();
process.stdout.write(faults.map((fault) => `${fault}\n`).join(""));
process.exitCode = faults.length === 0 ? 0 : 1;
