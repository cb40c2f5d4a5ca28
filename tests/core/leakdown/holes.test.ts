// A reading on a tester whose bore nobody knows but which was read with open holes: worked example 8 and case (d) of H.2 in
// the handbook (computed), and its check value 12.

import {
  type LeakQuestion,
  type Typed,
  answerLeak,
  gaugePressure,
  holeByHoles,
  seaLevelPressure,
  temperature,
  toSi,
  warmthOf,
} from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { bored, inMm, mm, psi, read, uDial, usual } from "./readings.ts";

const holes = [
  { hole: mm(0.8), reads: psi(74) },
  { hole: mm(1), reads: psi(66) },
  { hole: mm(1.25), reads: psi(52) },
];
const pressure = (cylinder: number, supply?: number): Typed => ({
  kind: "pressure",
  cylinder: psi(cylinder),
  ...(supply === undefined ? {} : { supply: psi(supply) }),
});
const asked = (typed: Typed, rest: Partial<LeakQuestion> = {}) =>
  answerLeak({ typed, restrictor: {}, knownHoles: { holes }, ambient: seaLevelPressure, uDial, ...rest });

describe("between the holes", () => {
  test("61 psi is a hole of 1.083 ± 0.013 mm, without supply, alpha or area (H.3 #8)", () => {
    const { byHoles, ...rest } = asked(pressure(61), { uDial: psi(0.577) });
    expect(byHoles?.kind).toBe("measured");
    if (byHoles?.kind !== "measured") return;
    expect([byHoles.hole, byHoles.uHole].map((x) => inMm(x).toFixed(3))).toEqual(["1.083", "0.013"]);
    expect(rest).toEqual({});
  });

  test("a percent dial does the same", () => {
    const lost = holes.map(({ hole, reads }) => ({ hole, reads: 1 - reads / psi(80) }));
    const { byHoles } = asked({ kind: "lost", lost: 1 - 61 / 80 }, { knownHoles: { holes: lost } });
    expect(byHoles?.kind === "measured" ? inMm(byHoles.hole) : 0).toBeCloseTo(1.083, 3);
  });

  // √(353.15/293.15) = 1.0976: the hole is larger by its root
  test("the holes were open to cool air: a cylinder of 80 °C leaks more than it seems", () => {
    const warmth = warmthOf(temperature(353.15), temperature(293.15));
    const { byHoles } = asked(pressure(61), { warmth });
    expect(byHoles?.kind === "measured" ? inMm(byHoles.hole) : 0).toBeCloseTo(1.083 * Math.sqrt(1.0976), 3);
  });

  test("a known bore comes first", () => {
    const told = asked(pressure(60, 80), { restrictor: usual });
    expect(told.figures?.alpha).toBeCloseTo(1.0586, 4);
    expect(told).not.toHaveProperty("byHoles");
  });
});

describe("where the holes tell nothing", () => {
  test.each([
    [75, "holes-outside"],
    [50, "holes-outside"],
  ])("%s psi lies outside their span", (cylinder, code) => {
    expect(asked(pressure(cylinder))).toMatchObject({ byHoles: { kind: "outside" }, refused: code });
  });

  test("holes that contradict one another", () => {
    const more = [...holes, { hole: mm(1.4), reads: psi(60) }];
    expect(asked(pressure(61), { knownHoles: { holes: more } }).refused).toBe("holes-contradictory");
  });

  test("one hole beside no supply", () => {
    expect(asked(pressure(61), { knownHoles: { holes: holes.slice(0, 1) } }).refused).toBe("holes-too-few");
  });

  test("holes read at 80 psi say nothing of a reading at 100", () => {
    const told = asked(pressure(61, 100), { knownHoles: { holes, supply: psi(80) } });
    expect(told.refused).toBe("holes-other-supply");
    expect(told).not.toHaveProperty("byHoles");
    expect(asked(pressure(61, 81), { knownHoles: { holes, supply: psi(80) } }).refused).toBeUndefined();
  });

  test("no seal, and dials that disagree", () => {
    expect(asked(pressure(0, 80)).judgement?.kind).toBe("no-seal");
    expect(asked(pressure(90, 80)).refused).toBe("gauges-disagree");
  });
});

describe("one hole", () => {
  // check values 12 and 13: 1.016 mm x √1.05856 = 1.0453 mm
  test("serves as a master where the supply is known", () => {
    const one = [{ hole: mm(1.016), reads: psi(61.767) }];
    const found = holeByHoles({ holes: one, holds: "pressure", value: psi(60), uDial, reading: read(60) });
    expect(found?.kind === "measured" ? inMm(found.hole) : 0).toBeCloseTo(1.0453, 4);
    const tight = holeByHoles({ holes: one, holds: "pressure", value: psi(79), uDial, reading: read(79) });
    expect(tight).toBeUndefined();
  });
});

describe("told for a tester of known bore", () => {
  // check value 12: a hole like the restrictor reads 61.767 of 80 psi and 77.916 of 100
  const known = {
    holes: [
      { hole: mm(1.016), reads: psi(61.767) },
      { hole: mm(1.3), reads: psi(49) },
    ],
  };
  const onto = (supply: number, more: Partial<LeakQuestion["other"]> = {}) =>
    asked(pressure(61.767), {
      uDial: psi(0.4),
      knownHoles: known,
      other: { supply: psi(supply), restrictor: bored(1.016), ...more },
    });

  test("a hole of 1.016 mm on a restrictor of 1.016 mm reads 61.767 of 80 and 77.916 of 100 psi", () => {
    const read = [80, 100].map((supply) => (onto(supply).restated?.reading.cylinder ?? 0) / toSi(1, "psi"));
    expect(read[0]).toBeCloseTo(61.767, 2);
    expect(read[1]).toBeCloseTo(77.916, 2);
  });

  test("the band is that of the same leak read behind a restrictor", () => {
    const behind = answerLeak({
      typed: pressure(61.767, 80),
      restrictor: usual,
      ambient: seaLevelPressure,
      uDial,
      other: { supply: psi(100), restrictor: usual },
    });
    expect(onto(100).restated?.laminarLost).toBeCloseTo(behind.restated?.laminarLost ?? 0, 4);
  });

  test("not for one of unknown bore, of another make, or in percent without the supply", () => {
    expect(onto(80, { restrictor: {} }).refused).toBe("restrictor-unknown");
    expect(onto(80, { restrictor: { ...usual, profile: "coned" } }).refused).toBe("makes-differ");
    const lost = {
      holes: [
        { hole: mm(0.8), reads: 0.2 },
        { hole: mm(1), reads: 0.35 },
      ],
    };
    const percent = asked(
      { kind: "lost", lost: 0.3 },
      { knownHoles: lost, other: { supply: psi(80), restrictor: usual } },
    );
    expect(percent).toMatchObject({ byHoles: { kind: "measured" }, refused: "supply-unknown" });
  });

  // 2·ln(1.25)/14 psi·10 psi = 0.32
  test("nor where the holes leave the size open by more than a quarter", () => {
    expect(
      asked(pressure(61), {
        uDial: psi(10),
        other: { supply: gaugePressure(600_000), restrictor: bored(1.5) },
      }).refused,
    ).toBe("dials-coarse");
  });
});
