// Which rows of the ladder the records give, each by its condition in handbook/decision.md 2. Readings and notes invented.

import { expect, test } from "vitest";
import { decided, openEngine, rowsIn } from "./deciding-records.ts";
import type { Row } from "./records.ts";

const warm = { gauge: "red", crank_rpm: "250", throttle: "open", engine_temp: "warm" };
const dry = (date: string, cells: string): Row => ({ test: `${date}a`, cells, ...warm });
const leak = (date: string, cells: string, more: Partial<Row> = {}): Row => ({
  test: `${date}a`,
  what: "leak-down",
  unit: "psi",
  gauge: "tester",
  regulated_psi: "80",
  ...more,
  cells,
});
const heard = (date: string, cells: string): Row => ({ test: `${date}a`, what: "heard", unit: "", cells });
const sound = ["2023-05-01", "2024-05-01", "2025-05-01"].map((date) => dry(date, "150 150 150 150"));
const note = (
  what: string,
  value: string,
  more: { unit?: string; date?: string; cylinders?: string } = {},
): string => `${more.date ?? "2026-05-10"},,${what},${value},${more.unit ?? ""},${more.cylinders ?? ""}`;
const ofNotes = (...notes: readonly string[]) => rowsIn({ tests: [], notes });

test("A1: every cylinder at 85 % of its first tests, none out of line", () => {
  expect(rowsIn({ tests: [...sound, dry("2026-05-01", "148 149 150 147")] })).toEqual(["A1"]);
  // all of them at 127/150 = 85 % less a little
  expect(rowsIn({ tests: [...sound, dry("2026-05-01", "127 127 127 127")] })).not.toContain("A1");
});

test("A1 is not said where a cylinder is suspect, nor where the years show a fall", () => {
  // handbook/decision.md 2, A1: none out of line; 133/150 = 89 %, above the 85 % of the own first tests
  expect(rowsIn({ tests: [...sound, dry("2026-05-01", "150 150 133 150")] })).not.toContain("A1");
  const falling = ["2020", "2021", "2022", "2023", "2024", "2025", "2026"].map((year, i) =>
    dry(`${year}-05-01`, `150 150 ${String(150 - 3 * i)} 150`),
  );
  const rows = rowsIn({ tests: falling });
  expect(rows).toContain("A8");
  expect(rows).not.toContain("A1");
});

test("A2: a cylinder below three quarters of the highest, with the share it lacks", () => {
  const { evidence } = decided({ tests: [...sound, dry("2026-05-01", "150 150 105 150")] });
  const [row] = evidence.filter(({ row: id }) => id === "A2");
  expect(row).toMatchObject({
    cylinder: "3",
    text: "cylinder 3 reads 30 % below the others",
    from: "test 2026-05-01a",
  });
});

test("A3, A4 and A5: what oil did to a low cylinder, net of a sound one", () => {
  const oiled = (wet: string) =>
    rowsIn({
      tests: [dry("2026-05-01", "150 150 100 150"), { ...dry("2026-05-01", wet), what: "wet" }],
    }).filter((id) => ["A3", "A4", "A5"].includes(id));
  // the control rises by 2 %: 117/100 - 1 = 17 %, net 15 %; 140: net 38 %; 103: net 1 %
  expect(oiled("153 x 117 x")).toEqual(["A3"]);
  expect(oiled("153 x 140 x")).toEqual(["A4"]);
  expect(oiled("153 x 103 x")).toEqual(["A5"]);
  // 8 - 2 = 6 %: neither
  expect(oiled("153 x 108 x")).toEqual([]);
});

test("a rise that is no sign of rings is not told as a rise", () => {
  const wet = { ...dry("2026-05-01", "153 x 103 x"), what: "wet" };
  const { evidence } = decided({ tests: [dry("2026-05-01", "150 150 100 150"), wet] });
  expect(evidence.find(({ row }) => row === "A5")?.text).toBe("oil did not help cylinder 3 (1 % net)");
});

test("A6: two neighbours on one gasket low, and oil helps neither", () => {
  const tests = [
    dry("2026-05-01", "150 100 100 150"),
    { ...dry("2026-05-01", "153 102 102 x"), what: "wet" },
  ];
  const banks = [["1", "2", "3", "4"]];
  expect(rowsIn({ engine: { banks }, tests })).toContain("A6");
  expect(rowsIn({ engine: { banks, sharedGasket: false }, tests })).not.toContain("A6");
});

test("A7: the engine a fifth below its first tests, or all below the maker's minimum twice running", () => {
  expect(rowsIn({ tests: [...sound, dry("2026-05-01", "118 118 118 118")] })).toContain("A7");
  const engine = { limits: { compression: { minimum: "145psi" } } };
  const once = [...sound, dry("2026-05-01", "140 140 140 140")];
  expect(rowsIn({ engine, tests: once })).not.toContain("A7");
  expect(rowsIn({ engine, tests: [...once, dry("2026-05-20", "140 140 140 140")] })).toContain("A7");
});

