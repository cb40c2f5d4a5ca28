// The README's worked example is what the command really prints.

import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { run } from "sealtrend";
import { expect, test } from "vitest";
import { fakeIo } from "../cli/fake-io.ts";

interface Example {
  readonly words: readonly string[];
  readonly output: string;
}

/** The words of a typed line, quotes taken off. */
const wordsOf = (line: string): string[] =>
  [...line.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain ?? "");

const examples = (markdown: string): Example[] =>
  [...markdown.matchAll(/```console\n([\s\S]*?)```/g)].flatMap(([, block = ""]) =>
    block
      .split(/^\$ sealtrend /m)
      .slice(1)
      .map((part) => {
        const [typed = "", ...output] = part.replace(/\\\n\s*/g, "").split("\n");
        return { words: wordsOf(typed), output: output.join("\n").trim() };
      }),
  );

test("the README shows what the command prints", async () => {
  const markdown = readFileSync(new URL("../../README.md", import.meta.url), "utf8");
  const found = examples(markdown);
  expect(found.length).toBeGreaterThanOrEqual(2);
  const home = mkdtempSync(join(tmpdir(), "sealtrend-readme-"));
  for (const { words, output } of found) {
    const io = fakeIo({
      cwd: home,
      width: 80,
      unicode: true,
      today: "2026-11-25",
      env: { HOME: home, SEALTREND_LOGBOOK: join(home, "logbook") },
    });
    expect(await run(words, io)).toBe(0);
    expect(io.stdout().trim()).toBe(output);
  }
});

test("the README stays under 150 lines", () => {
  const markdown = readFileSync(new URL("../../README.md", import.meta.url), "utf8");
  expect(markdown.split("\n").length).toBeLessThan(150);
});
