// Everything about the code that is not a test: one line a check, its output where it fails. All of them run.

import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { faultsOfText, licenceFaults, sourceSizes } from "./check-files.mjs";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const scratch = mkdtempSync(join(tmpdir(), "sealtrend-check-"));
const tool = (path) => join(root, "node_modules", path);

/** Runs Node on `args`; resolves to what it said and whether it went well. */
const node = (args, cwd = root) =>
  new Promise((resolve) => {
    const child = spawn(process.execPath, args, { cwd, env: { ...process.env, NO_COLOR: "1", CI: "true" } });
    let output = "";
    let answer = "";
    child.stdout.on("data", (text) => ((output += text), (answer += text)));
    child.stderr.on("data", (text) => (output += text));
    child.on("error", (error) => resolve({ ok: false, output: error.message, answer }));
    child.on("close", (code) => resolve({ ok: code === 0, output, answer }));
  });

const pinned = JSON.parse(readFileSync(join(root, "package.json"), "utf8")).packageManager;
const npm = [
  process.env.npm_execpath ?? "",
  join(dirname(process.execPath), "..", "lib", "node_modules", "npm", "bin", "npm-cli.js"),
].find((path) => /npm-cli\.js$/.test(path) && existsSync(path));

const pnpm = (args, cwd) =>
  node(
    [
      npm,
      "exec",
      "--yes",
      "--prefer-offline",
      "--loglevel=error",
      `--package=${pinned}`,
      "--",
      "pnpm",
      ...args,
    ],
    cwd,
  );

/** One after the other until one fails. */
const inTurn = async (...steps) => {
  let last = { ok: true, output: "" };
  for (const step of steps) if (last.ok) last = await step();
  return last;
};

const of = (faults) => ({ ok: faults.length === 0, output: faults.join("\n") });

/** Packs both packages as they would be published. */
const packed = async () => {
  for (const name of ["core", "cli"]) {
    const result = await pnpm(["pack", "--pack-destination", scratch], join(root, "packages", name));
    if (!result.ok) return result;
  }
  return { ok: true, output: "" };
};
const tarball = (start) =>
  join(scratch, readdirSync(scratch).find((file) => file.startsWith(start)) ?? start);

/** Installs what was packed in an empty folder and uses it there, the command and the library. */
const installedElsewhere = () => {
  const elsewhere = join(scratch, "elsewhere");
  const core = tarball("sealtrend-core-");
  const install = (...more) =>
    node([npm, "install", "--prefix", elsewhere, "--omit=dev", "--no-audit", "--no-fund", ...more]);
  const use = (part) => () => node([join(root, "tests", "check-packed.mjs"), elsewhere, part]);
  return inTurn(
    // the command holds all it needs; the library asks for three packages of others
    () => install("--offline", tarball("sealtrend-0")),
    use("command"),
    () => install("--prefer-offline", core),
    use("library"),
  );
};

const licences = async () => {
  const { ok, output, answer } = await pnpm(["licenses", "list", "--json"]);
  return ok ? of(licenceFaults(answer)) : { ok, output };
};

const checks = [
  ["format", () => node([tool("prettier/bin/prettier.cjs"), "--check", "--log-level=warn", "."])],
  ["lint", () => node([tool("eslint/bin/eslint.js"), "--max-warnings=0", "."])],
  ["types", () => node([tool("typescript/bin/tsc"), "--pretty", "false", "-p", "tsconfig.json"])],
  ["data embedded as it stands", () => node(["packages/core/embed.mjs", "--check"])],
  ["core builds", () => node([tool("typescript/bin/tsc"), "-b", "packages/core"])],
  ["core's surface as it was reviewed", () => node(["packages/core/surface.mjs"])],
  [
    "core is documented",
    () =>
      node(
        [tool("typedoc/bin/typedoc"), "--out", join(scratch, "documentation")],
        join(root, "packages", "core"),
      ),
  ],
  [
    "architecture",
    () =>
      node([
        tool("dependency-cruiser/bin/dependency-cruise.mjs"),
        "--config=.dependency-cruiser.cjs",
        "packages/core/src",
        "packages/cli/src",
        "tests",
      ]),
  ],
  ["dead code", () => node([tool("knip/bin/knip.js"), "--no-progress", "--treat-config-hints-as-errors"])],
  ["packages pack", packed],
  [
    "core is a sound package",
    () => node([tool("publint/src/cli.js"), "--strict", tarball("sealtrend-core-")]),
  ],
  [
    "the command is a sound package",
    () => node([tool("publint/src/cli.js"), "--strict", tarball("sealtrend-0")]),
  ],
  [
    "core's types resolve",
    () =>
      node([
        tool("@arethetypeswrong/cli/dist/index.js"),
        "--profile=esm-only",
        "--no-emoji",
        tarball("sealtrend-core-"),
      ]),
  ],
  ["both packages serve elsewhere", installedElsewhere],
  ["files at one sitting", async () => of(sourceSizes(root))],
  ["no machine paths, no registries", async () => of(await faultsOfText(root))],
  ["licences", licences],
];

let failed = 0;
for (const [name, run] of checks) {
  const { ok, output } = await run();
  if (!ok) failed += 1;
  process.stdout.write(
    `${ok ? "ok    " : "failed"} ${name}\n${ok ? "" : `${output.trim().replace(/^/gm, "    ")}\n`}`,
  );
}
rmSync(scratch, { recursive: true, force: true });
process.stdout.write(`${String(checks.length - failed)} checks ok, ${String(failed)} failed\n`);
process.exitCode = failed === 0 ? 0 : 1;
