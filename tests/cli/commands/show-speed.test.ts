// The cranking speed on the screens of show and history and in their JSON, from a logbook typed by hand. The numbers are those of
// the handbook's worked cases 6 and 7 (cranking.md I.5), computed there from a cycle model; the readings are invented.

import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const head =
  "test,date,what,take,gauge,unit,c1,c2,c3,c4,station_pressure_hPa,air_temp_C,crank_rpm,engine_temp,throttle,plugs_out,strokes";
const row = (date: string, cells: string, rpm: string, temp = "warm"): string =>
  `${date}a,${date},dry,1,red,kPa,${cells.replaceAll(" ", ",")},1013.25,15,${rpm},${temp},open,all,6`;

const deskOf = (rows: readonly string[], engine: object = {}): Desk => {
  const desk = newDesk();
  desk.put(
    "logbook/van/engine.json",
    JSON.stringify({
      cylinders: ["1", "2", "3", "4"],
      ignition: "spark",
      geometry: { bore: "86mm", stroke: "86mm" },
      limits: { compression: { speed: "260rpm" } },
      ...engine,
    }),
  );
  desk.put("logbook/van/tests.csv", [head, ...rows, ""].join("\n"));
  return desk;
};
const screen = async (desk: Desk, ...words: readonly string[]): Promise<string> =>
  (await desk.type([...words], { width: 100 })).out;
const slow = row("2026-05-02", "1190 1185 1195 1000", "180");

interface Shown {
  readonly correction: Readonly<Record<string, unknown>>;
  readonly cylinders: readonly { readonly dry: Readonly<Record<string, number>> }[];
}
const shown = async (desk: Desk): Promise<Shown> => {
  const document = await desk.json("show", "van");
  expect(misfits(document, schemaOf("show"))).toEqual([]);
  return document as unknown as Shown;
};

test("read and corrected stand side by side, cylinder by cylinder", async () => {
  const said = (await screen(deskOf([slow]), "show", "van")).replaceAll(/ +/g, " ");
  expect(said).toContain("read kPa 1190 1185 1195 1000\n");
  expect(said).toContain("at 260 rpm kPa 1318 1314 1323 1149 (cranked at 180 rpm)\n");
  expect(said).not.toContain("Not brought");
});

test("the JSON gives 1318.2, 1313.9, 1322.5 and 1149.0 kPa at 260 rpm, and what they rest on (case 6)", async () => {
  const { correction, cylinders } = await shown(deskOf([slow]));
  [1318.2, 1313.9, 1322.5, 1149.0].forEach((value, i) => {
    expect(Math.abs((cylinders[i]?.dry.corrected_kPa ?? 0) - value)).toBeLessThan(0.1);
  });
  expect(cylinders[3]?.dry).toMatchObject({ value_kPa: 1000, atReadSpeed_kPa: 1000 });
  expect(cylinders[3]?.dry.lossSpeed_rpm).toBeCloseTo(108.6, 0);
  // P_0 = 1187.5·(1 + 70.02/360)² = 1694.4, u = 31.5/215
  expect(correction).toMatchObject({
    basis: "pressure",
    temperatureExponent: 0,
    speed: { from_rpm: 180, to_rpm: 260, source: "default" },
  });
  const { P0_kPa, u_lnP0 } = correction.speed as Record<string, number>;
  expect(P0_kPa).toBeCloseTo(1694.4, 1);
  expect(u_lnP0).toBeCloseTo(0.1466, 4);
});

test("--why names P_0, its source and the loss speed of each cylinder", async () => {
  const said = (await screen(deskOf([slow]), "show", "van", "--why")).replaceAll(/\s+/g, " ");
  expect(said).toContain("1149 ± ");
  expect(said).toContain("at 260 rpm (loss speed 109 rpm)");
  expect(said).toContain(
    "Cranked at 180 rpm, held against 260 rpm, the maker's speed. Without any loss this engine would read 1694 kPa ± 15 % (P0), from the middle of this test and the usual losses.",
  );
  const kept = deskOf([slow], {
    crankingCurve: [{ gauge: "red", P0: "1640kPa", u_ln: 0.05, source: "two speeds, 2018-05-02a" }],
  });
  expect((await screen(kept, "show", "van", "--why")).replaceAll(/\s+/g, " ")).toContain(
    "1640 kPa ± 5 % (P0), from readings at two speeds (two speeds, 2018-05-02a).",
  );
  expect((await shown(kept)).correction.speed).toMatchObject({
    P0_kPa: 1640,
    u_lnP0: 0.05,
    source: "calibration",
    calibration: "two speeds, 2018-05-02a",
  });
});

test("a speed that was recorded and not used says why in one sentence; one that was not recorded is only listed as not known", async () => {
  const far = deskOf([row("2026-05-02", "1190 1185 1195 1000", "150")]);
  expect((await screen(far, "show", "van")).replaceAll(/\s+/g, " ")).toContain(
    "Not brought to 260 rpm: 150 and 260 rpm lie too far apart for the rule (more than 5 to 3).",
  );
  const { correction, cylinders } = await shown(far);
  expect(correction.speed).toMatchObject({ from_rpm: 150, refused: { code: "speeds-too-far-apart" } });
  expect(cylinders[0]?.dry).toMatchObject({ corrected_kPa: 1190 });
  expect(cylinders[0]?.dry).not.toHaveProperty("lossSpeed_rpm");
  const blank = deskOf([row("2026-05-02", "1190 1185 1195 1000", "")]);
  const said = await screen(blank, "show", "van");
  expect(said).not.toContain("Not brought");
  expect(said).toContain("Not known: cranking speed");
  expect((await shown(blank)).correction.speed).toMatchObject({ refused: { code: "speed-not-recorded" } });
});