test("A8: a cylinder that loses year by year", () => {
  const tests = ["2020", "2021", "2022", "2023", "2024", "2025", "2026"].map((year, i) =>
    dry(`${year}-05-01`, `150 150 ${String(150 - 5 * i)} 150`),
  );
  expect(rowsIn({ tests })).toContain("A8");
});

test("A8: a cylinder that falls at 1 chance in 20 is no alarm, and no row", () => {
  // the line of handbook/decision.md 9, example 1: t = -.00646/.00279 = -2.3, one-sided p about .02; the alarm asks for less
  // than .001/4, and only the engine as a whole counts at .05
  expect(rowsIn(openEngine)).not.toContain("A8");
});

test("B1: no cylinder lost more than a tenth, nothing heard but a faint hiss at the crankcase", () => {
  const tests = [leak("2026-05-01", "75 76 75 76"), heard("2026-05-01", "crankcase:faint none none none")];
  expect(rowsIn({ tests })).toEqual(["B1"]);
  expect(rowsIn({ tests: [leak("2026-05-01", "75 76 70 76")] })).not.toContain("B1");
});

test("B2, B3 and B4: where the air of a leaking cylinder comes out", () => {
  const at = (places: string) =>
    rowsIn({ tests: [leak("2026-05-01", "76 76 40 76"), heard("2026-05-01", places)] });
  expect(at("none none exhaust none")).toEqual(["B2"]);
  expect(at("none none coolant none")).toEqual(["B3"]);
  expect(at("none none crankcase none")).toEqual(["B4"]);
  // faint is no finding
  expect(at("none none exhaust:faint none")).toEqual([]);
});

test("B3: air at a neighbour counts where the neighbour sends it back", () => {
  const at = (places: string) =>
    rowsIn({ tests: [leak("2026-05-01", "76 50 48 76"), heard("2026-05-01", places)] });
  expect(at("none neighbour:3 neighbour:2 none")).toEqual(["B3"]);
  expect(at("none none neighbour:2 none")).toEqual([]);
});

test("B5 and B6: oil takes a third of the leak, or nothing", () => {
  const oiled = (then: string) =>
    rowsIn({
      tests: [
        leak("2026-05-01", "76 76 40 76"),
        heard("2026-05-01", "none none crankcase none"),
        leak("2026-05-01", then, { what: "leak-down-oiled" }),
      ],
    });
  expect(oiled("x x 70 x")).toEqual(["B4", "B5"]);
  expect(oiled("x x 40 x")).toEqual(["B4", "B6"]);
});

test("B7: the leak is less with the piston lower", () => {
  const tests = [
    leak("2026-05-01", "76 76 40 76"),
    heard("2026-05-01", "none none crankcase none"),
    leak("2026-05-01", "x x 70 x", { what: "leak-down-lower" }),
  ];
  expect(rowsIn({ tests })).toEqual(["B4", "B7"]);
});

test("C0 to C3: oil use against its own first figure, at 4, 3 and 1.5 times", () => {
  const use = (now: string) =>
    ofNotes(
      note("oil use", "0.05", { unit: "L/1000km", date: "2020-05-01" }),
      note("oil use", now, { unit: "L/1000km" }),
    );
  expect(use("0.2")).toEqual(["C0"]);
  expect(use("0.15")).toEqual(["C1"]);
  expect(use("0.075")).toEqual(["C2"]);
  expect(use("0.07")).toEqual(["C3"]);
});

test("C2: 0.9 L in 3200 km is too much by one maker, whatever it was at first", () => {
  // 0.9/3.2 = 0.28125 L/1000km
  expect(ofNotes(note("oil use", "0.28125", { unit: "L/1000km" }))).toEqual(["C2"]);
  expect(ofNotes(note("oil use", "0.28", { unit: "L/1000km" }))).toEqual([]);
  expect(ofNotes(note("oil use", "0.1", { unit: "L/h" }))).toEqual([]);
});

test("C4: oil use is up while the leak-down is healthy", () => {
  const tests = [leak("2026-05-01", "75 76 75 76")];
  expect(rowsIn({ tests, notes: [note("oil use", "0.5", { unit: "L/1000km" })] })).toEqual([
    "B1",
    "C2",
    "C4",
  ]);
});

test("D, E, F, G, H and I: words of the notes", () => {
  expect(
    ofNotes(
      note("blow-by", "30", { unit: "L/min", date: "2019-05-01" }),
      note("blow-by", "90", { unit: "L/min" }),
    ),
  ).toEqual(["D1"]);
  expect(ofNotes(note("blow-by", "none"))).toEqual(["D2"]);
  // the row asks for a proved gauge (handbook/decision.md 2, E1)
  expect(ofNotes(note("oil pressure hot", "low"))).toEqual([]);
  expect(ofNotes(note("oil pressure hot", "proved low"))).toEqual(["E1"]);
  expect(ofNotes(note("oil pressure hot", "normal"))).toEqual(["E2"]);
  expect(ofNotes(note("filter debris", "bearing metal"))).toEqual(["F1"]);
  expect(ofNotes(note("oil analysis", "iron rising"))).toEqual(["F2"]);
  expect(ofNotes(note("filter debris", "chunks"))).toEqual(["F3"]);
  expect(ofNotes(note("filter debris", "none"))).toEqual(["F4"]);
  expect(ofNotes(note("knock", "heavy", { cylinders: "2" }))).toEqual(["G1"]);
  expect(ofNotes(note("knock", "heavy"))).toEqual([]);
  expect(ofNotes(note("piston slap", "some"))).toEqual(["G2"]);
  expect(ofNotes(note("coolant loss", "some"))).toEqual(["H1"]);
  expect(ofNotes(note("combustion gas in coolant", "some"))).toEqual(["H2"]);
  expect(ofNotes(note("coolant loss", "none"))).toEqual(["H3"]);
  expect(ofNotes(note("valve seen", "burnt", { cylinders: "3" }))).toEqual(["I1"]);
  expect(ofNotes(note("score", "heavy", { cylinders: "3" }))).toEqual(["I2"]);
  expect(ofNotes(note("crosshatch", "gone"))).toEqual(["I3"]);
  expect(ofNotes(note("crosshatch", "full"))).toEqual(["I4"]);
});

