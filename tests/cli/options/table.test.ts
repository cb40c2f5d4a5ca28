// What holds for every command there is, whatever it does.

import { commands, run, type Command } from "sealtrend";
import { expect, test } from "vitest";
import { fakeIo } from "../fake-io.ts";
import { wordsTyped } from "../words-typed.ts";

const idle: readonly Command[] = commands.map((command) => ({
  ...command,
  run: () => Promise.resolve({ exit: 0, text: `${command.name}\n`, json: {} }),
}));

const examples = idle.flatMap(({ name, examples: lines }) => lines.map((line) => [line, name] as const));

test.each(examples)("the example `%s` can be typed", async (line, name) => {
  const io = fakeIo();
  expect([await run(wordsTyped(line), io, idle), io.stderr()]).toEqual([0, ""]);
  expect(io.stdout()).toBe(`${name}\n`);
});

test("an option is a flag in every command or in none", () => {
  const kinds = new Map<string, Set<string>>();
  for (const { name, value } of commands.flatMap(({ options }) => options))
    kinds.set(name, (kinds.get(name) ?? new Set()).add(value === undefined ? "flag" : "value"));
  expect([...kinds].filter(([, kind]) => kind.size > 1)).toEqual([]);
});

test("a command's name, an option and a short option mean one thing only", () => {
  const common = ["logbook", "json", "units", "no-color", "ascii", "no-input", "as-of", "why", "help", "h"];
  for (const { options } of commands) {
    const names = [
      ...common,
      ...options.flatMap(({ name, alias }) => (alias === undefined ? [name] : [name, alias])),
    ];
    expect(names).toEqual([...new Set(names)]);
  }
  const named = commands.map(({ name }) => name);
  expect(named).toEqual([...new Set(named)]);
  for (const name of named) expect(named).not.toContain(name.split(" ").slice(0, -1).join(" "));
});

test("every command explains itself: a summary, examples, and a word for each option", () => {
  for (const { summary, examples: lines, options, positionals } of commands) {
    expect(summary).toMatch(/^\S/);
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines) expect(line).toContain("sealtrend ");
    for (const { help } of [...options, ...positionals]) expect(help).toMatch(/^\S/);
  }
});
