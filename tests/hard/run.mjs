// The command itself, killed and crowded: 300 rounds of `enter` and `amend` with kill -9, then writers side by side, and what is
// done twice at once: undo, demo, the build.
//   node tests/hard/run.mjs [--rounds 300]
// Every check prints its counts; the last line is `N passed, N failed`. About 180 s of processor time, under two minutes on two free cores.

import { spawn, spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const { values } = parseArgs({ options: { rounds: { type: "string", default: "300" } } });
// A copy of the command, so that a build meanwhile changes nothing; named from the folder it lies in, for kill.mjs takes
// words apart at blanks.
const command = join("bin", "sealtrend.js");
const scratch = mkdtempSync(join(tmpdir(), "sealtrend-hard-"));
const env = { ...process.env, XDG_STATE_HOME: join(scratch, "state"), XDG_DATA_HOME: join(scratch, "data") };
const count = { passed: 0, failed: 0 };
const counts = { kills: 0, writers: 0 };

const checked = (name, good, said) => {
  if (good) count.passed += 1;
  else count.failed += 1;
  process.stdout.write(`${good ? "ok    " : "failed"} ${name}\n${said.trimEnd().replace(/^/gm, "    ")}\n`);
};

/** Runs Node in the folder of the copy. */
const node = (...words) =>
  new Promise((ended) => {
    const child = spawn(process.execPath, words, { cwd: scratch, env, stdio: ["ignore", "pipe", "pipe"] });
    let said = "";
    for (const stream of [child.stdout, child.stderr]) stream.on("data", (data) => (said += data));
    child.on("close", (exit) => ended({ exit, said }));
  });

const fresh = ["enter", "pump", "--new", "--cylinders", "4", "--ignition", "spark"];
const readings = ["--dry", "150,149,148,147", "--unit", "psi"];

/** One loop of kills. Both mend what was killed and examine every file by `proofread` before each check. */
const killed = async (name, rounds, options, words) => {
  const line = (parts) => ["node", command, ...parts, "--logbook", "{logbook}"];
  const { exit, said } = await node(
    join(root, "tests", "hard", "kill.mjs"),
    ...["--rounds", String(rounds)],
    ...["--before", line([...fresh, ...readings]).join(" ")],
    ...["--settle", line(["proofread"]).join(" ")],
    ...options,
    "--",
    ...line(words),
  );
  counts.kills += Number(/killed (\d+) \(/.exec(said)?.[1] ?? 0);
  checked(name, exit === 0, said);
};

const half = Math.ceil(Number(values.rounds) / 2);
const enters = [
  "enter",
  "pump",
  ...readings,
  "--wet",
  "160,159,158,157",
  "--oil",
  "5 5 5 5",
  "--by",
  "{mark}",
];
const amends = ["amend", "pump", "--test", "latest", "--what", "dry", "--cylinder", "4", "--to", "{value}"];

const text = (logbook, name) => readFileSync(join(logbook, "pump", name), "utf8");
const times = (content, word) => content.split(word).length - 1;

/** Writers side by side, each one command after the other: every one must be saved once, under a name of its own. */
const crowded = async (name, writers, each) => {
  const logbook = mkdtempSync(join(scratch, "crowd-"));
  counts.writers += writers.length;
  const at = ["--logbook", logbook];
  await node(command, ...fresh, ...readings, ...at);
  const marks = [];
  const failures = [];
  const write = async (kind, writer) => {
    for (let n = 0; n < each; n += 1) {
      const mark = `w${String(writer)}x${String(n)}x`;
      const value = String(100 + writer * each + n);
      const sheet = join(logbook, `${mark}.txt`);
      if (kind === "import")
        writeFileSync(sheet, `date,c1,c2,c3,c4\n20${value.slice(1)}-0${String(writer)}-03,150,149,148,147\n`);
      const words = {
        enter: ["enter", "pump", ...readings, "--by", mark],
        amend: ["amend", "pump", "--test", first, "--cylinder", "4", "--to", value, "--because", mark],
        import: [
          "import",
          sheet,
          "--engine",
          "pump",
          "--what",
          "dry",
          "--unit",
          "psi",
          "--by",
          mark,
          "--write",
        ],
      };
      const { exit, said } = await node(command, ...words[kind], ...at);
      if (exit !== 0) failures.push(said);
      marks.push({ mark, file: kind === "amend" ? "amendments.csv" : "tests.csv" });
    }
  };
  const first = text(logbook, "tests.csv").split("\n")[1].split(",")[0];
  await Promise.all(writers.map(write));
  const wrong = marks.filter(({ mark, file }) => times(text(logbook, file), mark) !== 1);
  const names = text(logbook, "tests.csv")
    .trim()
    .split("\n")
    .map((row) => row.split(",")[0]);
  const twice = names.length - new Set(names).size;
  const proof = await node(command, "proofread", ...at);
  const good = failures.length + wrong.length + twice === 0 && proof.exit === 0;
  const told = `commands ${String(marks.length)}, failed ${String(failures.length)}, lost or doubled ${String(wrong.length)}, names given twice ${String(twice)}`;
  checked(name, good, [told, proof.said, ...failures.slice(0, 3)].join("\n"));
};

const built = spawnSync(process.execPath, [join("packages", "cli", "setup.mjs")], {
  cwd: root,
  stdio: ["ignore", 2, 2],
});
if (built.status !== 0) {
  rmSync(scratch, { recursive: true });
  process.exit(1);
}
for (const part of ["bin", "dist"])
  cpSync(join(root, "packages", "cli", part), join(scratch, part), { recursive: true });
await Promise.all([
  killed("enter, killed at random: three rows, all or none", half, ["--rows", "3"], enters),
  killed(
    "amend, killed at random: the cell and its trace, both or none",
    half,
    ["--seed", "2", "--file", "pump/amendments.csv", "--expect", "pump/tests.csv:149,148,{value},"],
    [...amends, "--because", "{mark}"],
  ),
]);
await crowded("eight writers at once", Array(8).fill("enter"), 5);
await crowded("six writers and two amenders at once", [...Array(6).fill("enter"), "amend", "amend"], 4);
await crowded("five writers and two importers at once", [...Array(5).fill("enter"), "import", "import"], 3);

/** Two of a command at once: both must end with 0, and leave what `good` says. */
const twice = async (name, words, good) => {
  counts.writers += 2;
  const both = await Promise.all([node(...words), node(...words)]);
  const failed = both.filter(({ exit }) => exit !== 0);
  checked(
    name,
    failed.length === 0 && (await good(both)),
    both.map(({ said }) => said.split("\n")[0]).join("\n"),
  );
};
{
  const logbook = mkdtempSync(join(scratch, "twice-"));
  const at = ["--logbook", logbook];
  await node(command, ...fresh, ...readings, ...at);
  for (const mark of ["one", "two", "three"])
    await node(command, "enter", "pump", ...readings, "--by", mark, ...at);
  await twice("two undo at once: each takes one command back", [command, "undo", ...at], () => {
    const left = text(logbook, "tests.csv");
    return left.includes("one") && !left.includes("two") && !left.includes("three");
  });
  const shown = join(scratch, "shown");
  await twice("two demo at once: one lays it out, the other finds it", [command, "demo", shown], async () => {
    const { exit } = await node(command, "proofread", "--logbook", shown);
    return exit === 0;
  });
  // The build of a copy of the sources, so that nobody's own is torn up; the packages are the installed ones.
  const copy = join(scratch, "copy");
  for (const name of ["package.json", "pnpm-lock.yaml", "pnpm-workspace.yaml", "packages", "data"])
    cpSync(join(root, name), join(copy, name), {
      recursive: true,
      verbatimSymlinks: true,
      filter: (path) => !/[\\/]dist([\\/]|$)/.test(path),
    });
  symlinkSync(join(root, "node_modules"), join(copy, "node_modules"));
  await twice("two builds at once", [join(copy, "packages", "cli", "setup.mjs")], async () => {
    const built = join(copy, "packages", "cli", "bin", "sealtrend.js");
    const { exit } = await node(built, "--version");
    return (
      exit === 0 &&
      existsSync(join(copy, "packages", "cli", "dist", ".stamp")) &&
      (await node(built, "show", "tractor", "--logbook", shown)).exit === 0
    );
  });
}
rmSync(scratch, { recursive: true, force: true });
process.stdout.write(`counts: ${JSON.stringify(counts)}\n`);
process.stdout.write(`${String(count.passed)} passed, ${String(count.failed)} failed\n`);
process.exitCode = count.failed === 0 ? 0 : 1;
