// A loss that all cylinders share: told, explained, and the day put right before any cylinder is opened. Readings invented.

import { expect, test } from "vitest";
import type { TestAssessment } from "@sealtrend/core";
import { type Row, type Written, assessed } from "./records.ts";

const inline = { banks: [["1", "2", "3", "4"]], cooling: "liquid" };
const found = (written: Written): TestAssessment =>
  assessed({ ...written, engine: { ...inline, ...written.engine } });
const year = (date: string, cells: string, more: Partial<Row> = {}): Row => ({
  test: `${date}a`,
  cells,
  gauge: "red",
  altitude_m: "0",
  ...more,
});
const fall = (more: Partial<Row> = {}, last: Partial<Row> = {}) => [
  ...["2020", "2021", "2022", "2023", "2024"].map((y) => year(`${y}-05-02`, "150 151 150 149", more)),
  year("2026-05-02", "110 108 112 109", { ...more, ...last }),
];

// handbook/diagnosis.md 3: with an expectation an even loss is seen; 110 of 150 is what no sound engine reads
test("five good years do not make a loss in all cylinders no fault", () => {
  const { diagnosis, levelSince, nextTests } = found({ tests: fall() });
  expect(diagnosis?.groups.nothing).toBeLessThan(0.2);
  expect(levelSince).toMatchObject({ gauge: "red", before: "red" });
  expect(nextTests[0]).toMatchObject({ code: "conditions", by: "rule" });
});

test("a gauge that was never named may be the same: the fall is told with that doubt, and the gauge is suspected more", () => {
  const named = found({ tests: fall() });
  const unnamed = found({ tests: fall({ gauge: "" }) });
  expect(unnamed.levelSince?.change).toBeCloseTo(named.levelSince?.change ?? 0, 9);
  expect(unnamed.levelSince).not.toHaveProperty("gauge");
  expect(unnamed.evidence?.expected?.from).toBe("baseline");
  const chance = ({ diagnosis }: TestAssessment) =>
    diagnosis?.states.find(({ id }) => id === "all gauge-or-hose")?.probability ?? 0;
  // handbook/diagnosis.md 2: odds four times as high
  expect(chance(unnamed)).toBeGreaterThan(2 * chance(named));
});

test("named in one test only it is not taken for the same", () => {
  const { levelSince, evidence } = found({ tests: fall({ gauge: "" }, { gauge: "red" }) });
  expect(levelSince).toBeUndefined();
  expect(evidence?.expected).toBeUndefined();
});

const makers = (more: Partial<Row> = {}, cells = "110 108 112 109") =>
  found({
    engine: { limits: { compression: { new: "150psi", speed: "250rpm" } } },
    tests: [year("2026-05-02", cells, more)],
  });

// middle (109 + 110)/2 = 109.5 of 150: 27 % below; u_X of a maker's figure .08 (handbook/diagnosis.md 3)
test("all below the maker's figure is told by how much, where it is more than twice its doubt", () => {
  const { levelBelow } = makers();
  expect(levelBelow).toMatchObject({ from: "maker", change: expect.closeTo(109.5 / 150 - 1, 9) as number });
  expect(levelBelow?.uncertainty).toBeGreaterThan(0.08);
  expect(makers({}, "135 134 136 135").levelBelow).toBeUndefined();
  expect(makers({}, "110 108 151 109").levelBelow).toBeUndefined();
});

// handbook/trade.md C5: a weak battery or a closed throttle looks like wear; repeat with a booster and the throttle blocked
test("what was not right, or not recorded, that day is put right first; then all are tested, never one", () => {
  const [first, ...rest] = makers().nextTests;
  expect(first?.text).toMatch(/^charge the battery .*, block the throttle wide open, prove the gauge/);
  for (const { text } of rest) expect(text).not.toMatch(/\b[1-4]\b/);
  expect(rest.map(({ code }) => code)).not.toContain("repeat");
  const open = makers({ throttle: "open", crank_rpm: "250" }).nextTests[0]?.text;
  expect(open).toMatch(/^prove the gauge/);
});
