// The command on real disks and real names: full, read-only, linked, with a folder where a file should be, beside what sync
// folders and editors leave.
//   node tests/hard/real-disk.mjs
// Mounting and marking need root: what cannot be tried here is left out aloud.

import { spawnSync } from "node:child_process";
import {
  chmodSync, existsSync, linkSync, lstatSync, mkdirSync, readFileSync, renameSync, statSync, symlinkSync, unlinkSync, writeFileSync,
} from "node:fs"; // prettier-ignore
import { join } from "node:path";
import { begin } from "./shared/part.mjs";
import { flat, realCommand } from "./shared/real-command.mjs";
import { filesIn, recordsOf } from "./shared/tree.mjs";

const part = begin();
const { scratch, sealtrend } = realCommand("disk");
const counts = { places: 0, leftOut: 0 };
const system = (...words) => spawnSync(words[0], words.slice(1), { encoding: "utf8" }).status === 0;

const readings = ["--dry", "150 149 148 147", "--unit", "psi"];
const enter = ["enter", "pump", ...readings, "--by", "me"];
const amend = [
  "amend",
  "pump",
  "--test",
  "latest",
  "--cylinder",
  "4",
  "--to",
  "141",
  "--because",
  "paper says 141",
];

/** A new folder to work in, with a logbook of one engine and one test. */
const desk = async (name, folder = "logbook") => {
  counts.places += 1;
  const cwd = join(scratch, name);
  mkdirSync(join(cwd, folder), { recursive: true });
  const type = (words, options = {}) =>
    sealtrend([...words, ...(folder === "logbook" ? [] : ["--logbook", folder])], { cwd, ...options });
  for (const words of [["engine", "add", "pump", "--cylinders", "4", "--ignition", "spark"], enter]) {
    const { exit, err } = await type(words);
    if (exit !== 0) part.fail(`${name}: ${err}`);
  }
  const at = (...parts) => join(cwd, folder, ...parts);
  return { cwd, at, type, tests: at("pump", "tests.csv"), records: () => recordsOf(filesIn(at())) };
};

/** A line that must end so and say that; `bytes`: the records must stay as they are. */
const ends = async (name, place, words, { exit, says = /(?:)/, records = "any" }) => {
  const before = place.records();
  const ended = await place.type(words);
  const said = flat(`${ended.out} ${ended.err}`);
  const changed = place.records() !== before;
  part.tried(
    name,
    ended.exit !== exit
      ? `ends with ${String(ended.exit)}: ${said}`
      : !says.test(said)
        ? `says ${said}`
        : records === "stay" && changed
          ? "changes the records"
          : records === "change" && !changed
            ? "changes nothing"
            : undefined,
  );
  return ended;
};
const works = (name, place, words) => ends(name, place, words, { exit: 0, records: "change" });
const proofreads = (name, place) =>
  ends(`${name}: proofread`, place, ["proofread"], { exit: 0, records: "stay" });
const leftOut = (what) => {
  counts.leftOut += 1;
  process.stdout.write(`left out: ${what}\n`);
};

const mounts = [];
const mounted = (name, size) => {
  const folder = join(scratch, name, "logbook");
  mkdirSync(folder, { recursive: true });
  if (!system("mount", "-t", "tmpfs", "-o", `size=${size}`, "tmpfs", folder)) return false;
  mounts.push(folder);
  return true;
};

