// Every pattern in the sources against long texts that make a bad one take time by the square of the length, or worse.
//   node tests/hard/patterns.mjs [--texts short]      (short: no text longer than four fields)
// The patterns are found by the compiler's own parser. Each must do under 50 ms with a text of 100,000 signs, or, where it only ever
// sees one field, with the longest field that a reader lets pass.

import { readFileSync, readdirSync } from "node:fs";
import { join, relative } from "node:path";
import ts from "typescript";
import { busy } from "./shared/judge.mjs";
import { begin, options } from "./shared/part.mjs";
import { root } from "./shared/program.mjs";

const mostTime_ms = 50;
/** The most that a cell, a text of JSON or a typed line may hold; the readers refuse a longer one. */
const longestField = 2_000;
const longest = 100_000;
/** Sources whose patterns meet a whole file that nothing has looked through yet: nothing but time that grows as the length does will do there. */
const wholeFiles =
  /(?:csv|csv-records|located-rows|quote-faults|top-comments|json-scan|json-view|json-text|encoding|clean|width|ascii|line-ends|delta|add-columns|scan-file|sheet-text|workbook|unmarked-utf16|parse-sheet|fingerprint|journal)\.ts$/;
const { texts: only } = options({ texts: "long" });
const part = begin();

const sources = ["core", "cli"].flatMap((name) => {
  const folder = join(root, "packages", name, "src");
  return readdirSync(folder, { recursive: true })
    .map((file) => join(folder, String(file)))
    .filter((file) => file.endsWith(".ts") && !file.endsWith(".d.ts"));
});

/** Each pattern with the places where it stands; those that are put together at run time are listed apart. */
const found = new Map();
const composed = [];
for (const path of sources) {
  const file = ts.createSourceFile(path, readFileSync(path, "utf8"), ts.ScriptTarget.Latest);
  const place = (node) => {
    const { line } = file.getLineAndCharacterOfPosition(node.getStart(file));
    return `${relative(root, path)}:${String(line + 1)}`;
  };
  const add = (source, flags, node) => {
    const key = `/${source}/${flags}`;
    found.set(key, {
      source,
      compiled: new RegExp(source, flags),
      places: [...(found.get(key)?.places ?? []), place(node)],
    });
  };
  const visit = (node) => {
    if (ts.isRegularExpressionLiteral(node)) {
      const end = node.text.lastIndexOf("/");
      add(node.text.slice(1, end), node.text.slice(end + 1), node);
    } else if (ts.isNewExpression(node) && node.expression.getText(file) === "RegExp") {
      const [source, flags] = node.arguments ?? [];
      if (source !== undefined && ts.isStringLiteralLike(source)) add(source.text, flags?.text ?? "", node);
      else composed.push(place(node));
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
}

/** Signs that a pattern of ours may take many of, alone and in pairs, and what ends the run so that it fails at the last. */
const signs = ["a", "0", " ", "\t", "\n", "\r\n", ".", ",", "-", "+", '"', "\\", "/", "(", ")", "<", "?", ">", "_", "A", "é", "=", "x", "[", "{", "|", "e", "'", "\u00a0", "\ud83d"]; // prettier-ignore
const pairs = ["0.", "0,", "a ", " \n", ", ", "; ", "1-", "a.", "1 x", "()", '""', '\\"', "a=", "0 ", "..", "1e", "a1", "a/", "[]", "{}", "&#", "\u0301a"]; // prettier-ignore
/** What stands in the pattern itself between its special signs, so that its first part fits. */
const ownWords = (source) =>
  (source.replace(/\\[dwsDWSbB]|\\u[0-9a-f]{4}|\\[pP]\{[^}]*\}|\(\?[:=!<]+|\[[^\]]*\]|[\\^$.*+?()|{}]/g, " ").match(/\S+/g) ?? []).slice(0, 4); // prettier-ignore
const pumps = (source, length) => [
  ...[...signs, ...pairs].flatMap((sign) => {
    const run = sign.repeat(Math.floor(length / sign.length));
    return [`${run}!`, `x${run}\u0001x`];
  }),
  ...ownWords(source).flatMap((word) => [
    `${word.repeat(Math.floor(length / word.length))}!`,
    `${word}${" ".repeat(length)}!`,
    `${word}${"0".repeat(length)}!`,
  ]),
];

/** Every match of a pattern that looks for all, the first of any other. */
const run = ({ compiled }, text) => {
  compiled.lastIndex = 0;
  if (compiled.global) text.replace(compiled, "");
  else compiled.test(text);
};

let tries = 0;
/** Milliseconds for a text, at best of three; one that is far from `enough` either way is not tried again. */
const time = (pattern, text, enough) => {
  let best = Infinity;
  for (let again = 0; again < 3 && best > enough && (again < 2 || best < 5 * enough); again += 1) {
    tries += 1;
    const begun = busy();
    run(pattern, text);
    best = Math.min(best, busy() - begun);
  }
  return best;
};

/** The texts of that length that take longer than they should, up to a few; the first is enough to know the pattern by. */
const slowTexts = (pattern, length, enough) => {
  const slow = [];
  for (const text of pumps(pattern.source, length)) {
    if (time(pattern, text, enough) > enough) slow.push(text);
    if (slow.length === (only === "short" ? 3 : 12)) break;
  }
  return slow;
};

let linear = 0;
let slowest_ms = 0;
for (const [key, pattern] of found) {
  // Longer and longer texts, so that a pattern of the bad sort is known by a short one.
  const slow = slowTexts(pattern, longestField, 0.5);
  const isLinear =
    slow.length === 0 &&
    slowTexts(pattern, 4 * longestField, 1.5).length === 0 &&
    (only === "short" || slowTexts(pattern, longest, mostTime_ms).length === 0);
  if (isLinear) {
    linear += 1;
    part.tried(key);
    continue;
  }
  const ms = Math.max(0, ...slow.map((text) => time(pattern, text, mostTime_ms)));
  slowest_ms = Math.max(slowest_ms, ms);
  const label = `${key} at ${pattern.places.join(", ")}`;
  const meetsFiles = pattern.places.some((place) => wholeFiles.test(place.split(":")[0]));
  if (meetsFiles) part.fail(`${label}: takes the square of the length, and meets whole files`);
  else
    part.tried(
      label,
      ms > mostTime_ms ? `${ms.toFixed(0)} ms on ${JSON.stringify(slow[0].slice(0, 6))}` : undefined,
    );
}
if (found.size < 200) part.fail(`only ${String(found.size)} patterns were found`);
process.stdout.write(`put together at run time, and met by the other parts: ${composed.join(", ")}\n`);
part.end({ patterns: found.size, linear, tries, slowest_ms: Math.round(slowest_ms) });
