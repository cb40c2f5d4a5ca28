// What is offered when a key is pressed for help, and the lines that teach each shell to ask for it.

import { spawnSync } from "node:child_process";
import { chmodSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { conditionKinds } from "@sealtrend/core/parts";
import { commands } from "sealtrend";
import { expect, test } from "vitest";
import { explained } from "../../../packages/cli/src/options/explained.ts";
import { newDesk } from "../commands/desk.ts";
import { misfits, schemaOf } from "../commands/fits-schema.ts";

const demo = fileURLToPath(new URL("../../../data/demo/", import.meta.url));

/** The words offered in place of the last one. */
const offered = async (...words: readonly string[]): Promise<readonly string[]> => {
  const { exit, out, err } = await newDesk().type(["completion", "--line", "--", ...words]);
  expect([exit, err]).toEqual([0, ""]);
  return out.split("\n").flatMap((line) => (line === "" ? [] : (line.split("\t")[0] ?? "")));
};
const onDemo = (...words: readonly string[]) => {
  const [command = "", ...rest] = words;
  return offered(command, "--logbook", demo, ...rest);
};

test("the first word: every command once, those of two words by their first", async () => {
  const first = [...new Set(commands.map(({ name }) => name.split(" ")[0]))];
  expect(await offered("")).toEqual([...first, "help"]);
  expect(await offered("s")).toEqual(["show", "service"]);
  expect(await offered("engine", "")).toEqual(["add", "list", "show", "set"]);
  expect(await offered("help", "hi")).toEqual(["history"]);
});

test("names of the logbook: engines, tests newest first, gauges, cylinders, fields", async () => {
  expect(await onDemo("show", "")).toEqual(["boat", "mill", "pump", "tractor", "ultralight", "van"]);
  expect(await onDemo("show", "tr")).toEqual(["tractor"]);
  const tests = await onDemo("show", "tractor", "--test", "");
  expect(tests[0]).toBe("latest");
  expect(tests.slice(1)).toEqual(tests.slice(1).toSorted().reverse());
  expect(tests.length).toBeGreaterThan(5);
  expect(await onDemo("enter", "tractor", "--gauge", "b")).toEqual(["blue"]);
  expect(await onDemo("history", "tractor", "--cylinder", "")).toEqual(["1", "2", "3", "4"]);
  expect(await onDemo("how", "le")).toEqual(["leak-down"]);
  expect(await offered("engine", "set", "pump", "geometry.b")).toEqual(["geometry.bore"]);
});

test("options of the command and of all commands, but none twice; choices after an option that has some", async () => {
  const some = await offered("show", "--");
  expect(some).toContain("--test");
  expect(some).toContain("--json");
  expect(some).not.toContain("--dry");
  expect(await offered("show", "--json", "--js")).toEqual([]);
  expect(await offered("enter", "pump", "--dry", "1 2", "--dr")).toEqual(["--dry"]);
  expect(await offered("show", "--units", "k")).toEqual(["kPa", "kgf/cm2"]);
  expect(await offered("show", "--units=M")).toEqual(["--units=MPa"]);
  expect(await offered("--units=M")).toEqual(["--units=MPa"]);
  expect(await offered("--units", "M")).toEqual(["MPa"]);
  expect(await offered("--lo")).toEqual(["--logbook"]);
});

test("nothing is offered where anything of one's own may stand, nor where the logbook cannot be read", async () => {
  expect(await offered("enter", "pump", "--note", "")).toEqual([]);
  expect(await offered("import", "")).toEqual([]);
  expect(await offered("nonsense", "")).toEqual([]);
  expect(await offered("show", "--", "")).toEqual([]);
  expect(await offered("show", "")).toEqual([]);
  const desk = newDesk();
  desk.put("logbook/pump/engine.json", '{ "cylinders": 7');
  desk.put("logbook/gauges.csv", "no\u001b[31mgauge\n");
  const { exit, out, err } = await desk.type(["completion", "--line", "--", "show", "--test", ""]);
  expect([exit, out, err]).toEqual([0, "", ""]);
});

test("words that hang on what was typed: of a kind of note, of a field of an engine", async () => {
  expect(await offered("note", "pump", "--what", "crosshatch", "--value", "")).toEqual([
    "full",
    "part",
    "gone",
  ]);
  expect(await offered("note", "pump", "--what", "oil use", "--unit", "q")).toEqual(["qt/1000mi", "qt/h"]);
  expect(await offered("engine", "set", "pump", "cooling", "")).toEqual(["liquid", "air"]);
  expect(await offered("engine", "set", "pump", "remote", "")).toEqual(["yes", "no"]);
  expect(await onDemo("service", "tractor", "--cylinders", "")).toEqual(["all", "none", "1", "2", "3", "4"]);
  expect(await onDemo("import", "sheet.csv", "--engine", "bo")).toEqual(["boat"]);
});

test("where there is one engine it may be left out", async () => {
  const desk = newDesk();
  desk.put("logbook/pump/engine.json", '{ "cylinders": ["1", "2"], "ignition": "spark" }');
  const first = await desk.type(["completion", "--line", "--", "engine", "set", ""]);
  expect(first.out.split("\n")).toEqual(expect.arrayContaining(["pump", "geometry.bore"]));
  const value = await desk.type(["completion", "--line", "--", "engine", "set", "cooling", "l"]);
  expect(value.out).toBe("liquid\n");
});

test("a slip in one file hides no name of another", async () => {
  const desk = newDesk();
  desk.put("logbook/pump/engine.json", '{ "cylinders": ["1", "2"], "ignition": "spark" }');
  desk.put("logbook/pump/tests.csv", "test,date,what,unit,c1,c2\na1,2025-05-03,dry,psi,150,ten\n");
  desk.put("logbook/gauges.csv", "gauge,kind\nred,compression\nblue,barometer\n");
  const next = async (...line: readonly string[]) =>
    (await desk.type(["completion", "--line", "--", ...line])).out;
  expect(await next("show", "")).toBe("pump\n");
  expect(await next("enter", "pump", "--gauge", "")).toBe("red\n");
  expect(await next("history", "pump", "--cylinder", "")).toBe("1\n2\n");
});

/** A name in capitals that stands for a word of a short list, unlike a NAME or a DATE. */
const shortList = /^(?:KIND|UNIT|WORD|STATE|END|DIAL|PROFILE|ORDER|MARK|WORK|WHO|WHOM)$/;
const everyOption = commands.flatMap(({ name, options }) => options.map((option) => ({ name, option })));

test("every option that takes words has them in its help and has them offered", async () => {
  for (const { name, option } of everyOption) {
    const words = option.choices ?? option.words ?? [];
    if (shortList.test(option.value ?? "") && option.wordsBy === undefined)
      expect(words.length, `${name} --${option.name} has no words`).toBeGreaterThan(0);
    if (words.length === 0) continue;
    expect(await offered(...name.split(" "), `--${option.name}`, "")).toEqual(
      expect.arrayContaining([...words]),
    );
    for (const word of [...words, ...Object.keys(option.means ?? {})])
      expect(explained(option)).toContain(word);
    for (const word of Object.keys(option.means ?? {})) expect(words).toContain(word);
  }
});

test("no help tells of words that are not offered", () => {
  for (const { name, option } of everyOption) {
    const told = /: (\w[\w-]*(?:, \w[\w-]*)+)/.exec(option.help)?.[1]?.split(", ") ?? [];
    expect(told, `${name} --${option.name}`).toEqual([]);
    if (option.name in conditionKinds && name !== "expect")
      expect(option.words, `${name} --${option.name}`).toEqual(conditionKinds[option.name]?.words);
  }
});

test("a shell that is not known is asked about", async () => {
  expect((await newDesk().type(["completion", "bsh"])).err).toContain("sealtrend completion bash");
  expect((await newDesk().type(["completion"])).exit).toBe(2);
  expect((await newDesk().type(["completion", "bash", "zsh"])).exit).toBe(2);
});

test("both documents are as their schema says", async () => {
  const desk = newDesk();
  expect(misfits(await desk.json("completion", "fish"), schemaOf("completion"))).toEqual([]);
  const line = await desk.type(["completion", "--line", "--json", "--", "sh"]);
  expect(misfits(JSON.parse(line.out), schemaOf("completion"))).toEqual([]);
  expect(JSON.parse(line.out)).toMatchObject({ candidates: [{ word: "show" }] });
});

const has = (shell: string): boolean => spawnSync(shell, ["--version"]).error === undefined;

/** What a shell says that was taught, with a program in place of ours that tells the words it got and answers by them.
 *  @param answer - lines of the program's answer, in printf's language */
const taught = async (shell: "bash" | "fish", answer: string, ask: readonly string[]): Promise<string> => {
  const folder = mkdtempSync(join(tmpdir(), `sealtrend-${shell}-`));
  try {
    const { out } = await newDesk().type(["completion", shell]);
    writeFileSync(join(folder, "lines"), out);
    const program = join(folder, "sealtrend");
    writeFileSync(
      program,
      `#!/bin/sh\nprintf '<%s>' "$@" > ${join(folder, "words")}\nprintf '%b' '${answer}'\n`,
    );
    chmodSync(program, 0o755);
    const lines = [`source ${join(folder, "lines")}`, ...ask, `cat ${join(folder, "words")}`];
    const { stdout, stderr } = spawnSync(
      shell,
      ["--norc", "-c", lines.join("\n")].slice(shell === "bash" ? 0 : 1),
      {
        encoding: "utf8",
        env: { ...process.env, PATH: `${folder}:${process.env.PATH ?? ""}`, HOME: folder },
      },
    );
    expect(stderr).toBe("");
    return stdout;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
};

const inBash = (words: string, answer: string): Promise<string> =>
  taught("bash", answer, [
    `COMP_WORDS=(${words})`,
    "COMP_CWORD=$(( ${#COMP_WORDS[@]} - 1 ))",
    "_sealtrend",
    `printf '[%s]' "\${COMPREPLY[@]}"`,
  ]);

test.skipIf(!has("bash"))(
  "bash fills in what the program offers, quoted where a shell would take it apart",
  async () => {
    expect(await inBash("sealtrend show --test ''", "show\\tthe verdict\\nan engine\\n")).toBe(
      "[show][an\\ engine]<completion><--line><--><show><--test><>",
    );
    expect(await inBash(`sealtrend service --what '"val'`, "valve job\\n")).toBe(
      "[valve job]<completion><--line><--><service><--what><val>",
    );
  },
);

test.skipIf(!has("bash"))(
  "what bash takes apart at = is one word again, and what was quoted bare",
  async () => {
    expect(await inBash("sealtrend show --logbook = d3 tr", "tractor\\n")).toBe(
      "[tractor]<completion><--line><--><show><--logbook=d3><tr>",
    );
    expect(await inBash(`sealtrend --logbook = '"my books"' show --units = k`, "--units=kPa\\n")).toBe(
      "[kPa]<completion><--line><--><--logbook=my books><show><--units=k>",
    );
    expect(await inBash("sealtrend show --units =", "--units=kPa\\n--units=bar\\n")).toBe(
      "[kPa][bar]<completion><--line><--><show><--units=>",
    );
  },
);

test.skipIf(!has("fish"))(
  "fish fills in what the program offers, the word at the cursor without its quotes",
  async () => {
    const ask = (line: string) => taught("fish", "valve job\\twork\\n", [`complete -C '${line}'`]);
    expect(await ask('sealtrend --logbook=d3 service --what "va')).toBe(
      "valve job\twork\n<completion><--line><--><--logbook=d3><service><--what><va>",
    );
  },
);

test.skipIf(!has("zsh"))("zsh finds no fault in the lines it is taught", async () => {
  const { out } = await newDesk().type(["completion", "zsh"]);
  expect(spawnSync("zsh", ["-n"], { input: out, encoding: "utf8" })).toMatchObject({ status: 0, stderr: "" });
});
