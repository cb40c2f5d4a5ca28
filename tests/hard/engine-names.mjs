// Names for an engine that would lead out of the logbook, name a device, hide or look like another: every one is refused in words,
// nothing is made outside the logbook, and a folder of such a name is never read as an engine.
//   node tests/hard/engine-names.mjs

import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { faultOfRun, type } from "./shared/command.mjs";
import { begin, newScratch } from "./shared/part.mjs";
import { loadProgram } from "./shared/program.mjs";

const program = await loadProgram();
const part = begin();
const scratch = newScratch("names");
const home = join(scratch, "home");

const names = [
  "..", ".", "../out", "..\\out", "../../etc", "a/b", "ab/cd", "a\\b", "ab\\cd", "/tmp/x", "/", "\\", "C:x", "C:\\x", "c:", "ab:cd",
  "\\\\server\\share", "file:///x", "~", "~root", "$HOME", "%TEMP%", "con", "prn", "aux", "nul", "com1", "com9", "lpt1", "lpt9", "CON", "nul.txt",
  "con ", "ab.", "ab ", " ab", "ab.txt", "ab\t", "ab\n", "ab\r\n", "a\0b", "ab\0", "\u202eba", "ab\u202e", "ab\u200b", "\ufeffab", "ab\u00a0",
  "x".repeat(41), "x".repeat(300), "x".repeat(5_000), "caf\u00e9", "cafe\u0301", "ＡＢ", "аb", "ﬁx", "-ab", "--help", "-", "", " ", "a", "1a", "12", "1e5",
  "e1-2", "AB", "Pump", "pump*", "pump?", "pu|mp", "pu<mp", 'pu"mp', "pu'mp", "pu;mp", "pu&mp", "pu`mp", "pu$mp", "engine.json", "logbook.json",
  "__proto__", ".git", ".lock", "_ab", "ab/../..", "ab%2f..", "a".padEnd(2, "\ud800"), "\u{1f527}x",
]; // prettier-ignore
const good = ["pump", "ab", "mill-2", "x".repeat(40), "en1-2", "constructor", "tostring"];

/** Everything in the scratch folder, so that anything made elsewhere is seen. */
const everything = () => readdirSync(scratch, { recursive: true }).map(String).sort();

const newDesk = () => {
  const cwd = mkdtempSync(join(scratch, "desk-"));
  mkdirSync(join(cwd, "logbook"));
  return cwd;
};

const add = (name) => ["engine", "add", "--cylinders", "4", "--ignition", "spark", "--", name];
const faultOfName = async (name) => {
  const cwd = newDesk();
  const before = everything();
  for (const words of [add(name), ["enter", "--new", "--cylinders", "4", "--dry", "150 149 148 147", "--unit", "psi", "--", name]]) {
    const ended = await type(program, words, { cwd, home });
    if (ended.exit === 0) return `${words.slice(0, 2).join(" ")} takes it`;
    const fault = faultOfRun(ended, words);
    if (fault !== undefined) return fault;
  }
  if (program.engineIdFault(name) === undefined && name !== "a\0b") return "is good by the rule";
  const after = everything();
  return after.length === before.length ? undefined : `made ${after.filter((one) => !before.includes(one)).join(", ")}`;
}; // prettier-ignore

/** A folder that somebody else made, of a name that the system allows. */
const faultOfFolder = async (name) => {
  const cwd = newDesk();
  const folder = join(cwd, "logbook", name.replace(/[\0/]/g, "_"));
  try {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, "engine.json"), '{ "cylinders": ["1"], "ignition": "spark" }');
  } catch {
    return undefined; // the system itself allows no such name
  }
  const before = everything();
  for (const words of [
    ["engine", "list"],
    ["show", "--", name],
    ["proofread"],
    ["engine", "list", "--json"],
  ]) {
    const ended = await type(program, words, { cwd, home });
    const fault = faultOfRun(ended, words);
    if (fault !== undefined) return fault;
    if (words[0] === "show" && ended.exit === 0) return "is shown";
  }
  return everything().length === before.length ? undefined : "something was made";
};

for (const name of names) {
  const label = JSON.stringify(name.slice(0, 60));
  part.tried(label, await faultOfName(name));
  part.tried(`folder ${label}`, await faultOfFolder(name));
}
for (const name of good) {
  const cwd = newDesk();
  const { exit, err } = await type(program, add(name), { cwd, home });
  const made = existsSync(join(cwd, "logbook", name, "engine.json"));
  part.tried(`good: ${name}`, exit === 0 && made ? undefined : `refused: ${err}`);
}

// Twins: the same name in capitals is one folder on other systems; a folder that leads elsewhere is not written into.
{
  const cwd = newDesk();
  mkdirSync(join(cwd, "logbook", "Pump"));
  part.tried("twin in capitals", (await type(program, add("pump"), { cwd, home })).exit === 2 ? undefined : "taken");
  mkdirSync(join(cwd, "outside"));
  symlinkSync(join(cwd, "outside"), join(cwd, "logbook", "mill"));
  const { exit } = await type(program, add("mill"), { cwd, home });
  const inside = readdirSync(join(cwd, "outside"));
  part.tried("a link out of the logbook", exit !== 0 && inside.length === 0 ? undefined : `written: ${inside.join(", ")}`);
} // prettier-ignore
rmSync(scratch, { recursive: true, force: true });
part.end({ names: names.length });