const fullDisk = async () => {
  if (!mounted("full", "64k")) return leftOut("a full disk: mounting needs root");
  const place = await desk("full");
  let acknowledged = 1;
  for (const words of [enter, amend, ["note", "pump", "--what", "smoke", "--value", "blue"], ["gauge", "add", "red", "--kind", "compression", "--unit", "psi"]]) {
    // Filled to the last page, so that the next byte finds no room.
    const filler = place.at("filler.bin");
    spawnSync("dd", ["if=/dev/zero", `of=${filler}`, "bs=4k"], { stdio: "ignore" });
    const name = `full disk: ${words.slice(0, 2).join(" ")}`;
    const says = /disk is full \(ENOSPC\).*make room.*not saved: /;
    await ends(name, place, words, { exit: 3, says, records: "stay" });
    await ends(`${name}: show`, place, ["show", "pump"], { exit: 0, records: "stay" });
    unlinkSync(filler);
    await works(`${name}: with room again`, place, words);
  }
  // Filled by readings alone, until one is refused: what was acknowledged stands, and no more.
  for (let refused = false; !refused && acknowledged < 400; ) {
    const { exit, err } = await place.type(["enter", "pump", ...readings, "--note", "x".repeat(2_000)]);
    if (exit === 0) acknowledged += 1;
    else {
      refused = true;
      part.tried("full of readings", exit === 3 && /disk is full/.test(flat(err)) && /not saved: .*150 149 148 147/.test(flat(err)) ? undefined : err);
    }
  }
  const rows = readFileSync(place.tests, "utf8").trim().split("\n").length - 1;
  part.tried("full of readings: each acknowledged one stands, and no other", rows === acknowledged + 1 ? undefined : `${String(rows)} rows, ${String(acknowledged + 1)} acknowledged`);
  await proofreads("full of readings", place);
}; // prettier-ignore

const readOnlyDisk = async () => {
  if (!mounted("readonly", "1m")) return leftOut("a read-only disk: mounting needs root");
  const place = await desk("readonly");
  system("mount", "-o", "remount,ro", place.at());
  for (const words of [enter, amend, ["undo"]]) await ends(`read-only disk: ${words[0]}`, place, words, { exit: 3, says: /disk can only be read \(EROFS\)/, records: "stay" });
  await ends("read-only disk: show", place, ["show", "pump"], { exit: 0, records: "stay" });
  await proofreads("read-only disk", place);
  system("mount", "-o", "remount,rw", place.at());
  await works("read-only disk, written again", place, enter);
}; // prettier-ignore

const readOnlyFile = async () => {
  const place = await desk("marked");
  chmodSync(place.tests, 0o444);
  for (const words of [enter, amend]) await ends(`a file marked read-only: ${words[0]}`, place, words, { exit: 3, says: /read-only.*chmod u\+w/, records: "stay" });
  chmodSync(place.tests, 0o644);
  if (system("chattr", "+i", place.tests)) {
    for (const words of [enter, amend]) await ends(`a file that the system keeps: ${words[0]}`, place, words, { exit: 3, says: /forbids it \(EPERM\)|not write or read here/, records: "stay" });
    system("chattr", "-i", place.tests);
  } else leftOut("a file marked by chattr: this disk has no such mark");
  await works("a file freed again", place, enter);
}; // prettier-ignore

const wrongKinds = async () => {
  const place = await desk("kinds");
  await ends("a logbook that is not there: show", place, ["show", "pump", "--logbook", "nowhere"], { exit: 3, says: /no logbook nowhere/ });
  await ends("a logbook in a folder that is not there: undo", place, ["undo", "--logbook", "no/where"], { exit: 3, says: /no logbook/ });
  await ends("a logbook that is a file", place, ["show", "pump", "--logbook", "logbook/logbook.json"], { exit: 3, says: /no logbook/ });
  await ends("below a file", place, [...enter, "--logbook", "logbook/logbook.json/x"], { exit: 3, says: /part of the path is a file/ });
  renameSync(place.tests, place.at("kept.csv"));
  mkdirSync(place.tests);
  for (const words of [enter, amend]) await ends(`a folder for a file: ${words[0]}`, place, words, { exit: 3, says: /is not a file/, records: "stay" });
  await ends("a folder for a file: proofread", place, ["proofread"], { exit: 1, says: /is not a file/ });
}; // prettier-ignore

