// Files made by hand to break a reader: too large, too deep, too wide, not text at all, named like what every object has, or
// meant to be run by a spreadsheet. Each is read or refused in words, in a process whose memory is measured, within a second.
//   node tests/hard/crafted.mjs [--texts short]      (short: some of the names)

import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { faultOfRun, type } from "./shared/command.mjs";
import { builtInNames, formulaTexts } from "./shared/hostile-texts.mjs";
import { faultOfPrototypes } from "./shared/judge.mjs";
import { begin, newScratch, options } from "./shared/part.mjs";
import { loadProgram } from "./shared/program.mjs";

const { texts } = options({ texts: "long" });
const isShort = texts === "short";
const ownNames = isShort ? builtInNames.slice(0, 6) : builtInNames;
const mostTime_ms = 1_000;
const program = await loadProgram();
const part = begin();
const scratch = newScratch("crafted");
const home = join(scratch, "home");
let cases = 0;

const sound = {
  "logbook.json": "{}",
  "gauges.csv": "gauge,kind,unit\nred,compression,psi\n",
  "pump/engine.json": '{ "cylinders": ["1", "2", "3", "4"], "ignition": "spark" }',
  "pump/tests.csv": "test,date,what,gauge,unit,c1,c2,c3,c4,note\n2024-05-01a,2024-05-01,dry,red,psi,150,149,151,120,\n",
  "pump/services.csv": "date,what,cylinders,note\n2024-06-01,plugs,,\n",
  "pump/notes.csv": "date,what,value,note\n2024-06-01,smoke,none,\n",
  "pump/measurements.csv": "teardown,date,part,label,at,quantity,value,unit\n1,2026-06-06,bore,1,top/thrust,diameter,86.09,mm\n",
}; // prettier-ignore
const put = (cwd, files) => {
  mkdirSync(join(cwd, "logbook", "pump"), { recursive: true });
  for (const [name, content] of Object.entries({ ...sound, ...files }))
    writeFileSync(join(cwd, "logbook", name), content);
};

const lines = [["show", "pump"], ["proofread"]];
/** Some commands on a logbook with these files in it. @param may - the exits that are right */
const attempt = async (name, files, { words = lines, may = [0, 1, 3] } = {}) => {
  cases += 1;
  const cwd = mkdtempSync(join(scratch, "desk-"));
  put(cwd, files);
  for (const typed of words) {
    const line = cases % 2 === 0 ? typed : [...typed, "--json"];
    const ended = await type(program, line, { cwd, home });
    const slow = ended.took > mostTime_ms ? `${ended.took.toFixed(0)} ms` : undefined;
    const exit = may.includes(ended.exit) ? undefined : `ends with ${String(ended.exit)}: ${(ended.err + ended.out).slice(0, 300)}`;
    part.tried(`${name}: ${line.join(" ")}`, faultOfRun(ended, line) ?? slow ?? exit ?? faultOfPrototypes());
  }
  rmSync(cwd, { recursive: true });
}; // prettier-ignore

const csv = (name) => name.endsWith(".csv");
const refused = { may: [1, 3] };
const names = Object.keys(sound);
const header = (name) => sound[name].split("\n")[0];

// No text at all.
for (const name of names) {
  const text = sound[name];
  await attempt(`${name}, zeros`, { [name]: Buffer.alloc(4_096) }, refused);
  await attempt(`${name}, a zero inside`, { [name]: text.replace("\n", "\0\n").replace("{", "{\0") }, refused);
  await attempt(`${name}, bytes of no encoding`, { [name]: Buffer.concat([Buffer.from(text), Buffer.from([0xff, 0xfe, 0xc0, 0xaf, 0xed, 0xa0, 0x80, 0xf8])]) });
  await attempt(`${name}, marked and then wrong`, { [name]: Buffer.concat([Buffer.from([0xef, 0xbb, 0xbf]), Buffer.from(text), Buffer.from([0xc3, 0x28])]) });
  await attempt(`${name}, UTF-16 cut in half`, { [name]: Buffer.concat([Buffer.from(`\ufeff${text}`, "utf16le"), Buffer.from([0x41])]) }, refused);
  await attempt(`${name}, empty`, { [name]: "" });
  await attempt(`${name}, a mark alone`, { [name]: "\ufeff" });
} // prettier-ignore

