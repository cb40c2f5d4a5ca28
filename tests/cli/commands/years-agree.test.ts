// What show, history, decide, yard and a page say of the years of a cylinder is the same, and no more than is so. Readings
// invented.

import { expect, test } from "vitest";
import { misfits, schemaOf } from "./fits-schema.ts";
import { plain, told } from "./told.ts";
import { deskWith, oneSpeed, yearly } from "./years.ts";

test("whether one went in a step or loses steadily is told alike on all screens", async () => {
  const third = ["150 148 150 149", "150 149 134 149", "150 148 118 149"];
  const desk = await deskWith(yearly(2018, third), [], oneSpeed);
  const day = ["--as-of", "2020-06-01"];
  const open = "a step or a steady loss, that cannot be told yet";
  const history = await told(desk, "history", "pump", ...day);
  expect(history).toContain(open);
  expect(history).toMatch(/3 .* step or loss/);
  expect(await told(desk, "decide", "pump", "--why", ...day)).not.toContain("moved in one step");
  const yard = (await desk.type(["yard", ...day])).out;
  expect(plain(yard)).toContain(open);
  expect(yard).toContain("step or loss");
  const page = await told(desk, ..."page pump --for buyer --text -o -".split(" "), ...day);
  expect(page).toContain(open);
  expect(page).toContain("step or loss");
  for (const out of [plain(yard), page])
    expect(out).not.toMatch(/stepped down(?! by about|, falling, others)/);
  const document = await desk.json("history", "pump", ...day);
  expect(misfits(document, schemaOf("history"))).toEqual([]);
  expect(document.cylinders).toMatchObject([{}, {}, { course: "stepped-down", wentOn: "2020-05-03" }, {}]);
  const row = await desk.json("yard", ...day);
  expect(misfits(row, schemaOf("yard"))).toEqual([]);
  expect(row).toMatchObject({ course: "stepped-down", courseWentOn: "2020-05-03" });
  // low alike since is one step
  const once = await deskWith(yearly(2018, [...third.slice(0, 2), "150 148 134 149"]), [], oneSpeed);
  expect(await once.json("yard", ...day)).not.toHaveProperty("courseWentOn");
  expect(plain((await once.type(["yard", ...day])).out)).toContain("stepped down");
});

test("a loss of which a year brings nothing that can be printed is told as less, and as too little", async () => {
  const desk = await deskWith(["2000-03-12: 150 150 150 150"]);
  const conditions =
    "altitude_m,station_pressure_hPa,air_temp_C,crank_rpm,strokes,engine_temp,throttle,plugs_out";
  // a psi in twenty years, without scatter
  const rows = Array.from({ length: 60 }, (_, i) => {
    const date = `${String(2000 + Math.floor(i / 3))}-${["03", "07", "11"][i % 3] ?? ""}-12`;
    const cells = new Array(4).fill((150 - i / 60).toFixed(2)).join(",");
    return `${date}a,${date},dry,1,red,psi,${cells},350,970,15,230,6,warm,open,all`;
  });
  desk.put(
    "logbook/pump/tests.csv",
    `test,date,what,take,gauge,unit,c1,c2,c3,c4,${conditions}\n${rows.join("\n")}\n`,
  );
  const out = await told(desk, "history", "pump", "--as-of", "2020-01-01");
  expect(out).toContain("less than 0.1 % a year, too little to matter");
  expect(out).not.toContain("0.0 % a year");
  const { common } = await desk.json("history", "pump", "--as-of", "2020-01-01");
  expect(common).toMatchObject({ word: "falling" });
});

test("the loss of one cylinder below 0.1 % a year has the same words on every screen", async () => {
  const rows = Array.from({ length: 40 }, (_, i) => `150 150 ${(150 - i * 0.05).toFixed(2)} 150`);
  const desk = await deskWith(yearly(1980, rows), [], oneSpeed);
  const day = ["--as-of", "2019-06-01"];
  const history = await told(desk, "history", "pump", ...day);
  expect(history).toContain(
    "is falling: less than 0.1 % a year against the others since 1980, gradually, too little",
  );
  expect(history).toMatch(/ -0\.03 falling/);
  expect(await told(desk, "yard", ...day)).toContain("falling less than 0.1 % a year, too little to matter");
  const page = await told(desk, ..."page pump --for buyer --text -o -".split(" "), ...day);
  expect(page).toContain("less than 0.1 % a year");
  // 0.07 %: printed as 0.1, and so would be both ends
  const more = Array.from({ length: 40 }, (_, i) => `150 150 ${(150 - i * 0.105).toFixed(2)} 150`);
  const other = await deskWith(yearly(1980, more), [], oneSpeed);
  expect(await told(other, "history", "pump", ...day)).toContain("is falling: 0.1 % a year against");
});

test("with four tests that lie on a line no screen says that it went in one step", async () => {
  const desk = await deskWith(
    yearly(2018, ["150 148 150 149", "150 149 141 149", "150 148 128 149", "150 149 117 149"]),
    [],
    oneSpeed,
  );
  const day = ["--as-of", "2021-06-01"];
  const open = "a step or a steady loss, that cannot be told yet";
  const { cylinders } = await desk.json("history", "pump", ...day);
  expect(cylinders).toMatchObject([
    {},
    {},
    { course: "stepped-down", shape: { shape: "gradual" }, wentOn: "2021-05-03" },
    {},
  ]);
  for (const command of ["history", "yard"]) expect(await told(desk, command, ...day)).toContain(open);
  expect(await told(desk, "decide", "pump", "--why", ...day)).not.toContain("moved in one step");
});

test("a sheet that is shown and not counted tells no step from a line", async () => {
  const desk = await deskWith(yearly(2018, ["150 148 150 149", "150 149 134 149", "150 148 133 149"]));
  const sheet = "--date 2021-05-03 --unit psi --by seller --dry".split(" ");
  await told(desk, "enter", "pump", ...sheet, "150 149 110 149");
  const day = ["--as-of", "2021-06-01"];
  const history = await told(desk, "history", "pump", ...day);
  expect(history).toContain("(seller's sheet)");
  expect(history).not.toContain("a step or a steady loss");
  expect(await desk.json("yard", ...day)).not.toHaveProperty("courseWentOn");
});

test("of two cylinders of which nobody can tell which one lost, the yard names none by its years", async () => {
  const desk = await deskWith(yearly(2018, ["150 150", "150 134", "150 118"]));
  const day = ["--as-of", "2020-06-01"];
  expect(await told(desk, "history", "pump", ...day)).toContain("two cylinders cannot tell which");
  const yard = await told(desk, "yard", ...day);
  expect(yard).toContain("one of the two");
  expect(yard).toContain("one has lost or the other gained, two cannot tell which");
  expect(yard).not.toMatch(/step or loss|stepped down/);
  const decide = await told(desk, "decide", "pump", ...day);
  expect(decide).toContain("has lost against 1 beyond chance over the years, or 1 has gained");
  const row = await desk.json("yard", ...day);
  expect(misfits(row, schemaOf("yard"))).toEqual([]);
  expect(row).toMatchObject({ course: "stepped-down", courseMirrored: "either" });
});
