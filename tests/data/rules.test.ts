import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { parseTable } from "../../packages/core/src/record/index.ts";
import { readRuleSheet, shippedRules } from "../../packages/core/src/rules/index.ts";

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
const sheets = ["general", "comparison", "leak-aviation", "leak-makers", "leak-trade"].map(
  (name) => `data/rules/${name}.csv`,
);

const rulesOf = async (file: string) => {
  const outcome = await readRuleSheet(read(file), file);
  expect(outcome).toMatchObject({ ok: true, cautions: [] });
  return outcome.ok ? outcome.value.rules : [];
};

const sourceRows = (): readonly (readonly string[])[] => {
  const { table, problems } = parseTable(read("data/sources.csv"), "data/sources.csv");
  expect(problems).toEqual([]);
  expect(table.header.map(({ name }) => name)).toEqual(["key", "title", "issuer", "year", "part used", "status"]);
  return table.rows.map(({ cells }) => cells.map(({ text }) => text));
};

test("the rules the core carries are those of data/rules, read again", async () => {
  const again = (await Promise.all(sheets.map(rulesOf))).flat();
  const withoutSource = (rules: readonly { readonly source: string }[]) => rules.map(({ source: _, ...rest }) => rest);
  expect(withoutSource(shippedRules)).toEqual(withoutSource(again));
});

test("what npm run embed writes is what is committed", () => {
  const embed = fileURLToPath(new URL("../../packages/core/embed.mjs", import.meta.url));
  const { status, stderr } = spawnSync(process.execPath, [embed, "--check"], { encoding: "utf8" });
  expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
});

test("every source of a rule stands in data/sources.csv", async () => {
  const keys = new Set(sourceRows().map(([key]) => key));
  const used = (await Promise.all(sheets.map(rulesOf))).flat().flatMap(({ source }) => source.split(" "));
  expect(used.filter((key) => !keys.has(key))).toEqual([]);
});

test("every source has a key of its own, a title, the part used and how far it was seen", () => {
  const rows = sourceRows();
  const statuses = ["read in the source", "excerpt seen", "second hand", "from memory", "common practice"];
  expect(new Set(rows.map(([key]) => key)).size).toBe(rows.length);
  for (const [key = "", title, , , part, status = ""] of rows) {
    expect(key).toMatch(/^[a-z0-9][a-z0-9-]*$/);
    expect([title, part]).not.toContain("");
    expect(statuses).toContain(status);
  }
});

test("no rule claims to be better seen than its sources", async () => {
  const order = ["read in the source", "excerpt seen", "second hand", "from memory", "common practice", "judgement"];
  const statusOf = new Map(sourceRows().map((cells) => [cells[0], cells[5] ?? ""]));
  for (const rule of (await Promise.all(sheets.map(rulesOf))).flat()) {
    const worst = Math.max(...rule.source.split(" ").map((key) => order.indexOf(statusOf.get(key) ?? "")));
    expect(order.indexOf(rule.status)).toBeGreaterThanOrEqual(worst);
  }
});

test("ids are unique over both sheets", () => {
  expect(new Set(shippedRules.map(({ id }) => id)).size).toBe(shippedRules.length);
});
