// A row of a yard says what show, history and decide say of the same engine.

import { readFileSync, readdirSync } from "node:fs";
import {
  type EngineRecord,
  type YardRow,
  assessDecision,
  assessHistory,
  assessTest,
  latestTest,
  readEngineRecord,
  readGauges,
  readLogbook,
  yardRow,
} from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { fleetEngine } from "../../cli/yard/fleet.ts";

const today = "2026-11-25";
const demo = new URL("../../../data/demo/", import.meta.url);
const text = (name: string): string => readFileSync(new URL(name, demo), "utf8");
const engines = readdirSync(demo, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && entry.name !== "generator")
  .map(({ name }) => name);

const demoRecord = (id: string): EngineRecord => {
  const file = (name: string) => ({ file: name, text: text(`${id}/${name}`) });
  const names = readdirSync(new URL(`${id}/`, demo));
  const further = ["tests", "services", "notes", "measurements"].filter((name) =>
    names.includes(`${name}.csv`),
  );
  const files = Object.fromEntries(further.map((name) => [name, file(`${name}.csv`)]));
  const { gauges } = readGauges(text("gauges.csv"), "gauges.csv");
  const { logbook } = readLogbook(text("logbook.json"), "logbook.json");
  const { record } = readEngineRecord({ id, engine: file("engine.json"), ...files }, gauges, logbook);
  if (record === undefined) throw new Error(`${id} has no record`);
  return record;
};

const fleetRecord = (number: number): EngineRecord => {
  const { id, cylinders, ignition, tests } = fleetEngine(number);
  const engine = { file: "engine.json", text: JSON.stringify({ cylinders, ignition }) };
  const { record } = readEngineRecord({ id, engine, tests: { file: "tests.csv", text: tests } }, [], {
    demo: false,
  });
  if (record === undefined) throw new Error(`${id} has no record`);
  return record;
};

/** What show and history say, picked from their whole answers by rules written out here anew. */
const atLength = (record: EngineRecord) => {
  const chosen = latestTest(record);
  if (chosen === undefined) return { tests: 0 };
  const { trust, cylinders } = assessTest(record, chosen, { causes: "left-out" });
  const { cranking, leakDown } = assessHistory(record);
  const years = cranking ?? leakDown;
  const rank = { lagging: 0, suspect: 1, even: 2 };
  let worst: (typeof cylinders)[number] | undefined;
  const below = ({ belowMedian, leakDown }: (typeof cylinders)[number]): number =>
    belowMedian ?? leakDown?.lost ?? 0;
  for (const one of cylinders) {
    if (one.standing === undefined && one.belowMedian === undefined) continue;
    const [own, best] = [one, worst].map((each) => (each?.standing === undefined ? 3 : rank[each.standing]));
    const isFurther = worst !== undefined && below(one) > below(worst);
    if (worst === undefined || (own ?? 3) < (best ?? 3) || (own === best && isFurther)) worst = one;
  }
  const lost = ["stepped-down", "falling"];
  const dateOf = (place = -1): string | undefined => {
    const [id] = years?.result.tests[place]?.ids ?? [];
    return record.tests.find((one) => one.id === id)?.date;
  };
  const courses = (years?.result.cylinders ?? []).map((one) => ({
    label: one.label,
    code: one.course,
    slope: one.theilSen?.slope,
    after: [dateOf(one.wentOn), dateOf(one.cameBack)],
    isEither:
      one.mirrored === "either" &&
      !["steady", "too-short-to-tell"].includes(one.course) &&
      !one.alarms.includes("no-compression"),
  }));
  const steepest = lost
    .map(
      (code) => courses.filter((one) => one.code === code).sort((a, b) => (a.slope ?? 0) - (b.slope ?? 0))[0],
    )
    .find((one) => one !== undefined);
  const own = courses.find(({ label }) => label === worst?.label) ?? courses[0];
  const isQuiet = worst?.standing === "even" && own?.code === "steady";
  const others = isQuiet ? courses.filter(({ code }) => code !== "steady") : [];
  const course = steepest ?? others.find(({ code }) => code !== "too-short-to-tell") ?? others[0] ?? own;
  return {
    tests: record.tests.length,
    test: { id: chosen.id, date: chosen.date, trust: trust.code },
    reasons: trust.reasons.map(({ code, text }) => [code, text]),
    low: cylinders
      .filter(({ standing }) => standing === "lagging" || standing === "suspect")
      .map(({ label, standing, belowOthers, limitsMissed }) => [label, standing, belowOthers, limitsMissed]),
    worst:
      worst === undefined ? undefined : [worst.label, worst.standing, worst.belowMedian, worst.belowOthers],
    course: course === undefined ? undefined : [course.label, course.code, ...course.after, course.isEither],
  };
};

