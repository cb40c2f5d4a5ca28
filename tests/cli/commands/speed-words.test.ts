// What the screens say of a cranking speed that is not known, differs or could not be corrected. Readings invented from the
// form of the handbook (cranking.md I.1, computed from a cycle model).

import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const head =
  "test,date,what,take,gauge,unit,c1,c2,c3,c4,altitude_m,air_temp_C,crank_rpm,engine_temp,throttle";
const at = (rpm: number): number => 1690 / (1 + 70 / (2 * rpm)) ** 2;
const dry = (year: number, values: readonly number[], rpm = "", temp = "warm"): string =>
  `${String(year)}-05-02a,${String(year)}-05-02,dry,1,red,kPa,${values.map((value) => value.toFixed(0)).join(",")},610,25,${rpm},${temp},open`;
const ownSpeeds = (own: string): string => `2026-05-02a,2026-05-02,speed,,,,${own.replaceAll(" ", ",")},,,,,`;
const even = (rpm: number): readonly number[] => [3, -2, 1, -4].map((away) => at(rpm) + away);
const deskOf = (rows: readonly string[], engine: object = {}): Desk => {
  const desk = newDesk();
  const own = {
    cylinders: ["1", "2", "3", "4"],
    ignition: "spark",
    geometry: { bore: "86mm", stroke: "86mm" },
  };
  const limits = { compression: { speed: "260rpm", minimum: "900kPa" } };
  desk.put("logbook/van/engine.json", JSON.stringify({ ...own, limits, ...engine }));
  desk.put("logbook/van/tests.csv", [head, ...rows, ""].join("\n"));
  return desk;
};
const said = async (desk: Desk, ...words: readonly string[]): Promise<string> =>
  (await desk.type([...words])).out.replaceAll(/\s+/g, " ");
const rpms = [260, 240, 225, 210, 195, 180];
const slowing = (blank: readonly number[]): readonly string[] =>
  rpms.map((rpm, i) => dry(2016 + 2 * i, even(rpm), blank.includes(2016 + 2 * i) ? "" : String(rpm)));

test("history names the speeds that differ or are not known", async () => {
  const one = await said(deskOf(slowing([2020])), "history", "van");
  expect(one).toContain("The engine as a whole: no change shown");
  expect(one).toContain(
    "Cranked slower over the years (260 to 180 rpm; 2020-05-02a not recorded), and the readings stand as cranked: a fall of the whole engine may be that alone.",
  );
  expect(await said(deskOf(slowing([2016, 2018, 2020, 2022, 2024, 2026])), "history", "van")).toContain(
    "Cranking speed not recorded: a slower starter would look like wear of all.",
  );
  const faster = [...rpms.slice(1), 260].map((rpm, i) =>
    dry(2016 + 2 * i, even(rpm), i === 2 ? "" : String(rpm)),
  );
  expect(await said(deskOf(faster), "history", "van")).toContain(
    "Speeds differ or are not known (180 to 260 rpm; 2020-05-02a not recorded), and the readings stand as cranked",
  );
  const all = await said(deskOf(slowing([])), "history", "van");
  expect(all).not.toMatch(/as cranked|not recorded/);
});

test("a fall that is shown all the same says that a part of it may be the speed", async () => {
  const rows = rpms.map((_, i) =>
    dry(
      2016 + 2 * i,
      even(260).map((value) => value * (1 - 0.05 * i)),
    ),
  );
  expect(await said(deskOf(rows), "history", "van")).toContain(
    "the fall is more than a usual slower starter makes, yet a part of it may be that.",
  );
});

test("show tells both speeds beside a lower level, where they were not corrected", async () => {
  const rows = [dry(2016, even(260), "260"), dry(2026, [800, 802, 799, 803], "145")];
  expect(await said(deskOf(rows), "show", "van")).toContain(
    "lower than in 2016-05 (same gauge, cranked at 145 instead of 260 rpm): sealtrend history van",
  );
  const document = await deskOf(rows).json("show", "van");
  expect(misfits(document, schemaOf("show"))).toEqual([]);
  expect(document.levelSince).toMatchObject({ speeds: { before: 260, after: 145 } });
});

const uneven = [at(250), at(200), at(248), at(180) * 0.97];

