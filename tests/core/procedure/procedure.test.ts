import { expect, test } from "vitest";

import {
  type Procedure,
  type ProcedureKind,
  procedureFor,
  procedureKinds,
} from "../../../packages/core/src/procedure/index.ts";
import { volume } from "../../../packages/core/src/quantity/index.ts";
import type { Engine } from "../../../packages/core/src/record/index.ts";

const tractor: Engine = {
  id: "tractor",
  name: "Tractor (invented)",
  use: "farm",
  remote: false,
  cylinders: ["1", "2", "3", "4"],
  banks: [["1", "2", "3", "4"]],
  sharedGasket: true,
  firingOrder: ["1", "3", "4", "2"],
  cycle: "four-stroke",
  porting: "valves",
  ignition: "spark",
  cooling: "liquid",
  compressionRelease: "none",
  geometry: {},
  crankingCurves: [],
  correction: {},
  compressionLimits: {},
  leakDownLimits: {},
  clearances: [],
  offered: {},
  layout: {},
};
const diesel: Engine = { ...tractor, id: "pump", use: "stationary", ignition: "compression" };
const { cooling: _liquid, ...uncooled } = tractor;

/** Every combination that changes a line: use, ignition, cycle and ports, release, number of cylinders, cooling. */
const engines: readonly Engine[] = (
  ["road", "farm", "stationary", "boat", "motorcycle", "aircraft", "other"] as const
).flatMap((use) =>
  (["spark", "compression", "unknown"] as const).flatMap((ignition) =>
    (
      [
        ["four-stroke", "valves"],
        ["two-stroke", "ports"],
        ["two-stroke", "ports-and-exhaust-valve"],
      ] as const
    ).flatMap(([cycle, porting]) =>
      (["none", "automatic", "unknown"] as const).flatMap((compressionRelease) =>
        [["1"], ["1", "2", "3", "4"]].flatMap((cylinders) =>
          [{ ...tractor, cooling: "air" as const }, tractor, uncooled].map((base) => ({
            ...base,
            id: "generator-2",
            use,
            ignition,
            cycle,
            porting,
            compressionRelease,
            cylinders,
            banks: [cylinders],
          })),
        ),
      ),
    ),
  ),
);

const linesOf = ({ before, steps, cautions, voids }: Procedure): string[] => [
  ...before,
  ...steps,
  ...cautions,
  ...voids,
];
const whole = (kind: ProcedureKind, engine: Engine): string => linesOf(procedureFor(kind, engine)).join("\n");

// One screen: 24 lines of 80 columns. A renderer needs a title, a blank line after it, three between the four parts,
// and a margin of 8 columns.
test.each(procedureKinds)("The %s procedure fits one screen for every kind of engine", (kind) => {
  const tooBig = engines.flatMap((engine) => {
    const procedure = procedureFor(kind, engine, { chamber: volume(15e-6) });
    const lines = linesOf(procedure);
    const wide = [procedure.title.slice(8), ...lines].filter((line) => line.length > 80 - 8);
    return lines.length > 24 - 5 ? [lines.join("\n"), ...wide] : wide;
  });
  expect(tooBig).toEqual([]);
});

test.each(procedureKinds)("Every line of the %s procedure names its source, in the order printed", (kind) => {
  const procedures = engines.map((engine) => procedureFor(kind, engine));
  expect(procedures.map(({ sources }) => sources.map(({ text }) => text))).toEqual(procedures.map(linesOf));
  expect(procedures.flatMap(({ sources }) => sources).filter(({ source }) => source.length < 6)).toEqual([]);
});

test.each(procedureKinds.filter((kind) => kind !== "wet"))(
  "The %s procedure puts the maker's manual first and is never refused",
  (kind) => {
    const procedures = engines.map((engine) => procedureFor(kind, engine));
    const odd = procedures.filter(
      ({ before, refused, steps }) =>
        before[0]?.includes("maker's manual") !== true || refused !== undefined || steps.length < 4,
    );
    expect(odd).toEqual([]);
  },
);

// Cautions: trade.md H and leakdown.md F of the handbook, where each names its manual.
test.each(procedureKinds)("The %s procedure of an aircraft engine leaves it to a licensed person", (kind) => {
  const text = whole(kind, { ...tractor, use: "aircraft" });
  expect(text).toContain("licensed person");
  if (kind !== "teardown") expect(text).toContain("propeller");
});

test.each(["dry", "first-stroke", "wet"] as const)(
  "The %s test of a spark engine begins with ignition and fuel off and warns of fuel mist",
  (kind) => {
    const text = whole(kind, tractor);
    expect(text).toMatch(/[Ii]gnition.*off/);
    expect(text).toMatch(/fuel off/);
    expect(text).toMatch(/no flame/);
    expect(text).toMatch(/[Tt]hrottle/);
  },
);

test.each(["dry", "first-stroke"] as const)(
  "The %s test of a diesel asks for a diesel gauge and cut fuel, and speaks of no throttle",
  (kind) => {
    const text = whole(kind, diesel);
    expect(text).toContain("40 bar");
    expect(text).toContain("Fuel cut");
    expect(text).not.toMatch(/[Tt]hrottle|[Ii]gnition|plug lead/);
  },
);

test("Where the ignition is not known, both kinds are provided for", () => {
  const text = whole("dry", { ...tractor, ignition: "unknown" });
  expect(text).toContain("If spark: ignition off");
  expect(text).toContain("If diesel: only a diesel gauge");
});

test("A boat is aired and has its cooling water on", () => {
  expect(whole("dry", { ...tractor, use: "boat" })).toMatch(/bilge.*cooling water/);
});

test("A hot cooling system is never opened, and an air-cooled engine has none", () => {
  expect(whole("leak-down", tractor)).toContain("Never open a hot cooling system");
  expect(whole("leak-down", { ...tractor, cooling: "air" })).not.toMatch(/[Cc]oolant|cooling system/);
});

test("A two-stroke has no valve lash, no oil filler to listen at, and ports that must be shut", () => {
  const twoStroke: Engine = { ...tractor, cycle: "two-stroke", porting: "ports" };
  expect(whole("dry", twoStroke)).not.toContain("lash");
  expect(whole("leak-down", twoStroke)).not.toContain("oil filler");
  expect(whole("leak-down", twoStroke)).toContain("ports shut");
});

test("A compression release must be lifted or noted", () => {
  expect(whole("dry", { ...tractor, compressionRelease: "automatic" })).toContain("--release active");
  expect(whole("dry", tractor)).not.toContain("elease");
});

test("One cylinder has no fellow to compare with and no control for the oil", () => {
  const single: Engine = { ...tractor, cylinders: ["1"], banks: [["1"]] };
  expect(whole("dry", single)).not.toMatch(/[Ee]ach cylinder/);
  expect(whole("wet", single)).toContain("no control cylinder");
  expect(whole("wet", tractor)).toContain("control");
});

test("Air at the inlet and the exhaust together voids a leak-down", () => {
  expect(procedureFor("leak-down", tractor).voids.join("\n")).toContain("inlet and exhaust together");
});

test("The crank is secured before air goes in", () => {
  expect(whole("leak-down", tractor)).toContain("turns the crank");
  expect(whole("leak-down", { ...tractor, use: "aircraft" })).toContain("second person holds");
});
