// Words of the screen of `show`: one sentence a finding, words that fit the engine, and no more lines than a screen has.
// Readings invented; what is expected follows from the readings themselves or from handbook/trade.md.

import { expect, test } from "vitest";
import { procedureFor, readEngine } from "@sealtrend/core";
import { type Desk, newDesk } from "./desk.ts";

const engine = async (
  cylinders: string,
  ...fields: readonly (readonly [string, string])[]
): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--cylinders", cylinders, "--ignition", "spark"]);
  for (const [name, value] of fields) await desk.type(["engine", "set", "pump", name, value]);
  return desk;
};
const four = (...fields: readonly (readonly [string, string])[]): Promise<Desk> =>
  engine("4", ["banks", "1 2 3 4"], ...fields);
const entered = async (desk: Desk, ...line: readonly string[]): Promise<string> => {
  const { exit, out, err } = await desk.type(["enter", "pump", ...line, "--altitude", "0m"]);
  if (exit !== 0) throw new Error(err);
  return out;
};
const shown = async (desk: Desk, ...more: readonly string[]): Promise<string> =>
  (await desk.type(["show", "pump", ...more], { width: 300 })).out;
const makers = ["limits.compression.minimum", "100psi"] as const;
const psi = ["--unit", "psi"];

test("two low neighbours are one sentence, whose words are those of the row", async () => {
  const desk = await four(makers);
  await entered(desk, "--dry", "150 100 98 149", ...psi);
  const out = await shown(desk);
  expect(out.split("\n")[0]).toBe(
    "Cylinder 3 lags: 34 % under the others, just below the maker's limit; 2 is suspect: 33 % under. Read them again before you believe it.",
  );
  expect(out).toMatch(/against others +even +suspect +lags +even/);
});

test("a reading under three quarters of the highest is said to be below it", async () => {
  const desk = await four();
  await entered(desk, "--dry", "150 152 110 149", ...psi); // 110/152 = 0.724
  expect(await shown(desk)).toContain("27 % under the others, just below three quarters of the highest;");
});

test("repeats that contradict each other are shown as a span, not as a mean", async () => {
  const desk = await four();
  await entered(desk, "--dry", "150 148 152 149", ...psi);
  await entered(desk, "--same-test", "--dry", "151 66 150 150", ...psi);
  await entered(desk, "--same-test", "--dry", "x 140 x x", ...psi);
  expect(await shown(desk)).toMatch(/read, mean of 2 to 3 +psi +150 +66-148 +151 +149/);
});

test("a cylinder that reads high is not called even", async () => {
  const desk = await engine("8");
  await entered(desk, "--dry", "150 150 149 151 185 149 152 150", ...psi);
  expect(await shown(desk)).toMatch(/against others +even +even +even +even +high +even +even +even/);
});

test("air that goes two ways in one cylinder is told together", async () => {
  const desk = await four();
  await entered(
    desk,
    "--leak-down",
    "74/80 75/80 56/80 74/80",
    "--heard",
    "none none exhaust+crankcase none",
    ...psi,
  );
  expect(await shown(desk)).toContain("Air heard: exhaust and crankcase in 3; nowhere in 1, 2 and 4.");
});

test("low cylinders apart from each other all get a likely cause", async () => {
  const desk = await engine("6", ["banks", "1 2 3 4 5 6"]);
  await entered(desk, "--dry", "150 100 149 150 98 151", ...psi);
  expect(await shown(desk)).toMatch(/No single cause stands out in 5: .*\. In 2 likewise\./);
  const { diagnosis } = JSON.parse((await desk.type(["show", "pump", "--json"])).out) as {
    diagnosis: { alike: readonly { cylinders: readonly string[]; code: string }[] };
  };
  expect(diagnosis.alike).toMatchObject([{ cylinders: ["2"], code: "exhaust-valve" }]);
});

test("a two-stroke with ports hears nothing of valves", async () => {
  const desk = await engine("2", ["cycle", "two-stroke"], ["porting", "ports"], ["cooling", "air"]);
  await entered(desk, "--dry", "120 85", "--wet", "125 88", "--oil", "5 5", ...psi);
  expect(await shown(desk)).not.toMatch(/valve|cam/);
});

