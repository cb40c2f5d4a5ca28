// What others may import from the library, one line an export: entry point, name, and what a caller relies on, out of the
// built declarations. `npm run surface -- --write` renews public-surface.txt; without it the two are compared, so that a
// review sees every change of what is promised.

import { readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";

const here = dirname(fileURLToPath(import.meta.url));
const file = join(here, "public-surface.txt");
const { name, exports } = JSON.parse(readFileSync(join(here, "package.json"), "utf8"));

/** Entry points by the name that is imported, each with its declarations. */
const entries = Object.entries(exports)
  .filter(([, target]) => target.types !== undefined)
  .map(([path, { types }]) => ({ entry: `${name}${path.slice(1)}`, path: join(here, types) }));

const program = ts.createProgram(
  entries.map(({ path }) => path),
  { module: ts.ModuleKind.NodeNext, target: ts.ScriptTarget.ES2023, types: [], skipLibCheck: true },
);
const checker = program.getTypeChecker();
const printer = ts.createPrinter({ removeComments: true });

const textOf = (node) =>
  printer
    .printNode(ts.EmitHint.Unspecified, node, node.getSourceFile())
    .replace(/\s+/g, " ")
    .replace(/^(export )?(declare )?/, "")
    .replace(/;$/, "");

const fields = ({ members }) =>
  members.map((member) => `${member.name?.getText() ?? "[…]"}${member.questionToken ? "?" : ""}`).join(", ");

/** The words of a type that is read off a table. */
const words = (type) =>
  (type.isUnion() ? type.types : [type])
    .map((one) => checker.typeToString(one))
    .sort()
    .join(" | ");

/** A signature or a type as it is written; of a record the names of its fields, which is what a change would touch. */
const promised = (node) => {
  if (ts.isTypeAliasDeclaration(node) && /\btypeof\b/.test(node.type.getText()))
    return `type ${node.name.text} = ${words(checker.getTypeAtLocation(node))}`;
  if (ts.isInterfaceDeclaration(node)) {
    const above = (node.heritageClauses ?? []).map(textOf).join(" ");
    return `interface ${node.name.text}${above && ` ${above}`} { ${fields(node)} }`;
  }
  if (ts.isVariableDeclaration(node))
    return node.type !== undefined && ts.isTypeLiteralNode(node.type)
      ? `const ${node.name.getText()}: { ${fields(node.type)} }`
      : `const ${textOf(node)}`;
  return textOf(node);
};

/** What an earlier entry point has is told once, there. */
const told = new Set();

const linesOf = ({ entry, path }) =>
  checker
    .getExportsOfModule(checker.getSymbolAtLocation(program.getSourceFile(path)))
    .filter(({ name }) => !told.has(name) && told.add(name))
    .map((symbol) => {
      const target = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol;
      return `${entry} ${symbol.name}: ${target.declarations.map(promised).join("; ")}`;
    });

const made = `${entries.flatMap(linesOf).sort().join("\n")}\n`;

if (process.argv.includes("--write")) writeFileSync(file, made);
else {
  const before = new Set(readFileSync(file, "utf8").split("\n"));
  const now = new Set(made.split("\n"));
  const gone = [...before].filter((line) => !now.has(line)).map((line) => `- ${line}`);
  const come = [...now].filter((line) => !before.has(line)).map((line) => `+ ${line}`);
  if (gone.length + come.length > 0) {
    const advice = "public-surface.txt tells another surface: npm run surface -- --write";
    process.stdout.write(`${[...gone, ...come, advice].join("\n")}\n`);
    process.exitCode = 1;
  }
}
