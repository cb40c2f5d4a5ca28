// Every command that writes, and the undo of it, on a disk that fails: each call on the disk in turn is the last before a kill,
// fails with one error or another, writes a byte and no more, fails with all that come after it, or with a second one.
//   node tests/hard/disk-faults.mjs [--all yes] [--only "enter;undo of enter"] [--each 25] [--case "enter: 12, kill"]
// Without --all a spread of the trials, the same every time. Whatever happened: the records are the old or the new ones, whole;
// who was told "saved" has the new ones, who was refused has the old ones and what was typed; the next command works.

import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type } from "./shared/command.mjs";
import { changing, loadFaulty, newDisk } from "./shared/faulty-fs.mjs";
import { begin, newScratch, options } from "./shared/part.mjs";
import { randomOf } from "../random.mjs";
import { filesIn, litterOf, putBack, recordsOf } from "./shared/tree.mjs";
import { preparing, sheets, undone, writing } from "./shared/writing-commands.mjs";

const { all, only, each, case: oneCase } = options({ all: "", only: "", each: "25", case: "" });
const program = await loadFaulty();
const part = begin();
const scratch = newScratch("faults");
const cwd = join(scratch, "desk");
const home = join(cwd, "home");
const disk = newDisk((path) => path.startsWith(scratch));
const healthy = () => undefined;
const typed = (words, rule = healthy, answers = [], list = "not listed") =>
  disk.under(rule, () => type(program, words, { cwd, home, answers }), list);

const errors = ["EIO", "ENOSPC", "EDQUOT", "EINTR", "EACCES", "EROFS"];
const isChange = ({ name }) => changing.includes(name);

/** What can befall one call. */
const actsOn = (call) => {
  if (!isChange(call)) return ["EIO", "EACCES"].map((act) => ({ act }));
  const short = call.name === "writeSync" ? ["one byte", "one byte, kill"] : [];
  return [
    ...["kill", ...errors, ...short].map((act) => ({ act })),
    ...["EIO", "ENOSPC", "EROFS"].map((act) => ({ act, then: "all" })),
    ...Array.from({ length: 8 }, (_, n) => ({ act: "EIO", then: n + 1 })),
  ];
};
/** Every trial of a command that makes these calls: which call it befalls, and what. */
const trialsOf = (calls) =>
  calls.flatMap((call, index) => actsOn(call).map((befalls) => ({ nth: index + 1, ...befalls })));

/** `then`: all later calls that change the disk fail too, or the one so many later. */
const ruleOf = ({ nth, act, then }) => {
  let later = 0;
  return (call) => {
    if (call.nth === nth) return act;
    if (then === undefined || call.nth < nth || !isChange(call)) return undefined;
    later += 1;
    return then === "all" || then === later ? act : undefined;
  };
};
const labelOf = (name, { nth, act, then }) =>
  `${name}: ${String(nth)}, ${act}${then === undefined ? "" : ` and then ${String(then)}`}`;

/** A spread of trials, by lot, the same every time: four of five on calls that change the disk. */
const spread = (calls, count) => {
  const random = randomOf(1, calls.length);
  const numbered = calls.map((call, index) => ({ call, nth: index + 1 }));
  const [change, look] = [
    numbered.filter(({ call }) => isChange(call)),
    numbered.filter(({ call }) => !isChange(call)),
  ];
  const chosen = new Map();
  for (let tries = 0; chosen.size < count && tries < 4 * count; tries += 1) {
    const { call, nth } = random.pick(tries % 5 === 4 || change.length === 0 ? look : change);
    const trial = { nth, ...random.pick(actsOn(call)) };
    chosen.set(labelOf("", trial), trial);
  }
  return [...chosen.values()];
};

const own = ([name]) => !/^home\/sealtrend\/(undo|unfinished)\//.test(name);
const records = (files) => recordsOf(new Map([...files].filter(own)));
/** What is kept of entries that were left; @throws where one is torn */
const keptIn = (files) =>
  [...files]
    .filter(([name, bytes]) => /unfinished\/.*\.json$/.test(name) && bytes !== undefined)
    .map(([, bytes]) => JSON.parse(bytes.toString("utf8")));

const next = ["note", "pump", "--what", "smoke", "--value", "none"];

