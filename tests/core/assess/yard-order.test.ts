import {
  type YardRow,
  type YardTotals,
  type YardWorst,
  noYard,
  withEngine,
  yardCompare,
  yardRow,
} from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { recordOf } from "./records.ts";

const row = (engine: string, own: Partial<YardRow> = {}): YardRow => {
  const base: YardRow = {
    engine,
    name: engine,
    cylinders: 4,
    tests: 3,
    licensed: false,
    due: { date: "2027-01-01" },
    byLuck: 0.039,
    byLuckIs: "about",
  };
  return Object.assign(base, own);
};
const worst = (
  standing: "lagging" | "suspect" | "even" | undefined,
  belowOthers: number,
  own: Partial<YardWorst> = {},
): Pick<YardRow, "worst" | "low"> => {
  const base: YardWorst = {
    label: "3",
    belowOthers,
    limitsMissed: [],
    held: "something",
    flaggedBefore: false,
    confirmed: false,
    ...(standing === undefined ? {} : { standing }),
  };
  const one: YardWorst = Object.assign(base, own);
  const isLow = standing === "lagging" || standing === "suspect";
  return { worst: one, ...(isLow ? { low: [one] } : {}) };
};
const decision = (own: Partial<NonNullable<YardRow["decision"]>>): Pick<YardRow, "decision"> => {
  const base: NonNullable<YardRow["decision"]> = {
    code: "leave-it",
    basis: "nothing-shown",
    reason: "nothing-developing",
  };
  return { decision: Object.assign(base, own) };
};
const needed = (code: "rebuild" | "re-ring" | "open-the-top-end", urgency: "planned" | "no-hard-use") =>
  decision({ code, basis: "needed", reason: "need-established", urgency });
const sorted = (order: Parameters<typeof yardCompare>[0], rows: readonly YardRow[]): string =>
  [...rows]
    .sort(yardCompare(order))
    .map(({ engine }) => engine)
    .join(" ");

test("worst first: standing, then how far below, then the course, then due, then the name", () => {
  const rows = [
    row("l"),
    row("k", worst("even", 0.03)),
    row("j", { ...worst("even", 0.001), due: { date: "2026-12-01" } }),
    row("i", { ...worst("even", 0.001), course: { code: "falling", label: "1" } }),
    row("h", worst("suspect", 0.2)),
    row("g", { ...worst("lagging", 0.12), course: { code: "steady", label: "3" } }),
    row("f", { ...worst("lagging", 0.12), course: { code: "stepped-down", label: "3" } }),
    row("e", worst("lagging", 0.28)),
    row("d", worst("lagging", 0.01, { limitsMissed: ["maker-minimum"] })),
    row("c", worst("lagging", 0.3, { limitsMissed: ["usual-ratio"] })),
    row("b", worst("lagging", 1, { held: "nothing" })),
    row("a", worst("lagging", 1, { held: "nothing" })),
  ];
  expect(sorted("worst", rows)).toBe("a b c d e f g h i j k l");
  expect(sorted("worst", rows.toReversed())).toBe("a b c d e f g h i j k l");
});

test("what is not to be run stands before work that is needed, that before every standing, and what only pays does not", () => {
  const rows = [
    row("h", {
      ...worst("even", 0),
      ...decision({ code: "re-ring", basis: "opportunity", urgency: "planned" }),
    }),
    row("g", { ...worst("lagging", 1, { held: "nothing" }), ...decision({ code: "test-again" }) }),
    row("f", {
      ...worst("even", 0),
      ...decision({ code: "test-again", use: "not-hard", urgency: "no-hard-use" }),
    }),
    row("e", { ...worst("lagging", 0.4), ...needed("open-the-top-end", "planned") }),
    row("d", { ...worst("even", 0), ...needed("re-ring", "planned") }),
    row("c", { ...worst("even", 0), ...needed("open-the-top-end", "no-hard-use") }),
    row("b", { ...worst("even", 0), ...decision({ code: "test-again", use: "not-run" }) }),
    row("a", { ...worst("even", 0), ...decision({ code: "test-again", use: "not-run", urgency: "stop" }) }),
  ];
  expect(sorted("worst", rows)).toBe("a b c d e f g h");
  expect(sorted("worst", rows.toReversed())).toBe("a b c d e f g h");
});

test("by last test the longest untested stands first, by due the longest overdue", () => {
  const at = (date: string): Pick<YardRow, "test"> => ({ test: { id: `${date}a`, date, trust: "trusted" } });
  expect(sorted("last", [row("b", at("2026-01-01")), row("a", at("2025-01-01")), row("c")])).toBe("c a b");
  const due = [
    row("b", { due: { date: "2026-11-25", since: "2025-01-01" } }),
    row("a", { due: { date: "2026-11-25" } }),
  ];
  expect(sorted("due", due)).toBe("b a");
  const today = { due: { date: "2026-11-25" } };
  expect(
    sorted("due", [row("a", { ...today, ...at("2025-05-01") }), row("b", { ...today, ...at("2018-05-01") })]),
  ).toBe("b a");
  expect(sorted("engine", [row("b"), row("a")])).toBe("a b");
});

test("totals count standings, decisions, what is due and faults, and add up what luck would bring", () => {
  const totals = [
    row("a", { ...worst("lagging", 0.1), ...needed("re-ring", "planned"), due: { date: "2026-11-25" } }),
    row("b", { ...worst("suspect", 0.1), byLuckIs: "at-most" }),
    row("c", decision({ code: "open-the-top-end", basis: "needed", use: "not-run", urgency: "stop" })),
    undefined,
  ].reduce((sum: YardTotals, one) => withEngine(sum, one, "2026-11-25"), noYard);
  expect(totals).toEqual({
    read: 3,
    faulty: 1,
    lagging: 1,
    suspect: 1,
    notRun: 1,
    workNeeded: 1,
    due: 1,
    byLuck: expect.closeTo(0.117, 12) as number,
    byLuckIs: "at-most",
  });
});

test("of two cylinders the shortfall is told against the other, not against the middle of both", () => {
  const record = recordOf({ cylinders: 2, tests: [{ test: "2026-05-01a", cells: "152 95" }] });
  const { worst: low } = yardRow(record, { today: "2026-05-21", decide: "never" });
  // 95 of 152, and of 123.5
  expect(low?.belowOthers).toBeCloseTo(1 - 95 / 152, 6);
  expect(low?.belowMedian).toBeCloseTo(1 - 95 / 123.5, 6);
});
