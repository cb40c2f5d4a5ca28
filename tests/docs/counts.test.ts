// tests/README.md: a line for each folder of tests, and a row for each kind of harm that tests/hard counts.

import { readFileSync, readdirSync } from "node:fs";
import { expect, test } from "vitest";

const at = (name: string): URL => new URL(`../${name}`, import.meta.url);
const readme = readFileSync(at("README.md"), "utf8");

test("each folder of tests has its line", () => {
  const folders = readdirSync(at("."), { withFileTypes: true }).filter((entry) => entry.isDirectory());
  const named = [...readme.matchAll(/^\| `(\w+)` \|/gm)].map(([, name]) => name);
  expect(named.toSorted()).toEqual(folders.map(({ name }) => name).toSorted());
});

test("each kind of harm that is counted has its row, in the order of the report", () => {
  const source = readFileSync(at("hard/report-table.mjs"), "utf8");
  const counted = [...source.matchAll(/^ {2}\["([^"]+)", "[\w-]+", /gm)].map(([, what]) => what);
  const [, table = ""] = readme.split("--write -->");
  const rows = [...table.matchAll(/^\| (.+?) \| /gm)].map(([, what]) => what);
  expect(counted.length).toBeGreaterThanOrEqual(13);
  expect(rows).toEqual(["what", "---", ...counted]);
});

test("no row tells of a failure", () => {
  const [, table = ""] = readme.split("--write -->");
  const cells = table.split("\n").map((line) => line.split(" | "));
  const failed = cells.flatMap(([what, , , count]) => (what?.startsWith("| ") === true ? [count] : []));
  expect(failed.filter((count) => count !== undefined && /[1-9]/.test(count))).toEqual([]);
});
