// How a run ends: what goes to stdout, what to stderr, and the exit code. Contract: design.md §4, §6, §7.

import { run, Stop, type Answer, type Command, type Fault, type Io } from "sealtrend";
import { expect, test } from "vitest";
import { fakeIo, type FakeIo } from "../fake-io.ts";

const commandThat = (answer: (io: Io) => Promise<Answer>): Command => ({
  name: "enter",
  summary: "record one test",
  examples: ["enter tractor"],
  positionals: [{ name: "ENGINE", help: "the engine", need: "may" }],
  options: [{ name: "dry", value: '"152 150"', takes: "list", help: "the dry test" }],
  run: (_, io) => answer(io),
});

const ended = async (
  line: readonly string[],
  answer: (io: Io) => Promise<Answer>,
  io = fakeIo(),
): Promise<[number, FakeIo]> => [await run(["enter", ...line], io, [commandThat(answer)]), io];

const fault: Fault = {
  code: "number-bad",
  severity: "error",
  file: "tests.csv",
  line: 9,
  column: 31,
  found: 'c4 "14O"',
  expected: "a number",
  mend: "write 140",
};
const answer: Answer = {
  exit: 0,
  text: "Even.\n",
  json: { schema: "sealtrend/show@1", text: "\u202e" },
  aside: "saved\n",
};
const answers = (): Promise<Answer> => Promise.resolve(answer);
const fails = (error: Error) => async (): Promise<Answer> => Promise.reject(error);

test("the answer goes to stdout, what is said about it to stderr", async () => {
  const [exit, io] = await ended([], answers);
  expect([exit, io.stdout(), io.stderr()]).toEqual([0, "Even.\n", "saved\n"]);
});

test("--json prints the document alone, and nothing in it steers the terminal", async () => {
  const [exit, io] = await ended(["--json"], answers);
  expect(JSON.parse(io.stdout())).toEqual(answer.json);
  expect(io.stdout()).toContain("\\u202e");
  expect([exit, io.stderr()]).toEqual([0, "saved\n"]);
});

test("an answer may end with an exit code of its own", async () => {
  const [exit] = await ended([], () => Promise.resolve({ ...answer, exit: 1 }));
  expect(exit).toBe(1);
});

test.each([1, 2, 3] as const)(
  "a stop prints its faults on stderr and ends with its exit code %i",
  async (code) => {
    const [exit, io] = await ended([], fails(new Stop(code, [fault], "not saved: 150 149\n")));
    expect(exit).toBe(code);
    expect(io.stdout()).toBe("");
    expect(io.stderr()).toBe(
      'tests.csv:9:31 c4 "14O"\n    expected a number\n    write 140\nnot saved: 150 149\n',
    );
  },
);

test("under --json the faults are one document on stdout", async () => {
  const [exit, io] = await ended(["--json"], fails(new Stop(1, [fault], "not saved: 150 149\n")));
  expect(exit).toBe(1);
  expect(JSON.parse(io.stdout())).toEqual({ schema: "sealtrend/problems@1", problems: [{ ...fault }] });
  expect(io.stderr()).toBe("not saved: 150 149\n");
});

test("faults of the command line are a document too", async () => {
  const io = fakeIo();
  expect(await run(["entr", "--json"], io, [commandThat(answers)])).toBe(2);
  expect(JSON.parse(io.stdout())).toMatchObject({
    problems: [{ code: "command-unknown", mend: "sealtrend enter --json" }],
  });
});

test("a file that cannot be written ends with 3, and what was typed is printed back", async () => {
  const full = Object.assign(new Error("no"), { code: "ENOSPC", syscall: "write", path: "pump/tests.csv" });
  const [exit, io] = await ended(["pump", "--dry", "152", ">150"], fails(full));
  expect(exit).toBe(3);
  expect(io.stderr()).toMatch(
    /^pump\/tests\.csv could not be read or written: the disk is full \(ENOSPC\)\n/,
  );
  expect(io.stderr()).toContain('typed: sealtrend enter pump --dry 152 ">150"\n');
});

test("a fault of our own ends with 70, in one line, and what was typed is printed back", async () => {
  const [exit, io] = await ended(
    ["pump", "--dry", "152 150"],
    fails(new RangeError("pressure\nis \u001b[2J")),
  );
  expect(exit).toBe(70);
  expect(io.stdout()).toBe("");
  expect(io.stderr()).toBe(
    "this is a fault of sealtrend itself: please report these two lines (RangeError: pressure\\u{a}is \\u{1b}[2J)\n" +
      'typed: sealtrend enter pump --dry "152 150"\n',
  );
});

test("a command that asks for an option it does not have is a fault of our own", async () => {
  const command: Command = {
    ...commandThat(answers),
    run: (args) => Promise.resolve({ ...answer, text: args.text("dyr") ?? "" }),
  };
  expect(await run(["enter"], fakeIo(), [command])).toBe(70);
});

test("the common options tell the command about the world", async () => {
  const seen: Io[] = [];
  const look = (io: Io): Promise<Answer> => {
    seen.push(io);
    return answers();
  };
  await ended([], look, fakeIo({ interactive: true }));
  await ended(["--as-of", "2024-02-29", "--no-input", "--ascii"], look, fakeIo({ interactive: true }));
  expect(seen.map(({ today, interactive, unicode }) => ({ today, interactive, unicode }))).toEqual([
    { today: "2026-11-25", interactive: true, unicode: true },
    { today: "2024-02-29", interactive: false, unicode: false },
  ]);
});

test("a command can ask, and learns when the input has ended", async () => {
  const [, io] = await ended(
    [],
    async (world) => {
      const [first, second] = [await world.ask("1? "), await world.ask("2? ")];
      return { ...answer, text: `${first ?? "end"} ${second ?? "end"}` };
    },
    fakeIo({ answers: ["152"] }),
  );
  expect(io.stdout()).toBe("152 end");
  expect(io.asked()).toEqual(["1? ", "2? "]);
});
