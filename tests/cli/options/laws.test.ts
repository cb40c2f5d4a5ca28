// Laws of the command line, on lines nobody would think of.

import fc from "fast-check";
import { expect, test } from "vitest";
import { type } from "./sample.ts";

const known = [
  ...[
    "enter",
    "engine",
    "add",
    "show",
    "page",
    "help",
    "demo",
    "tractor",
    "--",
    "-",
    "-h",
    "--help",
    "-o",
    "x",
    "152",
  ],
  ...[
    "--dry",
    "--dry=1",
    "--differential",
    "--temp",
    "--note",
    "--note=",
    "--why",
    "--json",
    "--throttle",
    "--units",
  ],
  ...[
    "open",
    "kPa",
    "-5C",
    ">300",
    "74/80",
    "none",
    "--no-x",
    "--__proto__",
    "constructor",
    '"a"',
    "=",
    "--note==",
    "",
  ],
];
const word = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...known) },
  fc.string({ maxLength: 8, unit: "binary" }),
);
const line = fc.array(word, { minLength: 1, maxLength: 9 });

test("no line of words makes the program fail", async () => {
  await fc.assert(
    fc.asyncProperty(line, async (words) => {
      const { exit, out, err, faults } = await type(...words);
      expect([0, 2]).toContain(exit);
      expect(out + err).not.toBe("");
      expect(faults.length > 0).toBe(exit === 2);
    }),
    { numRuns: 400 },
  );
});

const value = fc.string({ unit: "binary", minLength: 1, maxLength: 12 }).filter((text) => text.trim() !== "");
const readings = fc.array(
  fc.constantFrom("152", "-5", "-5C", ">300", "131?", "x", "-", "74/80", "10,5", "14O"),
  { minLength: 1, maxLength: 6 },
);

test("every word of a line without a fault is received, as typed", async () => {
  const parts = fc.record({
    note: value,
    temp: value,
    dry: fc.array(readings, { maxLength: 3 }),
    engine: value,
    seed: fc.nat(),
  });
  await fc.assert(
    fc.asyncProperty(parts, async ({ note, temp, dry, engine, seed }) => {
      const pieces = [
        [`--note=${note}`],
        [`--temp=${temp}`],
        ["--why"],
        ...dry.map((words) => ["--dry", ...words]),
      ];
      const turned = [...pieces.slice(seed % pieces.length), ...pieces.slice(0, seed % pieces.length)];
      const { received } = await type("enter", ...turned.flat(), "--", engine);
      const repeats = turned.filter(([name]) => name === "--dry").map((words) => words.slice(1).join(" "));
      expect(received).toEqual({
        command: "enter",
        positionals: [engine],
        options: { note, temp, why: true, ...(repeats.length > 0 ? { dry: repeats } : {}) },
      });
    }),
  );
});

test("every word that is no option is received, or a fault is named", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(word, { maxLength: 6 }), async (words) => {
      const { received, faults } = await type("enter", ...words);
      if (received === undefined) return;
      const end = words.includes("--") ? words.indexOf("--") : words.length;
      const given = words.flatMap((text, at) => {
        if (at === end) return [];
        if (at > end || !text.startsWith("-") || !/^-(-|\p{L})/u.test(text)) return [text];
        return text.includes("=") ? [text.slice(text.indexOf("=") + 1)] : [];
      });
      const kept = [...received.positionals, ...Object.values(received.options).flat()].join(" ");
      expect(faults).toEqual([]);
      for (const text of given) expect(kept).toContain(text);
    }),
    { numRuns: 400 },
  );
});