test("H3: no lost coolant speaks against gasket and crack, not against a valve that is heard", () => {
  const none = (place: string) =>
    rowsIn({
      tests: [leak("2026-05-01", "76 76 40 76"), heard("2026-05-01", `none none ${place} none`)],
      notes: [note("coolant loss", "none")],
    });
  expect(none("exhaust")).toEqual(["B2"]);
  expect(none("intake")).toEqual(["B2"]);
  expect(none("crankcase")).toEqual(["B4", "H3"]);
});

test("hone marks in one bore say nothing of the others, and a score anywhere ends clean bores", () => {
  expect(ofNotes(note("crosshatch", "full", { cylinders: "1" }))).toEqual([]);
  expect(ofNotes(note("crosshatch", "full"), note("score", "some", { cylinders: "2" }))).toEqual(["I2"]);
});

test("a note counts for a year, and until the part was renewed", () => {
  const burnt = (date: string) => note("valve seen", "burnt", { date, cylinders: "3" });
  expect(ofNotes(burnt("2025-05-21"))).toEqual(["I1"]);
  expect(ofNotes(burnt("2025-05-20"))).toEqual([]);
  const services = ["2026-05-12,,valve job,3"];
  expect(rowsIn({ tests: [], notes: [burnt("2026-05-10")], services })).toEqual([]);
  expect(rowsIn({ tests: [], notes: [burnt("2026-05-13")], services })).toEqual(["I1"]);
});

test("a line that was looked at and says nothing is not among those nobody looked at", () => {
  const lines = (...notes: readonly string[]) =>
    decided({ tests: [], notes }).notSeen.map(({ line }) => line);
  expect(lines()).toContain("noise");
  expect(lines(note("knock", "none"))).not.toContain("noise");
  const trend = decided({ tests: [], notes: [note("oil use", "0.1", { unit: "L/h" })] }).notSeen[0];
  expect([trend?.line, trend?.why]).toEqual(["cranking", undefined]);
  const oil = decided({ tests: [], notes: [note("oil use", "0.1", { unit: "L/h" })] }).notSeen.find(
    ({ line }) => line === "oil use",
  );
  expect(oil?.why).toMatch(/^one note \(2026-05-10\) tells no change/);
});

test("an air-cooled engine is asked for no coolant", () => {
  expect(decided({ engine: { cooling: "air" }, tests: [] }).notSeen.map(({ line }) => line)).not.toContain(
    "coolant",
  );
});

test("an exhaust valve heard, and a cylinder low that oil does not help: open the top end, as example 4", () => {
  const tests = [
    ...sound,
    dry("2026-05-01", "150 150 100 150"),
    { ...dry("2026-05-01", "153 x 102 x"), what: "wet" },
    leak("2026-05-01", "76 76 40 76"),
    heard("2026-05-01", "none none exhaust none"),
  ];
  const notes = [note("oil use", "none"), note("oil pressure hot", "normal")];
  const { decision } = decided({ tests, notes });
  // example 4: scores 4 established / -2 / 0 / -1 (A5 and B2 each speak against rings, C3 too: here A2 for them)
  expect(decision.scores.top).toMatchObject({ score: 4, state: "established" });
  expect(decision.scores.bottom.score).toBe(-1);
  expect(decision).toMatchObject({ verdict: "open-the-top-end", basis: "needed", saying: "needed" });
});

test("low oil pressure, bearing metal and knock: rebuild, as example 6", () => {
  const tests = [
    ...sound,
    dry("2026-05-01", "118 118 118 118"),
    leak("2026-05-01", "76 76 40 76"),
    heard("2026-05-01", "none none crankcase none"),
  ];
  const notes = [
    note("oil pressure hot", "proved low"),
    note("filter debris", "bearing metal"),
    note("knock", "heavy", { cylinders: "2" }),
    note("gauge proved", "yes"),
  ];
  const { decision } = decided({ tests, notes });
  // example 6: bottom 6, established
  expect(decision.scores.bottom).toMatchObject({ score: 6, state: "established" });
  expect(decision).toMatchObject({ verdict: "rebuild", basis: "needed", urgency: "stop" });
});
