import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { cruise, type ICruiseOptions, type ICruiseResult, type IForbiddenRuleType } from "dependency-cruiser";
import { afterEach, expect, test } from "vitest";

interface Arrows {
  readonly forbidden: IForbiddenRuleType[];
  readonly options: ICruiseOptions & { readonly enhancedResolveOptions: object };
}
const load = createRequire(import.meta.url);
const { forbidden, options } = load("../../.dependency-cruiser.cjs") as Arrows;
let folder = "";

afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** The names of the rules that a small tree of files breaks. */
const broken = async (files: Readonly<Record<string, string>>): Promise<readonly string[]> => {
  folder = mkdtempSync(join(tmpdir(), "arrows-"));
  for (const [name, text] of Object.entries({ "package.json": "{}", ...files })) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  const { enhancedResolveOptions, tsConfig: _, ...cruiseOptions } = options;
  const { output } = await cruise(
    ["packages"],
    { baseDir: folder, ruleSet: { forbidden }, validate: true, ...cruiseOptions },
    enhancedResolveOptions,
  );
  const { violations } = (output as ICruiseResult).summary;
  return [...new Set(violations.map(({ rule }) => rule.name))].sort();
};

const air = "packages/core/src/air/index.ts";
const spread = "packages/core/src/spread/index.ts";

test("a domain may import one above it in the list, through its index", async () => {
  expect(
    await broken({ [air]: "export const a = 1;", [spread]: 'export { a } from "../air/index.ts";' }),
  ).toEqual([]);
});

test("a domain may not import one below it in the list", async () => {
  expect(
    await broken({ [spread]: "export const a = 1;", [air]: 'export { a } from "../spread/index.ts";' }),
  ).toEqual(["air-looks-up"]);
});

test("a domain may not reach past the index of another", async () => {
  expect(
    await broken({
      "packages/core/src/air/gas.ts": "export const a = 1;",
      [spread]: 'export { a } from "../air/gas.ts";',
    }),
  ).toEqual(["domain-by-its-index"]);
});

test("two files may not import each other, not even a type", async () => {
  expect(
    await broken({
      [air]: 'import type { B } from "./gas.ts"; export type A = B;',
      "packages/core/src/air/gas.ts": 'import type { A } from "./index.ts"; export type B = A;',
    }),
  ).toEqual(["no-circle"]);
});

test("the core may not use anything of Node", async () => {
  expect(await broken({ [air]: 'export { readFileSync } from "node:fs";' })).toEqual(["core-is-pure"]);
});

test("a domain that is not in the list is refused", async () => {
  expect(
    await broken({
      "packages/core/src/utils/index.ts": "export const a = 1;",
      "packages/core/src/index.ts": 'export { a } from "./utils/index.ts";',
    }),
  ).toEqual(["domain-not-in-the-list"]);
});

test("mathjs has one importer", async () => {
  const mathjs = {
    "node_modules/mathjs/package.json": '{"name":"mathjs","version":"1.0.0","main":"index.js"}',
    "node_modules/mathjs/index.js": "",
  };
  expect(
    await broken({ ...mathjs, [air]: 'import "mathjs";', "package.json": '{"dependencies":{"mathjs":"1"}}' }),
  ).toEqual(["mathjs-has-one-importer"]);
});
