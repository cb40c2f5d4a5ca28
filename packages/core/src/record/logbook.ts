// A logbook's own file, and one engine's files brought together.

import { type Problem, byPlace, problem } from "../problem/index.ts";
import { type Length, type PressureUnit, gaugeUnits, length } from "../quantity/index.ts";
import { readEngine } from "./engine.ts";
import { readGauges } from "./gauges.ts";
import { parseJsonObject, placeOfField } from "./json-view.ts";
import { readNotes } from "./notes.ts";
import { readServices } from "./services.ts";
import { readTests } from "./tests.ts";
import type { EngineRecord, Gauge, Service, Test } from "./types.ts";

export interface LogbookFacts {
  /** Invented data: nothing real is written into it. */
  readonly demo: boolean;
  readonly homeAltitude?: Length;
  readonly units?: PressureUnit | "us" | "metric";
}

/** Reads logbook.json. */
export const readLogbook = (text: string, file: string): { readonly logbook: LogbookFacts; readonly problems: readonly Problem[] } => {
  const problems: Problem[] = [];
  const root = parseJsonObject(text, file, problems);
  if (root === undefined) return { logbook: { demo: false }, problems };
  const refuse = (field: string, expected: string): undefined => {
    problems.push(problem("field-bad", { field, text: JSON.stringify(root[field]), expected }, placeOfField(text, file, field)));
    return undefined;
  };
  const altitude = root.homeAltitude_m;
  const home =
    altitude === undefined ? undefined : typeof altitude === "number" && altitude >= -500 && altitude <= 6_000 ? altitude : refuse("homeAltitude_m", "a number of metres from -500 to 6000");
  const names = [...gaugeUnits, "us", "metric"] as const;
  const units = root.units === undefined ? undefined : (names.find((name) => name === root.units) ?? refuse("units", `one of ${names.join(", ")}`));
  return {
    logbook: { demo: root.demo === true, ...(home === undefined ? {} : { homeAltitude: length(home) }), ...(units === undefined ? {} : { units }) },
    problems,
  };
};

/** The text of one engine's files, by what they hold, each with the name to print in a message. */
export interface EngineFiles {
  readonly id: string;
  readonly engine: NamedText;
  readonly tests?: NamedText;
  readonly services?: NamedText;
  readonly notes?: NamedText;
}
export interface NamedText {
  readonly file: string;
  readonly text: string;
}

/** Reads everything of one engine. Whatever has no fault is in the record; the record is undefined without an engine. */
export const readEngineRecord = (
  files: EngineFiles,
  gauges: readonly Gauge[],
  logbook: LogbookFacts,
): { readonly record: EngineRecord | undefined; readonly problems: readonly Problem[] } => {
  const { engine, problems: engineProblems } = readEngine(files.engine.text, files.engine.file, files.id);
  if (engine === undefined) return { record: undefined, problems: engineProblems };
  const home = engine.homeAltitude ?? logbook.homeAltitude;
  const tests = files.tests === undefined ? { tests: [], problems: [] } : readTests(files.tests.text, files.tests.file, engine, gauges, home);
  const services = files.services === undefined ? { services: [], problems: [] } : readServices(files.services.text, files.services.file, engine);
  const notes = files.notes === undefined ? { notes: [], problems: [] } : readNotes(files.notes.text, files.notes.file, engine);
  const meter = meterFaults(tests.tests, services.services, files.tests?.file ?? "tests.csv");
  const from = engine.homeAltitude === undefined ? "logbook" : "engine";
  const withHome = tests.tests.map((test): Test =>
    home === undefined || test.conditions.altitude !== undefined ? test : { ...test, conditions: { ...test.conditions, altitude: home, altitudeFrom: from } },
  );
  return {
    record: { engine, gauges, tests: withHome, services: services.services, notes: notes.notes },
    problems: [...engineProblems, ...tests.problems, ...services.problems, ...notes.problems, ...meter].sort(byPlace),
  };
};

/** A meter that runs backwards without a service that replaced it. */
const meterFaults = (tests: readonly Test[], services: readonly Service[], file: string): Problem[] => {
  const replaced = services.filter(({ what }) => what === "meter replaced").map(({ date }) => date);
  const withMeter = tests.flatMap(({ date, meter, rows }) => (meter === undefined ? [] : [{ date, meter, line: rows[0]?.line ?? 1 }]));
  return withMeter.flatMap((now, i): Problem[] => {
    const before = withMeter[i - 1];
    if (before === undefined || now.meter >= before.meter) return [];
    if (replaced.some((date) => date > before.date && date <= now.date)) return [];
    const facts = { here: String(now.meter), there: String(before.meter), date: before.date };
    return [problem("meter-backwards", facts, { file, line: now.line, column: 1 })];
  });
};
