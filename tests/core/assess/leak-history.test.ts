// Leak-down over the years through several testers. Rules: handbook/leakdown.md H.2 (c), statistics.md L.10; the holes of
// the example H.3 #7 and the restated readings of C.8 were computed there. Readings invented.

import { assessHistory } from "@sealtrend/core";
import { describe, expect, test } from "vitest";
import { type Row, recordOf } from "./records.ts";

const header =
  "gauge,kind,unit,full_scale,class_percent,division,restrictor_mm,restrictor_tol_mm,dial,matched,link_to,link_factor,link_u,link_date";
const small = "small,leak-down,psi,100,2,1,1.016,0.0254,pressure,,,,,";
const large = "large,leak-down,psi,100,2,1,1.524,0.0254,pressure,,,,,";
const close = (value: number, digits = 3): unknown => expect.closeTo(value, digits);

const day = (test_: string, cells: string, more: Partial<Row> = {}): Row => ({
  test: test_,
  what: "leak-down",
  cells,
  gauge: "small",
  regulated_psi: "80",
  altitude_m: "0",
  ...more,
});

const historyOf = (gauges: readonly string[], ...tests: readonly Row[]) => {
  const { leakDown } = assessHistory(
    recordOf({
      cylinders: tests[0]?.cells.split(" ").length ?? 4,
      tests,
      gauges: [header, ...gauges, ""].join("\n"),
    }),
  );
  if (leakDown === undefined) throw new Error("no leak-down");
  return leakDown;
};
const works = ({ result }: ReturnType<typeof historyOf>) =>
  result.services.map(({ why, against }) => [why, against]);

describe("another tester of known bore", () => {
  test("its holes compare with those before, with bands; too much doubt to restate it begins anew (H.3 #7)", () => {
    const found = historyOf(
      [small, large],
      day("2015-05-02a", "70 70"),
      day("2022-05-02a", "77 77", { gauge: "large" }),
    );
    expect(works(found)).toEqual([["another tester", "nothing"]]);
    expect(found.testerChanges).toMatchObject([
      {
        fromTest: "2015-05-02a",
        toTest: "2022-05-02a",
        fromGauge: "small",
        toGauge: "large",
        carried: "new-history",
        holes: [{ label: "1", lnRatio: close(0.086), uLnRatio: close(0.15), shown: "no" }, { label: "2" }],
      },
    ]);
    const [change] = found.testerChanges[0]?.holes ?? [];
    expect([change?.before.hole, change?.after.hole].map((hole) => (hole ?? 0) * 1e3)).toEqual([
      close(0.854),
      close(0.931),
    ]);
    expect(Math.hypot(change?.before.uBetweenDays ?? 0, change?.after.uBetweenDays ?? 0)).toBeCloseTo(
      0.235,
      3,
    );
  });

  test("where it may be restated the series goes on: 60/80 through 0.040 in is 75.3/80 through 0.060 in", () => {
    // C.8: 60/80 on 0.040 -> 75.312 on 0.060; 64/80 -> 76.38. Dials that agree with the valve shut.
    const fine = [small, large].map((row) => row.replace("pressure,,", "pressure,yes,"));
    const found = historyOf(
      fine,
      day("2015-05-02a", "75 76 75 76", { gauge: "large" }),
      day("2016-05-02a", "60 64 62 63"),
    );
    expect(works(found)).toEqual([]);
    expect(found.testerChanges).toMatchObject([{ carried: "restated" }]);
    const [first] = found.result.cylinders;
    expect(first?.levels.map((ln = 0) => Math.exp(ln) * 80)).toEqual([close(75), close(75.312, 2)]);
    expect(found.result.tests.map(({ gauge, countsAs }) => [gauge, countsAs])).toEqual([
      ["large", undefined],
      ["small", "large"],
    ]);
  });

  test("a bore that is not known begins a new history, and no hole is told", () => {
    const unknown = large.replace("1.524", "unknown");
    const found = historyOf(
      [small, unknown],
      day("2015-05-02a", "70 72"),
      day("2016-05-02a", "70 72", { gauge: "large" }),
    );
    expect(works(found)).toEqual([["another tester", "nothing"]]);
    expect(found.testerChanges).toMatchObject([{ carried: "new-history", holes: [] }]);
    expect(found.holes[1]).toEqual([undefined, undefined]);
  });
});

