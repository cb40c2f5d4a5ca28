// Every fault that the shell words itself, as a folder in shell/: the line typed, what is printed to the letter, and
// the mend that was printed, applied: the line passes then. How a case is written down: shell-case.ts.

import { existsSync, readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { commandCodes } from "../../packages/cli/src/fault-codes.ts";
import { fileWords } from "../../packages/cli/src/logbook/words.ts";
import { usageWords } from "../../packages/cli/src/options/usage-words.ts";
import { carriesLine, stands, uncarried } from "./carries.ts";
import { type Case, casesIn, typedWords } from "./shell-case.ts";
import { type ShellPlace, newShellPlace } from "./shell-place.ts";

const here = join(import.meta.dirname, "shell");
const folders = readdirSync(here).toSorted();
const cases = folders.flatMap((code) => {
  const file = join(here, code, "cases.txt");
  return existsSync(file)
    ? casesIn(readFileSync(file, "utf8")).map((one) => ({ code, name: `${code}: ${one.typed}`, ...one }))
    : [];
});

interface Problem {
  readonly code: string;
  readonly mend: string;
  readonly expected: string;
}

/** The faults of the document, in which no mend is wrapped; a line typed back has the --json of this test in it. */
const problemsIn = (out: string): readonly Problem[] => {
  if (!out.startsWith("{")) return []; // help has no document
  const { problems = [], worthALook = [], leftOut = [] } = JSON.parse(out) as {
    readonly problems?: readonly Problem[];
    readonly worthALook?: readonly Problem[];
    readonly leftOut?: readonly { readonly problem?: Problem }[];
  };
  const all = [...problems, ...worthALook, ...leftOut.flatMap(({ problem }) => problem ?? [])];
  return all.map((one) => ({ ...one, mend: one.mend.replace("sealtrend --json ", "sealtrend ") }));
};

const together = (text: string): string => text.replace(/\s+/g, " ");

const program = join(import.meta.dirname, "../..");

/** A text that names the folder of the program breaks its lines elsewhere on each machine. */
const told = (text: string): string =>
  text.includes(program) || text.includes("{program}")
    ? together(text).replaceAll(program, "{program}").trim()
    : text;

/** Applies the mend, and says what of it does not stand in the text. @returns the line to type then */
const apply = (
  place: ShellPlace,
  { typed, steps, code }: Case & { readonly code: string },
  problems: readonly Problem[],
): { readonly line: string; readonly first: readonly string[]; readonly missing: readonly string[] } => {
  const mends = problems.map(({ mend }) => mend);
  const byHand = steps.some(({ kind }) => kind === "by hand");
  const missing: string[] = [];
  const first: string[] = [];
  let line = typed;
  for (const { kind, text } of steps) {
    if (kind === "line") {
      if (!byHand && !carriesLine(mends, typedWords(typed), typedWords(text))) missing.push(text);
      line = text;
    }
    if (kind === "first" || kind === "sh") {
      if (!byHand && !stands(mends, text)) missing.push(text);
      if (kind === "first") first.push(text);
      else place.sh(text);
    }
    if (kind === "free") place.free();
    if (kind === "files") {
      const folder = join(here, code, text);
      for (const name of filesBelow(folder))
        if (!byHand)
          missing.push(
            ...uncarried(
              problems.map(({ mend, expected }) => ({ mend, expected })),
              place.text(name),
              readFileSync(join(folder, name), "utf8"),
            ),
          );
      place.lay(folder);
    }
  }
  return { line, first, missing };
};

const filesBelow = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name).slice(folder.length + 1));

test("every code that the shell words has a folder here, and every folder a code", () => {
  expect(folders).toEqual(
    [...new Set([...commandCodes, ...Object.keys(fileWords), ...Object.keys(usageWords)])].toSorted(),
  );
  expect(folders.filter((code) => !cases.some((one) => one.code === code))).toEqual([]);
});

test("no code is worded in the shell without being listed", () => {
  const source = join(import.meta.dirname, "../../packages/cli/src");
  const used = readdirSync(source, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .flatMap((name) => [
      ...readFileSync(join(source, name), "utf8").matchAll(
        /\b(?:usage|usageFault|fileFault)\(\s*"([a-z-]+)"|\bcode: "([a-z-]+)",\s*severity/g,
      ),
    ])
    .flatMap(([, made, written]) => made ?? written ?? []);
  expect(used.length).toBeGreaterThan(150);
  expect([...new Set(used)].filter((code) => !folders.includes(code))).toEqual([]);
});

describe.each(cases)("$name", (given) => {
  test("prints its text to the letter, and the mend that it prints makes the line pass", async () => {
    const place = await newShellPlace(join(here, given.code), given);
    const { exit, err, out } = await place.type(given.typed);
    expect([exit, told(err === "" ? out : err)]).toEqual([given.exit, told(given.expected)]);
    const twin = await newShellPlace(join(here, given.code), given);
    const problems = problemsIn((await twin.type(given.typed, ["--json"])).out);
    expect(new Set(problems.map(({ code }) => code))).toEqual(new Set([given.code, ...given.also]));
    const mends = problems.map(({ mend }) => mend);
    expect(mends.filter((mend) => !together(given.expected).includes(together(told(mend))))).toEqual([]);
    const { line, first, missing } = apply(place, given, problems);
    expect({ mends, missing }).toEqual({ mends, missing: [] });
    for (const one of first) expect(await place.type(one)).toMatchObject({ exit: 0 });
    const again = await place.type(line, ["--json"]);
    expect([again.exit, again.err, problemsIn(again.out)]).toEqual([0, again.err, []]);
  });
});

afterAll(() => {
  const byHand = cases.filter(({ steps }) => steps.some(({ kind }) => kind === "by hand"));
  process.stdout.write(
    `shell faults: ${String(cases.length)} cases of ${String(folders.length)} codes; of ${String(byHand.length)} the mend leaves a choice\n`,
  );
});
