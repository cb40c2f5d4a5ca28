// expect: slips of the keyboard and values that cannot be are answered in words, with a mend that is taken when it is typed.

import { expect, test } from "vitest";
import { type Desk, deskWithPump, newDesk } from "./desk.ts";

const ten = ["expect", "--compression-ratio", "10"];
const typed = (line: string, desk: Desk = newDesk()) => desk.type([...ten, ...line.split(" ")]);

test.each([
  ["--rod 44mm", "--rod is 44mm", "above 49.24mm, half the longest stroke that is assumed"],
  ["--rod 45mm --use motorcycle --bore 100mm", "--rod is 45mm", "above 47.62mm, half the longest stroke"],
  ["--hose -1cm3", "--hose is -1cm3", "at least 0cm3"],
  ["--leak-area -1mm2", "--leak-area is -1mm2", "at least 0mm2"],
  ["--wall 0K", "--wall is 0K", "at least 200K"],
  ["--start 0K", "--start is 0K", "at least 200K"],
  // 200 K = -73.15 C
  ["--start -300C", "--start is -300C", "at least -73.15C"],
  ["--speed -5", "--speed is -5", "at least 30rpm"],
  // 2 m over 25.4 mm
  ["--bore 86in", "--bore is 86in", "at most 78.74in"],
])("%s is refused as it was typed, with the limit in its unit", async (line, found, expected) => {
  const { exit, err } = await typed(line);
  expect(exit).toBe(2);
  expect(err.split("\n")[0]).toBe(found);
  expect(err.replaceAll(/\s+/g, " ")).toContain(`expected ${expected}`);
});

test.each([
  ["--bore 92", "--bore 92mm"],
  // 3.4 mm is no bore, 3.4 in is 86.4 mm
  ["--bore 3.4", "--bore 3.4in"],
  ["--bore .086", "--bore .086m"],
  ["--bore 86in", "--bore 86mm"],
  ["--hose 3", "--hose 3cm3"],
  ["--leak-area 1", "--leak-area 1mm2"],
  ["--wall 360", "--wall 360K"],
  ["--wall 90", "--wall 90C"],
  // nobody cranks at 9000 m; 9000 ft are 2743 m
  ["--altitude 9000", "--altitude 9000ft"],
  ["--altitude 9000m", "--altitude 9000ft"],
  ["--station-pressure 29.9", "--station-pressure 29.9inHg"],
  ["--air 0K", "--air 0C"],
  ["--air 90", "--air 90F"],
  ["--gamma foo", "--gamma variable"],
])("the mend of %s is %s, and it is taken", async (line, mend) => {
  const { exit, err } = await typed(line);
  expect([exit, err.trimEnd().split("\n").at(-1)?.trim()]).toEqual([2, mend]);
  expect((await typed(mend)).exit).toBe(0);
});

test.each([
  ["--compression-ratio 1", "--compression-ratio is 1", "above 1: at 1 nothing is compressed"],
  ["--compression-ratio 90", "--compression-ratio is 90", "at most 40"],
  ["--compression-ratio 10 --bore 0mm", "--bore is 0mm", "at least 5mm"],
  ["--compression-ratio 10 --stroke 86mm --rod 40mm", "--rod is 40mm", "above 43mm, the crank throw"],
  [
    "--compression-ratio 10 --intake-closes 190deg",
    "--intake-closes is 190deg",
    "below 180deg, which is top dead centre",
  ],
  ["--compression-ratio 10 --speed 0rpm", "--speed is 0rpm", "at least 30rpm"],
  ["--compression-ratio 10 --wall 2000K", "--wall is 2000K", "at most 500K"],
  ["--compression-ratio 10 --leak-area 500mm2", "--leak-area is 500mm2", "at most 100mm2"],
  ["--compression-ratio 10 --gamma 1", "--gamma is 1", "at least 1.05"],
  ["--compression-ratio 10 --altitude 9000m", '--altitude "9000m"', "altitude in m from -500 to 6000"],
  ["--compression-ratio 10 --bore 86", '--bore "86"', "a number with its unit"],
  ["--compression-ratio 10 --leak-area 1", '--leak-area "1"', "a number with its unit (mm2)"],
  ["--compression-ratio 10 --hose 1mm", '--hose "1mm"', "a number with its unit (m3, L, cm3, ml, in3)"],
  ["--compression-ratio ten", '--compression-ratio "ten"', "a number"],
  ["--compression-ratio 10 --qnh 1016hPa", "--qnh without the height of the place", "both"],
])("nonsense is refused with its limit: %s", async (line, found, expected) => {
  const answer = await newDesk().json("expect", ...line.split(" "));
  expect(answer.problems).toEqual([
    expect.objectContaining({
      found: expect.stringContaining(found) as string,
      expected: expect.stringContaining(expected) as string,
    }),
  ]);
});

