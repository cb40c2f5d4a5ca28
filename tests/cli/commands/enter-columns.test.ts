// `enter` into a table that somebody wrote by hand: what it lacks is added, what nobody can know is named.

import { expect, test } from "vitest";
import { deskWithPump } from "./desk.ts";
import { dry, enter, file } from "./entered.ts";

const byHand = "test,date,what,unit,c1,c2,c3,c4\n2026-01-05a,2026-01-05,dry,psi,150,148,149,150\n";

test("the least table takes a plain test as it is", async () => {
  const desk = await deskWithPump();
  desk.put(file, byHand);
  const { exit, err } = await enter(desk, ...dry);
  expect([exit, err]).toEqual([0, ""]);
  expect(desk.text(file)).toBe(`${byHand}2026-11-25a,2026-11-25,dry,psi,150,148,152,149\n`);
});

test("columns that a test needs are added at the end of every line, said aloud, and taken back by undo", async () => {
  const desk = await deskWithPump();
  desk.put(file, byHand.replaceAll("\n", "\r\n"));
  const { exit, err } = await enter(desk, ...dry, ...dry.slice(0, 2), "--strokes", "6", "--note", "warm");
  expect([exit, err]).toEqual([
    0,
    "logbook/pump/tests.csv got columns it lacked, at the end of its lines: strokes,\nnote, take\n",
  ]);
  expect(desk.text(file)).toBe(
    [
      "test,date,what,unit,c1,c2,c3,c4,strokes,note,take",
      "2026-01-05a,2026-01-05,dry,psi,150,148,149,150,,,",
      "2026-11-25a,2026-11-25,dry,psi,150,148,152,149,6,warm,1",
      "2026-11-25a,2026-11-25,dry,psi,150,148,152,149,,,2",
      "",
    ].join("\r\n"),
  );
  await desk.type(["undo"]);
  expect(desk.text(file)).toBe(byHand.replaceAll("\n", "\r\n"));
});

test("cylinders under other names are no reason for a second column: all are named with the line to write", async () => {
  const desk = await deskWithPump();
  const odd = "test,date,what,unit,1,2,3\n";
  desk.put(file, odd);
  const { exit, err } = await enter(desk, ...dry);
  expect([exit, desk.text(file)]).toEqual([1, odd]);
  expect(err).toBe(
    'logbook/pump/tests.csv:1:1 there are no columns "c1", "c2", "c3", "c4"\n' +
      '    expected "c1", "c2", "c3", "c4" among the column names\n' +
      "    write c1 in place of 1, c2 in place of 2, c3 in place of 3; make this the\n" +
      "    first line: test,date,what,unit,c1,c2,c3,c4\n" +
      'not saved: --dry "150 148 152 149" --unit "psi"\n',
  );
});

test("no column is added to a table whose shape has a fault", async () => {
  const desk = await deskWithPump();
  const odd = `${byHand}2026-02-05a,2026-02-05,dry,psi,150,148,149,150,stray\n`;
  desk.put(file, odd);
  const { exit, err } = await enter(desk, ...dry, "--note", "warm");
  expect([exit, desk.text(file)]).toEqual([1, odd]);
  expect(err).toContain("1 cell more than the first line has columns");
});

test.each([
  ["--dry", "131psi 133psi 132psi 130psi"],
  ["--dry", "131 133 132 130 psi"],
  ["--dry", "131 / 133 / 132 / 130"],
  ["--leak-down", "74 / 80 72 / 80 73/80 75 /80"],
  ["--leak-down", "74psi/80psi 72psi/80psi 73psi/80psi 75psi/80psi"],
  ["--leak-down", "8% 7% 9% 8%"],
])("%s %j is understood", async (option, line) => {
  const desk = await deskWithPump();
  const unit = /%|psi/.test(line) ? [] : ["--unit", "psi"];
  expect((await enter(desk, option, line, ...unit)).exit).toBe(0);
});