test("at the reference speed no row is added and no refusal is worth a word", async () => {
  const same = await screen(deskOf([row("2026-05-02", "1190 1185 1195 1000", "260")]), "show", "van");
  expect(same).not.toMatch(/at 260 rpm|Not brought/);
  const two = deskOf([row("2026-05-02", "1190 1185 1195 1000", "260")], { cycle: "two-stroke" });
  expect(await screen(two, "show", "van")).not.toContain("Not brought");
  expect((await screen(two, "show", "van", "--why")).replaceAll(/\s+/g, " ")).toContain(
    "Not brought to 260 rpm: how a two-stroke's reading goes with the speed was not examined.",
  );
});

interface History {
  readonly tests: readonly Readonly<Record<string, unknown>>[];
  readonly cylinders: readonly { readonly corrected_kPa: readonly number[] }[];
  readonly common: { readonly effects: readonly number[] };
}
const years = [
  row("2018-05-02", "1240 1240 1240 1240", "260"),
  row("2026-05-02", "1050 1050 1050 1050", "180"),
];
const calibrated = { crankingCurve: [{ gauge: "red", P0: "1640kPa", u_ln: 0.05 }] };

test("history --json stands at one speed: 1240 and 1192.1 kPa, ln ratio -0.0394 where the readings say -0.1663 (case 7)", async () => {
  const document = await deskOf(years, calibrated).json("history", "van");
  expect(misfits(document, schemaOf("history"))).toEqual([]);
  const { tests, cylinders, common } = document as unknown as History;
  expect(cylinders[0]?.corrected_kPa[0]).toBeCloseTo(1240, 6);
  expect(cylinders[0]?.corrected_kPa[1]).toBeCloseTo(1192.1, 1);
  expect((common.effects[1] ?? 0) - (common.effects[0] ?? 0)).toBeCloseTo(-0.0394, 4);
  expect(tests).toMatchObject([
    { correctedFor: "air and speed", speed: { from_rpm: 260, to_rpm: 260 } },
    { correctedFor: "air and speed", speed: { from_rpm: 180, P0_kPa: 1640 } },
  ]);
});

test("one test of it without a speed, and the whole history stands as cranked, which --why says", async () => {
  const desk = deskOf([row("2016-05-02", "1240 1240 1240 1240", ""), ...years], calibrated);
  const { tests, cylinders } = (await desk.json("history", "van")) as unknown as History;
  expect(cylinders[0]?.corrected_kPa.map((value) => Math.round(value))).toEqual([1240, 1240, 1050]);
  expect(tests.map(({ correctedFor }) => correctedFor)).toEqual(["air", "air", "air"]);
  expect((await screen(desk, "history", "van", "--why")).replaceAll(/\s+/g, " ")).toContain(
    "Readings stand at the cranking speed of each day, not at one (2016-05-02a: the cranking speed was not recorded).",
  );
  expect(await screen(deskOf(years, calibrated), "history", "van", "--why")).toContain(
    "All readings are brought to 260 rpm.",
  );
});

test("a reading of the history that was brought to another speed says so", async () => {
  const minimum = { limits: { compression: { speed: "260rpm", minimum: "1150kPa" } }, ...calibrated };
  expect((await screen(deskOf(years, minimum), "history", "van")).replaceAll(/\s+/g, " ")).toContain(
    "last read 1192 kPa at 260 rpm; the maker's minimum is 1150 kPa.",
  );
});

test("history --long names the column by what stands in it", async () => {
  const long = await screen(deskOf(years, calibrated), "history", "van", "--long");
  expect(long).toContain("read kPa  at 260 rpm");
  expect(long).toMatch(/2026-05-02a +1 +1 +1050 +1192/);
  const blank = deskOf([row("2016-05-02", "1240 1240 1240 1240", ""), ...years], calibrated);
  expect(await screen(blank, "history", "van", "--long")).toContain("read kPa  sea level");
});

test("the basis is chosen once for the engine, recorded, and shown", async () => {
  const desk = deskOf([slow.replace("1013.25,15", "843.07,35")]);
  const factor = async () => (await shown(desk)).correction.factor as number;
  // 101.325/84.307, and by density times (308.15/288.15)
  expect(await factor()).toBeCloseTo(101.325 / 84.307, 9);
  const { exit } = await desk.type(["engine", "set", "van", "correction.basis", "density"]);
  expect(exit).toBe(0);
  expect(desk.text("logbook/van/engine.json")).toContain('"basis": "density"');
  expect(await factor()).toBeCloseTo((101.325 / 84.307) * (308.15 / 288.15), 9);
  expect(await screen(desk, "show", "van")).toContain("(barometer, by density: x 1.285)");
  await desk.type(["engine", "set", "van", "correction.temperatureExponent", "0.25"]);
  expect(await factor()).toBeCloseTo((101.325 / 84.307) * (308.15 / 288.15) ** 0.25, 9);
  expect((await desk.type(["engine", "set", "van", "correction.basis", "volume"])).exit).toBe(2);
});
