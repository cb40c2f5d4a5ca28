// A cylinder that the newest test passed over and none of its year read: read it, and leave nothing in silence until then.
// Readings invented.

import { type YardRow, yardRow } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { decided } from "./deciding-records.ts";
import { type Row, type Written, assessed, recordOf } from "./records.ts";

const today = "2026-05-21";
const day = (date: string, cells: string, more: Partial<Row> = {}): Row => ({
  test: `${date}a`,
  cells,
  ...more,
});
const asked = (written: Written): string =>
  assessed(written)
    .nextTests.map(({ text }) => text)
    .join("; ");
const row = (written: Written, decide: "always" | "never" = "never"): YardRow =>
  yardRow(recordOf(written), { today, decide });

const passedOver: Written = { tests: [day("2026-05-01", "128 127 128 x")] };

test("a cylinder that was never read is next, and the engine is not left as it is", () => {
  expect(asked(passedOver)).toContain("read 4, which was never read");
  const { decision, notSeen, nextTest, nextAction } = decided(passedOver);
  expect(decision).toMatchObject({ verdict: "test-again", reasons: ["read-again"] });
  expect(notSeen[0]).toMatchObject({ text: "cylinder 4, which was never read", cylinders: ["4"] });
  expect([nextTest, nextAction?.text]).toEqual([{ date: today }, "read 4, which was never read"]);
});

test("a yard has it due now, with a decision and without", () => {
  for (const decide of ["always", "never"] as const)
    expect(row(passedOver, decide)).toMatchObject({ unread: ["4"], due: { date: today } });
});

test("another test of the year speaks for it, an older one does not", () => {
  const after = (date: string): Written => ({ tests: [day(date, "128 127 128 126"), ...passedOver.tests] });
  expect(asked(after("2025-09-01"))).not.toContain("which was");
  expect(row(after("2025-09-01"))).not.toHaveProperty("unread");
  expect(asked(after("2025-03-01"))).toContain("read 4, which was not read within the year");
  // set aside it was not read
  const aside = day("2025-09-01", "128 127 128 126", { set_aside: "wrong gauge" });
  expect(asked({ tests: [aside, ...passedOver.tests] })).toContain("read 4, which was never read");
});

test("a whole test asks for none", () => {
  const whole: Written = { tests: [day("2026-05-01", "128 127 128 126")] };
  expect(asked(whole)).not.toContain("read");
  expect(row(whole)).not.toHaveProperty("unread");
});

// Held of 100 psi. 25 % lost is the usual limit where the maker states none (handbook/trade.md B5)
const leaking = (cells: string, engine: object = {}): Written => ({
  engine,
  tests: [day("2026-05-01", cells, { what: "leak-down", regulated_psi: "100" })],
});

test("worn alike past the usual limit, an engine is due now, as its decision says", () => {
  const worn = leaking("75 74 76 75");
  expect(row(worn)).toMatchObject({
    leaking: { cylinders: 1, most: expect.closeTo(0.26) as number },
    due: { date: today },
  });
  expect(row(worn, "always")).toMatchObject({ decision: { code: "test-again" }, due: { date: today } });
  const sound = row(leaking("91 92 91 92"));
  expect(sound).not.toHaveProperty("leaking");
  expect(sound.due.date > today).toBe(true);
});

test("where the air was heard the decision says what follows, and the usual date stands", () => {
  const worn = leaking("75 74 76 75");
  const heard = { ...recordOf(worn) };
  const [only] = heard.tests;
  if (only === undefined) throw new Error("no test");
  const crankcase = [{ place: "crankcase", faint: false }] as const;
  const told = { ...heard, tests: [{ ...only, heard: [[], crankcase, [], []] }] };
  expect(yardRow(told, { today, decide: "never" })).not.toHaveProperty("leaking");
});

test("the maker's limit goes before the usual one", () => {
  const limit = { limits: { leakDown: { lost: 0.3, source: "invented" } } };
  expect(row(leaking("75 74 76 75", limit))).not.toHaveProperty("leaking");
});