// Too much: in full where readings stand, a tenth of it elsewhere.
const mega = 500_000;
for (const name of names.filter(csv)) {
  const first = header(name);
  const size = name === "pump/tests.csv" ? mega : mega / 10;
  const once = { ...refused, words: [["show", "pump"]] };
  const either = { words: [["show", "pump"]] };
  await attempt(`${name}, a text in a cell`, { [name]: `${first}\n${"x".repeat(10 * size)}\n` }, once);
  await attempt(`${name}, 60,000 blanks in a cell`, { [name]: `${first}\nx${" ".repeat(60_000)}x\n` }, once);
  await attempt(`${name}, blanks alone`, { [name]: " ".repeat(10 * size) }, either);
  await attempt(`${name}, line ends alone`, { [name]: "\n".repeat(10 * size) }, either);
  await attempt(`${name}, many columns`, { [name]: `${first}${",x".repeat(size)}\n` }, once);
  await attempt(`${name}, many cells in a row`, { [name]: `${first}\n${",".repeat(size)}x\n` }, once);
  await attempt(`${name}, many quote marks`, { [name]: `${first}\n${'"'.repeat(size)}\n` }, either);
  await attempt(
    `${name}, a quote mark never closed`,
    { [name]: `${first}\n"${"x,y\n".repeat(size / 100)}` },
    once,
  );
  await attempt(`${name}, line ends in quotes`, { [name]: `${first}\n"${"\n".repeat(size)}"\n` }, once);
  await attempt(
    `${name}, many line ends of a short row`,
    { [name]: `${first}\n${"x\n".repeat(size / 100)}` },
    either,
  );
}
await attempt(
  "tests.csv, larger than a file may be",
  { "pump/tests.csv": Buffer.alloc(17 * 1_048_576, "x,y\n") },
  refused,
);
await attempt("tests.csv, 300,000 rows", { "pump/tests.csv": `${header("pump/tests.csv")}\n${"a,2024-05-01,dry,red,psi,1,1,1,1,\n".repeat(300_000)}` }, refused); // prettier-ignore

// JSON: too deep, the same name twice, names that every object has, numbers that are none.
for (const name of names.filter((one) => !csv(one))) {
  const json = (text) => attempt(`${name}, ${text.slice(0, 40)}`, { [name]: text });
  for (const [open, close] of [["[", "]"], ['{"a":', "}"], ['{"limits":', "}"], ['[{"a":', "}]"]])
    await attempt(`${name}, 100,000 times ${open}`, { [name]: open.repeat(100_000) + close.repeat(100_000) }, refused);
  await attempt(`${name}, never closed`, { [name]: "[".repeat(5 * mega) }, refused);
  await attempt(`${name}, 5 MB of text`, { [name]: `{ "name": "${"x".repeat(5 * mega)}" }` }, refused);
  await attempt(`${name}, blanks in a text`, { [name]: `{ "name": "x${" ".repeat(60_000)}x", "geometry": { "bore": "x${" ".repeat(60_000)}x" } }` }, refused);
  await attempt(`${name}, a name twice`, { [name]: '{ "cylinders": ["1"], "cylinders": ["2"], "demo": true, "demo": false }' }, refused);
  await attempt(`${name}, a name twice, one written out`, { [name]: '{ "name": "a", "\\u006eame": "b" }' }, refused);
  await attempt(`${name}, 100,000 names`, { [name]: `{ ${Array.from({ length: 100_000 }, (_, i) => `"a${String(i)}": 1`).join(", ")} }` });
  for (const text of ["null", "[]", "1", '"x"', "nan", "1e999", "-", "{}x", "{'a': 1}", "{a: 1}", '{ "homeAltitude_m": 1e999 }', '{ "homeAltitude_m": -0 }', '{ "cylinders": 1e999 }', '{ "name": "\\ud800" }', '{ "name": "\\u0000" }'])
    await json(text);
  for (const own of ownNames)
    for (const value of [`"${own}"`, `{ "${own}": 1, "polluted": true }`, `["${own}"]`, "1"].slice(0, isShort ? 2 : 4)) {
      await json(`{ "cylinders": ["1"], "ignition": "spark", "${own}": ${value} }`);
      await json(`{ "cylinders": ["1"], "ignition": "spark", "limits": { "${own}": ${value}, "compression": { "${own}": ${value} } }, "prices": { "${own}": ${value} } }`);
    }
} // prettier-ignore