/** What is wrong after a trial; undefined where nothing is. */
const faultOf = async (scene, trial, oddness) => {
  const { words, answers, keeps, isLeft, usual, old, fresh } = scene;
  putBack(cwd, scene.files);
  const { result, killed } = await typed(words, ruleOf(trial), answers);
  const { exit, err, out } = result;
  const said = `${out}${err}`;
  const isTold = /all is saved, but/.test(err);
  if (!killed) {
    if (![usual, 1, 2, 3].includes(exit) || exit === 70) return `ends with ${String(exit)}: ${said}`;
    if (exit !== usual && err === "") return "says nothing";
    const flat = said.replace(/\s+/g, " ");
    const isGivenBack = isLeft || isTold || keeps === undefined || keeps.test(flat);
    if (exit !== usual && !isGivenBack) return `does not give back what was typed: ${said}`;
  }
  const told = killed ? "nothing" : exit === usual ? "saved" : "refused";
  const open = /could not be put back|not taken back/.test(err);
  const at = records(filesIn(cwd));
  if (isTold) return at === fresh ? undefined : `says that all is saved, and it is not: ${said}`;
  // Where not even what was made can be removed again, a page or a map may stand there, whole.
  const stays = scene.apart && trial.then !== undefined && at === fresh;
  if (told === "refused" && !open && !stays && at !== old)
    return `was refused, and the records are not the old ones: ${said}`;
  if (told === "saved" && at !== fresh) return `was saved, and the records are not the new ones: ${said}`;
  const proof = (await typed(scene.next ?? ["proofread"])).result;
  if (proof.exit !== 0) return `then ${proof.out}${proof.err}`;
  const files = filesIn(cwd);
  const now = records(files);
  if (scene.next !== undefined) return now === fresh ? undefined : "the next one leaves other records";
  if (now !== old && now !== fresh) return "the records are neither the old nor the new ones";
  if (told === "refused" && !stays && now !== old) return `was refused and is saved: ${said}`;
  if (told === "saved" && now !== fresh) return "was saved and is lost";
  if (litterOf(files).some((name) => name.endsWith(".pending"))) return "the note is left";
  if (isLeft) return faultOfKept(files, told, said);
  const isUndone =
    told === "saved" && oddness === 1 && scene.undone === undefined && old !== fresh && !scene.apart;
  if (isUndone) return faultOfUndo(said, old);
  // What makes an engine must not leave a folder that takes its name.
  const after = (await typed(scene.makes && now === old ? words : next)).result;
  return after.exit === 0 ? undefined : `the next entry is refused: ${after.err}`;
};

const faultOfKept = (files, told, said) => {
  try {
    const kept = keptIn(files);
    if (
      told === "saved" &&
      kept.length === 0 &&
      !/not kept|cannot be kept|could not be kept/.test(said.replace(/\s+/g, " "))
    )
      return `nothing is kept, and that is not said: ${said}`;
    return kept.length > 1 ? `${String(kept.length)} are kept` : undefined;
  } catch (error) {
    return `what is kept is torn: ${error.message}`;
  }
};

const faultOfUndo = async (said, old) => {
  // Where nothing could be remembered, not even that there was a command, this was said, and undo would name an earlier one.
  if (/undo is not available/.test(said.replace(/\s+/g, " "))) return undefined;
  const { exit, out, err } = (await typed(["undo"])).result;
  if (exit === 0) return records(filesIn(cwd)) === old ? undefined : "its undo leaves other records";
  return `cannot be taken back: ${out}${err}`;
};

mkdirSync(join(cwd, "logbook"), { recursive: true });
for (const [name, text] of Object.entries({ ...sheets, "old.html": "an old page\n" }))
  writeFileSync(join(cwd, name), text);
for (const words of preparing) {
  const { result } = await typed(words);
  if (result.exit !== 0) throw new Error(`${words.join(" ")}: ${result.err}`);
}
const start = filesIn(cwd);

/** A command with what it begins from, the calls it makes and what it leaves. */
const sceneOf = async (given, files) => {
  putBack(cwd, files);
  const { result, calls } = await typed(given.words, healthy, given.answers, "listed");
  const after = filesIn(cwd);
  const [old, fresh] = [records(files), records(after)];
  if (![0, given.isLeft ? 2 : 0].includes(result.exit))
    throw new Error(`${given.words.join(" ")}: ${result.err}`);
  if (old === fresh && !given.isLeft) throw new Error(`${given.words.join(" ")} changes nothing`);
  if (given.isLeft && keptIn(after).length !== 1) throw new Error(`${given.words.join(" ")} keeps nothing`);
  return { ...given, files, after, old, fresh, calls, usual: result.exit };
};

/** Of a command of tens of thousands of calls: the same few, over and over. */
const mostOfLong = 150;
const counts = { faults: 0, kills: 0, commands: 0 };
const tryAll = async (name, scene, share) => {
  counts.commands += 1;
  const { calls } = scene;
  const total = calls.reduce((sum, call) => sum + actsOn(call).length, 0);
  const isLong = calls.length > 2_000;
  const chosen =
    all !== "" && !isLong
      ? trialsOf(calls)
      : spread(calls, isLong && all === "" ? Math.ceil(share / 4) : all === "" ? share : mostOfLong);
  const begun = performance.now();
  for (const [nth, trial] of chosen.entries()) {
    const label = labelOf(name, trial);
    if (oneCase !== "" && label !== oneCase) continue;
    counts[trial.act.endsWith("kill") ? "kills" : "faults"] += 1;
    part.tried(label, await faultOf(scene, trial, nth % 2));
  }
  const took = Math.round(performance.now() - begun);
  process.stdout.write(`${name}: ${String(chosen.length)} of ${String(total)} trials, ${String(took)} ms\n`);
};

try {
  const wanted = (name) => only === "" || only.split(";").includes(name);
  const after = new Map();
  for (const [name, given] of Object.entries(writing)) {
    if (!wanted(name) && !wanted(`undo of ${name}`)) continue;
    const scene = await sceneOf(given, start);
    after.set(name, scene);
    if (wanted(name)) await tryAll(name, scene, Number(each) * (/^(enter|amend)$/.test(name) ? 4 : 1));
  }
  for (const name of undone.filter((one) => wanted(`undo of ${one}`))) {
    const { after: files } = after.get(name) ?? {};
    if (files !== undefined)
      await tryAll(`undo of ${name}`, await sceneOf({ words: ["undo"], undone: name }, files), Number(each));
  }
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
part.end(counts);
