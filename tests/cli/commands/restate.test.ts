// restate: the screen and the document. The numbers are tested with the core and against outside programs; here it is
// that they arrive, rounded to what the dials carry, and that what cannot be told is not.

import { describe, expect, test } from "vitest";
import { newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const typed = (line: string) => newDesk().type(["restate", ...line.split(" ")]);
const document = (line: string) => newDesk().json("restate", ...line.split(" "));
const example = "--read 64psi --regulated 80psi --restrictor 1.016mm";

describe("told for another tester", () => {
  // handbook example 6: 4.74 … 7.03 %, d·√0.9245 = 0.977 mm
  test("the band stands first, then both testers side by side, the leak, and what was taken for granted", async () => {
    const { exit, out, err } = await typed(
      `${example} --to-regulated 600kPa --to-restrictor 1.5mm --units kPa`,
    );
    expect([exit, err]).toEqual([0, ""]);
    expect(out).toBe(`The other tester would read 558 to 572 of 600 kPa: 4.7 to 7.0 % lost.

                   as read    there
supply         kPa   551.6      600
restrictor     mm    1.016      1.5
reads          kPa   441.3  558-572
lost           %        20  4.7-7.0

4.7 % if the leak is a hole, 7.0 % if it is a long thin gap, ± 0.6 for dials and
bores.
It leaks like a hole of 0.98 ± 0.03 mm made like the restrictor: 40 L of air a
minute.

±        one standard uncertainty: 2 chances in 3; twice as wide 19 in 20
assumed  both restrictors made alike, the make of the restrictor unknown, bores
         within 0.025 mm, dials within 14 kPa, divided in 6.9 kPa, sea level,
         the cylinder as cool as the supply air
`);
  });

  test("a supply alone is another supply on the same restrictor, whose bore need not be known", async () => {
    const { out } = await typed("--read 64psi --regulated 80psi --to-regulated 100psi");
    expect(out).toMatch(/^This tester would read 75 to 81 of 100 psi: 19 to 25 % lost\.\n/);
    expect(out).toContain("the same restrictor");
    expect(out).not.toContain("like a hole of");
  });

  test("the document holds the leak, the band and where it comes from, and fits its schema", async () => {
    const told = await document(`${example} --to-regulated 600kPa --to-restrictor 1.5mm`);
    expect(misfits(told, schemaOf("restate"))).toEqual([]);
    expect(told).toMatchObject({
      schema: "sealtrend/restate@1",
      cd: 0.82,
      chokedLeak: true,
      chokedRestrictor: false,
    });
    const number = (key: string): number => Number(told[key]);
    expect([number("alpha"), number("lowLost"), number("highLost")].map((x) => x.toFixed(4))).toEqual([
      "0.9245",
      "0.0474",
      "0.0703",
    ]);
    expect(number("lost")).toBe(number("lowLost"));
    expect(number("read_kPa")).toBeCloseTo(600 * (1 - number("lost")), 9);
    expect(told).not.toHaveProperty("refused");
  });

  test("every option of the other tester reaches the answer", async () => {
    const lost = async (more: string): Promise<number> =>
      Number((await document(`${example} --to-restrictor 1.5mm ${more}`.trim())).lost);
    const plain = await lost("");
    const all = await Promise.all(
      [
        "--to-regulated 90psi",
        "--to-altitude 2000m",
        "--cd 0.82 --to-cd 0.7",
        "--model iso6358",
        "--model iso6358 --critical-ratio 0.3",
      ].map(lost),
    );
    expect(new Set([plain, ...all]).size).toBe(6);
    expect(await lost("--profile coned --to-profile coned")).toBeCloseTo(plain, 12);
  });
});

describe("refused", () => {
  test("too much band: the reason has both figures, the document keeps the numbers", async () => {
    const line = `${example} --to-regulated 30psi`;
    const { exit, out } = await typed(line);
    expect(exit).toBe(0);
    expect(out.replace(/\s+/g, " ")).toContain(
      "Not restated: too much depends on the shape of the leak: 25 % lost through a hole, 7 % through a long thin gap.",
    );
    expect(out).not.toContain("would read");
    const told = await document(line);
    expect(misfits(told, schemaOf("restate"))).toEqual([]);
    expect(told.refused).toMatchObject({ code: "band-wide" });
    expect(Number(told.lost)).toBeCloseTo(0.2517, 4);
  });

  test.each([
    ["--lost 18 --to-regulated 80psi", "supply-unknown"],
    ["--lost 18 --regulated 80psi --to-restrictor 1mm", "restrictor-unknown"],
    ["--read 60psi --regulated 80psi --restrictor 1mm --to-restrictor unknown", "restrictor-unknown"],
    [`${example} --profile coned --to-profile thin-plate`, "makes-differ"],
    ["--read 78psi --regulated 80psi --restrictor 1mm --to-regulated 100psi", "too-tight"],
    ["--read 0psi --regulated 80psi --restrictor 1mm --to-regulated 100psi", "no-seal"],
    ["--read 76.62psi --regulated 80psi --restrictor 1mm --to-regulated 90psi", "dials-coarse"],
  ])("%s is %s", async (line, code) => {
    const { exit, out } = await typed(line);
    expect([exit, out.startsWith("Not restated: ")]).toEqual([0, true]);
    expect(out).toContain("\nnext     ");
    const told = await document(line);
    expect(misfits(told, schemaOf("restate"))).toEqual([]);
    expect(told.refused).toMatchObject({ code });
  });

  test("never in order to turn a cold reading warm or a dry one oiled: --why says so", async () => {
    const { out } = await typed(`${example} --why`);
    expect(out.replace(/\s+/g, " ")).toContain(
      "a cold reading never becomes a warm one, nor a dry one an oiled one",
    );
  });
});

describe("one reading by itself", () => {
  test("says what was lost and how large the leak is", async () => {
    const { out } = await typed("--read 60psi --regulated 80psi --restrictor 0.040in");
    expect(out).toMatch(
      /^25 % lost \(± 2\) on this tester\.\n\nIt leaks like a hole of 1\.05 ± 0\.03 mm \(0\.041 in\) made/,
    );
  });

  test("--why names the coefficient that an area rests on", async () => {
    const { out } = await typed("--read 60psi --regulated 80psi --restrictor 0.040in --why");
    expect(out).toContain("leak over restrictor (alpha) 1.059 ± 0.050, by isentropic flow");
    expect(out.replace(/\s+/g, " ")).toContain(
      "effective area 0.704 ± 0.056 mm2, with a discharge coefficient of 0.82 ± 0.08",
    );
  });

  // handbook examples 3 and 4
  test("tighter than the dials can show is an upper limit; finer dials show the leak", async () => {
    const { out } = await typed("--read 78psi --regulated 80psi --restrictor 0.040in");
    expect(out.replace(/\s+/g, " ")).toMatch(
      /^Tighter than these dials can show: the leak is lost in their doubt, at most that of a hole of 0\.72 mm/,
    );
    const told = await document("--read 78psi --regulated 80psi --restrictor 0.040in");
    expect(misfits(told, schemaOf("restate"))).toEqual([]);
    expect(told.from).toMatchObject({ judgement: "tight" });
    expect((await typed("--read 78psi --regulated 80psi --restrictor 0.040in --matched yes")).out).toMatch(
      /^2\.5 % lost \(± 0\.7\)/,
    );
  });

  test("class, scale, division, tolerance, height and temperatures are taken as told", async () => {
    const told = await document(
      "--read 440kPa --regulated 550kPa --restrictor 1mm --restrictor-tolerance 0.02mm --altitude 1500m --cylinder-temp 80C --air 20C --class 1.6 --full-scale 700kPa --division 10kPa",
    );
    const shown = ["alpha", "u_alpha", "equalHole_mm", "u_equalHole_mm", "area_mm2", "u_area_mm2"].map(
      (key) => Number(told[key]).toFixed(3),
    );
    expect(shown).toEqual(["1.030", "0.054", "1.015", "0.029", "0.664", "0.053"]);
  });

  test("a percent dial alone gives no size anywhere, in the document neither", async () => {
    const { out } = await typed("--lost 18");
    expect(out.replace(/\s+/g, " ")).toMatch(
      /^18 % lost on this tester; how large the leak is cannot be told without its supply pressure and the bore of its restrictor\./,
    );
    expect(out).not.toMatch(/\dmm|\d mm|L of air/);
    for (const line of [
      "--lost 18",
      "--lost 18%",
      "--lost 18 --restrictor 1mm",
      "--lost 18 --regulated 80psi",
    ]) {
      const told = await document(line);
      expect(misfits(told, schemaOf("restate"))).toEqual([]);
      expect(Object.keys(told).filter((key) => /^(area|u_area|equalHole_mm|flow|read_)/.test(key))).toEqual(
        [],
      );
    }
  });

  test("no seal has no size either", async () => {
    const line = "--read 0psi --regulated 80psi --restrictor 1mm";
    expect((await typed(line)).out).toMatch(/^No seal is measurable/);
    expect(await document(line)).not.toHaveProperty("area_mm2");
  });

  test("what was taken for granted of the dials is told in the unit of the reading", async () => {
    const { out } = await typed("--read 5.1bar --regulated 6bar --restrictor 1mm");
    expect(out.replace(/\s+/g, " ")).toContain("dials within 0.14 bar, divided in 0.069 bar"); // 2 and 1 psi
  });

  test("nothing on the screen is wider than it, and below 60 columns there is no table", async () => {
    const desk = newDesk();
    for (const width of [80, 60, 40]) {
      const { out } = await desk.type(["restate", ...`${example} --to-restrictor 1.5mm --why`.split(" ")], {
        width,
      });
      expect(Math.max(...out.split("\n").map(({ length }) => length))).toBeLessThanOrEqual(width);
    }
  });
});

describe("faults of the line", () => {
  test.each([
    ["--read 60 --regulated 80psi", '--read "60": in which unit?', "--read 60psi"],
    ["--read 60psi --regulated 80", '--regulated "80": in which unit?', "--regulated 80psi"],
    [
      "--read 60psi --regulated 80psi --restrictor 1",
      '--restrictor "1": in which unit?',
      "--restrictor 0.040in",
    ],
    ["--read 60psi --regulated 80psi --restrictor 0mm", '--restrictor "0mm"', "--restrictor 0.040in"],
    ["--read 60psi --regulated 80psi --restrictor 40mm", '--restrictor "40mm"', "--restrictor 0.040in"],
    ["--read 60psi --regulated 0psi", '--regulated "0psi"', "--regulated 80psi"],
    ["--read 60psi", "--read without the supply", "add --regulated 80psi"],
    ["--regulated 80psi", "no reading", "--read 60psi --regulated 80psi"],
    ["--lost 120 --regulated 80psi", '--lost "120"', "--lost 18%"],
    ["--lost -1 --regulated 80psi", '--lost "-1"', "--lost 18%"],
    ["--lost 18 --read 60psi --regulated 80psi", "--read and --lost", "keep the one that stood on the dial"],
    ["--lost 18 --cd 2", '--cd "2"', "--cd 0.82"],
    ["--lost 18 --class 50", '--class "50"', "--class 1.6%"],
    ["--lost 18 --class 1.6 --full-scale 60psi", "--full-scale below the supply", "leave --full-scale out"],
    ["--lost 18 --altitude 350", '--altitude "350": in which unit?', "--altitude 350m"],
    ["--lost 18 --cylinder-temp 80", '--cylinder-temp "80": in which unit?', "--cylinder-temp 80C"],
    ["--lost 18 --critical-ratio 0.4", "--critical-ratio without ISO 6358", "add --model iso6358"],
    ["--read 74/80", '--read "74/80"', "--read 74psi --regulated 80psi"],
    ["--read 5.1/6bar --restrictor 1mm", '--read "5.1/6bar"', "--read 5.1bar --regulated 6bar"],
    ["--read 60psi --regulated 80psi --division 0psi", '--division "0psi"', "--division 1psi"],
    ["--read 60psi --regulated 80psi --division 80psi", "at most a fifth of the supply", "--division 3.2psi"],
    ["--read 60psi --regulated 80psi --air 0K", '--air "0K"', "--air 22C"],
    ["--read 60psi --regulated 80psi --cylinder-temp 0K", '--cylinder-temp "0K"', "--cylinder-temp 80C"],
    [
      "--read 60psi --regulated 80psi --restrictor 0.5mm --restrictor-tolerance 0.4mm",
      '--restrictor-tolerance "0.4mm"',
      "--restrictor-tolerance 0.02mm",
    ],
  ])("%s", async (line, found, mend) => {
    const { exit, out, err } = await typed(line);
    expect([exit, out]).toEqual([2, ""]);
    expect(err).toContain(found);
    expect(err).toContain(mend);
  });

  test("all of them are told at once", async () => {
    const { err } = await typed("--read 60 --regulated 80 --restrictor 1 --to-cd 3");
    expect(err.match(/in which unit/g)).toHaveLength(3);
    expect(err).toContain('--to-cd "3"');
  });
});
