// `enter` and `teardown` on a real terminal of 40 columns, made by script(1): lines pasted ahead, leaving by every door, and going on.
//   node tests/hard/terminal.mjs
// Every check is a line; the last one is `N passed, N failed`. About 20 s.

import { spawn, spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const columns = 40;
const patience = 15_000;
const [interrupt, endOfInput] = ["\u0003", "\u0004"];
const built = spawnSync(process.execPath, [join("packages", "cli", "setup.mjs")], {
  cwd: root,
  stdio: ["ignore", 2, 2],
});
if (built.status !== 0) process.exit(1);
// A copy of the command, so that a build meanwhile changes nothing.
const scratch = mkdtempSync(join(tmpdir(), "sealtrend-terminal-"));
for (const part of ["bin", "dist"])
  cpSync(join(root, "packages", "cli", part), join(scratch, part), { recursive: true });
const command = join(scratch, "bin", "sealtrend.js");

/** A logbook of its own with one engine, and what is typed at it. */
const newDesk = () => {
  const folder = mkdtempSync(join(scratch, "desk-"));
  const env = { ...process.env, XDG_STATE_HOME: join(folder, "state"), XDG_DATA_HOME: folder, HOME: folder };
  delete env.NO_COLOR;
  env.TERM = "xterm-256color";
  mkdirSync(join(folder, "logbook"));
  const plain = (...words) =>
    spawnSync(process.execPath, [command, ...words], { cwd: folder, env, encoding: "utf8" });
  plain("engine", "add", "pump", "--cylinders", "4", "--ignition", "compression");
  const text = (name) => {
    try {
      return readFileSync(join(folder, "logbook", "pump", name), "utf8");
    } catch {
      return "";
    }
  };
  const kept = () => {
    const state = join(folder, "state", "sealtrend", "unfinished");
    try {
      return readdirSync(state, { recursive: true }).filter((name) => name.endsWith(".json")).length;
    } catch {
      return 0;
    }
  };
  return {
    plain,
    text,
    kept,
    rows: () => text("tests.csv").trim().split("\n").slice(1),
    open: opened(folder, env),
  };
};

const children = new Set();

/** A command on a terminal: `see` waits for a text behind what was seen before, `type` sends keys. */
const opened =
  (folder, env) =>
  (...words) => {
    const line = `stty cols ${columns} rows 24; echo $$ > pid; exec '${process.execPath}' '${command}' ${words.join(" ")}`;
    const child = spawn("script", ["-qefc", line, "/dev/null"], {
      cwd: folder,
      env,
      stdio: ["pipe", "pipe", "pipe"],
    });
    let screen = "";
    let seen = 0;
    let wake = () => undefined;
    for (const stream of [child.stdout, child.stderr])
      stream.on("data", (data) => {
        screen += String(data);
        wake();
      });
    child.stdin.on("error", () => undefined);
    const ended = new Promise((resolve) => child.on("close", resolve)).then((exit) => {
      wake();
      return exit;
    });
    const see = async (text) => {
      const until = Date.now() + patience;
      for (;;) {
        const at = screen.replace(/\s+/g, " ").indexOf(text, seen);
        if (at >= 0) {
          seen = at + text.length;
          return;
        }
        if (Date.now() > until || child.exitCode !== null) throw new Error(`not seen: ${text}\n${screen}`);
        await new Promise((resolve) => {
          wake = resolve;
          setTimeout(resolve, 100);
        });
      }
    };
    return {
      see,
      type: (text) => void child.stdin.write(text),
      kill: (signal) => process.kill(Number(readFileSync(join(folder, "pid"), "utf8")), signal),
      hangUp: () => child.kill("SIGKILL"),
      ended,
      screen: () => screen,
    };
  };

const count = { passed: 0, failed: 0 };
const check = (name, problems) => {
  if (problems.length === 0) count.passed += 1;
  else count.failed += 1;
  process.stdout.write(`${problems.length === 0 ? "ok    " : "failed"} ${name}\n`);
  for (const problem of problems) process.stdout.write(`    ${problem.replaceAll("\n", "\n    ")}\n`);
};
const unless = (good, problem) => (good ? [] : [problem]);

/** What no screen of a talk may hold: an escape, a bare carriage return, a line that is too long. */
const screenFaults = (screen) => [
  ...unless(!screen.includes("\u001b"), `an escape sequence: ${JSON.stringify(screen)}`),
  ...unless(!/\r(?!\n)/.test(screen), "a carriage return alone"),
  ...screen
    .split(/\r?\n/)
    .filter((line) => [...line].length > columns && !line.includes("sealtrend "))
    .map((line) => `longer than ${columns}: ${line}`),
];

const trials = {
  "lines pasted ahead are taken in order, a doubtful one is asked, none is lost": async () => {
    const desk = newDesk();
    const talk = desk.open("enter", "pump");
    talk.type("red\npsi\n150\n148\n1310\n149\nwarm\n6\n");
    await talk.see("did you mean 131?");
    await talk.see("cylinder 3: ");
    talk.type("131\n");
    await talk.see("cranking speed");
    talk.type("\n\n\n");
    const exit = await talk.ended;
    return [
      ...unless(exit === 0, `exit ${exit}`),
      ...unless(desk.rows()[0]?.includes(",150,148,131,149,") === true, `saved ${desk.rows().join("|")}`),
      ...unless(desk.rows()[0]?.includes(",warm,") === true, "a line behind the doubtful one was lost"),
      ...unless(desk.kept() === 0, "something is kept though all is saved"),
      ...screenFaults(talk.screen()),
    ];
  },
  "a refused line does not shift those pasted behind it": async () => {
    const desk = newDesk();
    const talk = desk.open("enter", "pump", "--gauge", "red", "--unit", "psi");
    talk.type("150\nl48\n147\n149\n");
    await talk.see("a number such as");
    await talk.see("cylinder 2: ");
    talk.type("148\n");
    await talk.see("engine: warm");
    talk.type("\n\n\n\n\n");
    await talk.ended;
    return unless(desk.rows()[0]?.includes(",150,148,147,149,") === true, `saved ${desk.rows().join("|")}`);
  },
  "q keeps what was typed, and the next enter goes on with it": async () => {
    const desk = newDesk();
    const first = desk.open("enter", "pump", "--gauge", "red", "--unit", "psi", "--date", "2026-05-02");
    await first.see("cylinder 1: ");
    first.type("150\n148\n147\n");
    await first.see("cylinder 4: ");
    first.type("q\n");
    const left = await first.ended;
    const waiting = desk.plain("enter", "pump");
    const next = desk.open("enter", "pump");
    await next.see("after cylinder 3");
    await next.see("(d): ");
    next.type("\n");
    await next.see("cylinder 4: ");
    next.type("149\n\n\n\n\n\n");
    const exit = await next.ended;
    return [
      ...unless(left === 2, `left with ${left}`),
      ...unless(waiting.stderr.includes("waits unfinished"), `no aside: ${waiting.stderr}`),
      ...unless(exit === 0, `exit ${exit}\n${next.screen()}`),
      ...unless(
        desk.rows()[0]?.startsWith("2026-05-02a,2026-05-02,") === true,
        `saved ${desk.rows().join("|")}`,
      ),
      ...unless(
        desk.rows()[0]?.includes(",red,psi,150,148,147,149,") === true,
        `saved ${desk.rows().join("|")}`,
      ),
      ...unless(desk.kept() === 0, "something is kept though all is saved"),
      ...screenFaults(`${first.screen()}\n${next.screen()}`),
    ];
  },
  ...Object.fromEntries(
    [
      ["kill -9", (talk) => talk.kill("SIGKILL"), 137],
      ["Ctrl-C", (talk) => talk.type(interrupt), 130],
      ["Ctrl-D", (talk) => talk.type(endOfInput), 2],
      ["a closed window", (talk) => talk.hangUp(), null],
    ].map(([name, leave, wanted]) => [
      `${name}: the logbook is as it was, and what was typed is there again`,
      async () => {
        const desk = newDesk();
        const first = desk.open("enter", "pump", "--gauge", "red", "--unit", "psi");
        await first.see("cylinder 1: ");
        first.type("150\n148\n");
        await first.see("cylinder 3: ");
        leave(first);
        const exit = await first.ended;
        const rows = desk.rows().length;
        const next = desk.open("enter", "pump");
        await next.see("1:150 2:148");
        await next.see("(d): ");
        next.type("\n");
        await next.see("cylinder 3: ");
        next.type("147 149\n");
        await next.see("engine: warm");
        next.type("\n\n\n\n\n");
        const saved = await next.ended;
        return [
          ...unless(exit === wanted, `left with ${exit}\n${first.screen()}`),
          ...unless(rows === 0, "something was written"),
          ...unless(saved === 0, `exit ${saved}\n${next.screen()}`),
          ...unless(desk.rows()[0]?.includes(",150,148,147,149,") === true, `saved ${desk.rows().join("|")}`),
          ...screenFaults(`${first.screen()}\n${next.screen()}`),
        ];
      },
    ]),
  ),
  "teardown: pasted with an empty line in it, left, gone on with and saved": async () => {
    const desk = newDesk();
    const first = desk.open("teardown", "pump");
    await first.see("> ");
    first.type("in\npin 1: 2.2483 2.2482\n\npin 2: 2.2483 2.2482\n");
    await first.see("pin 2: diameter");
    await first.see("> ");
    first.kill("SIGKILL");
    await first.ended;
    const next = desk.open("teardown", "pump");
    await next.see("(d): ");
    next.type("\n");
    await next.see("> ");
    next.type("pin 3: 2.2481\ndone\n");
    const exit = await next.ended;
    const rows = desk.text("measurements.csv").trim().split("\n").length - 1;
    return [
      ...unless(exit === 0, `exit ${exit}\n${next.screen()}`),
      ...unless(rows === 5, `${rows} rows instead of 5`),
      ...unless(desk.kept() === 0, "something is kept though all is saved"),
      ...screenFaults(`${first.screen()}\n${next.screen()}`),
    ];
  },
};

for (const [name, trial] of Object.entries(trials)) {
  try {
    check(name, await trial());
  } catch (error) {
    check(name, [String(error)]);
  }
}
for (const child of children) if (child.exitCode === null) child.kill("SIGKILL");
rmSync(scratch, { recursive: true, force: true });
process.stdout.write(`${count.passed} passed, ${count.failed} failed\n`);
process.exitCode = count.failed === 0 ? 0 : 1;
