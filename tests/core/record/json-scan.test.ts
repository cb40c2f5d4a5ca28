import type { Problem } from "@sealtrend/core";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { scanJson } from "../../../packages/core/src/record/json-scan.ts";
import { fieldAt, viewJson } from "../../../packages/core/src/record/json-view.ts";

const isJson = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

describe("what is JSON", () => {
  test("every JSON text is, however it is laid out", () => {
    fc.assert(
      fc.property(fc.json({ maxDepth: 5 }), fc.constantFrom(undefined, 2, "\t"), (text, indent) => {
        expect(scanJson(JSON.stringify(JSON.parse(text), null, indent)).fault).toBeUndefined();
      }),
    );
  });

  test("a text with one sign too many, too few or changed is what the language's own reader says", () => {
    const text = '{"a": [1, -2.5e3, "x\\u00e9\\n", true], "b": {"c": null}}';
    const signs = [...'{}[]:,"\\0123456789-+.eE truefalsnxu\n\t'];
    for (let at = 0; at <= text.length; at += 1)
      for (const sign of ["", ...signs])
        for (const taken of [0, 1]) {
          const changed = text.slice(0, at) + sign + text.slice(at + taken);
          const { fault } = scanJson(changed);
          // a name that stands twice is a fault of ours only
          if (fault?.reason.includes("twice") !== true)
            expect([changed, fault === undefined]).toEqual([changed, isJson(changed)]);
        }
  });

  test("arrays and objects deeper than 32 are refused, and a text of more than 2,000 signs is, however long", () => {
    expect(scanJson(`{"a":${"[".repeat(40)}${"]".repeat(40)}}`).fault?.reason).toBe(
      "brackets are nested too deep",
    );
    expect(scanJson(`{"a":"${"x".repeat(2_000)}"}`).fault).toBeUndefined();
    for (const text of ["x".repeat(2_001), "é\\n".repeat(300_000)])
      expect(scanJson(`{"a":"${text}"}`).fault).toMatchObject({
        offset: 5,
        reason: "a text longer than 2000 characters",
        mend: "shorten it",
      });
  });
});

describe("where a field stands", () => {
  test("its own name is found, not the same name elsewhere or inside a text", () => {
    const text = `{
  "note": "the \\"speed\\": of it",
  "limits": { "compression": { "speed": "250rpm" } },
  "speed": 4
}`;
    const view = viewJson(text, "engine.json", []);
    expect(view?.place("speed")).toMatchObject({ line: 4, column: 3, excerpt: { from: 3, to: 9 } });
    expect(view?.place("limits.compression.speed")).toMatchObject({ line: 3, column: 32 });
    expect(view?.place("limits.compression.new")).toEqual({ file: "engine.json", line: 1, column: 1 });
  });

  test("a name that the language keeps for itself is dropped and harms nothing", () => {
    const view = viewJson('{"__proto__": {"x": 1}, "a": {"constructor": 2}}', "f", []);
    expect(fieldAt(view?.root ?? {}, "x")).toBeUndefined();
    expect(fieldAt(view?.root ?? {}, "a.constructor")).toBe(2);
    expect(fieldAt(view?.root ?? {}, "a.toString")).toBeUndefined();
  });
});

describe("what is wrong, in words, where it stands", () => {
  test.each([
    ['{"a": 1,}', 8, "a comma after the last entry before }", "take the comma out"],
    ['{"a": [1, 2,]}', 12, "a comma after the last entry before ]", "take the comma out"],
    ['{"a": 1 "b": 2}', 9, "no comma and no } before this", "put a comma after the entry before this"],
    ['{"a": warm}', 7, "warm stands without quotes", 'write "warm"'],
    ['{"a": yes}', 7, "yes is no value", "write true"],
    ['{"a": False}', 7, "False is no value", "write false"],
    ["{'a': 1}", 2, "'a' stands where a name in quotes belongs", 'write "a"'],
    ["{bad", 2, "bad stands where a name in quotes belongs", 'write "bad": and its value and a }'],
    ['{"a": 1, bad}', 10, "bad stands where a name in quotes belongs", 'write "bad": and its value'],
    ['{"a": 5,5}', 9, "5 stands where a name in quotes belongs", "write a decimal point, not a comma"],
    ['{"a": .5}', 7, ".5 is no number", "write it as 4 or 0.25"],
    ['{"a": 014}', 7, "014 is no number", "write it as 4 or 0.25"],
    ['{"a" 1}', 6, 'no colon after "a"', 'write "a": and its value'],
    ['{"a": }', 7, "a value is missing here", 'write it, such as "warm" or 4'],
    ['{"a": "x}', 7, "a quote mark opens here and does not close on this line", 'put a " at its end'],
    ['{"a": 1', 8, "it ends too early", "close what is open: add the } or ] that is missing"],
    ['{"a": 1}}', 9, "something stands after the end", "delete it, or look for a bracket too many before it"],
    ['{"a": 1, "a": 2}', 10, '"a" stands twice', "delete one of the two"],
    ["", 1, "it ends too early", "close what is open: add the } or ] that is missing"],
    ["[1]", 1, "it is no object", "put everything between { and }"],
  ])("%s", (text, column, reason, mend) => {
    const problems: Problem[] = [];
    expect(viewJson(text, "engine.json", problems)).toBeUndefined();
    expect(problems).toMatchObject([
      { code: "json-bad", line: 1, column, found: `this is not JSON: ${reason}`, mend },
    ]);
  });

  test("the mend of a word that should be a name leaves JSON", () => {
    for (const end of ["", "}", ' , "b": 2}']) {
      const { fault } = scanJson(`{bad${end}`);
      const given = `${/write (".*?"): and its value/.exec(fault?.mend ?? "")?.[1] ?? ""}: 1`;
      expect(isJson(`{${given}${/ and a (\})/.exec(fault?.mend ?? "")?.[1] ?? ""}${end}`)).toBe(true);
    }
    for (const word of ["a\\d", "'a'", "“a”"]) {
      const { fault } = scanJson(`{${word}: 1}`);
      expect(isJson(`{${/^write (.*)$/.exec(fault?.mend ?? "")?.[1] ?? ""}: 1}`)).toBe(true);
    }
  });

  test("a fault on a later line is placed there, behind a byte order mark and with Windows line ends too", () => {
    const problems: Problem[] = [];
    viewJson('\uFEFF{\r\n  "a": 1,\r\n  "b": 14O\r\n}\r\n', "f", problems);
    expect(problems).toMatchObject([
      { line: 3, column: 8, excerpt: { text: '  "b": 14O', from: 8, to: 10 } },
    ]);
  });
});

test("more than any engine needs is refused: a million characters, five thousand names and entries", () => {
  expect(scanJson(" ".repeat(1_000_001)).fault?.reason).toBe("more than 1000000 characters");
  const names = (count: number): string =>
    `{ ${Array.from({ length: count }, (_, i) => `"a${i}": [1]`).join(", ")} }`;
  expect(scanJson(names(2_500)).fault).toBeUndefined();
  expect(scanJson(names(2_501)).fault).toMatchObject({
    reason: "more than 5000 names and entries",
    mend: "take out what does not belong here",
  });
});
