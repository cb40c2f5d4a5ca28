// What the open engine changes: rings that were out, what to measure and against which limits, and by when. Engines invented.

import { openings, readTypedLine, startTyping } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { asOpen, decided, healthyYears, openEngine } from "./deciding-records.ts";

const out = { today: "2026-05-21", opened: "pistons-out" } as const;

test("rings that were out go in new: the word says so, and no comparison contradicts it", () => {
  for (const opened of ["pistons-out", "crank-out"] as const) {
    const { decision, ringsDue, input } = decided(openEngine, { ...out, opened });
    expect(decision).toMatchObject({
      verdict: "re-ring",
      basis: "opportunity",
      reasons: ["rings-disturbed"],
      next: { step: "measure-before-ordering" },
    });
    expect([decision.comparison, decision.ratio, decision.testWorth]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect(decision.options.every(({ expectedCost }) => expectedCost === undefined)).toBe(true);
    // work 620; head and bottom are open with the engine in, so it need not come out for them
    expect(decision.due).toEqual({ act: "reRing", price: 620 });
    expect(decision.guards).toContainEqual({
      code: "subject-to-measuring",
      open: ["bore", "ring-gap", "bearings"],
    });
    // TM 10-3930-647-14&P: replace rings disturbed after 50 h of operation (handbook/teardown.md 5)
    expect(ringsDue?.text).toContain(
      "rings that ran 50 h or more are not put back but replaced (TM 10-3930-647-14&P)",
    );
    expect(input.ringsDue).toBe("yes");
  }
});

test("with the pistons in, nothing is due", () => {
  const { decision, ringsDue } = decided(openEngine, asOpen);
  expect([decision.verdict, decision.due, ringsDue]).toEqual(["leave-it", undefined, undefined]);
});

test("rings that ran less than 50 h go back, and the comparison stands", () => {
  const at = (meter: string) =>
    decided(
      {
        ...openEngine,
        engine: { ...openEngine.engine, meter: "h" },
        tests: healthyYears.map((row, i) => ({ ...row, meter: String(i === 8 ? meter : 100 + 50 * i) })),
        services: ["2026-04-01,1000,re-ring"],
      },
      out,
    );
  expect(at("1049").ringsDue).toBeUndefined();
  expect(at("1049").decision.due).toBeUndefined();
  expect(at("1051").ringsDue).toMatchObject({ hours: 51 });
});

test("a rebuild that is needed stays one, whatever the rings do", () => {
  const notes = ["2026-05-02,,oil pressure hot,proved low,,", "2026-05-10,,filter debris,bearing metal,,"];
  const { decision } = decided({ ...openEngine, notes }, out);
  expect(decision).toMatchObject({ verdict: "rebuild", basis: "needed" });
  expect(decision.due).toBeUndefined();
});

test("no reading in doubt holds back what rests on none, nor a test that nobody can make while it is open", () => {
  const tests = [
    ...healthyYears.slice(0, -1),
    { test: "2026-05-01a", cells: "160 160 120 160", gauge: "red" },
  ];
  expect(decided({ ...openEngine, tests }, out).decision.verdict).toBe("re-ring");
  expect(decided({ tests: [] }, out).decision).toMatchObject({
    verdict: "re-ring",
    reasons: ["rings-disturbed"],
  });
});

test("every measurement says what records it, the line to type, and its limits", () => {
  const clearances = [
    { part: "bore", quantity: "taper", wear: [null, 0.1], unit: "mm", source: "manual, invented" },
    { part: "rod bearing", quantity: "clearance", new: [0.025, 0.063], unit: "mm" },
    { part: "guide", quantity: "clearance", wear: [null, 0.1], unit: "mm" },
  ];
  const engine = {
    ...openEngine.engine,
    geometry: { bore: "95mm" },
    limits: { compression: { lowestToHighest: 0.9, source: "invented" }, clearances },
  };
  const { measureNow } = decided({ ...openEngine, engine }, asOpen);
  const [bores, rods, bearings] = measureNow;
  expect(bores).toMatchObject({
    code: "bores",
    command: "sealtrend teardown engine",
    typed: ["bore 3: 95.12mm 95.08mm 95.06mm 95.05mm 95.03mm 95.02mm"],
    order: "top thrust, top axial, middle thrust, middle axial, bottom thrust, bottom axial",
  });
  expect(bores?.limits.map(({ text }) => text)).toEqual(["bore taper up to 0.1 mm (wear)"]);
  expect(bores?.limits[0]?.high).toBeCloseTo(0.0001, 9);
  expect(rods?.limits).toEqual([]);
  expect(bearings?.limits.map(({ text }) => text)).toEqual(["rod bearing clearance 0.025 to 0.063 mm (new)"]);
  const none = decided(openEngine, asOpen).measureNow;
  expect(none.every(({ limits }) => limits.length === 0)).toBe(true);
});

test("the lines to type are read as they stand, in millimetres and in inches", () => {
  const inches = [{ part: "bore", quantity: "taper", wear: [null, 0.004], unit: "in" }];
  for (const clearances of [[], inches])
    for (const opened of openings) {
      const engine = { ...openEngine.engine, limits: { clearances } };
      const { measureNow, history } = decided({ ...openEngine, engine }, { ...out, opened });
      const context = startTyping("2026-05-21");
      for (const line of measureNow.flatMap(({ typed }) => typed))
        expect([line, readTypedLine(line, context, history.record.engine).kind]).toEqual([
          line,
          "measurements",
        ]);
    }
});

test("a line to type means what its text says", () => {
  const { measureNow, history } = decided(openEngine, out);
  const read = measureNow.flatMap(({ typed }) =>
    typed.flatMap((line) => {
      const typedLine = readTypedLine(line, startTyping("2026-05-21"), history.record.engine);
      return typedLine.kind === "measurements"
        ? typedLine.measurements.map(
            ({ part, label, at, quantity }) => `${part} ${label ?? ""} ${quantity} ${at ?? ""}`,
          )
        : [];
    }),
  );
  expect(read).toEqual([
    ...["top/thrust", "top/axial", "middle/thrust", "middle/axial", "bottom/thrust", "bottom/axial"].map(
      (at) => `bore 3 diameter ${at}`,
    ),
    "ring 3 end gap 1/bottom",
    "ring 3 side clearance 1",
  ]);
});

test("what is typed elsewhere says where: a leak-down, a note", () => {
  const of = (opened: "bottom-open" | "head-off") =>
    decided(openEngine, { ...out, opened }).measureNow.at(-1);
  expect(of("bottom-open")).toMatchObject({
    command: 'sealtrend enter engine --leak-down "74/80 74/80 74/80 74/80" --unit psi',
    typed: [],
  });
  expect(of("head-off")?.command).toBe(
    'sealtrend note engine --what other --value "weeps at a valve" --cylinders 3',
  );
});

test("by when: at its date, before it is closed, today", () => {
  expect(decided(openEngine).nextBy).toBe("date");
  expect(decided({ tests: [] }).nextBy).toBe("today");
  expect(decided({ tests: [] }, asOpen).nextBy).toBe("before-closing");
  const notes = ["2026-05-02,,oil pressure hot,proved low,,"];
  const measured = decided({ ...openEngine, notes }, asOpen);
  expect(measured.decision.reasons[0]).toBe("outside-the-chance");
  expect(measured.nextBy).toBe("before-closing");
  expect(measured.nextTest).toEqual({ date: "2026-05-21" });
  // what to measure takes 10 + 3 + 12 minutes and the price of a test; unmeasured it is watched
  expect(measured.testAgain).toMatchObject({
    minutes: 25,
    cost: 15,
    ifNotTested: { verdict: "watch-it", use: "no-hard-use" },
  });
  expect(measured.testAgain?.breakEven).toBe(measured.decision.comparison?.breakEven?.probability);
  expect(measured.nextAction).toMatchObject({ code: "measure", how: "teardown" });
});