test("show says how cylinders at differing speeds are compared, and each speed is in the JSON", async () => {
  const desk = deskOf([dry(2026, uneven), ownSpeeds("250 200 248 180")]);
  const screen = await said(desk, "show", "van");
  expect(screen).toContain("(cranked at 180 to 250)");
  expect(screen).toContain("Cranked at 180 to 250 rpm: the cylinders are compared as if all were at 224.");
  expect(screen).toMatch(/^All four are even: the lowest reads 3 % under the highest/);
  const document = await desk.json("show", "van");
  expect(misfits(document, schemaOf("show"))).toEqual([]);
  const { correction, cylinders } = document as unknown as {
    readonly correction: { readonly speed: object };
    readonly cylinders: readonly { readonly dry: Readonly<Record<string, number>> }[];
  };
  expect(correction.speed).toMatchObject({ least_rpm: 180, most_rpm: 250, compared_rpm: 224 });
  expect(cylinders.map((one) => one.dry.speed_rpm)).toEqual([250, 200, 248, 180]);
  expect(cylinders[3]?.dry.compared_kPa).toBeGreaterThan(cylinders[3]?.dry.atReadSpeed_kPa ?? Infinity);
});

test("where they cannot be brought to one speed that is said, and that it counts against none", async () => {
  const desk = deskOf([dry(2026, uneven), ownSpeeds("250 200 248 180")], { compressionRelease: "automatic" });
  const screen = await said(desk, "show", "van");
  expect(screen).toContain(
    "No cylinder stands out beyond what its cranking speed may explain: the lowest reads 12 % under the highest.",
  );
  expect(screen).toContain(
    "Not brought to 260 rpm: whether the compression release was at work is not known. Cranked at 180 to 250 rpm and not brought to one speed: what that may explain counts against no cylinder.",
  );
  expect(misfits(await desk.json("show", "van"), schemaOf("show"))).toEqual([]);
});

test("a cold test says what it is held against", async () => {
  expect(await said(deskOf([dry(2026, even(200), "200", "cold")]), "show", "van")).toContain(
    "Not brought to 260 rpm: the engine was cold, and the maker's figures are for a warm one unless the manual says cold.",
  );
  const two = [dry(2024, even(260), "260"), dry(2026, even(200), "200", "cold")];
  expect(await said(deskOf(two), "show", "van")).toContain(
    "Not brought to 260 rpm: the engine was cold, other tests of it were warm.",
  );
});

test("a calibration that the readings contradict is to be made again", async () => {
  const desk = deskOf([dry(2026, even(200), "200")], {
    crankingCurve: [{ gauge: "red", P0: "1000kPa", u_ln: 0.05 }],
  });
  expect(await said(desk, "show", "van")).toMatch(
    /the calibration kept for this gauge cannot be right \(1000 kPa without any loss, yet 13\d\d was read\): calibrate again \(sealtrend gauge calibrate red --engine van\)\./,
  );
});

test("the maker's range of speeds is kept and printed as given", async () => {
  const desk = deskOf([dry(2026, even(240), "240")]);
  const { exit } = await desk.type(["engine", "set", "van", "limits.compression.speed", "250-400rpm"]);
  expect(exit).toBe(0);
  expect(desk.text("logbook/van/engine.json")).toMatch(/"speed": ?"250-400rpm"/);
  const screen = await said(desk, "show", "van", "--why");
  expect(screen).toContain("at 316 rpm");
  expect(screen).toContain("held against 316 rpm, the middle of the maker's 250-400rpm");
});

test("the share of the air temperature is named, and a choice that contradicts it", async () => {
  const desk = deskOf([dry(2026, even(260), "260")], {
    correction: { basis: "pressure", temperatureExponent: 0.25 },
  });
  // 610 m: 101.325/94.21; (298.15/288.15)^0.25 = 1.0086
  expect(await said(desk, "show", "van")).toMatch(/\(610 m, 25 % for air temperature: x 1\.08\d\)/);
  const why = await said(desk, "show", "van", "--why");
  expect(why).toContain("by pressure and air temperature to the power 0.25: x");
  expect(why).toContain("of which x 1.0086 for the air temperature");
  const both = deskOf([dry(2026, even(260), "260")], {
    correction: { basis: "density", temperatureExponent: 0.25 },
  });
  expect(await said(both, "show", "van")).toContain("25 % for air temperature");
  expect(await said(both, "show", "van", "--why")).toContain("engine.json says density as well");
});
