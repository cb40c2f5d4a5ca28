// A cylinder that was low for some tests, and what history, yard and decide say of it afterwards. Readings invented.

import { expect, test } from "vitest";
import { misfits, schemaOf } from "./fits-schema.ts";
import { told } from "./told.ts";
import { deskWith, oneSpeed, yearly } from "./years.ts";

const day = ["--as-of", "2024-06-01"];

const four = (...third: readonly number[]) =>
  yearly(
    2018,
    third.map((value) => `150 151 ${String(value)} 149`),
  );

test("it came back at the first test from which it stayed back, on every screen", async () => {
  const desk = await deskWith(four(150, 123, 122, 149, 150, 149, 150), [], oneSpeed);
  expect(await told(desk, "history", "pump", ...day)).toContain(
    "lower from 2019-05-03 on, and came back on 2021-05-03",
  );
  const document = await desk.json("history", "pump", ...day);
  expect(misfits(document, schemaOf("history"))).toEqual([]);
  expect(document.cylinders).toMatchObject([{}, {}, { cameBack: "2021-05-03" }, {}]);
  const yard = await told(desk, "yard", "--decide", "--why", ...day);
  expect(yard).toContain("low, and back");
  expect(yard).toContain("cylinder 3 was low, and is back");
  expect(yard).not.toMatch(/nothing shown|flagged in two tests/);
  const row = await desk.json("yard", ...day);
  expect(row).toMatchObject({ courseOf: "3", courseCameBack: "2021-05-03" });
  expect(await told(desk, "decide", "pump", ...day)).not.toContain("moved in one step");
});

test("one still part of it low is not back, and the sentence says how low it reads", async () => {
  const desk = await deskWith(four(150, 121, 121, 139, 139, 139, 139), [], oneSpeed);
  const history = await told(desk, "history", "pump", ...day);
  // 139 beside 149, 150 and 151
  expect(history).toContain("It read 7 % under the others on 2024-05-03.");
  expect(history).not.toContain("back");
  expect(await desk.json("yard", ...day)).not.toHaveProperty("courseCameBack");
});

test("low, back, and low again is told as that", async () => {
  const again = await deskWith(four(150, 122, 122, 150, 149, 122, 121), [], oneSpeed);
  const history = await told(again, "history", "pump", ...day);
  expect(history).toContain("read as before in between, and lower again from 2023-05-03 on");
  const document = await again.json("history", "pump", ...day);
  expect(misfits(document, schemaOf("history"))).toEqual([]);
  expect(document.cylinders).toMatchObject([{}, {}, { lowAgain: "2023-05-03" }, {}]);
  const twice = await deskWith(four(150, 122, 122, 150, 122, 121, 150), [], oneSpeed);
  expect(await told(twice, "history", "pump", ...day)).toContain(
    "on, after a while as before again from 2022-05-03 on, and came back on 2024-05-03",
  );
});

test("of two the sound one is not said to have stepped down when the other comes back", async () => {
  const rows = ["120 121", "121 98", "120 97", "121 120", "121 120", "121 120", "121 120"];
  const desk = await deskWith(yearly(2018, rows), [], oneSpeed);
  const history = await told(desk, "history", "pump", ...day);
  expect(history).toMatch(
    /^Cylinder 2 read about 20 % lower from 2019-05-03 on, and came back on 2021-05-03/,
  );
  expect(history).not.toContain("stepped down");
  expect(history).toContain("mirrors the other");
  expect(await told(desk, "yard", ...day)).not.toContain("stepped down");
  expect(await told(desk, "decide", "pump", ...day)).not.toMatch(/[Cc]ylinders? 1/);
});

test("where both moved nobody is named, and no leak-down of today is asked to tell which it was", async () => {
  const rows = ["120 121", "133 109", "133 109", "120 121", "120 121", "121 121", "120 121"];
  const desk = await deskWith(yearly(2018, rows), [], oneSpeed);
  const history = await told(desk, "history", "pump", ...day);
  expect(history).toMatch(
    /or 1 read higher, and that was over on 2021-05-03: two cylinders cannot tell which/,
  );
  expect(history).toContain("read both again, three times each");
  const yard = await told(desk, "yard", "--why", ...day);
  expect(yard).toContain("one of the two");
  expect(yard).toContain("one was low or the other high and that is over, two cannot tell which");
});

test("a yard calls no engine steady of which the history says that a cylinder is not", async () => {
  const rows = ["150 151 150 149", "150 153 151 149", "150 151 149 149", "151 152 150 150"];
  const later = ["150 122 150 149", "150 122 151 149", "150 122 150 149", "150 153 150 149"];
  const desk = await deskWith(yearly(2017, [...rows, ...later]), [], oneSpeed);
  const { cylinders } = await desk.json("history", "pump", ...day);
  const row = await desk.json("yard", ...day);
  expect(cylinders).toContainEqual(expect.objectContaining({ label: row.courseOf, course: row.course }));
  expect(cylinders).toMatchObject([{}, { course: "too-short-to-tell" }, {}, {}]);
  expect(row).toMatchObject({ courseOf: "2", course: "too-short-to-tell" });
});

test("a figure of years ago is not a cylinder's last where its only fellow held nothing since", async () => {
  const desk = await deskWith(["2020-05-03: 120 119", "2022-05-03: 121 60", "2024-05-03: 119 0"]);
  const history = await told(desk, "history", "pump", ...day);
  expect(history).toMatch(/ 0\.8 - - too short/);
  expect(history).not.toContain("101.7");
});

test("a drop of one of two in the last test alone ends with what to do about it", async () => {
  const rows = ["120 121", "121 120", "120 121", "121 121", "120 121", "120 121", "120 111"];
  const desk = await deskWith(yearly(2018, rows), [], oneSpeed);
  const history = await told(desk, "history", "pump", ...day);
  expect(history).toContain("read both again before you believe it");
  expect(history).toMatch(/next read /);
});

/** By one gauge, at a height that is known. */
const byGauge = async (rows: readonly string[]) => {
  const desk = await deskWith(yearly(2018, rows.slice(0, 1)));
  const cells = rows.map((row) => row.replaceAll(" ", ","));
  const head = cells[0]?.split(",").map((_, i) => `c${String(i + 1)}`) ?? [];
  const lines = cells.map((cell, i) => {
    const date = `${String(2018 + i)}-05-03`;
    return `${date}a,${date},dry,1,black,psi,${cell},100,warm`;
  });
  desk.put("logbook/gauges.csv", "gauge,kind,unit\nblack,compression,psi\n");
  desk.put(
    "logbook/pump/tests.csv",
    `${["test,date,what,take,gauge,unit", ...head, "altitude_m,engine_temp"].join(",")}\n${lines.join("\n")}\n`,
  );
  return desk;
};

test("of one cylinder nothing is said of all", async () => {
  const desk = await byGauge(["120", "98"]);
  const decide = await told(desk, "decide", "pump", "--as-of", "2019-06-01");
  expect(decide).toContain("It is low, 18 % below its first test");
  expect(decide).not.toContain("All cylinders");
});

test("of two that fell alike no reading lies 0 % under another, and the way to the years is shown once", async () => {
  const desk = await byGauge(["400 402", "390 392", "380 382", "370 372", "360 362", "350 352", "333 332"]);
  const show = await told(desk, "show", "pump", ...day);
  expect(show).toContain("the lowest reads less than 1 % under the highest");
  expect(show).toMatch(/or it is scatter\. Both read 17 % lower than in 2018-05/);
  expect(show.match(/sealtrend history/g)).toHaveLength(1);
});
