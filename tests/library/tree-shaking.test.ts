// Whoever imports one function gets that function and what it needs, not the library: bundled, minified and measured.

import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import { expect, test } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

interface Bundle {
  readonly bytes: number;
  /** Packages of others in it, and those it asks for at once; not what is loaded on demand. */
  readonly packages: readonly string[];
}

const packageOf = (path: string): string[] => {
  const name = /^(?:.*node_modules\/)?(@[^/]+\/[^/]+|[^/]+)/.exec(path)?.[1];
  return name === undefined ? [] : [name];
};

const bundled = async (name: string, entry: string): Promise<Bundle> => {
  const { metafile } = await build({
    stdin: { contents: `import { ${name} } from "${entry}"; console.log(${name});`, resolveDir: root },
    bundle: true,
    minify: true,
    write: false,
    metafile: true,
    platform: "browser",
    format: "esm",
    conditions: ["@sealtrend/source"],
    external: ["mathjs"],
  });
  const [output] = Object.values(metafile.outputs);
  const { inputs = {}, imports = [], bytes = 0 } = output ?? {};
  const inside = Object.keys(inputs).filter(
    (path) => path.includes("node_modules") && (inputs[path]?.bytesInOutput ?? 0) > 0,
  );
  const atOnce = imports.filter(({ kind }) => kind !== "dynamic-import").map(({ path }) => path);
  return { bytes, packages: [...new Set([...inside, ...atOnce].flatMap(packageOf))].sort() };
};

/** Name, most bytes, and the packages of others that it cannot do without. */
const expected = [
  ["pressureAtAltitude", 1_500, []],
  ["correctReading", 1_500, []],
  ["readQuantity", 5_000, []],
  ["judgeLeak", 7_000, []],
  ["expectedPressure", 15_000, []],
  ["procedureFor", 30_000, []],
  ["judgeTeardown", 120_000, ["simple-statistics"]],
  ["assessHistory", 150_000, ["simple-statistics"]],
  ["readEngineRecord", 220_000, ["csv-parse"]],
  ["readRuleSheet", 150_000, ["csv-parse"]],
] as const;

test.each(expected)("%s alone takes less than %i bytes", async (name, most, packages) => {
  const { bytes, packages: found } = await bundled(name, "@sealtrend/core");
  expect(bytes).toBeGreaterThan(300);
  expect(bytes).toBeLessThan(most);
  expect(found).toEqual(packages);
});

test("a formula out of the parts brings nothing but itself either", async () => {
  const { bytes, packages } = await bundled("altimeterSetting", "@sealtrend/core/parts");
  expect(bytes).toBeLessThan(1_500);
  expect(packages).toEqual([]);
});
