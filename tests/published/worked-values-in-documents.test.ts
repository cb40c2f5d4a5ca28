// Worked values of handbook/statistics.md, computed there by independent R code from invented readings, through the
// whole command and its JSON: what a user types, what a script gets.

import { expect, test } from "vitest";
import { type Desk, newDesk } from "../cli/commands/desk.ts";

interface Shown {
  readonly cylinders: readonly { readonly t?: number; readonly standing?: string }[];
  readonly spread: Readonly<Record<string, number>>;
}

const psi = 6.894757293168;

const deskWith = async (cylinders: number): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--cylinders", String(cylinders), "--ignition", "spark"]);
  return desk;
};

// A.4: t in the order of descending pressure after the core, here by cylinder
test.each([
  ["150 148 152 120", { 2: 0.575174515580553, 4: 7.02853883317121 }],
  ["150 152 120 118", { 3: 6.59273956626162 }],
  ["165 160 158 162 140 161", { 2: 0.520089778972438, 3: 0.841354620154509, 5: 4.91246013871902 }],
  ["172 168 147 173", { 2: 0.762052420212444, 3: 4.72270301018618 }],
])("%s typed into enter give the worked t (A.4)", async (readings, expected) => {
  const desk = await deskWith(readings.split(" ").length);
  await desk.type(["enter", "pump", "--dry", readings, "--unit", "psi"]);
  const { cylinders } = (await desk.json("show", "pump")) as unknown as Shown;
  for (const [label, t] of Object.entries(expected))
    expect(cylinders[Number(label) - 1]?.t).toBeCloseTo(t, 9);
});

test("the spread of 150 148 152 120 is that of the worked example (A.4)", async () => {
  const desk = await deskWith(4);
  await desk.type(["enter", "pump", "--dry", "150 148 152 120", "--unit", "psi"]);
  const { spread } = (await desk.json("show", "pump")) as unknown as Shown;
  expect(spread.ratio).toBeCloseTo(0.789473684210526, 12);
  expect(spread.cv).toBeCloseTo(0.105885102201228, 12);
  expect(spread.range_kPa).toBeCloseTo(32 * psi, 9);
  expect(spread.median_kPa).toBeCloseTo(149 * psi, 9);
});

interface Told {
  readonly axis: { readonly kind: string };
  readonly cylinders: readonly {
    readonly course: string;
    readonly contrasts: readonly number[];
    readonly theilSen: { readonly slope: number; readonly low: number; readonly high: number };
    readonly pooled: { readonly t: number; readonly p: number; readonly df: number };
    readonly ownScatter: { readonly t: number };
    readonly twoBelow: { readonly t: number; readonly p: number; readonly df: number };
    readonly ratios: readonly number[];
    readonly limit?: { readonly crossing: number; readonly low: number; readonly high: number };
    readonly shape?: { readonly shape: string };
  }[];
}

const rows =
  "172 169 171 174 | 168 166 166 171 | 176 172 171 178 | 165 163 157 167 | 174 170 160 175 | 167 164 150 169 | 161 158 141 163 | 172 168 147 173".split(
    " | ",
  );
/** x of C.10 in thousands of hours, so that no rounding to days comes between; the dates are about as many years. */
const meter = [0, 500, 1000, 1500, 2500, 3000, 4000, 4500];
const dates = "2020-01-01 2020-07-02 2020-12-31 2021-07-02 2022-07-02 2022-12-31 2023-12-31 2024-07-01".split(
  " ",
);

const h1 = async (axis: "meter" | "dates"): Promise<Told> => {
  const desk = await deskWith(4);
  const limits = ["limits.compression.lowestToHighest", "0.8"];
  await desk.type(["engine", "set", "pump", ...limits]);
  if (axis === "meter") await desk.type(["engine", "set", "pump", "meter", "h"]);
  for (const [k, line] of rows.entries()) {
    const place = axis === "meter" ? ["--meter", String(meter[k])] : [];
    const { exit, err } = await desk.type([
      "enter",
      "pump",
      "--dry",
      line,
      "--unit",
      "psi",
      "--date",
      dates[k] ?? "",
      ...place,
    ]);
    expect(err).toBe("");
    expect(exit).toBe(0);
  }
  return (await desk.json("history", "pump")) as unknown as Told;
};

test("the reference history H1 comes out of history --json to its printed digits (C.10, L.8)", async () => {
  const { axis, cylinders } = await h1("meter");
  expect(axis.kind).toBe("meter");
  const [one, two, three, four] = cylinders;
  const contrasts = [
    0.002065622956, -0.009903357677, -0.02062951987, -0.0422906414, -0.070527979493, -0.099167599655,
    -0.124453555941, -0.143434750301,
  ];
  contrasts.forEach((value, k) => {
    expect(three?.contrasts[k]).toBeCloseTo(value, 9);
  });
  expect(three?.theilSen.slope).toBeCloseTo(-0.0330654027825063, 8);
  expect(three?.theilSen.low).toBeCloseTo(-0.0364533854040436, 8);
  expect(three?.theilSen.high).toBeCloseTo(-0.0290374409798975, 8);
  expect(one?.theilSen.slope).toBeCloseTo(0.00144915626221846, 8);
  expect(two?.theilSen.slope).toBeCloseTo(-0.0000585446399591226, 8);
  expect(four?.theilSen.slope).toBeCloseTo(0.000203643207506099, 8);
  expect(three?.pooled.t).toBeCloseTo(-12.789458118886577, 6);
  expect(three?.pooled.df).toBe(24);
  expect((three?.pooled.p ?? 0) / 1.65256831419111e-12).toBeCloseTo(1, 5);
  expect(one?.pooled.t).toBeCloseTo(0.6472044602560517, 7);
  expect(three?.ownScatter.t).toBeCloseTo(-13.999611284277, 7);
  expect(three?.twoBelow.t).toBeCloseTo(8.521157677833553, 7);
  expect(three?.ratios[0]).toBeCloseTo(-0.005830920311, 9);
  expect(three?.ratios[7]).toBeCloseTo(-0.157061890035, 9);
  expect((three?.limit?.crossing ?? 0) / 1000).toBeCloseTo(6.49733052290641, 8);
  expect((three?.limit?.low ?? 0) / 1000).toBeCloseTo(6.065046521441301, 8);
  expect((three?.limit?.high ?? 0) / 1000).toBeCloseTo(7.021955532062138, 8);
  expect(three).toMatchObject({ course: "falling", shape: { shape: "gradual" } });
  expect(two?.course).toBe("steady");
});

test("by dates H1 says the same within a day's rounding", async () => {
  const { axis, cylinders } = await h1("dates");
  expect(axis.kind).toBe("dates");
  expect(cylinders[2]?.theilSen.slope).toBeCloseTo(-0.0330654027825063, 3);
  expect(cylinders[2]?.course).toBe("falling");
});
