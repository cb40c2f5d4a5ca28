// What the screens say of a leak-down, and what they leave open: limits, masters that cannot be, testers, places. Readings
// invented; rules from handbook/leakdown.md A.1, B, H.2.

import { describe, expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const deskOf = async (...engine: readonly string[]): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--ignition", "spark", ...engine]);
  return desk;
};
const four = ["--cylinders", "4"];
const flat = (text: string): string => text.replaceAll(/\s+/g, " ");
const said = async (desk: Desk, ...words: readonly string[]): Promise<string> => {
  const { out, err } = await desk.type([
    "enter",
    "pump",
    "--altitude",
    "0m",
    "--engine-temp",
    "warm",
    ...words,
  ]);
  return flat(out + err);
};
const unit = ["--unit", "psi"];

describe("takes", () => {
  test("that contradict each other are named, and the screen, rows and JSON say so", async () => {
    const desk = await deskOf(...four);
    const [first, second] = ["74/80 74/80 74/80 74/80", "74/80 74/80 74/80 40/80"];
    const out = await said(desk, "--leak-down", first, "--leak-down", second, ...unit);
    expect(out).toContain("Cylinder 4 is suspect: its two leak-down readings contradict each other.");
    expect(out).toContain("leak-down lost, mean of 2 %");
    expect(out).toContain("the leak-down takes of cylinder 4 lost 7.5 and 50 %");
    const document = await desk.json("show", "pump");
    expect(misfits(document, schemaOf("show"))).toEqual([]);
    expect(JSON.stringify(document)).toContain('"repeats":"contradict"');
  });
});

describe("cylinders that lose alike", () => {
  const worn = ["--leak-down", "52/80 52/80 52/80 52/80", ...unit];

  test("look even, and the screen says what would tell", async () => {
    const out = await said(await deskOf(...four), ...worn);
    expect(out).toContain("35 % lost. That is much for all of them: worn alike, cylinders look even.");
    expect(out).toContain("The maker's limit, or a master orifice read that day, would tell.");
  });

  test("are judged by a master read that day", async () => {
    const out = await said(await deskOf(...four), ...worn, "--master", "60psi");
    expect(out).not.toContain("worn alike");
    expect(out).toContain("master");
  });

  test("are sound where little is lost, and the missing limit is only listed", async () => {
    const out = await said(await deskOf(...four), "--leak-down", "75/80 75/80 75/80 75/80", ...unit);
    expect(out).not.toContain("That is much");
    expect(out).toContain("the maker's leak-down limit, or a master orifice");
  });
});

describe("a master orifice", () => {
  const leak = ["--leak-down", "74/80 72/80 70/80 60/80", ...unit];

  test.each([
    ["80psi", "reads its whole supply"],
    ["0psi", "reads nothing"],
    ["90psi", "reads more than its supply"],
  ])("of %s beside 80 psi is none", async (master, why) => {
    const desk = await deskOf(...four);
    expect(await said(desk, ...leak, "--master", master)).toContain(why);
    expect(desk.text("logbook/pump/tests.csv")).not.toContain("2026-11-25a");
  });

  test("in pressure beside readings in percent needs the supply, and is not turned into another limit", async () => {
    const percent = ["--leak-down", "18 12 10 25", "--unit", "%", "--master", "43psi"];
    const desk = await deskOf(...four);
    const refused = await said(desk, ...percent);
    expect(refused).toContain("without its supply pressure");
    expect(refused).not.toContain("43%");
    await said(desk, ...percent, "--regulated", "80psi");
    // 43/80 psi is 46.25 % lost
    expect((await desk.json("show", "pump")).leakTest).toMatchObject({
      masterLost: expect.closeTo(0.4625, 4) as number,
    });
  });
});

