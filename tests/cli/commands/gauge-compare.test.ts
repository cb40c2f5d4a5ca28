// gauge compare: two gauges on one warm engine, the link that is kept, and what the history makes of it.

import { expect, test } from "vitest";
import { both, compare, deskWith, rowOf } from "./compared-desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";
import { numbersLost } from "./numbers.ts";

test("the factor is printed in plain words and kept with the gauge that counts less; undo takes it back", async () => {
  const desk = await deskWith(...both);
  const before = desk.text("logbook/gauges.csv");
  const { exit, out, err } = await desk.type([...compare, "--test", "2026-05-03a"]);
  expect([exit, err]).toEqual([0, ""]);
  // every reading is 5 % higher; limits 1.0278 to 1.0727 by hand (tests/core/assess/compare-gauges.test.ts)
  expect(out).toBe(
    "red reads 5.0 % higher than black (2.8 to 7.3 %), 4 cylinders.\n" +
      "kept  red counts as black in the history, its readings / 1.0500\n" +
      `${" ".repeat(50)}(sealtrend undo takes it back)\n\n` +
      "                          1      2      3      4\n" +
      "read by black     psi 150.0  140.0  160.0  130.0\n" +
      "read by red       psi 157.5  147.0  168.0  136.5\n" +
      "red against black %    +5.0   +5.0   +5.0   +5.0\n",
  );
  expect(rowOf(desk, "red")).toMatch(/,black,1\.05,0\.0094\d\d,2026-05-03,$/);
  expect((await desk.type(["gauge", "list"])).out).toContain("counts as black: reads x 1.050 of it");
  expect((await desk.type([...compare])).out).toContain(
    "Kept already: red counts as black in the history, its readings / 1.0500.\n",
  );
  await desk.type(["undo"]);
  expect(desk.text("logbook/gauges.csv")).toBe(before);
});

test("gauges that agree are said to: no difference is made of chance", async () => {
  const desk = await deskWith(both[0] ?? "", both[0]?.replace("black", "red").replace("150", "151") ?? "");
  const { out } = await desk.type([...compare]);
  expect(out.split("\n").slice(0, 2).join(" ")).toMatch(
    /^No difference shown between red and black: red 0\.0 % \(-2\.\d to \+2\.\d %\), 4 cylinders\./,
  );
});

test("every number of the screen stands in the document, and the document is as its schema says", async () => {
  for (const words of [[], ["--why"]]) {
    const desk = await deskWith(
      ...both,
      ...both.map((row) => row.replace("dry,1", "dry,2").replace("150", "151")),
    );
    const document = await desk.json(...compare);
    const { out } = await desk.type([...compare, ...words]);
    expect(misfits(document, schemaOf("gauges"))).toEqual([]);
    const said = out.replace(/19 of 20 cases|six of them|\d cylinders/g, "");
    expect(numbersLost(said, document, ["1", "2", "3", "4"])).toEqual([]);
  }
});

test("repeats with both gauges tell how each repeats; --why tells gauge from cylinder", async () => {
  const desk = await deskWith(
    ...both,
    ...both.map((row) => row.replace("dry,1", "dry,2").replace("150", "153")),
  );
  const { out } = await desk.type([...compare, "--why"]);
  // ln(153/150) = 0.0198 in one cylinder of four: s = 0.0198/sqrt(2 x 4) = 0.7 %
  expect(out).toContain("Repeats scatter 0.7 % by black (four repeats) and 0.0 % by red (four repeats).\n");
  expect(out).toMatch(
    /Of the scatter: repeats 0\.\d %, from gauge to gauge 3\.\d %, from cylinder to\ncylinder/,
  );
});

test("of two leak-down testers the leaks are compared", async () => {
  // the same leaks by restrictors of 0.040 and 0.060 in at 80 psi (handbook's table, computed): 1/2.25 = 0.44
  const desk = await deskWith(
    "2026-05-03a,2026-05-03,leak-down,1,one,psi,70,60,65,72,warm,0",
    "2026-05-03a,2026-05-03,leak-down,1,two,psi,77.86,75.31,76.64,78.31,warm,0",
  );
  const { exit, out } = await desk.type([...compare]);
  expect(exit).toBe(0);
  expect(out.replace(/\s+/g, " ")).toMatch(
    /^two shows a leak 0\.44 times as large as one does \(0\.39 to 0\.50\), each beside its own restrictor, 4 cylinders\./,
  );
  expect(out).toContain("lost by one    %   12.5  25.0  18.8  10.0\n");
  expect(rowOf(desk, "two")).toMatch(/,one,0\.44\d+,0\.0\d+,2026-05-03,$/);
});

