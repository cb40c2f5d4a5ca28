// The arrows of the architecture. A domain of the core imports only from those above it, through their index.ts.

/** Low to high. */
const domains = [
  "problem",
  "quantity",
  "statistics",
  "air",
  "cranking",
  "leakdown",
  "record",
  "rules",
  "procedure",
  "spread",
  "history",
  "teardown",
  "diagnosis",
  "decision",
  "assess",
];
const core = "^packages/core/src/";
const any = (names) => `(${names.join("|")})`;

const downwards = domains.slice(0, -1).map((domain, place) => ({
  name: `${domain}-looks-up`,
  comment: "A domain imports only from those above it in the list of domains.",
  severity: "error",
  from: { path: `${core}${domain}/` },
  to: { path: `${core}${any(domains.slice(place + 1))}/` },
}));

/** Only `file` may import the package; elsewhere it is wrapped behind ours. */
const oneImporter = (name, file) => ({
  name: `${name}-has-one-importer`,
  severity: "error",
  from: { path: "^packages/[^/]+/src/", pathNot: file },
  to: { path: `(^|/)node_modules/${name}/` },
});

module.exports = {
  forbidden: [
    ...downwards,
    {
      name: "domain-by-its-index",
      severity: "error",
      from: { path: `${core}([^/]+)/` },
      to: { path: `${core}(?!$1/)[^/]+/`, pathNot: `${core}[^/]+/index\\.ts$` },
    },
    {
      name: "core-index-by-index",
      severity: "error",
      from: { path: `${core}(index|parts)\\.ts$` },
      to: { path: core, pathNot: [`${core}index\\.ts$`, `${core}[^/]+/index\\.ts$`] },
    },
    {
      name: "domain-not-in-the-list",
      severity: "error",
      from: {},
      to: { path: `${core}[^/]+/`, pathNot: `${core}${any(domains)}/` },
    },
    {
      name: "core-is-pure",
      comment: "Nothing of Node.",
      severity: "error",
      from: { path: core },
      to: { dependencyTypes: ["core"] },
    },
    {
      name: "core-knows-no-command",
      severity: "error",
      from: { path: core },
      to: { path: "^packages/cli/" },
    },
    {
      name: "core-by-its-name",
      comment: "The command reaches the core by its public entries.",
      severity: "error",
      from: { path: "^packages/cli/src/" },
      to: { path: core, pathNot: `${core}(index|parts)\\.ts$` },
    },
    {
      name: "tests-by-the-index",
      comment:
        "A test reaches a domain by its index.ts, or by that of a folder in it; only tests/core, which mirrors the sources, looks inside.",
      severity: "error",
      from: { path: "^tests/", pathNot: "^tests/core/" },
      to: { path: `${core}[^/]+/`, pathNot: [`${core}[^/]+/index\\.ts$`, `${core}[^/]+/[^/]+/index\\.ts$`] },
    },
    {
      name: "no-circle",
      severity: "error",
      from: {},
      to: { circular: true },
    },
    {
      name: "resolves",
      severity: "error",
      from: {},
      to: { couldNotResolve: true },
    },
    oneImporter("simple-statistics", `${core}statistics/`),
    oneImporter("csv-parse", `${core}record/csv-records\\.ts$`),
    oneImporter("mathjs", `${core}rules/parse-formula\\.ts$`),
    oneImporter("asciichart", "^packages/cli/src/render/chart\\.ts$"),
    oneImporter("d3-(scale|shape)", "^packages/cli/src/render/page/plot\\.ts$"),
    oneImporter("yargs", "^packages/cli/src/options/parse\\.ts$"),
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    exclude: { path: "(^|/)dist/" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["@sealtrend/source", "import", "node", "default"],
    },
  },
};
