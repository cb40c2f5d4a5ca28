// What show, history, decide and yard say of one engine fits together, and none says more than is so. Readings invented.

import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";
import { plain, told } from "./told.ts";
import { deskWith, yearly } from "./years.ts";

/** An engine by its leak-downs, of four cylinders at 80 psi. */
const leaking = async (rows: readonly (readonly [date: string, third: string])[]): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--cylinders", "4", "--ignition", "spark"]);
  for (const [date, third] of rows)
    await told(
      desk,
      ...["enter", "pump", "--date", date, "--leak-down", `74/80 74/80 ${third}/80 75/80`],
      ...["--unit", "psi", "--heard", "none none crankcase none"],
    );
  return desk;
};

test("a large leak that was heard is no contradiction of tests", async () => {
  const desk = await deskWith(["2026-05-01: 150 151 149 150"]);
  const line = ["--leak-down", "74/80 72/80 61/80 75/80", "--heard", "none none exhaust none"];
  const out = await told(desk, ..."enter pump --date 2026-06-01 --unit psi".split(" "), ...line);
  expect(out).toContain("so first a leaking exhaust valve");
  expect(out).not.toContain("contradict each other");
});

test("work on one cylinder asks for a test of all, and what was read of the others is no evidence of all", async () => {
  const desk = await leaking([
    ["2023-04-05", "65"],
    ["2024-04-06", "65"],
  ]);
  await told(desk, ..."service pump --date 2024-05-01 --what rebore --cylinders 3".split(" "));
  const day = ["--as-of", "2024-05-02"];
  const step = "run it in for 25 h or 1000 km, then leak-down on every cylinder, warm";
  const decide = await told(desk, "decide", "pump", ...day);
  expect(decide).toMatch(/^Run it in, and test it anew before you decide\./);
  expect(decide).toContain("leak-down of 3 since the work on it");
  expect(decide).not.toContain("no cylinder lost more than");
  expect(decide).toContain(`next ${step}`);
  expect(await told(desk, "show", "pump", ...day)).toContain(
    "Rebore of 3 on 2024-05-01 came after this test",
  );
  for (const command of ["show", "history"])
    expect(await told(desk, command, "pump", ...day)).toContain(step);
  const { out } = await desk.type(["yard", ...day]);
  expect(plain(out)).toContain("new rings or bores: run it in, then test it");
});

test("an aircraft that runs in is not said to stand still until it is tested", async () => {
  const desk = await leaking([["2024-04-06", "65"]]);
  await told(desk, ..."engine set pump use aircraft".split(" "));
  await told(desk, ..."service pump --date 2024-05-01 --what rebore --cylinders 3".split(" "));
  const out = await told(desk, ..."decide pump --as-of 2024-05-02".split(" "));
  expect(out).toContain("next run it in for 25 h");
  expect(out).not.toMatch(/not used|before further use/);
});

const burnt = ["165 163 166 164", "164 163 166 164", "165 163 165 164", "165 163 166 135", "165 163 166 95"];
const valve = ["--leak-down", "92 91 90 30", "--regulated", "100psi", "--heard", "none none none exhaust"];

const withValve = async (): Promise<Desk> => {
  const desk = await deskWith(yearly(2020, burnt));
  await told(desk, ..."enter pump --test 2024-05-03a --unit psi".split(" "), ...valve);
  return desk;
};

test("a valve that was low in two tests is not one reading, and all screens name the same step", async () => {
  const desk = await withValve();
  const history = await told(desk, ..."history pump --as-of 2024-06-01".split(" "));
  expect(history).toContain("It was low before that: 18 % under the others on 2023-05-03.");
  expect(history).not.toMatch(/Only the last reading|three times, before you believe/);
  const step = "before the head comes off: lash, and a tap on the valves of 4";
  expect(history).toContain(step);
  for (const command of ["show", "decide"])
    expect(await told(desk, command, "pump", "--as-of", "2024-06-01")).toContain(step);
});

test("what a valve job did to the one that had just come down is told beside the three tests a side", async () => {
  const desk = await withValve();
  await told(desk, ..."service pump --date 2024-06-01 --cylinders all --what".split(" "), "valve job");
  await told(desk, ..."enter pump --date 2024-06-20 --unit psi --dry".split(" "), "165 163 166 164");
  const out = await told(desk, ..."history pump --as-of 2024-07-01".split(" "));
  expect(out).toMatch(/Valve job 2024-06-01: no change shown in the engine as a whole; a change under \d+ %/);
  expect(out).toContain(
    "Cylinder 4 read 95 psi in the test before it and 164 psi after: it had been low in the test before that too.",
  );
  const document = await desk.json("history", "pump", "--as-of", "2024-07-01");
  expect(misfits(document, schemaOf("history"))).toEqual([]);
  expect(document.services).toMatchObject([{ adjoining: [{ label: "4", lowIn: "several" }] }]);
});

test("cylinders of which a work shows nothing are named in one sentence", async () => {
  const desk = await deskWith(yearly(2020, ["150 151 149 150", "150 150 149 151", "151 151 149 150"]));
  await told(
    desk,
    ..."service pump --date 2022-06-01 --what".split(" "),
    ...["valve job", "--cylinders", "1 2 3"],
  );
  await told(desk, ..."enter pump --date 2023-05-03 --unit psi --dry".split(" "), "150 151 150 150");
  const out = await told(desk, ..."history pump --as-of 2023-06-01".split(" "));
  expect(out.match(/Valve job 2022-06-01/g)).toHaveLength(1);
  expect(out).toContain("no change shown in cylinders 1, 2 and 3;");
});

