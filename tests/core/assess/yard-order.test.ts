import { type YardRow, noYard, withEngine, yardCompare, yardRow } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { recordOf } from "./records.ts";

const row = (engine: string, own: Partial<YardRow> = {}): YardRow => ({
  engine,
  name: engine,
  tests: 3,
  licensed: false,
  due: { date: "2027-01-01" },
  byLuck: 0.039,
  ...own,
});
const worst = (
  standing: "lagging" | "suspect" | "even" | undefined,
  belowOthers: number,
): Pick<YardRow, "worst"> => ({
  worst: {
    label: "3",
    belowOthers,
    limitsMissed: [],
    held: "something",
    flaggedBefore: false,
    confirmed: false,
    ...(standing === undefined ? {} : { standing }),
  },
});
const sorted = (order: Parameters<typeof yardCompare>[0], rows: readonly YardRow[]): string =>
  [...rows]
    .sort(yardCompare(order))
    .map(({ engine }) => engine)
    .join(" ");

test("worst first: standing, then course, then how far below, then the name", () => {
  const rows = [
    row("h"),
    row("g", worst("even", 0.01)),
    row("f", worst("even", 0.01)),
    row("e", worst("even", 0.03)),
    row("d", { ...worst("even", 0.001), course: { code: "falling", label: "1" } }),
    row("c", worst("suspect", 0.2)),
    row("b", worst("lagging", 0.1)),
    row("a", { ...worst("lagging", 0.05), course: { code: "stepped-down", label: "3" } }),
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

test("totals count standings and faults, and add up what luck would bring", () => {
  const totals = [
    row("a", worst("lagging", 0.1)),
    row("b", worst("suspect", 0.1)),
    row("c"),
    undefined,
  ].reduce(withEngine, noYard);
  expect(totals).toEqual({
    read: 3,
    faulty: 1,
    lagging: 1,
    suspect: 1,
    byLuck: expect.closeTo(0.117, 12) as number,
  });
});

test("of two cylinders the shortfall is told against the other, not against the middle of both", () => {
  const record = recordOf({ cylinders: 2, tests: [{ test: "2026-05-01a", cells: "152 95" }] });
  const { worst: low } = yardRow(record, { today: "2026-05-21", decide: "never" });
  // 95 of 152, and of 123.5
  expect(low?.belowOthers).toBeCloseTo(1 - 95 / 152, 6);
  expect(low?.belowMedian).toBeCloseTo(1 - 95 / 123.5, 6);
});
