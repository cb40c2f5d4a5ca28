// The manual page: every command and option is in it, and it is sound in the language of man pages.

import { spawnSync } from "node:child_process";
import { commands } from "sealtrend";
import { expect, test } from "vitest";
import { newDesk } from "../commands/desk.ts";
import { misfits, schemaOf } from "../commands/fits-schema.ts";

const page = async (): Promise<string> => (await newDesk().type(["manual"])).out;

test("every command, with every option and example, is in the page", async () => {
  const plain = (await page())
    .replaceAll("\\-", "-")
    .replaceAll("\\(aq", "'")
    .replaceAll(/\\f[BRI]/g, "");
  for (const { name, options, examples } of commands) {
    expect(plain).toContain(`\n.SS ${name}\n`);
    for (const option of options)
      expect(plain).toContain(option.name.length === 1 ? `-${option.name}` : `--${option.name}`);
    for (const example of examples) expect(plain).toContain(`\n${example}\n`);
  }
});

test("no line begins with a sign that man would take for a request, but those that are one", async () => {
  const requests = (await page()).split("\n").filter((line) => /^[.']/.test(line));
  for (const line of requests) expect(line).toMatch(/^\.(\\"|TH|nh|ad|SH|SS|PP|TP|B|I|nf|fi|RS|RE)( |$)/);
});

const hasGroff = spawnSync("groff", ["--version"]).error === undefined;

test.skipIf(!hasGroff)(
  "groff finds nothing to complain of, and shows the words as they are typed",
  async () => {
    const { stdout, stderr } = spawnSync("groff", ["-man", "-Tutf8", "-ww", "-P-cbou"], {
      input: await page(),
      encoding: "utf8",
    });
    expect(stderr).toBe("");
    expect(stdout).toContain("sealtrend history tractor --cylinder 3");
    expect(stdout).toContain("seq 4 | parallel sealtrend yard fleet.csv --shard {}/4 --json\n");
  },
);

test("the document is as its schema says", async () => {
  expect(misfits(await newDesk().json("manual"), schemaOf("manual"))).toEqual([]);
});