describe("air that is heard", () => {
  test("at the exhaust of a two-stroke points to no valve, and what ports it has is asked for", async () => {
    const desk = await deskOf("--cylinders", "2", "--cycle", "two-stroke");
    const out = await said(desk, "--leak-down", "74/80 50/80", ...unit, "--heard", "none exhaust");
    expect(out).toContain("exhaust in 2");
    expect(out).not.toContain("exhaust valve");
    expect(flat((await desk.type(["engine", "show", "pump"])).out)).toContain("porting");
    expect((await desk.type(["how", "leak-down", "pump"])).out).not.toContain("oil filler");
  });

  test("stands before where none was heard, and without a reading it points too", async () => {
    const out = await said(await deskOf(...four), "--heard", "none none none exhaust");
    expect(out).toContain("Air heard: exhaust in 4; nowhere in 1, 2 and 3.");
    expect(out).toContain("In 4 the air at the exhaust points to the exhaust valve.");
  });

  test("at the cylinder itself as its neighbour is refused", async () => {
    const out = await said(await deskOf(...four), "--heard", "none none none neighbour:4");
    expect(out).toContain('cylinder "4" is named as its own neighbour');
  });

  test("at a cylinder that does not stand next to it is questioned", async () => {
    const desk = await deskOf(...four);
    const written = JSON.parse(desk.text("logbook/pump/engine.json")) as object;
    desk.put("logbook/pump/engine.json", JSON.stringify({ ...written, banks: [["1", "2", "3", "4"]] }));
    const out = await said(desk, "--heard", "none none neighbour:1 neighbour:3");
    expect(out).toContain("In 3 the air was noted at 1, which does not stand next to it: look again.");
    expect(out).toContain("then air into 4 again: still heard there it is the gasket");
  });

  test("in too many words asks for commas", async () => {
    const out = await said(await deskOf(...four), "--heard", "none none oil pan left none none none");
    expect(out).toContain("with places of several words, commas between the cylinders");
  });
});

describe("a limit for one tester", () => {
  test("says which, where this is another", async () => {
    const desk = await deskOf(...four, "--use", "aircraft", "--bore", "110mm");
    await desk.type(["gauge", "add", "wide", "--kind", "leak-down", ...unit, "--restrictor", "1.524mm"]);
    await said(desk, "--leak-down", "74/80 72/80 58/80 71/80", ...unit, "--gauge", "wide");
    const { out } = await desk.type(["show", "pump", "--why"]);
    expect(flat(out)).toContain("it is for another tester, 1.02 mm at 80 psi"); // AC 43.13-1B: 0.040 in below 5 in
    expect(misfits(await desk.json("show", "pump"), schemaOf("show"))).toEqual([]);
  });
});

describe("with oil", () => {
  test("a change within the dials denies nothing where half of the leak may have gone", async () => {
    const desk = await deskOf(...four);
    const out = await said(
      desk,
      ...["--leak-down", "74/80 74/80 74/80 74/80", "--leak-down-oiled", "76/80 x x x", ...unit],
    );
    expect(out).toContain("these dials cannot tell how much of the leak the oil closed");
    expect(out).not.toContain("not the larger part");
  });
});

test("a reading with oil alone stands in the table, though it compares with nothing", async () => {
  const desk = await deskOf(...four);
  const out = await said(desk, "--leak-down-oiled", "74/80 60/80 x x", ...unit);
  expect(out).toContain("leak-down with oil lost % 8 25 - -");
  const document = await desk.json("show", "pump");
  expect(misfits(document, schemaOf("show"))).toEqual([]);
  expect(document.leakTest).toMatchObject({
    alone: [{ what: "oiled", lost: [expect.closeTo(0.075, 9), 0.25, null, null] as unknown[] }],
  });
});

describe("what was typed", () => {
  test("a mark of doubt behind the supply is shown its place", async () => {
    const out = await said(await deskOf(...four), "--leak-down", "74/80 72/80? 70/80 60/80", ...unit);
    expect(out).toContain("72?/80");
  });

  test("a pressure without its supply is told how to be entered", async () => {
    const out = await said(await deskOf(...four), "--leak-down", "74 72 70 60", ...unit);
    expect(out).toContain("enter it as 74/80 or with --regulated 80psi");
  });
});

describe("two testers over the years", () => {
  test("a leak that grew across a change that begins anew stands in the first sentences, and JSON has its doubt", async () => {
    const desk = await deskOf(...four);
    for (const [name, bore] of [
      ["old", "1.016mm"],
      ["new", "1.524mm"],
    ] as const)
      await desk.type([
        "gauge",
        "add",
        name,
        "--kind",
        "leak-down",
        ...unit,
        "--restrictor",
        bore,
        "--regulated",
        "80psi",
      ]);
    await said(desk, "--leak-down", "72/80 70/80 71/80 70/80", "--gauge", "old", "--date", "2018-01-01");
    await said(desk, "--leak-down", "77/80 77/80 76/80 66/80", "--gauge", "new", "--date", "2022-01-01");
    const out = flat((await desk.type(["history", "pump"])).out);
    expect(out).toMatch(
      /^Across the change of tester in 2022-01 a leak grew, told as a hole: cylinder 4 from 0\.85 to 1\.4\d mm\./, // 1.016 sqrt(0.707), 1.524 sqrt(0.855)
    );
    expect(out).toContain("Not restated, because cylinder 1 is tighter than the dials can show.");
    const document = await desk.json("history", "pump");
    expect(misfits(document, schemaOf("history"))).toEqual([]);
    expect(JSON.stringify(document)).toContain("u_lnRatioBetweenDays");
  });
});
