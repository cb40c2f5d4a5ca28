// What a new command is easily forgotten in: the README's table, and the schema of its JSON.

import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { commands } from "sealtrend";
import { expect, test } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));
const read = (...path: readonly string[]): string => readFileSync(join(root, ...path), "utf8");

/** The names in a cell such as `engine add`, `list` · `gauge add`: the first word of a group is said once. */
const namesIn = (cell: string): readonly string[] =>
  cell.split("·").flatMap((group) => {
    const [first = "", ...rest] = [...group.matchAll(/`([^`]+)`/g)].map(([, name = ""]) => name);
    const head = first.includes(" ") ? first.replace(/ .*/, " ") : "";
    return [first, ...rest.map((name) => (name.includes(" ") ? name : head + name))];
  });

test("the README's table has every command once, and no other", () => {
  const [, table = ""] = /## What it can do\n([\s\S]*?)\n## /.exec(read("README.md")) ?? [];
  const cells = [...table.matchAll(/^\| (`.+?) \| /gm)].map(([, cell = ""]) => cell);
  expect(cells.flatMap(namesIn).toSorted()).toEqual(commands.map(({ name }) => name).toSorted());
});

/** Files of the command's own, which no command answers with. */
const kept = ["import-map", "logbook", "pending", "unfinished"];

test("every document that a command answers with has its schema, and every schema its document", () => {
  const schemas = readdirSync(join(root, "packages", "cli", "schemas")).map((file) => {
    const { $id } = JSON.parse(read("packages", "cli", "schemas", file)) as { readonly $id: string };
    return $id;
  });
  const sources = readdirSync(join(root, "packages", "cli", "src"), { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".ts"))
    .map((file) => read("packages", "cli", "src", file));
  const made = new Set(sources.flatMap((text) => text.match(/sealtrend\/[a-z-]+@\d+/g) ?? []));
  const answers = [...made].filter((name) => !kept.some((file) => name.startsWith(`sealtrend/${file}@`)));
  expect(answers.toSorted()).toEqual(schemas.toSorted());
});
