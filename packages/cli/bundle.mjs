// Bundles the command into dist/: a small first file that answers --version, the program, mathjs in a file of its own
// (only a rule sheet of the user's own needs it), the demo logbook, the sheets of causes and chances for whoever wants to
// change them, and the licences of what is bundled. Reading less
// at the start is the whole point; see tests/bench. Called by setup.mjs.

import { build as esbuild } from "esbuild";
import { cpSync, mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const cli = dirname(fileURLToPath(import.meta.url));
const core = join(cli, "..", "core");
const demo = join(cli, "..", "..", "data", "demo");
const faults = join(cli, "..", "..", "data", "faults");
const dist = join(cli, "dist");

/** What the core takes from mathjs, by dynamic import in one module of rules/: named here, so that the rest is left out. */
const fromMathjs = ["create", "parseDependencies"];

/** Of yargs what reads options, and nothing of what it knows of terminals, folders and files of settings: to load that
 *  takes as long as half of Node. */
const parserAlone = {
  name: "parser-alone",
  setup(build) {
    build.onResolve({ filter: /.platform-shims.esm\.mjs$/ }, ({ path, resolveDir }) => ({
      path: join(resolveDir, path),
      sideEffects: false,
    }));
    build.onResolve({ filter: /^node:module$/ }, ({ path, importer }) =>
      /.yargs-parser./.test(importer) ? { path, namespace: "no-module" } : undefined,
    );
    build.onLoad({ filter: /./, namespace: "no-module" }, () => ({
      contents: "export const createRequire = undefined;",
    }));
  },
};

/** The core names csv-parse's browser build, which knows nothing of Node; here Node's own Buffer does the same work
 *  without the copy of it that the browser build carries. */
export const nativeBuffer = {
  name: "native-buffer",
  setup(build) {
    build.onResolve({ filter: /^csv-parse\/browser\/esm\/sync$/ }, ({ resolveDir, kind }) =>
      build.resolve("csv-parse/sync", { resolveDir, kind }),
    );
  },
};

/** Of simple-statistics the few functions that are named, each from its own file: as one file it is run whole. */
const fewStatistics = {
  name: "few-statistics",
  setup(build) {
    const pure = (path) => ({ path, sideEffects: false });
    build.onResolve({ filter: /^simple-statistics$/ }, async ({ resolveDir, kind, pluginData }) => {
      if (pluginData === "as one") return undefined;
      const { path } = await build.resolve("simple-statistics", { resolveDir, kind, pluginData: "as one" });
      return pure(join(dirname(path), "..", "index.js"));
    });
    build.onResolve({ filter: /^\.\/.*\.js$/ }, ({ path, importer, resolveDir }) =>
      /.simple-statistics./.test(importer) ? pure(join(resolveDir, path)) : undefined,
    );
  },
};

const mathjsApart = {
  name: "mathjs-apart",
  setup(build) {
    build.onResolve({ filter: /^mathjs\/number$/ }, () => ({ path: "./mathjs.cjs", external: true }));
  },
};

/** What the entry imports dynamically: a bundle each, which it loads when it comes to it. `asked` are questions about the demo
 *  logbook; what V8 compiles to answer them is kept beside the bundle. */
const programs = {
  program: {
    module: "./run.ts",
    asked: [["--help"], ["decide", "tractor"], ["engine", "list"], ["how", "dry", "tractor"]],
  },
  quick: {
    module: "./quick.ts",
    asked: [
      ["show", "tractor"],
      ["history", "tractor"],
    ],
  },
};

const programsApart = (entry) => ({
  name: "programs-apart",
  setup(build) {
    build.onResolve({ filter: /^\./ }, ({ path, kind, importer }) => {
      if (kind !== "dynamic-import" || importer !== entry) return undefined;
      const [name] = Object.entries(programs).find(([, { module }]) => module === path) ?? [];
      if (name === undefined) throw new Error(`${path} is no program of bundle.mjs`);
      return { path: `./${name}.cjs`, external: true };
    });
  },
});

const shared = {
  absWorkingDir: cli,
  bundle: true,
  write: false,
  metafile: true,
  format: "cjs",
  platform: "node",
  target: "node20",
  minify: true,
  legalComments: "none",
  conditions: ["@sealtrend/source"],
  supported: { "dynamic-import": false },
  logLevel: "warning",
  outdir: "dist",
  outExtension: { ".js": ".cjs" },
};

/** The folder of the package that `input` belongs to, absolute; undefined for our own sources. */
const packageOf = (input) => {
  const found = /^(.*\/node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(join(cli, input).replaceAll("\\", "/"));
  return found === null ? undefined : found[1];
};

const licenceOf = (folder) => {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const texts = readdirSync(folder)
    .filter((file) => /^(licen[cs]e|notice)/i.test(file))
    .sort();
  const body = texts.map((file) => readFileSync(join(folder, file), "utf8").trim()).join("\n\n");
  return `${name} ${version} (${license})\n\n${body || "The package ships no licence text."}\n`;
};

/** Every licence of what the metafiles say is inside, one after the other. */
const licences = (...metafiles) => {
  const folders = metafiles.flatMap(({ inputs }) => Object.keys(inputs).map(packageOf));
  const unique = [...new Set(folders.filter((folder) => folder !== undefined))].sort();
  return unique.map(licenceOf).join(`\n${"-".repeat(78)}\n\n`);
};

/** Whole or not at all: a reader never sees half a file. */
const put = (path, contents) => {
  writeFileSync(`${path}.new`, contents);
  renameSync(`${path}.new`, path);
};

/** The code is read as Latin-1, a byte a letter: what esbuild left as it stands, in templates and patterns, is escaped. */
const plain = (code) =>
  code.replace(/[^\0-\x7f]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, "0")}`);

/** One bundled file, in memory. @param entry - a path, or the text of a module */
const bundled = async (name, entry, options) => {
  const result = await esbuild({ ...shared, ...options, ...entry, entryNames: name });
  return { name, contents: plain(result.outputFiles[0].text), metafile: result.metafile };
};

/** NAME.cjs: runs NAME-code.cjs with the machine code that V8 kept of it, where this Node still takes it. */
const loader = (name) => `const { readFileSync } = require("node:fs");
const { Script } = require("node:vm");
const filename = __dirname + "/${name}-code.cjs";
let cachedData;
try {
  cachedData = readFileSync(filename + ".cache");
} catch {}
const script = new Script(readFileSync(filename, "latin1"), { filename, cachedData });
script.runInThisContext().call(exports, exports, require, module, filename, __dirname);
module.script = script;
`;

const cacheOf = (name) => join(dist, `${name}-code.cjs.cache`);

/** Has a program answer its questions, to nobody. @returns what V8 compiled on the way */
const warmed = async (name) => {
  const load = createRequire(import.meta.url);
  const path = join(dist, `${name}.cjs`);
  const { run, nodeIo } = load(path);
  const nobody = { out: () => undefined, err: () => undefined, isRead: () => true };
  // a flag of V8 that differs from those of a start would void all that is kept
  const silent = { ...nodeIo(nobody), interactive: false, brief: () => undefined };
  for (const words of programs[name].asked) await run([...words, "--logbook", join(dist, "demo")], silent);
  return load.cache[path].script.createCachedData();
};

const codeOf = (name) =>
  bundled(
    `${name}-code`,
    { entryPoints: [join(cli, "src", programs[name].module)] },
    {
      define: { "import.meta.url": "here" },
      banner: {
        js: '(function(exports,require,module,__filename,__dirname){const here=require("node:url").pathToFileURL(__filename).href;',
      },
      footer: { js: "})" },
      plugins: [parserAlone, fewStatistics, nativeBuffer, mathjsApart],
    },
  );

export const build = async () => {
  const { version } = JSON.parse(readFileSync(join(cli, "package.json"), "utf8"));
  const entry = join(cli, "src", "main.ts");
  const first = await bundled(
    "sealtrend",
    { entryPoints: [entry] },
    { define: { __SEALTREND_VERSION__: JSON.stringify(version) }, plugins: [programsApart(entry)] },
  );
  const contents = `export { ${fromMathjs.join(", ")} } from "mathjs/number";`;
  const mathjs = { stdin: { contents, resolveDir: core, sourcefile: "entry.js" } };
  const names = Object.keys(programs);
  const files = [first, ...(await Promise.all(names.map(codeOf))), await bundled("mathjs", mathjs, {})];
  mkdirSync(dist, { recursive: true });
  for (const name of names) rmSync(cacheOf(name), { force: true }); // V8 tells code from code by its length alone
  for (const { name, contents } of files) put(join(dist, `${name}.cjs`), contents);
  for (const name of names) put(join(dist, `${name}.cjs`), loader(name));
  put(join(dist, "THIRD-PARTY.txt"), licences(...files.map(({ metafile }) => metafile)));
  rmSync(join(dist, "demo"), { recursive: true, force: true });
  cpSync(demo, join(dist, "demo"), {
    recursive: true,
    filter: (path) => !/generat|\.mjs$/.test(path.slice(demo.length)),
  });
  rmSync(join(dist, "faults"), { recursive: true, force: true });
  cpSync(faults, join(dist, "faults"), { recursive: true });
  for (const name of names) put(cacheOf(name), await warmed(name));
};

if (process.argv[1] === fileURLToPath(import.meta.url)) await build();
