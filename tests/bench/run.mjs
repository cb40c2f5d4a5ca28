// npm run bench: what the tool costs, part by part, a table each; asserts nothing about time. A part is a file with a function
// `measure` that gives a table: its title, head, rows and notes.
// node tests/bench/run.mjs [--write] [PART ...]; --write puts all tables into DEVELOPERS.md.

import { readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { asText, machine, withTables } from "./tables.mjs";

const parts = ["start", "history", "model", "yard"];

const { values, positionals } = parseArgs({
  options: { write: { type: "boolean", default: false } },
  allowPositionals: true,
});
const unknown = positionals.filter((name) => !parts.includes(name));
if (unknown.length > 0) throw new Error(`no part ${unknown.join(", ")}; there are ${parts.join(", ")}`);
if (values.write && positionals.length > 0) throw new Error("--write takes all parts");

process.stdout.write(`${machine()}\n\n`);
const tables = [];
for (const name of positionals.length > 0 ? positionals : parts) {
  const { measure } = await import(`./${name}.mjs`);
  const table = await measure();
  process.stdout.write(`${asText(table)}\n`);
  tables.push(table);
}
if (values.write) {
  const file = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "DEVELOPERS.md");
  writeFileSync(file, withTables(readFileSync(file, "utf8"), tables));
}
