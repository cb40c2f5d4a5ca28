import { readEngineRecord, readLogbook } from "@sealtrend/core";
import { describe, expect, test } from "vitest";
import { header } from "./sample.ts";

const files = (
  tests: string,
  services = "date,meter,what,cylinders,new_baseline,by,note\n",
  engine: object = {},
) => ({
  id: "pump",
  engine: {
    file: "engine.json",
    text: JSON.stringify({ cylinders: ["1", "2", "3", "4"], ignition: "spark", ...engine }),
  },
  tests: { file: "tests.csv", text: tests },
  services: { file: "services.csv", text: services },
});
const dry = (id: string, date: string, meter: string) => `${id},${date},${meter},dry,,,psi,131,130,129,128\n`;
const read = (...facts: Parameters<typeof files>) => readEngineRecord(files(...facts), [], { demo: false });

describe("a meter", () => {
  const twice = `${header}\n${dry("a", "2024-05-03", "1412")}${dry("b", "2026-05-03", "1390.5")}`;
  const replaced = (date: string) =>
    `date,meter,what,cylinders,new_baseline,by,note\n${date},0,meter replaced,,,,\n`;

  test("never runs backwards: the later test is a fault, at its own meter cell", () => {
    expect(read(twice).problems).toMatchObject([
      {
        code: "meter-backwards",
        line: 3,
        column: 14,
        found: "the meter reads 1390.5, less than 1412 on 2024-05-03",
      },
    ]);
  });

  test.each(["2024-05-03", "2025-01-01", "2026-05-03"])(
    "may, where it was replaced between the two (%s)",
    (date) => {
      expect(read(twice, replaced(date)).problems).toEqual([]);
    },
  );

  test.each(["2024-05-02", "2026-05-04"])("replaced on %s does not explain it", (date) => {
    expect(read(twice, replaced(date)).problems.map(({ code }) => code)).toEqual(["meter-backwards"]);
  });
});

describe("a home altitude", () => {
  const blankAndStated = `${header},altitude_m\na,2026-05-03,,dry,,,psi,131,130,129,128,\nb,2026-05-04,,dry,,,psi,131,130,129,128,900\n`;
  const altitudes = (engine: object, home?: object) =>
    readEngineRecord(
      files(blankAndStated, undefined, engine),
      [],
      readLogbook(JSON.stringify(home ?? {}), "logbook.json").logbook,
    ).record?.tests.map(({ conditions }) => [conditions.altitude, conditions.altitudeFrom]);

  test("fills a blank one only: the engine's before the logbook's", () => {
    expect(altitudes({ homeAltitude_m: 350 }, { homeAltitude_m: 20 })).toEqual([
      [350, "engine"],
      [900, "test"],
    ]);
    expect(altitudes({}, { homeAltitude_m: 20 })).toEqual([
      [20, "logbook"],
      [900, "test"],
    ]);
    expect(altitudes({})).toEqual([
      [undefined, undefined],
      [900, "test"],
    ]);
  });
});

test("files that are not there are empty; without an engine there is no record", () => {
  const { engine } = files("");
  expect(readEngineRecord({ id: "pump", engine }, [], { demo: false })).toMatchObject({
    record: { tests: [], services: [], notes: [] },
    problems: [],
  });
  expect(
    readEngineRecord({ id: "pump", engine: { file: "engine.json", text: "{}" } }, [], { demo: false }),
  ).toMatchObject({
    record: undefined,
    problems: [{ code: "field-missing" }, { code: "field-missing" }],
  });
});

describe("logbook.json", () => {
  test("marks invented data, and holds home altitude and units", () => {
    expect(readLogbook('{ "demo": true, "homeAltitude_m": 350, "units": "metric" }', "logbook.json")).toEqual(
      {
        logbook: { demo: true, homeAltitude: 350, units: "metric" },
        problems: [],
      },
    );
    expect(readLogbook("{}", "logbook.json")).toEqual({ logbook: { demo: false }, problems: [] });
  });

  test.each([
    ['{ "demo": "true" }', "demo"],
    ['{ "homeAltitude_m": "350m" }', "homeAltitude_m"],
    ['{ "homeAltitude_m": 9000 }', "homeAltitude_m"],
    ['{ "units": "imperial" }', "units"],
  ])("%s is a fault at its entry", (text, field) => {
    const { problems } = readLogbook(text, "logbook.json");
    expect(problems).toMatchObject([{ code: "field-bad", line: 1, column: 3 }]);
    expect(problems[0]?.found).toContain(`${field} is `);
  });
});