describe("a tester that was compared with the other on one day", () => {
  // leak by linked / leak by small = 0.5, as through twice the area: 60/80 (alpha 1.0586) there is alpha 2.117 here.
  const linked = (factor: string): string =>
    `linked,leak-down,psi,100,2,1,unknown,,pressure,,small,${factor},0.03,2016-05-02`;

  test("counts as that one, its bore known or not", () => {
    const found = historyOf(
      [small, linked("1")],
      day("2015-05-02a", "70 72 71 73"),
      day("2016-05-02a", "70 72 60 73", { gauge: "linked" }),
    );
    expect(works(found)).toEqual([]);
    expect(found.testerChanges).toMatchObject([{ carried: "restated", holes: [] }]);
    expect(found.result.cylinders[2]?.levels.map((ln = 0) => Math.exp(ln) * 80)).toEqual([
      close(71),
      close(60, 2),
    ]);
  });

  test("of what the step leaves open only what lies beyond counts as a change", () => {
    // leaks far apart: the law of the leak and the link leave more open than sound cylinders scatter (0.02)
    const fine = [small, linked("0.734")].map((row) => row.replace("pressure,,", "pressure,yes,"));
    const changeOfFourth = (reads: string): number => {
      const found = historyOf(
        fine,
        day("2015-05-02a", "68 66 67 60"),
        day("2016-05-02a", `73 72 72.5 ${reads}`, { gauge: "linked" }),
      );
      expect(works(found)).toEqual([]);
      const moved = found.result.cylinders.map(({ levels: [a = 0, b = 0] }) => b - a);
      return (moved[3] ?? 0) - (moved[2] ?? 0);
    };
    // alpha 1.0586 x 0.734 = 0.777 reads about 68.1 psi: a little less is within what is open, and no change
    expect(changeOfFourth("67.6")).toBeCloseTo(0, 6);
    expect(changeOfFourth("62")).toBeLessThan(-0.05);
  });

  test("is restated by the factor: alpha 0.5293 there is 1.0586 here, 60/80", () => {
    // alpha 0.5293 reads 74.13 psi (C.8: 74/80 is 0.5359, 75/80 0.4867; by interpolation 74.13)
    const found = historyOf(
      [small, linked("0.5")],
      day("2015-05-02a", "60 60 60 60"),
      day("2016-05-02a", "74.13 74.13 74.13 74.13", { gauge: "linked" }),
    );
    expect(works(found)).toEqual([]);
    expect(Math.exp(found.result.cylinders[0]?.levels[1] ?? 0) * 80).toBeCloseTo(60, 1);
  });
});

describe("the same tester at another supply", () => {
  test("80 to 100 psi goes on, restated; 80 to 30 psi begins anew", () => {
    const at = (cells: string, psi: string): Row => day("2016-05-02a", cells, { regulated_psi: psi });
    const first = day("2015-05-02a", "64 65 66 65");
    // C.8: 20 % at 100 psi is 63.487/80
    const up = historyOf([small], first, at("80 80 80 80", "100"));
    expect(works(up)).toEqual([]);
    expect(Math.exp(up.result.cylinders[0]?.levels[1] ?? 0) * 80).toBeCloseTo(63.487, 2);
    expect(works(historyOf([small], first, at("22 22 22 22", "30")))).toEqual([
      ["another supply pressure", "nothing"],
    ]);
  });

  test("tests that follow at the new supply stay together, and a fall among them alarms", () => {
    const at = (year: string, cells: string): Row => day(`${year}-01-01a`, cells, { regulated_psi: "100" });
    const found = historyOf(
      [small],
      day("2016-01-01a", "74 75 74 75"),
      at("2018", "93 94 93 94"),
      at("2020", "93 94 94 94"),
      at("2022", "92 94 93 93"),
      at("2024", "93 93 93 86"),
      at("2025", "93 94 93 78"),
    );
    expect(works(found)).toEqual([]);
    expect(found.testerChanges).toMatchObject([
      { what: "supply", toTest: "2018-01-01a", carried: "restated" },
    ]);
    expect(found.result.cylinders.map(({ alarms }) => alarms.length > 0)).toEqual([
      false,
      false,
      false,
      true,
    ]);
  });

  test("what may not be restated begins anew once, where the supply changed, and goes on there", () => {
    const at = (year: string, cells: string): Row => day(`${year}-01-01a`, cells, { regulated_psi: "30" });
    const found = historyOf(
      [small],
      day("2016-01-01a", "64 65 66 65"),
      at("2018", "22 22 22 22"),
      at("2020", "22 22 22 22"),
      at("2022", "22 22 22 15"),
    );
    expect(works(found)).toEqual([["another supply pressure", "nothing"]]);
    expect(found.result.services.map(({ before }) => before)).toEqual([1]);
    // H.2: down to 30 psi hole and thin gap lie further apart than a factor of 2
    expect(found.testerChanges).toMatchObject([
      { what: "supply", carried: "new-history", refused: { reason: "band-wide", label: "1" } },
    ]);
  });

  test("regulators a little apart are one setting, and a percent dial without its supply is taken as it is", () => {
    const found = historyOf(
      [small],
      day("2015-05-02a", "72 73"),
      day("2016-05-02a", "71 72", { regulated_psi: "79" }),
    );
    expect([works(found), found.testerChanges]).toEqual([[], []]);
    const percent = { unit: "%", regulated_psi: "" };
    expect(
      works(historyOf([small], day("2015-05-02a", "8 9", percent), day("2016-05-02a", "9 9", percent))),
    ).toEqual([]);
  });
});
