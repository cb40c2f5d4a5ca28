// A row of a yard in words. Rows invented.

import type { YardRow, YardWorst } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { yardHeadline } from "../../../packages/cli/src/render/yard/yard-headline.ts";
import {
  courseText,
  decisionText,
  dueText,
  whyText,
  worstText,
} from "../../../packages/cli/src/render/yard/yard-words.ts";

const low = (label: string, own: Partial<YardWorst> = {}): YardWorst => {
  const base: YardWorst = {
    label,
    standing: "lagging",
    belowOthers: 0.29,
    limitsMissed: [],
    held: "something",
    flaggedBefore: true,
    confirmed: true,
  };
  return Object.assign(base, own);
};
const row = (own: Partial<YardRow> = {}): YardRow => {
  const base: YardRow = {
    engine: "pump",
    name: "pump",
    cylinders: 4,
    tests: 3,
    test: { id: "2026-05-01a", date: "2026-05-01", trust: "trusted" },
    licensed: false,
    due: { date: "2027-01-01" },
    byLuck: 0.039,
    byLuckIs: "about",
  };
  return Object.assign(base, own);
};
const withLow = (first: YardWorst, ...others: readonly YardWorst[]): Partial<YardRow> => ({
  worst: first,
  low: [first, ...others].toSorted((a, b) => a.label.localeCompare(b.label)),
});

test("one cylinder is named, several are counted, and none is taken for a sum", () => {
  const limit = { limitsMissed: ["maker-minimum"] } as const;
  const one = row(withLow(low("3")));
  expect([worstText(one), whyText(one)]).toEqual([
    "3: -29 %",
    "cylinder 3 lags: flagged in two tests running",
  ]);
  const three = row({ cylinders: 8, ...withLow(low("5"), low("2"), low("6")) });
  expect([worstText(three), whyText(three)]).toEqual([
    "3 low: -29 %",
    "cylinders 2, 5 and 6 lag, 5 most: flagged in two tests running",
  ]);
  const all = row(withLow(low("3", limit), low("1", limit), low("2", limit), low("4", limit)));
  expect([worstText(all), whyText(all)]).toEqual([
    "all 4: -29 %",
    "all four lag, 3 most: below the maker's limit",
  ]);
  const many = Array.from({ length: 7 }, (_, i) => low(String(i + 2)));
  expect(whyText(row({ cylinders: 12, ...withLow(low("1"), ...many) }))).toContain(
    "eight of 12 cylinders lag",
  );
});

test("each reason stands with its cylinders, and contradicting readings are no flag", () => {
  const torn = low("19", { standing: "suspect", repeats: "contradict" });
  expect(whyText(row({ cylinders: 28, ...withLow(low("15"), torn) }))).toBe(
    "cylinder 15 lags: flagged in two tests running; cylinder 19 suspect: its readings contradict each other",
  );
  const apart = {
    id: "2026-05-01a",
    date: "2026-05-01",
    trust: "doubtful",
    reasons: [
      { code: "cold", text: "the engine was cold, other tests of it were warm" },
      { code: "leak-repeats-apart", text: "the leak-down takes of cylinder 19 lie apart" },
    ],
  } as const;
  expect(whyText(row({ cylinders: 28, test: apart, ...withLow(torn) }))).toBe(
    "cylinder 19 suspect: its readings contradict each other; test doubtful: engine cold",
  );
  const once = low("2", { standing: "suspect", flaggedBefore: false });
  expect(whyText(row(withLow(once)))).toBe("cylinder 2 suspect: flagged once, repeat it");
  const dead = low("1", { held: "nothing", belowOthers: 1 });
  expect(worstText(row(withLow(dead)))).toBe("1: held 0");
  const four = [dead, low("3", { limitsMissed: ["maker-minimum"] }), low("4"), torn] as const;
  expect(whyText(row({ cylinders: 28, ...withLow(...four) }))).toBe("cylinders 1, 19, 3 and 4 low, 1 most");
});

test("what a decision forbids comes first, a doubtful test says why, and age is not hidden by doubt", () => {
  const decision = {
    code: "test-again",
    basis: "nothing-shown",
    reason: "source-unknown",
    use: "not-run",
  } as const;
  expect(whyText(row({ decision }))).toBe("do not run it; find the source first");
  const test = {
    id: "2016-05-01a",
    date: "2016-05-01",
    trust: "doubtful",
    reasons: [{ code: "seller", text: "it is the seller's sheet" }],
  } as const;
  expect(whyText(row({ test }))).toBe("test doubtful: a seller's sheet");
  const old = { ...decision, reason: "test-doubtful", use: "not-hard", tooOld: "over-a-year" } as const;
  expect(whyText(row({ test, decision: old }))).toBe(
    "test doubtful: a seller's sheet; last test over a year old",
  );
  expect(whyText(row({ test, decision: { ...old, counts: "2015-04-01" } }))).toBe(
    "test doubtful: a seller's sheet; last test that counts (2015-04) over a year old",
  );
  const ahead = ["test 2031-05-01a"];
  expect(whyText(row({ ahead }))).toBe("dated after today: test 2031-05-01a");
});

