// amend: every way to be refused.

import { expect, test } from "vitest";
import { boat } from "./mend-place.ts";

const because = ["--because", "paper says so"];
const cell = ["--test", "latest", "--take", "1", "--cylinder", "4"];
test.each([
  ["no reason", [...cell, "--to", "130"], "--because"],
  ["a reason for one of two changes", ["--test", "latest", "--set-aside", "no", "--meter", "1"], "--because"],
  ["nothing to change", ["--test", "latest", ...because], "nothing to amend"],
  [
    "no test named where there are two",
    ["--cylinder", "4", "--to", "130", ...because],
    "add --test latest (2026-05-02a)",
  ],
  [
    "a test that is not there",
    ["--test", "2026-05-02b", "--meter", "1", ...because],
    "did you mean 2026-05-02a?",
  ],
  [
    "a row that is not there",
    [...cell, "--what", "wet", "--to", "130", ...because],
    "one of: dry take 1 by red, dry take 2 by red",
  ],
  [
    "two takes that could be meant",
    ["--test", "latest", "--cylinder", "4", "--to", "130", ...because],
    "add --take 2",
  ],
  [
    "a cylinder that is not there",
    ["--test", "latest", "--cylinder", "5", "--to", "130", ...because],
    "one of: 1, 2, 3, 4",
  ],
  ["no cylinder", ["--test", "latest", "--to", "130", ...because], "add --cylinder 1"],
  ["no value", [...cell, ...because], "add --to 141"],
  ["a letter in the value", [...cell, "--to", "14O", ...because], "write 140"],
  ["a unit in the value", [...cell, "--to", "141psi", ...because], "write 141 here"],
  [
    "a pair of a leak-down",
    [...cell, "--to", "74/80", ...because],
    "--to 74; the supply is --regulated 80psi",
  ],
  ["what stands there already", [...cell, "--to", "131", ...because], "says so already"],
  ["a condition without its unit", ["--test", "latest", "--altitude", "350", ...because], "--altitude 350m"],
  ["a condition out of its range", ["--test", "latest", "--air", "200C", ...because], "air temperature"],
  [
    "a word that is not known",
    ["--test", "latest", "--engine-temp", "hot", ...because],
    "warm, part-warm, cold",
  ],
  ["a unit that is not known", ["--test", "latest", "--unit", "lbs", ...because], "one of: psi"],
  ["a meter that would run backwards", ["--test", "latest", "--meter", "6", ...because], "less than 600"],
  [
    "a day that is none",
    ["--test", "latest", "--date", "2026-13-01", ...because],
    "--date YYYY-MM-DD, the day of the test",
  ],
  ["a day to come", ["--test", "latest", "--date", "2026-11-26", ...because], "lies ahead"],
  [
    "a text that a spreadsheet would run",
    ["--test", "latest", "--note", "=1", ...because],
    "put a word in front of it",
  ],
  [
    "a reason that a spreadsheet would run",
    [...cell, "--to", "130", "--because", "=1"],
    "put a word in front of it",
  ],
])("An amendment with %s is refused, and nothing is written", async (_, words, said) => {
  const place = boat();
  const before = place.picture();
  const { exit, err, out } = await place.run(["amend", "boat", ...words]);
  expect({ exit, out }).toEqual({ exit: 2, out: "" });
  expect(err.replace(/\s+/g, " ")).toContain(said);
  expect(place.picture()).toEqual(before);
});