const inShort = ({ tests, test: judged, low = [], worst, course }: YardRow) => ({
  tests,
  test: judged && { id: judged.id, date: judged.date, trust: judged.trust },
  reasons: (judged?.reasons ?? []).map(({ code, text }) => [code, text]),
  low: low.map(({ label, standing, belowOthers, limitsMissed }) => [
    label,
    standing,
    belowOthers,
    limitsMissed,
  ]),
  worst:
    worst === undefined ? undefined : [worst.label, worst.standing, worst.belowMedian, worst.belowOthers],
  course:
    course === undefined
      ? undefined
      : [course.label, course.code, course.wentOn, course.cameBack, course.mirrored === "either"],
});

test.each(engines)("the row of %s says what show, history and decide say", (id) => {
  const record = demoRecord(id);
  const row = yardRow(record, { today, decide: "always" });
  expect(inShort(row)).toEqual(atLength(record));
  const { decision, nextTest } = assessDecision(record, { today });
  expect(row.decision).toMatchObject({ code: decision.verdict, reason: decision.reasons[0] });
  expect(row.due).toMatchObject(nextTest);
  expect(row.licensed).toBe(decision.licensed);
});

test("the rows of 500 engines say what show and history say of each", { timeout: 120_000 }, () => {
  const standings = new Set<unknown>();
  const courses = new Set<unknown>();
  for (let number = 0; number < 500; number += 1) {
    const record = fleetRecord(number);
    const row = yardRow(record, { today, decide: "never" });
    expect([record.engine.id, inShort(row)]).toEqual([record.engine.id, atLength(record)]);
    standings.add(row.worst?.standing);
    courses.add(row.course?.code);
  }
  expect([...standings]).toEqual(expect.arrayContaining(["lagging", "suspect", "even"]));
  expect([...courses]).toEqual(
    expect.arrayContaining(["falling", "stepped-down", "steady", "too-short-to-tell"]),
  );
});

/** From the test judged until the next one is due. */
const daysOf = ({ due, test: judged }: YardRow): number =>
  (Date.parse(due.date) - Date.parse(judged?.date ?? "")) / 86_400_000;

test("without a decision the next test goes by trust, standing and course: now, after half a year, after a year", () => {
  const due = Array.from({ length: 60 }, (_, number) => fleetRecord(number)).map((record) => {
    const row = yardRow(record, { today: latestTest(record)?.date ?? today, decide: "never" });
    const isLost = row.course?.code === "falling" || row.course?.code === "stepped-down";
    const { worst } = row;
    if (row.test?.trust === "doubtful" || (worst?.standing === "lagging" && !worst.confirmed))
      return ["again", daysOf(row)] as const;
    const word =
      worst?.standing === "lagging" || (worst?.standing === "even" && isLost)
        ? "watched"
        : (worst?.standing ?? "none");
    return [word, daysOf(row)] as const;
  });
  const days = (word: string) => [...new Set(due.filter(([own]) => own === word).map(([, after]) => after))];
  expect(days("even")).toEqual([365]);
  expect(days("watched")).toEqual([182]);
  expect(days("suspect")).toEqual([0]);
  expect(days("again")).toEqual([0]);
});

test("an engine without a test has a row all the same", () => {
  const record = { ...fleetRecord(1), tests: [] };
  expect(yardRow(record, { today, decide: "never" })).toEqual({
    engine: "e0001",
    name: "e0001",
    cylinders: 1,
    tests: 0,
    licensed: false,
    due: { date: today },
    byLuck: 0,
    byLuckIs: "about",
  });
});