test("low alike against the tests since a work: that reference is named, and what was proved is not asked again", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type("engine add tug --cylinders 3 --ignition compression --meter h".split(" "));
  const rows = [
    ["2018-09-20", "28 28 28"],
    ["2020-08-11", "28 28 28"],
    ["2022-08-11", "23 23 23"],
  ] as const;
  for (const [date, dry] of rows) {
    if (date === "2020-08-11")
      await told(desk, ..."service tug --date 2019-03-02 --cylinders all --what".split(" "), "head gasket");
    await told(
      desk,
      ...["enter", "tug", "--date", date, "--dry", dry],
      ..."--unit bar --gauge fat --speed 190rpm --altitude 0m --engine-temp warm".split(" "),
    );
  }
  const day = ["--as-of", "2022-09-01"];
  const step = "prove the gauge beside another, then test all again";
  const decide = await told(desk, "decide", "tug", ...day);
  expect(decide).toMatch(/\d+ % below its first test since the head gasket 2019-03-02: prove gauge first/);
  expect(decide).toContain(`next ${step}`);
  expect(decide).not.toMatch(/battery|throttle/);
  const history = await told(desk, "history", "tug", ...day);
  expect(history).toMatch(/All read \d+ % lower than in 2020-08 \(same gauge\); no rate is shown yet\./);
  for (const said of [history, await told(desk, "show", "tug", ...day)])
    expect(said).toContain(`next ${step}`);
  expect(await told(desk, "yard", ...day)).toContain("low everywhere: prove gauge first");
});

test("of two cylinders the last test cannot tell which moved, on any screen", async () => {
  const desk = await deskWith(
    yearly(2018, ["130 131", "129 127", "130 122", "129 113"]).concat("2026-05-03: 128 131"),
  );
  const day = ["--as-of", "2026-06-01"];
  const history = await told(desk, "history", "pump", ...day);
  expect(history).toMatch(
    /Cylinder 1 has dropped about \d+ % against 2 since the earlier tests, or 2 has gained/,
  );
  expect(history).not.toContain("Until then it was steady");
  expect(history.match(/one of the two/g)).toHaveLength(2);
  expect(await told(desk, "decide", "pump", ...day)).toMatch(
    /Cylinder 1 read \d+ % lower against 2 than before in 2026-05-03a, or 2 has gained/,
  );
});

test("what only cranking says, but over the years too, is not said to stand alone", async () => {
  const desk = await deskWith(yearly(2018, ["130 131", "129 127", "130 122", "129 113"]));
  const out = await told(desk, ..."decide pump --as-of 2021-06-01".split(" "));
  expect(out).toContain("lost beyond chance over the years");
  expect(out).not.toContain("nothing else says so");
});

test("a two-stroke that burns its oil shows no wear by it, and is told so", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type("engine add skiff --cylinders 2 --ignition spark --cycle two-stroke".split(" "));
  await told(desk, ..."enter skiff --date 2026-05-01 --unit psi --dry".split(" "), "130 131");
  const note = ["note", "skiff", "--what", "oil use", "--value", "0.4L/1000km", "--date", "2026-05-02"];
  expect(await told(desk, ...note)).toContain("no sign of wear here");
  const out = await told(desk, ..."decide skiff --as-of 2026-05-03".split(" "));
  expect(out).not.toMatch(/oil use|oil pressure|debris/);
});

test("tests that speak no more are dated, not said to be none", async () => {
  const desk = await deskWith(yearly(2020, ["150 151 149 150", "150 150 149 151"]));
  const out = await told(desk, ..."decide pump --as-of 2026-06-01".split(" "));
  expect(out).toContain("nothing that still counts: the last test is of 2021-05-03");
  expect(out).toContain("cranking compression since 2021-05-03");
});

test("a void test sets no reference for the speed of others", async () => {
  const desk = await deskWith(yearly(2020, ["150 151 149 150", "150 150 149 151"]), [], ["--speed", "90rpm"]);
  await told(
    desk,
    ..."enter pump --date 2022-05-03 --unit psi --speed 210rpm --dry".split(" "),
    "150 151 149 150",
  );
  expect(await told(desk, "show", "pump", "--as-of", "2022-06-01")).not.toContain("90 rpm");
});

test("a leak that grows a little every year is no step, and one that read low twice and is back is not called down", async () => {
  const slow = await leaking([
    ["2019-04-01", "76"],
    ["2020-04-01", "74"],
    ["2021-04-01", "72"],
    ["2022-04-01", "70"],
  ]);
  expect(await told(slow, ..."history pump --as-of 2022-05-01".split(" "))).not.toContain("stepped down");
  const back = await deskWith(
    yearly(2019, ["150 151 150 149", "150 151 130 149", "150 151 131 149", "150 151 152 149"]),
  );
  const out = await told(back, ..."history pump --as-of 2022-06-01".split(" "));
  expect(out).toMatch(/Cylinder 3 read about 1\d % lower from 2020-05-03 on, and came back on 2022-05-03/);
  expect(out).toContain("low, and back");
  const yard = (await back.type(["yard", "--as-of", "2022-06-01"])).out;
  expect(yard).toContain("low, and back");
  expect(yard).not.toMatch(/stepped down(?!, falling)/);
  const row = await back.json("yard", "--as-of", "2022-06-01");
  expect(misfits(row, schemaOf("yard"))).toEqual([]);
  expect(row).toMatchObject({ course: "stepped-down", courseCameBack: "2022-05-03" });
  expect(out).not.toContain("stepped down");
});