test("beside its columns a row does not say again what stands in them", () => {
  const course = { code: "stepped-down", label: "3" } as const;
  const stepped = row({ ...withLow(low("3")), course });
  expect(whyText(stepped)).toBe("cylinder 3 lags: flagged in two tests running; stepped down");
  expect(whyText(stepped, "columns")).toBe("cylinder 3 lags: flagged in two tests running");
  const line = { perYear: -0.02, perYearLow: -0.03, perYearHigh: -0.01 };
  const other = row({ ...withLow(low("3")), course: { code: "falling", label: "1", ...line } });
  expect([courseText(other), whyText(other, "columns")]).toEqual([
    "1: falling",
    "cylinder 3 lags: flagged in two tests running; cylinder 1 falling 2.0 % a year",
  ]);
});

test("a rate is told where its interval is off 0, as in the history; a lone cylinder has none", () => {
  const course = { code: "falling", label: "3", perYear: -0.047, perYearLow: -0.079 } as const;
  const open = row({ ...withLow(low("3")), course: { ...course, perYearHigh: 0.0095 } });
  expect(whyText(open)).toBe("cylinder 3 lags: flagged in two tests running; falling");
  const shown = row({ ...withLow(low("3")), course: { ...course, perYearHigh: -0.02 } });
  expect(whyText(shown)).toContain("falling 4.6 % a year");
  const lone = { code: "falling", label: "1", perYear: -0.047 } as const;
  const even = low("1", { standing: "even", belowOthers: 0 });
  expect(whyText(row({ cylinders: 1, worst: even, course: lone }))).toBe("falling 4.6 % a year");
});

test("a loss that only a column tells is never called nothing", () => {
  const worst = low("3", { standing: "even", belowOthers: 0.01 });
  const decision = { code: "watch-it", basis: "nothing-shown", reason: "history-alarm" } as const;
  const stepped = row({ worst, decision, course: { code: "stepped-down", label: "2" } });
  expect(whyText(stepped, "columns")).toBe("cylinder 2 stepped down");
});

test("of two cylinders none is named that nobody can tell", () => {
  const either = { code: "stepped-down", label: "2", wentOn: "2026-05-01", mirrored: "either" } as const;
  const two = row({ cylinders: 2, worst: low("1", { standing: "even" }), course: either });
  expect([courseText(two), whyText(two)]).toEqual([
    "one of the two",
    "one has lost or the other gained, two cannot tell which",
  ]);
});

test("a lone cylinder is even with nothing, a void test shows no number, and a re-ring keeps its hyphen", () => {
  const even = low("1", { standing: "even", belowOthers: 0 });
  expect(worstText(row({ cylinders: 1, worst: even }))).toBe("-");
  expect(worstText(row({ worst: even }))).toBe("even");
  const voided = { id: "2026-05-01a", date: "2026-05-01", trust: "void" } as const;
  expect(worstText(row({ worst: even, test: voided }))).toBe("void");
  expect(decisionText({ code: "re-ring", basis: "needed", reason: "need-established" })).toBe("re-ring");
});

test("what is overdue has the month since when, what is due this month is due now", () => {
  const today = "2026-11-26";
  expect(dueText(row({ due: { date: today, since: "2016-09-01" } }), today)).toBe("2016-09");
  expect(dueText(row({ due: { date: today, since: "2026-11-02" } }), today)).toBe("now");
  expect(dueText(row({ due: { date: today } }), today)).toBe("now");
  expect(dueText(row({ due: { date: "2026-11-30" } }), today)).toBe("2026-11");
});

test("the headline counts what is not to be run, what needs work and what is due, and bounds luck", () => {
  const totals = { read: 40, faulty: 0, lagging: 4, suspect: 2, notRun: 1, workNeeded: 2, due: 9 };
  expect(yardHeadline({ ...totals, byLuck: 1.8, byLuckIs: "at-most" })).toBe(
    "40 engines. 1 not to be run, 2 in need of work, 9 due for a test. 4 lagging, 2 suspect. By luck alone at most about 2 would be lagging or suspect.",
  );
  const none = { ...totals, lagging: 0, suspect: 0, notRun: 0, workNeeded: 0, due: 0 };
  expect(yardHeadline({ ...none, byLuck: 0.3, byLuckIs: "about" })).toBe(
    "40 engines. None due for a test. None lagging, none suspect. By luck alone less than one (0.3) would be lagging or suspect.",
  );
});