test("what was typed to the hundredth is shown to the hundredth", async () => {
  const desk = await deskWith(
    "2026-05-03a,2026-05-03,dry,1,black,bar,9.75,9.8,10,,warm,350",
    "2026-05-03a,2026-05-03,dry,1,red,bar,9.95,10,10.2,,warm,350",
  );
  expect((await desk.type([...compare, "--units", "bar"])).out).toMatch(
    /read by black +bar +9\.75 +9\.80 +10\.00/,
  );
});

test("a second link never leads in a circle: the gauge that counts as the other is linked anew", async () => {
  const desk = await deskWith(...both, ...both.map((row) => row.replace(/2026-05-03/g, "2027-05-03")));
  await desk.type([...compare, "--test", "2026-05-03a"]);
  // two takes more by red: there red counts, and black would be linked to it
  const tests = desk.text("logbook/pump/tests.csv");
  desk.put(
    "logbook/pump/tests.csv",
    `${tests}2027-05-03a,2027-05-03,dry,2,red,psi,157.5,147,168,136.5,warm,350\n`,
  );
  const { exit, out } = await desk.type([...compare, "--test", "2027-05-03a"]);
  expect([exit, out.split("\n")[1]]).toEqual([
    0,
    "kept  red counts as black in the history, its readings / 1.0500",
  ]);
  expect(rowOf(desk, "red")).toContain("2027-05-03");
  expect(rowOf(desk, "black")).not.toContain("2027-05-03");
});

test("the history counts a linked gauge as the other, and says so", async () => {
  const year = (y: number, gauge: string, cells: string) =>
    `${String(y)}-05-03a,${String(y)}-05-03,dry,1,${gauge},psi,${cells},warm,350`;
  const rows = [
    year(2022, "black", "150,140,160,130"),
    year(2023, "red", "157.5,147,168,136.5"),
    year(2024, "black", "150,140,160,130"),
    year(2025, "red", "157.5,147,168,136.5"),
    ...both,
  ];
  const desk = await deskWith(...rows);
  const apart = await desk.json("history");
  await desk.type([...compare]);
  const linked = await desk.json("history");
  expect(misfits(linked, schemaOf("history"))).toEqual([]);
  expect(apart.gaugeLinks).toBeUndefined();
  expect(linked.gaugeLinks).toEqual([
    { gauge: "red", countsAs: "black", factor: 1.05, u_lnFactor: expect.closeTo(0.00946, 4) as number },
  ]);
  const effects = (document: Record<string, unknown>) => (document.common as { effects: number[] }).effects;
  // red reads ln 1.05 higher in 2023 and 2025; the link takes that out, and nothing is left
  expect(effects(apart)[1]).toBeCloseTo((effects(apart)[0] ?? NaN) + Math.log(1.05), 9);
  for (const effect of effects(linked)) expect(effect).toBeCloseTo(effects(linked)[0] ?? NaN, 6);
  const { out } = await desk.type(["history", "--why"]);
  expect(out.replace(/\s+/g, " ")).toContain(
    "red counts as black: what it reads is divided by 1.050 (± 0.9 %, compared 2026-05-03).",
  );
});

test("in the demo gauges are compared, and nothing is kept", async () => {
  const desk = await deskWith(...both);
  desk.put("logbook/logbook.json", '{ "schema": "sealtrend/logbook@1", "demo": true }\n');
  const before = desk.text("logbook/gauges.csv");
  const { exit, out } = await desk.type([...compare]);
  expect([exit, out.split("\n")[1]]).toEqual([0, "Nothing is kept of it: this is the demo."]);
  expect(desk.text("logbook/gauges.csv")).toBe(before);
  const document = await desk.json(...compare);
  expect([misfits(document, schemaOf("gauges")), "written" in document]).toEqual([[], false]);
});

test("every pair of gauges of a test is compared, each by itself: cranking and leak-down", async () => {
  const desk = await deskWith(
    ...both,
    "2026-05-03a,2026-05-03,leak-down,1,one,psi,70,60,65,72,warm,350",
    "2026-05-03a,2026-05-03,leak-down,1,two,psi,78,,,78,warm,350",
  );
  const { exit, out } = await desk.type([...compare]);
  expect(exit).toBe(0);
  expect(out).toContain("red reads 5.0 % higher than black");
  expect(out.replace(/\s+/g, " ")).toContain(
    "Two and one were both read on two cylinders of test 2026-05-03a, with a leak that both show: no link.",
  );
  expect(rowOf(desk, "two")).not.toContain("2026-05-03");
});

test("on a narrow terminal each cylinder has a sentence", async () => {
  const desk = await deskWith(...both);
  const { out } = await desk.type([...compare], { width: 50 });
  expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(50);
  expect(out.replace(/\s+/g, " ")).toContain("3: read by black 160.0 psi, read by red 168.0 psi");
});