// Names that every object has, as columns, labels, ids, words and units.
const all = [["show", "pump"], ["history", "pump"], ["decide", "pump"], ["proofread"], ["teardown", "pump", "--no-input"], ["engine", "show", "pump"], ["engine", "list"], ["gauge", "list"]]; // prettier-ignore
for (const own of ownNames) {
  const typed = [
    ["enter", "pump", "--dry", "150 149 151 118", "--unit", "psi", "--gauge", own, "--by", own],
    ["service", "pump", "--what", "plugs", "--by", own],
    ["note", "pump", "--what", "smoke", "--value", "none", "--by", own],
    ["amend", "pump", "--test", "latest", "--cylinder", "4", "--to", "119", "--because", own],
    ["engine", "set", "pump", own, own],
    ["engine", "set", "pump", `limits.${own}`, own],
    ["gauge", "add", own, "--kind", "compression", "--unit", own],
    ["show", own],
    ["how", own],
    [own],
    ["help", own],
    ["restate", "--read", own],
    ["page", "pump", "--for", own],
    ["show", "pump", "--units", own, `--${own}`, own],
    ["undo"],
  ];
  for (const name of names.filter(csv)) {
    const [first, row = ""] = sound[name].split("\n");
    await attempt(`${name}, a column ${own}`, { [name]: `${first},${own}\n${row},${own}\n` }, { words: [...lines, ...typed.slice(0, 4)], may: [0, 1, 2, 3] });
    const cells = row.split(",");
    const one = cells.map((_, i) => cells.with(i, own).join(","));
    await attempt(`${name}, ${own} in every cell`, { [name]: [first, ...one, ""].join("\n") });
  }
  const labelled = `test,date,what,gauge,unit,c1,c${own}\n2024-05-01a,2024-05-01,dry,red,psi,150,120\n${own},2025-05-01,dry,${own},psi,150,118\n2026-05-01a,2026-05-01,dry,${own},psi,150,116\n`;
  await attempt(`a cylinder ${own}`, { "pump/engine.json": JSON.stringify({ cylinders: ["1", own], ignition: "spark" }), "pump/tests.csv": labelled, "pump/services.csv": `date,what,cylinders\n2024-06-01,valve job,${own}\n`, "gauges.csv": `gauge,kind,unit\n${own},compression,psi\n` }, { words: all });
  await attempt(`typed ${own}`, {}, { words: typed, may: [0, 1, 2, 3] });
} // prettier-ignore

// What a spreadsheet might run: refused where it is typed, kept and named where a file already has it; nothing written begins with it.
const begins = /^[\s\u00a0\u3000]*[=+\-@\uff1d\uff0b\uff0d\uff20]/;
const isNumber = (cell) => /^-?\d+(?:[.,]\d+)?$/.test(cell);
for (const text of isShort ? formulaTexts.filter((_, i) => i % 2 === 0) : formulaTexts) {
  cases += 1;
  const cwd = mkdtempSync(join(scratch, "desk-"));
  put(cwd, {});
  for (const words of [
    ["enter", "pump", "--dry", "150 149 151 118", "--unit", "psi", `--note=${text}`, `--by=${text}`],
    ["service", "pump", "--what", "other", `--note=${text}`, `--by=${text}`],
    ["note", "pump", "--what", "other", `--value=${text}`, `--note=${text}`],
    ["amend", "pump", "--test", "latest", "--cylinder", "4", "--to", "117", `--because=${text}`],
    ["amend", "pump", "--test", "latest", `--set-aside=${text}`, "--because", "slip"],
    ["gauge", "add", "blue", "--kind", "compression", "--unit", "psi", `--note=${text}`],
  ]) {
    const ended = await type(program, words, { cwd, home });
    part.tried(`formula ${text}: ${words[0]}`, faultOfRun(ended, words));
  }
  for (const name of [...names.filter(csv), "pump/amendments.csv"]) {
    if (!existsSync(join(cwd, "logbook", name))) continue;
    const { table } = program.parseTable(readFileSync(join(cwd, "logbook", name), "utf8"), name);
    const cell = table.rows.flatMap(({ cells }) => cells.map((one) => one.text)).find((one) => begins.test(one) && !isNumber(one));
    part.tried(`formula ${text} in ${name}`, cell === undefined ? undefined : `a cell ${JSON.stringify(cell)}`);
  }
  rmSync(cwd, { recursive: true });
} // prettier-ignore

rmSync(scratch, { recursive: true, force: true });
part.end({ crafted: cases });