test("air at the exhaust of a two-stroke with ports came past the rings, or the piston stood lower", async () => {
  const desk = await engine("2", ["cycle", "two-stroke"], ["porting", "ports"], ["cooling", "air"]);
  await entered(desk, "--leak-down", "74/80 40/80", "--heard", "none exhaust", ...psi);
  expect(await shown(desk)).toContain(
    "At the top the ports are shut: in 2 air at the exhaust came past the rings",
  );
});

test("an only cylinder that loses half is not told to be watched over the years", async () => {
  const desk = await engine("1");
  await entered(desk, "--leak-down", "40/80", "--heard", "exhaust", ...psi);
  const out = await shown(desk);
  expect(out.split("\n")[0]).toBe(
    "It loses 50 % in the leak-down, which is much; there is no other cylinder to compare it with.",
  );
  expect(out).not.toContain("sound cylinders differ");
});

test("two cylinders that oil raised alike are one sentence, and many controls are counted", async () => {
  const desk = await engine("8");
  await entered(
    desk,
    ...["--dry", "150 150 110 150 110 150 150 150", "--wet", "157 157 145 157 146 157 157 157", ...psi],
    ...["--oil", "5 5 5 5 5 5 5 5"],
  );
  expect(await shown(desk)).toMatch(
    /Oil raised 3 by 32 % and 5 by 33 %, the other six by 5 %: net .* and .*\./,
  );
});

test("the page of steps is that of the leak-down wherever air is proposed", async () => {
  const desk = await four();
  await entered(desk, "--dry", "150 152 110 149", ...psi);
  expect(await shown(desk)).toMatch(
    /leak-down on 3: .*\(tells most\)\n +steps and cautions: sealtrend how leak-down pump/,
  );
});

test("a leak-down that the engine's record forbids is not taught, and the screen says why it is not proposed", async () => {
  const desk = await four(["leakDownTest.allowed", "false"], ["leakDownTest.source", "manual p. 9"]);
  const how = (await desk.type(["how", "leak-down", "pump"])).out;
  expect(how).toContain("Air under pressure is ruled out for this engine (manual p. 9).");
  expect(how).not.toMatch(/psi|top dead centre/);
  expect((await desk.type(["how", "wet", "pump"])).out).not.toContain("how leak-down");
  await entered(desk, "--dry", "150 152 110 149", ...psi);
  expect(await shown(desk)).toContain("no leak-down: not for this engine (manual p. 9)");
  const out = await entered(desk, "--same-test", "--leak-down", "74/80 74/80 40/80 74/80", ...psi);
  expect(out.replace(/\s+/g, " ")).toContain(
    "CARE leak-down: this engine is to get no air under pressure (manual p. 9)",
  );
});

test("where the record does not forbid it the leak-down is taught", () => {
  const { engine: any } = readEngine('{ "cylinders": ["1", "2"], "ignition": "spark" }', "", "pump");
  expect(any === undefined ? "no engine" : procedureFor("leak-down", any).refused).toBeUndefined();
});

test("--why and the document tell what every test would tell, in words", async () => {
  const desk = await four();
  await entered(desk, "--dry", "150 152 110 149", ...psi);
  const { diagnosis } = JSON.parse((await desk.type(["show", "pump", "--json"])).out) as {
    diagnosis: { tests: readonly { text: string; bits: number; bitsPerHour: number; effort: number }[] };
  };
  const why = (await desk.type(["show", "pump", "--why"], { width: 2000 })).out;
  expect(diagnosis.tests.length).toBeGreaterThan(6);
  for (const { text, bits, effort } of diagnosis.tests)
    expect(why).toContain(`${text}: ${bits.toFixed(2)}, ${effort.toFixed(0)}`);
  expect(why).not.toMatch(/re-seat-and-repeat|leak-down-and-listen|all worn-rings|some exhaust-valve/);
});

const heard = (places: string): readonly string[] => [
  "--leak-down",
  "74/80 75/80 56/80 74/80",
  "--heard",
  places,
];
test.each([
  ["air in the coolant", heard("none none coolant none")],
  ["no air heard", heard("none none none none")],
  ["a leak like the others'", ["--leak-down", "74/80 75/80 74/80 74/80", "--heard", "none none none none"]],
  ["the first stroke", ["--first-stroke", "75 76 35 75"]],
])("with %s what enter answers fits a screen", async (_, more) => {
  const desk = await four(makers, ["geometry.bore", "86mm"], ["geometry.stroke", "86mm"]);
  const out = await entered(desk, "--dry", "150 152 110 149", ...more, ...psi);
  expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
});
