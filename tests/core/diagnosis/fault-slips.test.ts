// The tables of faults with a slip in them: each is told with its sheet, line, what was found and what to write.

import type { Problem } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { changed, lineOf, problemsOf } from "./fault-sheets.ts";

interface Slip {
  readonly slip: string;
  readonly sheet: string;
  readonly from: string;
  readonly to: string;
  readonly code: Problem["code"];
  readonly found: string;
  readonly mend: string;
}

const slips: readonly Slip[] = [
  {
    slip: "a cause that is misspelt",
    sheet: "finding-wet.csv",
    from: "tight-lash,",
    to: "tite-lash,",
    code: "word-unknown",
    found: 'cause "tite-lash" is not a word known here',
    mend: "write tight-lash",
  },
  {
    slip: "a finding that is misspelt",
    sheet: "bounds.csv",
    from: "leak,gross",
    to: "leek,gross",
    code: "word-unknown",
    found: 'finding "leek" is not a word known here',
    mend: "write leak",
  },
  {
    slip: "a finding of a test that is not known",
    sheet: "tests.csv",
    from: "leak + path",
    to: "leak + pith",
    code: "word-unknown",
    found: 'finds "pith" is not a word known here',
    mend: "write path",
  },
  {
    slip: "a class that is misspelt",
    sheet: "bounds.csv",
    from: "wet,weak",
    to: "wet,week",
    code: "word-unknown",
    found: 'class "week" is not a word known here',
    mend: "write weak",
  },
  {
    slip: "a group that is not known",
    sheet: "causes.csv",
    from: "worn rings or bore,bottom",
    to: "worn rings or bore,low end",
    code: "word-unknown",
    found: 'group "low end" is not a word known here',
    mend: "write one of these words",
  },
  {
    slip: "a circumstance that nobody can record",
    sheet: "shifts.csv",
    from: "event: flooded",
    to: "event: floded",
    code: "word-unknown",
    found: 'when "event: floded" is not a word known here',
    mend: "write event: flooded",
  },
  {
    slip: "a shift of a cause that has no chance of its own",
    sheet: "shifts.csv",
    from: "all cam-retarded,15",
    to: "cam-retarded,15",
    code: "word-unknown",
    found: 'entry "cam-retarded" is not a word known here',
    mend: "write all cam-retarded",
  },
  {
    slip: "an obstacle that is not known",
    sheet: "tests.csv",
    from: "no leak-down yet + crank",
    to: "no leakdown yet + crank",
    code: "word-unknown",
    found: 'blocked "no leakdown yet" is not a word known here',
    mend: "write no leak-down yet",
  },
  {
    slip: "a number with the letter O",
    sheet: "causes.csv",
    from: "0.0138",
    to: "0.O138",
    code: "number-bad",
    found: 'prior "0.O138" is not a number: a letter O stands where a zero may belong',
    mend: "write 0.0138",
  },
  {
    slip: "a chance above 1",
    sheet: "finding-gas.csv",
    from: "gasket-to-coolant,0.",
    to: "gasket-to-coolant,9.",
    code: "number-range",
    found: "is out of range for the chance of positive",
    mend: "write a number from 0 to 1",
  },
  {
    slip: "negative minutes",
    sheet: "tests.csv",
    from: "borescope,borescope,15",
    to: "borescope,borescope,-15",
    code: "number-range",
    found: '"-15" is out of range for the minutes',
    mend: "write a number from 1 to 1440",
  },
  {
    slip: "a doubt of nothing",
    sheet: "settings.csv",
    from: "doubt of a leak,0.08",
    to: "doubt of a leak,0",
    code: "number-range",
    found: '"0" is out of range for the doubt of a leak',
    mend: "write a number from 0.01 to 1",
  },
  {
    slip: "a prior in words",
    sheet: "causes.csv",
    from: "0.0138",
    to: "often",
    code: "number-bad",
    found: 'prior "often" is not a number',
    mend: "write a number from 0 to 0.6",
  },
  {
    slip: "a prior that was crossed out",
    sheet: "causes.csv",
    from: "0.0138",
    to: "x",
    code: "number-bad",
    found: 'prior "x" is not a number',
    mend: "write a number from 0 to 0.6",
  },
  {
    slip: "a prior that was emptied",
    sheet: "causes.csv",
    from: "0.0138",
    to: "",
    code: "sheet-cell-empty",
    found: 'nothing in the column "prior"',
    mend: "write a number from 0 to 0.6",
  },
  {
    slip: "a factor beside odds",
    sheet: "shifts.csv",
    from: "release active,all compression-release,,9",
    to: "release active,all compression-release,2,9",
    code: "sheet-cell-spare",
    found: 'odds "9" beside a factor, and a shift has one of the two',
    mend: "empty odds, or factor if that is the slip",
  },
  {
    slip: "a class that a sound cylinder never shows",
    sheet: "finding-gas.csv",
    from: "no-fault,0.02,0.98",
    to: "no-fault,0,1",
    code: "number-range",
    found: '"0" is out of range for the chance of positive',
    mend: "write a number from 0.000001 to 1",
  },
  {
    slip: "a code of two words",
    sheet: "tests.csv",
    from: "retest-warm,",
    to: "Retest warm,",
    code: "sheet-code",
    found: 'code "retest warm" is not one plain word',
    mend: "write retest-warm",
  },
  {
    slip: "an escape in a name",
    sheet: "causes.csv",
    from: "carbon (or",
    to: "\u001b[2Jcarbon (or",
    code: "sheet-text",
    found: "name holds characters that cannot be seen",
    mend: "delete the text and type it again",
  },
  {
    slip: "chances that do not add up to 1",
    sheet: "finding-lower.csv",
    from: "worn-rings-or-bore,0.75,0.25",
    to: "worn-rings-or-bore,0.75,0.2",
    code: "chances-sum",
    found: "the chances of this row add up to 0.95",
    mend: "add 0.05 where it belongs",
  },
  {
    slip: "a cause with two rows",
    sheet: "causes.csv",
    from: 'plug-seal,"leak',
    to: 'carbon,"leak',
    code: "sheet-row-twice",
    found: '"carbon" stands on line',
    mend: "delete one of the two rows, or name something else in this one",
  },
  {
    slip: "a prior for no fault",
    sheet: "causes.csv",
    from: "no fault in this cylinder,nothing,",
    to: "no fault in this cylinder,nothing,0.5",
    code: "sheet-cell-spare",
    found: 'prior "0.5" beside no-fault, which has what the others leave',
    mend: "empty prior",
  },
  {
    slip: "a share for a state that meets all",
    sheet: "states.csv",
    from: "all,slow-cranking,0.018,0.04,",
    to: "all,slow-cranking,0.018,0.04,0.5",
    code: "sheet-cell-spare",
    found: 'share "0.5" in a row that meets all',
    mend: "empty share",
  },
  {
    slip: "a state without its chance",
    sheet: "states.csv",
    from: "some,tight-lash,0.006",
    to: "some,tight-lash,",
    code: "sheet-cell-empty",
    found: 'nothing in the column "prior"',
    mend: "write a number from 0 to 0.9",
  },
  {
    slip: "bounds that fall",
    sheet: "bounds.csv",
    from: "level,very low,0.15,0.5",
    to: "level,very low,0.05,0.5",
    code: "bounds-order",
    found: 'this class begins at 0.05, and "dead" ends at 0.15',
    mend: 'write 0.15 here, or at most 0.05 in the column high of "dead"',
  },
  {
    slip: "a word scale out of order",
    sheet: "words.csv",
    from: "less likely,0.1",
    to: "less likely,0.4",
    code: "words-scale",
    found: "this word begins at 0.4, the one above it at 0.35",
    mend: "put the rows in order, the highest number first, no two the same",
  },
];

describe("a slip is told with its sheet, its line, what was found and what to write", () => {
  test.each(slips)("$slip", ({ sheet, from, to, code, found, mend }) => {
    const problem = problemsOf(changed(sheet, from, to)).find((one) => one.code === code);
    expect(problem).toMatchObject({ severity: "error", file: sheet, line: lineOf(sheet, from), mend });
    expect(problem?.found).toContain(found);
    expect(problem?.column).toBeGreaterThan(0);
  });
});
