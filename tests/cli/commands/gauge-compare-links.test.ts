// gauge compare: what cannot carry a link, and what a new link does to an old one.

import { expect, test } from "vitest";
import { both, compare, deskWith } from "./compared-desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

test.each([
  [
    ["2026-05-03a,2026-05-03,dry,1,black,psi,150,140,160,130,warm,"],
    "test 2026-05-03a of pump was read with black only",
  ],
  [
    [
      "2026-05-03a,2026-05-03,dry,1,black,psi,150,140,,,warm,",
      "2026-05-03a,2026-05-03,dry,1,red,psi,157,147,168,137,warm,",
    ],
    "black and red were both read on two cylinders of test 2026-05-03a",
  ],
  [
    [
      "2026-05-03a,2026-05-03,dry,1,black,psi,150,140,160,130,warm,",
      "2026-05-03a,2026-05-03,dry,1,red,psi,157,147,168,137,cold,",
    ],
    "red and black were not read in the same state: the engine temperature differs",
  ],
  [
    [
      "2026-05-03a,2026-05-03,dry,1,black,psi,150,140,160,130,warm,",
      "2026-05-03a,2026-05-03,dry,1,,psi,157,147,168,137,warm,",
    ],
    "a row of dry in test 2026-05-03a names no gauge",
  ],
])("what cannot carry a link is refused with the reason, and nothing is kept: %j", async (rows, found) => {
  const desk = await deskWith(...rows);
  const before = desk.text("logbook/gauges.csv");
  const { exit, err } = await desk.type([...compare, "pump", "--test", "2026-05-03a"]);
  expect([exit, err.split("\n    expected")[0]?.replace(/\s+/g, " ")]).toEqual([1, found]);
  expect(desk.text("logbook/gauges.csv")).toBe(before);
});

test.each([
  [
    "dry",
    "150,140,160,130",
    "225,140,127.2,139.2",
    "1 +50.0 %, 2 0.0 %, 3 -20.5 %, 4 +7.1 %; cylinders 1 and 3 do",
  ],
  ["dry", "150,140,160,", "126,119,336,", "1 -16.0 %, 2 -15.0 %, 3 +110.0 %; cylinder 3 does"],
  ["leak-down", "70,60,65,72", "77.86,75.31,76.64,60", "4 x 1.69; cylinder 4 does"],
])(
  "readings that contradict each other keep no link, and the old one stays: %s %s against %s",
  async (what, one, other, why) => {
    const leak = what === "leak-down";
    const [a, b] = leak ? ["one", "two"] : ["black", "red"];
    const sound = both.map((row) => row.replace(/2026-05-03/g, "2025-05-03"));
    const desk = await deskWith(
      ...sound,
      `2026-05-03a,2026-05-03,${what},1,${a},psi,${one},warm,350`,
      `2026-05-03a,2026-05-03,${what},1,${b},psi,${other},warm,350`,
    );
    await desk.type([...compare, "--test", "2025-05-03a"]);
    const before = desk.text("logbook/gauges.csv");
    const { exit, err } = await desk.type([...compare, "--test", "2026-05-03a"]);
    const said = err.replace(/\s+/g, " ");
    expect(exit).toBe(1);
    expect(said).toContain("do not stand alike on all cylinders");
    expect(said).toContain(`${why} not go with the others`);
    expect(said).toContain("again with both, one right after the other");
    expect(desk.text("logbook/gauges.csv")).toBe(before);
  },
);

test("a link that takes the place of another says which", async () => {
  const desk = await deskWith(
    ...both.map((row) => row.replace(/2026-05-03/g, "2025-05-03")),
    both[0] ?? "",
    "2026-05-03a,2026-05-03,dry,1,red,psi,153,142.8,163.2,132.6,warm,350",
  );
  await desk.type([...compare, "--test", "2025-05-03a"]);
  const again = desk.text("logbook/gauges.csv");
  const { out } = await desk.type([...compare, "--test", "2026-05-03a"]);
  expect(out).toContain("kept  red counts as black in the history, its readings / 1.0200\n");
  expect(out).toContain("In place of: as black, its readings / 1.0500, compared 2025-05-03.\n");
  desk.put("logbook/gauges.csv", again);
  const document = await desk.json(...compare, "--test", "2026-05-03a");
  expect(misfits(document, schemaOf("gauges"))).toEqual([]);
  expect(document.comparisons).toMatchObject([
    {
      link: {
        factor: expect.closeTo(1.02, 9) as number,
        inPlaceOf: { to: "black", factor: 1.05, date: "2025-05-03" },
      },
    },
  ]);
});

test("an engine of two cylinders cannot carry a link, and is not asked for a third", async () => {
  const desk = await deskWith();
  await desk.type(["engine", "add", "moto", "--cylinders", "2", "--ignition", "spark"]);
  const header = "test,date,what,take,gauge,unit,c1,c2";
  const rows = ["black,psi,150,140", "red,psi,157,147"].map((row) => `2026-05-03a,2026-05-03,dry,1,${row}`);
  desk.put("logbook/moto/tests.csv", [header, ...rows, ""].join("\n"));
  const { exit, err } = await desk.type([...compare, "moto"]);
  expect(exit).toBe(1);
  expect(err.replace(/\s+/g, " ")).toContain("compare them on an engine of three cylinders or more");
  expect(err).not.toContain("missing");
});

test("after enter with a second gauge the comparison is offered, until the two are joined", async () => {
  const desk = await deskWith();
  const enter = ["enter", "pump", "--altitude", "0m", "--dry"];
  const first = await desk.type([...enter, "150 140 160 130", "--gauge", "black", "--date", "2026-05-03"]);
  const second = await desk.type([...enter, "157 147 168 137", "--gauge", "red", "--test", "2026-05-03a"]);
  expect(first.err).not.toContain("gauge compare");
  expect(second.err.replace(/\s+/g, " ")).toContain(
    "red and black read the same cylinders; how they stand, and their years joined: sealtrend gauge compare pump --test 2026-05-03a",
  );
  await desk.type([...compare]);
  const third = await desk.type([...enter, "157 147 168 137", "--gauge", "red", "--test", "2026-05-03a"]);
  expect(third.err).not.toContain("gauge compare");
});

test("a gauge that gauges.csv does not describe is compared all the same, and not kept", async () => {
  const desk = await deskWith(both[0] ?? "", (both[1] ?? "").replace("red", "green"));
  const before = desk.text("logbook/gauges.csv");
  const { exit, out } = await desk.type([...compare]);
  expect([exit, out.split("\n").slice(1, 3).join(" ")]).toEqual([
    0,
    "Not kept: green and black must both stand in gauges.csv (sealtrend gauge add NAME).",
  ]);
  expect(desk.text("logbook/gauges.csv")).toBe(before);
});
