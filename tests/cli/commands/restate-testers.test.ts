// restate --gauge, --to-gauge: what the logbook says of a tester counts, or is said not to.

import { describe, expect, test } from "vitest";
import { newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

describe("testers of the logbook", () => {
  const desk = async () => {
    const one = newDesk();
    one.put("logbook/.keep", "");
    for (const line of [
      "gauge add small --kind leak-down --unit psi --full-scale 100psi --class 1.6 --division 1psi --restrictor 1.016mm --restrictor-tolerance 0.0254mm --regulated 80psi --matched yes",
      "gauge add large --kind leak-down --unit kPa --restrictor 1.5mm --regulated 600kPa",
      "gauge add red --kind compression --unit psi",
    ])
      await one.type(line.split(" "));
    return one;
  };

  // 4.74 %, and u(alpha) at 64/80 by dials of 1.6 % of 100 psi, matched: 2.916·√((u/78.7)² + (u/94.7)²), u = √(0.4²/3 + 1/12) = 0.370
  test("what they say of themselves need not be typed", async () => {
    const told = await (
      await desk()
    ).json("restate", "--gauge", "small", "--read", "64psi", "--to-gauge", "large");
    expect(Number(told.lost)).toBeCloseTo(0.0474, 4);
    expect(Number(told.u_alpha) / Number(told.alpha)).toBeCloseTo(0.0178, 4);
  });

  test("what is typed goes before", async () => {
    const told = await (
      await desk()
    ).json("restate", "--gauge", "small", "--read", "80psi", "--regulated", "100psi", "--to-gauge", "small");
    expect(Number(told.lost)).toBeCloseTo(0.2064, 4); // table C.8: 20 % at 100 psi is 20.641 at 80
  });

  test("a name that is none, and a gauge that is no tester, are refused", async () => {
    const one = await desk();
    expect((await one.type(["restate", "--gauge", "smal", "--read", "64psi"])).err).toContain(
      "did you mean small?",
    );
    const { exit, err } = await one.type(["restate", "--gauge", "red", "--read", "64psi"]);
    expect([exit, err.split("\n")[0]]).toEqual([2, "red is a compression gauge"]);
  });
});

describe("a tester read with open holes", () => {
  // handbook example 8 (computed): holes 0.80, 1.00, 1.25 mm read 74, 66, 52; 61 psi, u 0.577, is 1.083 ± 0.013 mm
  const cheapo = "cheapo,leak-down,psi,100,1,0.02,unknown,0.8mm:74psi 1.0mm:66psi 1.25mm:52psi,";
  const percent = "percent,leak-down,%,,,,unknown,0.8mm:20% 1.0mm:35%,";
  const large = "large,leak-down,kPa,,,,1.5,,600";
  const desk = () => {
    const one = newDesk();
    const columns = "gauge,kind,unit,full_scale,class_percent,division,restrictor_mm,known_holes,regulated";
    one.put("logbook/gauges.csv", [columns, cheapo, percent, large, ""].join("\n"));
    const typed = (line: string) => one.type(["restate", ...line.split(" ")]);
    const document = async (line: string) => {
      const told = await one.json("restate", ...line.split(" "));
      expect(misfits(told, schemaOf("restate"))).toEqual([]);
      return told;
    };
    return { typed, document };
  };

  test("tells the hole, without a supply or a restrictor", async () => {
    const { typed, document } = desk();
    const { exit, out } = await typed("--gauge cheapo --read 61psi");
    expect([exit, out.replace(/\s+/g, " ")]).toEqual([
      0,
      expect.stringMatching(
        /^It leaks like a drilled hole of 1\.083 ± 0\.013 mm \(0\.043 in\), by the open holes read on this tester\./,
      ),
    ]);
    expect(out).not.toContain("next ");
    const told = await document("--gauge cheapo --read 61psi");
    expect(Number(told.equalHole_mm)).toBeCloseTo(1.083, 3);
    expect(Number(told.u_equalHole_mm)).toBeCloseTo(0.013, 3);
    expect(Object.keys(told)).not.toContain("alpha");
  });

  test("tells nothing outside their span, and which hole is wanting", async () => {
    const { typed, document } = desk();
    const above = await typed("--gauge cheapo --read 75psi");
    expect(above.exit).toBe(0);
    expect(above.out.replace(/\s+/g, " ")).toContain(
      "span, 52 to 74 psi. next read a smaller hole on it too",
    );
    expect((await typed("--gauge cheapo --read 50psi")).out).toContain("read a larger hole on it too");
    expect(await document("--gauge cheapo --read 50psi")).toMatchObject({
      refused: { code: "holes-outside" },
    });
  });

  // by hand: 0.8·(1/0.8)^(10/15) = 0.928 mm
  test("in percent, too", async () => {
    const told = await desk().document("--gauge percent --lost 30");
    expect(Number(told.equalHole_mm)).toBeCloseTo(0.928, 3);
  });

  test("is told for a tester of known bore, and not for one of unknown bore", async () => {
    const { typed, document } = desk();
    const { out } = await typed("--gauge cheapo --read 61psi --to-gauge large");
    expect(out).toMatch(/^The other tester would read /);
    expect(out).toContain("the other restrictor made like the drilled holes");
    const told = await document("--gauge cheapo --read 61psi --to-regulated 100psi");
    expect(told).toMatchObject({ refused: { code: "restrictor-unknown" } });
    expect(Number(told.equalHole_mm)).toBeCloseTo(1.083, 3);
  });

  test("asks for holes only where none were read", async () => {
    const { out } = await newDesk().type(["restate", "--read", "60psi", "--regulated", "80psi"]);
    expect(out).toContain("sealtrend gauge calibrate TESTER --hole SIZE:READING");
  });
});

describe("the same tester", () => {
  const desk = (row: string) => {
    const one = newDesk();
    one.put("logbook/gauges.csv", `gauge,kind,unit,restrictor_mm,regulated,reads_high\n${row}\n`);
    return one;
  };
  const same = "restate --gauge tester --to-gauge tester --read 64psi".split(" ");

  test("at the same supply reads the same: nothing changes, and its bore does not count", async () => {
    const { out } = await desk("tester,leak-down,psi,1.016,80,").type(same);
    expect(out).toMatch(/^Nothing changes: the same tester at the same supply reads 64 of 80 psi again\.\n/);
    expect(out).not.toContain("for dials and bores");
    const told = await desk("tester,leak-down,psi,1.016,80,").json(...same);
    expect(misfits(told, schemaOf("restate"))).toEqual([]);
    expect(told.unchanged).toBe("same-tester");
    expect(Number(told.lost)).toBeCloseTo(0.2, 9);
  });

  // handbook example 6: u 1.9 by the dials alone
  test("at another supply its bore cancels", async () => {
    const told = await desk("tester,leak-down,psi,1.016,80,").json(...same, "--to-regulated", "100psi");
    expect((100 * Number(told.lost)).toFixed(2)).toBe("19.38");
    expect((100 * Number(told.u_lost)).toFixed(1)).toBe("1.9");
  });

  test("what it reads too high is taken off, and said", async () => {
    const line = ["restate", "--gauge", "tester", "--read", "62psi"];
    const { out } = await desk("tester,leak-down,psi,1.016,80,2").type(line);
    expect(out.replace(/\s+/g, " ")).toContain(
      "logbook tester reads 2 psi high: 60 psi counts for the 62 psi read",
    );
    const told = await desk("tester,leak-down,psi,1.016,80,2").json(...line);
    expect(Number(told.alpha)).toBeCloseTo(1.0586, 4); // handbook example 1, 60/80
  });
});

describe("testers that were compared", () => {
  // handbook example 6; (1.5/1.016)² = 2.1797
  test("stand to each other as measured, whatever their bores are", async () => {
    const one = newDesk();
    one.put(
      "logbook/gauges.csv",
      [
        "gauge,kind,unit,restrictor_mm,regulated,link_to,link_factor,link_u,link_date",
        "small,leak-down,psi,unknown,80,large,2.1797,0.02,2026-03-01",
        "large,leak-down,kPa,unknown,600,,,,",
        "",
      ].join("\n"),
    );
    const line = ["restate", "--gauge", "small", "--read", "64psi", "--to-gauge", "large"];
    const told = await one.json(...line);
    expect(misfits(told, schemaOf("restate"))).toEqual([]);
    expect([told.lowLost, told.highLost].map((lost) => (100 * Number(lost)).toFixed(2))).toEqual([
      "4.74",
      "7.03",
    ]);
    expect((await one.type(line)).out.replace(/\s+/g, " ")).toContain(
      "logbook small and large were compared: a leak by the first is 2.180 times that by the other, ± 2.0 %",
    );
  });
});