const links = async () => {
  const place = await desk("links");
  const real = place.at("pump", "real.csv");
  renameSync(place.tests, real);
  chmodSync(real, 0o640);
  symlinkSync("real.csv", place.tests);
  for (const words of [enter, amend, ["undo"], ["undo"]]) {
    await works(`a linked file: ${words[0]}`, place, words);
    const stays = lstatSync(place.tests).isSymbolicLink() && (statSync(real).mode & 0o777) === 0o640;
    part.tried(`a linked file: ${words[0]}: link and mode stay`, stays ? undefined : "they do not");
  }
  await proofreads("a linked file", place);

  const whole = await desk("linked", "real");
  symlinkSync("real", join(whole.cwd, "logbook"));
  const through = { ...whole, type: (words) => sealtrend(words, { cwd: whole.cwd }) };
  for (const words of [enter, amend, ["undo"]]) await works(`a linked logbook: ${words[0]}`, through, words);

  const out = await desk("outward");
  const outside = join(out.cwd, "outside.csv");
  renameSync(out.tests, outside);
  symlinkSync(outside, out.tests);
  const before = readFileSync(outside, "utf8");
  for (const words of [enter, amend]) await ends(`a link out of the logbook: ${words[0]}`, out, words, { exit: 3, says: /outside|leads out/ });
  part.tried("a link out of the logbook: nothing is written there", readFileSync(outside, "utf8") === before ? undefined : "it is");
  unlinkSync(outside);
  await ends("a link to nothing", out, enter, { exit: 3, says: /link/ });
  part.tried("a link to nothing: nothing is made there", existsSync(outside) ? "it is" : undefined);

  const hard = await desk("hard");
  const other = join(hard.cwd, "other.csv");
  linkSync(hard.tests, other);
  await works("a file of two names: enter", hard, enter);
  await works("a file of two names: undo", hard, ["undo"]);
  await ends("a file of two names: amend", hard, amend, { exit: 3, says: /2 names|names/, records: "stay" });
  part.tried("a file of two names: both hold the same", readFileSync(other, "utf8") === readFileSync(hard.tests, "utf8") ? undefined : "they part");
}; // prettier-ignore

const names = async () => {
  for (const name of ["with blanks  in it", "it's", 'a "quote"', "émile", "e\u0301mile", "-dash", "$HOME", "#1", "%TEMP%", "x".repeat(255)]) {
    const label = `a folder named ${name.slice(0, 20)}`;
    const place = await desk(name);
    for (const words of [enter, amend, ["undo"]]) await works(`${label}: ${words[0]}`, place, words);
    await proofreads(label, place);
  }
  const place = await desk("pages");
  const page = (name) => ["page", "pump", "--for", "file", "-o", name];
  await ends("a page of a long name", place, page(`${"x".repeat(251)}.html`), { exit: 3, says: /name is too long/, records: "stay" });
  await ends("a page of a name with blanks", place, page("a 'page' é.html"), { exit: 0 });
  part.tried("a page of a name with blanks is there", existsSync(join(place.cwd, "a 'page' é.html")) ? undefined : "it is not");
}; // prettier-ignore

/** What a sync folder, a file manager or an editor leaves beside a file: told by proofread, and its rows count nowhere. */
const copies = async () => {
  const place = await desk("copies");
  const shown = (await place.type(["show", "pump", "--json"])).out;
  const rows = readFileSync(place.tests, "utf8").replaceAll("150", "50");
  const left = ["tests (conflicted copy 2026-05-01).csv", "tests.csv~", ".tests.csv.swp", "tests (1).csv", "Copy of tests.csv", "tests.sync-conflict-20260501-101010-ABCDEFG.csv", "tests.csv.bak", "#tests.csv#"];
  for (const name of left) {
    writeFileSync(place.at("pump", name), rows);
    await ends(`${name}: proofread`, place, ["proofread"], { exit: 0, says: new RegExp(name.replace(/[^\w ]/g, ".").replaceAll(" ", "\\s")) });
    const now = (await place.type(["show", "pump", "--json"])).out;
    part.tried(`${name}: nobody reads it`, now === shown ? undefined : "the answer is another");
    unlinkSync(place.at("pump", name));
  }
}; // prettier-ignore

try {
  for (const act of [fullDisk, readOnlyDisk, readOnlyFile, wrongKinds, links, names, copies]) await act();
} finally {
  for (const folder of mounts) system("umount", folder);
}
part.end(counts);