test("a rod shorter than the crank throw is answered with one that fits the stroke: 1.65 strokes", async () => {
  const { err } = await typed("--bore 300mm --stroke 400mm --rod 150mm");
  expect(err.trimEnd().split("\n").at(-1)).toBe("    --rod 660mm");
  expect((await typed("--bore 300mm --stroke 400mm --rod 660mm")).exit).toBe(0);
  expect((await typed("--stroke 2in --rod .9in")).err).toContain("--rod 3.3in");
});

test("a rod that only the stroke assumed forbids is taken once the stroke is given", async () => {
  expect((await typed("--rod 44mm")).err.replaceAll(/\s+/g, " ")).toContain(
    "or add --stroke with the stroke of",
  );
  expect((await typed("--rod 44mm --stroke 26mm")).exit).toBe(0);
});

test("what --gamma takes is said with its word", async () => {
  expect((await typed("--gamma foo")).err).toContain("expected variable, or a number such as 1.4");
});

test("a leading point is a decimal point", async () => {
  const desk = newDesk();
  const one = await desk.json(...ten, "--bore", "3.5in", "--stroke", ".086m");
  const other = await desk.json(...ten, "--bore", "3.5in", "--stroke", "0.086m");
  expect(one.expected_kPa).toBe(other.expected_kPa);
});

test("a sea-level barometer beside a height is refused, as in a test, and is a --qnh", async () => {
  // the standard atmosphere has 70.1 kPa at 3000 m
  const { exit, err } = await typed("--station-pressure 101kPa --altitude 3000m");
  expect([exit, err]).toEqual([
    2,
    "--station-pressure 101kPa at 3000m would be 1425 hPa at sea level, which no\nweather brings\n" +
      "    expected the pressure at the place itself, as a barometer there shows it:\n    about 70.1 kPa\n" +
      "    --qnh 101kPa in place of --station-pressure, if it is of a weather report or\n    an altimeter\n",
  ]);
  expect((await typed("--qnh 101kPa --altitude 3000m")).exit).toBe(0);
  expect((await typed("--station-pressure 70kPa --altitude 3000m")).exit).toBe(0);
  expect((await typed("--station-pressure 60kPa --altitude 100ft")).err).toContain(
    "leave --station-pressure out",
  );
});

test("the home of an engine is held against a barometer too, and named as such", async () => {
  const desk = await deskWithPump();
  await desk.type(["engine", "set", "pump", "homeAltitude_m", "3000"]);
  const { err } = await desk.type(["expect", "pump", ...ten.slice(1), "--station-pressure", "1013hPa"]);
  expect(err).toContain("at 3000 m (its home; --altitude tells another place)");
});

test("a cold engine with a wall of its own is two things at once", async () => {
  const { exit, err } = await typed("--engine-temp cold --wall 360K");
  expect([exit, err.split("\n")[0]]).toEqual([2, "--engine-temp cold beside --wall 360K"]);
  expect((await typed("--wall 360K")).out).toContain("cylinder walls at 360 K");
});

test.each([
  ["--intake-closes 179.9deg", "no-pressure"],
  ["--bore 5mm --stroke 5mm --speed 30rpm", "no-pressure"],
  ["--leak-area 18mm2", "too-wide"],
  ["--leak-area 1mm2", "usable"],
])("with %s the answer is %s", async (line, standing) => {
  expect(await newDesk().json(...ten, ...line.split(" "))).toMatchObject({ standing });
});

test("where no pressure builds up, or nothing can be told, that is the answer and not a number", async () => {
  const none = (await typed("--intake-closes 179.9deg --units psi")).out;
  // 50 kPa = 7.25 psi
  expect(none).toMatch(/^Next to no pressure builds up with these figures: less than 7 psi,/);
  expect(none).not.toMatch(/About|0\.0000|\d{3} %/);
  expect((await typed("--leak-area 18mm2")).out).toMatch(/^Nothing useful can be said of the reading:/);
});

test("sizes that hardly any engine has are asked about before anything else, and answered", async () => {
  const desk = newDesk();
  const line = "--bore 86mm --stroke 86cm";
  const lines = (await typed(line)).out.split("\n");
  expect(lines[0]).toMatch(/^About /);
  expect(lines[1]).toBe("Unlikely: bore to stroke 0.1; nearly all engines have 0.4 to 2. Are the figure");
  const { cautions } = (await desk.json(...ten, ...line.split(" "))) as { cautions: readonly string[] };
  expect(cautions[0]).toMatch(/^Unlikely: bore to stroke 0.1;/);
  expect((await typed("--bore 86mm --stroke 86mm")).out).not.toContain("Unlikely");
});

test("a motorcycle is told by its use and not by its ratio", async () => {
  expect((await typed("--use motorcycle")).out).toContain("Motorcycle, engine warm");
  expect(await newDesk().json("expect", "--compression-ratio", "14.5", "--use", "motorcycle")).toMatchObject({
    kind: "motorcycle",
    kindFrom: "typed",
  });
});
