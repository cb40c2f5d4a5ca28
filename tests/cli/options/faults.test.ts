// Which faults a command line has: each is named, with the word that was typed, and nothing runs.

import { expect, test } from "vitest";
import { type } from "./sample.ts";

const rows: readonly (readonly [string, readonly string[], readonly string[]])[] = [
  ["a near command is suggested", ["shwo"], ["command-unknown: no command `shwo`; did you mean `show`?"]],
  [
    "the beginning of a command is suggested, never taken",
    ["sho"],
    ["command-unknown: no command `sho`; did you mean `show`?"],
  ],
  [
    "a near second word is suggested",
    ["engine", "ad", "pump"],
    ["command-unknown: no command `engine ad`; did you mean `engine add`?"],
  ],
  [
    "a near first word is suggested",
    ["engin", "add", "pump"],
    ["command-unknown: no command `engin add`; did you mean `engine add`?"],
  ],
  ["a far word gets no suggestion", ["xylophone"], ["command-unknown: no command `xylophone`"]],
  ["a command of two words needs both", ["engine"], ["command-unfinished: `engine` needs one word more"]],
  ["options alone are no command", ["--json"], ["command-missing: no command"]],
  [
    "an unknown command and an unknown option are both named",
    ["--jsn", "shwo"],
    [
      "option-unknown: no option `--jsn`; did you mean `--json`?",
      "command-unknown: no command `shwo`; did you mean `show`?",
    ],
  ],
  [
    "a near option is suggested",
    ["enter", "--dru", "152", "150"],
    ["option-unknown: no option `--dru` (with `152` `150`); did you mean `--dry`?"],
  ],
  [
    "the beginning of an option is suggested, never taken",
    ["show", "--logb", "x"],
    ["option-unknown: no option `--logb` (with `x`); did you mean `--logbook`?"],
  ],
  [
    "an option of another command is unknown here",
    ["show", "--dry", "152"],
    ["option-unknown: no option `--dry` (with `152`)"],
  ],
  ["a flag cannot be turned round by no-", ["enter", "--no-json"], ["option-unknown: no option `--no-json`"]],
  ["an unknown short option is named", ["show", "-x"], ["option-unknown: no option `-x`"]],
  ["letters cannot be strung together", ["page", "-ho"], ["option-unknown: no option `-ho`"]],
  [
    "names of a JavaScript object are unknown options",
    ["show", "--__proto__.x", "1"],
    ["option-unknown: no option `--__proto__.x` (with `1`)"],
  ],
  ["an option without a name is unknown", ["show", "--=1"], ["option-unknown: no option `--` (with `1`)"]],
  ["three dashes are unknown", ["show", "---"], ["option-unknown: no option `---`"]],
  [
    "an option at the end lacks its value",
    ["enter", "--note"],
    ["option-value-missing: `--note` stands without a value"],
  ],
  [
    "the next option is no value",
    ["enter", "--note", "--temp", "1C"],
    ["option-value-missing: `--note` stands without a value"],
  ],
  [
    "-- is no value",
    ["enter", "--dry", "--", "152"],
    ["option-value-missing: `--dry` stands without a value"],
  ],
  [
    "an empty value is a fault",
    ["enter", "--note", ""],
    ["option-value-empty: the value of `--note` is empty"],
  ],
  [
    "an empty value after = is a fault",
    ["enter", "--note="],
    ["option-value-empty: the value of `--note` is empty"],
  ],
  [
    "blanks are an empty value",
    ["enter", "--dry", "  "],
    ["option-value-empty: the value of `--dry` is empty"],
  ],
  ["an empty word is a fault", ["show", ""], ['word-empty: an empty word: ""']],
  [
    "an empty word ends the readings and is a fault",
    ["enter", "--dry", "152", "", "149"],
    ['word-empty: an empty word: ""', "word-too-many: `149` is more than this command takes"],
  ],
  [
    "an option given twice is a fault that names both values",
    ["enter", "--temp", "1C", "--temp", "2C"],
    ["option-twice: `--temp` is given 2 times: `1C`, `2C`"],
  ],
  ["a flag given twice is a fault", ["show", "--why", "--why"], ["option-twice: `--why` is given 2 times"]],
  [
    "a choice given twice is a fault",
    ["enter", "--throttle", "open", "--throttle", "closed"],
    ["option-twice: `--throttle` is given 2 times: `open`, `closed`"],
  ],
  [
    "a flag takes no value",
    ["show", "--why=no"],
    ["option-takes-no-value: `--why` takes no value, but has `no`"],
  ],
  [
    "an empty value of a flag is a value",
    ["show", "--why="],
    ["option-takes-no-value: `--why` takes no value, but has ``"],
  ],
  [
    "a near choice is suggested",
    ["show", "--units", "kPA"],
    ["option-choice: `--units` has `kPA`; did you mean `kPa`?"],
  ],
  [
    "a word outside the choices is named",
    ["enter", "--throttle", "half"],
    ["option-choice: `--throttle` has `half`"],
  ],
  [
    "words too many are named together",
    ["enter", "tractor", "--note", "wrong", "adapter", "used"],
    ["word-too-many: `adapter used` is more than this command takes"],
  ],
  ["words after -- count", ["show", "a", "--", "b"], ["word-too-many: `b` is more than this command takes"]],
  ["a word that must stand is missed", ["engine", "add"], ["word-missing: no ENGINE"]],
  [
    "a day that is none is named",
    ["show", "--as-of", "2026-02-30"],
    ["as-of-bad: `--as-of` has `2026-02-30`, which is no day of the years 1900 to 2100"],
  ],
  [
    "29 February stands in leap years only",
    ["show", "--as-of", "1900-02-29"],
    ["as-of-bad: `--as-of` has `1900-02-29`, which is no day of the years 1900 to 2100"],
  ],
  [
    "every fault is told at once",
    ["enter", "--dru", "1", "--temp=", "--note"],
    [
      "option-unknown: no option `--dru` (with `1`); did you mean `--dry`?",
      "option-value-missing: `--note` stands without a value",
      "option-value-empty: the value of `--temp` is empty",
    ],
  ],
];

test.each(rows)("%s", async (_, words, faults) => {
  const typed = await type(...words);
  expect(typed.faults).toEqual(faults);
  expect(typed.exit).toBe(2);
  expect(typed.received).toBeUndefined();
});

const printed: readonly (readonly [string, readonly string[], string])[] = [
  [
    "a mend is the line itself with the right word",
    ["shwo", "tractor", "--why"],
    "no command `shwo`; did you mean `show`?\n    expected a command that `sealtrend help` lists\n    sealtrend show tractor --why\n",
  ],
  [
    "a split value is mended by quotes",
    ["enter", "tractor", "--note", "wrong", "adapter"],
    '`adapter` is more than this command takes\n    expected sealtrend enter [ENGINE] [options]\n    take it out, or write --note "wrong adapter" if it belongs to the value\n',
  ],
  [
    "a value that looks like an option is mended by =",
    ["enter", "--note", "--why"],
    '`--note` stands without a value\n    expected a value after it, such as "in my own words"\n    write --note=--why if `--why` is the value\n',
  ],
  [
    "what was typed cannot steer the terminal",
    ["\u001b[2Jx"],
    "no command `\\u{1b}[2Jx`\n    expected a command that `sealtrend help` lists\n    sealtrend help\n",
  ],
];

test.each(printed)("%s", async (_, words, text) => {
  const typed = await type(...words);
  expect(typed.err).toBe(text);
  expect(typed.out).toBe("");
});
