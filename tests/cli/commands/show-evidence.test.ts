// What `show` says beside the readings: where air goes, what oil did, a second gauge, two cylinders, the whole engine.
// Readings invented; what a place of air points to: handbook/trade.md C2.

import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";

const deskOf = async (cylinders: number, ...lines: readonly (readonly string[])[]): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--cylinders", String(cylinders), "--ignition", "spark"]);
  for (const line of lines) {
    const { exit, err } = await desk.type(["enter", "pump", ...line, "--unit", "psi"]);
    if (exit !== 0) throw new Error(err);
  }
  return desk;
};
const shown = async (desk: Desk, width = 200): Promise<string> =>
  (await desk.type(["show", "pump"], { width })).out;
const leak = ["--leak-down", "74/80 73/80 50/80 75/80"];

test("a leak whose air nobody followed is listened to next", async () => {
  expect(await shown(await deskOf(4, leak))).toContain(
    "next   listen where the air goes on 3, at top dead centre on compression: intake, exhaust, oil filler, coolant, 10 minutes",
  );
});

test("air that was heard at a low cylinder points somewhere, and never for certain", async () => {
  const heard = async (places: string) =>
    shown(await deskOf(4, [...leak, "--heard", `crankcase:faint none ${places} none`]));
  const exhaust = await heard("exhaust");
  expect(exhaust).toMatch(
    /Most likely a leaking exhaust valve in 3: possible, about \d in 10 \(\d to \d\), for its air comes out at the exhaust/,
  );
  expect(exhaust).not.toMatch(/listen where|In 1 the air/);
  expect(await heard("neighbour:4")).toContain(
    "then air into 3 again: still heard there it is the gasket, else a valve and the manifold they share",
  );
  expect(await heard("crankcase")).toContain(
    "In 3 the air in the crankcase points to rings, piston or bore.",
  );
  expect(await heard("crankcase:faint")).not.toContain("points to");
});

test("nothing at all is first a matter of adapter and stroke", async () => {
  expect(await shown(await deskOf(4, ["--leak-down", "74/80 73/80 0/80 75/80"]))).toContain(
    "next   check the adapter on 3, and that the piston stands at top dead centre on compression, then again",
  );
  expect(await shown(await deskOf(4, ["--dry", "150 148 0 149"]))).toContain(
    "next   check the adapter and its seal on 3, then read again",
  );
});

test("oil beside dry readings gives one sentence, with the control", async () => {
  const oil = (wet: string) => deskOf(4, ["--dry", "150 148 120 151", "--wet", wet]);
  const desk = await oil("153 x 144 x");
  expect(await shown(desk)).toContain(
    "Oil raised 3 by 20 %, the control 1 by 2 %: net 18 % (11 to 25 %), rings or bore more likely than valves.",
  );
  const json = await desk.json("show", "pump");
  expect(json.oil).toMatchObject({
    controls: ["1"],
    cylinders: [{ label: "1" }, { label: "3", evidence: "rings" }],
  });
  expect(json.causes).toMatchObject({ 0: { code: "worn-rings-or-bore", group: "bottom" } });
  expect(await shown(await oil("153 x 121 x"))).toContain(
    "no sign of rings; a valve, the gasket or a broken ring would show so.",
  );
  expect(await shown(await oil("x x 144 x"))).toContain(
    "Oil raised 3 by 20 %, with no sound cylinder oiled beside it: a weak sign of rings, for oil raises any reading.",
  );
});

test("two gauges in one test both stand on the screen, and which counts is said", async () => {
  const readings = ["--dry", "150 148 152 149", "--gauge"];
  const desk = await deskOf(4, [...readings, "red"], [...readings, "blue", "--same-test"]);
  const out = await shown(desk);
  expect(out).toMatch(/read by blue +psi +150 +148 +152 +149 +\(this gauge counts\)\n/);
  expect(out).toMatch(/read by red +psi +150 +148 +152 +149 +\(to compare only\)\n/);
  expect(await desk.json("show", "pump")).toMatchObject({
    comparisons: [{ what: "dry", gauge: "red", counts: "blue" }],
  });
});

test("of two cylinders none is said to have gained without the other way to read it", async () => {
  const desk = await deskOf(2, ["--dry", "150 150", "--date", "2020-05-03"], ["--dry", "150 135"]);
  const out = await shown(desk);
  expect(out).toMatch(/since 2020-05 +% +\+11 +-10 +\(against the other\)\n/);
  expect(out).toContain(
    "Of two cylinders each is held against the other: 2 has lost 10 % against 1 since 2020-05, or 1 has gained, or it is scatter",
  );
});

test("cylinders whose histories began on different days stand in rows of their own", async () => {
  const even = ["--dry", "150 150 150 150"];
  const desk = await deskOf(4, [...even, "--date", "2016-05-03"]);
  await desk.type(["service", "pump", "--what", "valve job", "--cylinders", "2", "--date", "2020-01-01"]);
  for (const line of [[...even, "--date", "2021-05-03"], even])
    await desk.type(["enter", "pump", ...line, "--unit", "psi"]);
  const out = await shown(desk);
  expect(out).toMatch(/since 2016-05 +% +0 +- +0 +0 /);
  expect(out).toMatch(/since 2021-05 +% +- +0 +- +- /);
});

test("a fall of the whole engine by one gauge gets a line of its own", async () => {
  const by = ["--gauge", "red", "--altitude", "0m"];
  const desk = await deskOf(
    4,
    ["--dry", "150 150 151 149", ...by, "--date", "2010-05-03"],
    ["--dry", "111 112 111 110", ...by],
  );
  expect(await shown(desk)).toContain(
    "All read 26 % lower than in 2010-05 (same gauge): sealtrend history pump",
  );
});

test("a pegged needle is at least that much in every row", async () => {
  const desk = await deskOf(4, ["--dry", "150 >300 152 151", "--altitude", "350m"]);
  const { out } = await desk.type(["show", "pump", "--why"], { width: 200 });
  expect(out).toMatch(/read +psi +150 +>300 .*\nat sea level +psi +156 +>313 /);
  expect(out).toMatch(/\n2: >300 read, >313 psi at sea level/);
});

test("28 cylinders fit one screen of 80 columns, and below 60 each is a sentence", async () => {
  const readings = Array.from({ length: 28 }, (_, i) => String(i === 26 ? 100 : 150 - (i % 4))).join(" ");
  const desk = await deskOf(28, ["--dry", readings]);
  const out = await shown(desk, 80);
  expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(24);
  expect(out).toContain("Against others: 27 lags, the other 27 even.");
  expect(await shown(desk, 40)).toContain("\n27 lags: read 100 psi\n");
});
