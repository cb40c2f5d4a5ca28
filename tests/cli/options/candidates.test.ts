// What is offered when a key is pressed for help, and the lines that teach each shell to ask for it.

import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { commands } from "sealtrend";
import { expect, test } from "vitest";
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
  expect(await offered("show", "--units", "=", "M")).toEqual(["MPa"]);
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

const hasBash = spawnSync("bash", ["--version"]).error === undefined;

test.skipIf(!hasBash)(
  "bash fills in what the program offers, quoted where a shell would take it apart",
  async () => {
    const folder = mkdtempSync(join(tmpdir(), "sealtrend-bash-"));
    try {
      const { out } = await newDesk().type(["completion", "bash"]);
      writeFileSync(join(folder, "lines"), out);
      const asked = [
        `source ${join(folder, "lines")}`,
        `sealtrend() { printf '%s\\n' "$@" > ${join(folder, "words")}; printf 'show\\tthe verdict\\nan engine\\n'; }`,
        "COMP_WORDS=(sealtrend show --test '')",
        "COMP_CWORD=3",
        "_sealtrend",
        `printf '<%s>' "\${COMPREPLY[@]}"`,
        `cat ${join(folder, "words")}`,
      ];
      const { stdout, stderr } = spawnSync("bash", ["--norc", "-c", asked.join("\n")], {
        encoding: "utf8",
      });
      expect(stderr).toBe("");
      expect(stdout).toBe("<show><an\\ engine>completion\n--line\n--\nshow\n--test\n\n");
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
