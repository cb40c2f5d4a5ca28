// A logbook's own file, and one engine's files brought together.

import { type Problem, byPlace, problem } from "../problem/index.ts";
import { type Length, type PressureUnit, gaugeUnits, length } from "../quantity/index.ts";
import { readEngine } from "./engine.ts";
import { fieldAt, viewJson } from "./json-view.ts";
import { readMeasurements } from "./measurements.ts";
import { readNotes } from "./notes.ts";
import { readServices } from "./services.ts";
import { type TestTable, readTests } from "./tests.ts";
import type { Gauge } from "./gauge-types.ts";
import type { EngineRecord, Service, Test, Tool } from "./types.ts";

/** What logbook.json says of the whole logbook: whether it is invented, the height of the place, the units its owner
 *  thinks in. */
export interface LogbookFacts {
  /** Invented data: nothing real is written into it. */
  readonly demo: boolean;
  readonly homeAltitude?: Length;
  readonly units?: PressureUnit | "us" | "metric";
  /** Owned beside the gauges. */
  readonly tools?: readonly Tool[];
}

const toolNames: readonly Tool[] = ["borescope", "coolant tester"];

const unitNames = [...gaugeUnits, "us", "metric"] as const;

/** Reads logbook.json. What it may hold is little; an entry that is not known here is left alone. */
export const readLogbook = (
  text: string,
  file: string,
): { readonly logbook: LogbookFacts; readonly problems: readonly Problem[] } => {
  const problems: Problem[] = [];
  const view = viewJson(text, file, problems);
  if (view === undefined) return { logbook: { demo: false }, problems };
  /** The value of an entry, if it is there and `known` makes something of it. */
  const entry = <T>(
    field: string,
    expected: string,
    known: (value: unknown) => T | undefined,
  ): T | undefined => {
    const value = fieldAt(view.root, field);
    const found = value === undefined ? undefined : known(value);
    if (value !== undefined && found === undefined)
      problems.push(
        problem("field-bad", { field, text: JSON.stringify(value), expected }, view.place(field)),
      );
    return found;
  };
  const altitude = (value: unknown): number | undefined =>
    typeof value === "number" && value >= -500 && value <= 6_000 ? value : undefined;
  const demo = entry("demo", "true or false", (value) => (typeof value === "boolean" ? value : undefined));
  const home = entry("homeAltitude_m", "a number of metres from -500 to 6000", altitude);
  const units = entry("units", `one of ${unitNames.join(", ")}`, (value) =>
    unitNames.find((name) => name === value),
  );
  const tools = entry("tools", `a list of any of ${toolNames.join(", ")}`, (value) => {
    const named = Array.isArray(value)
      ? value.map((one) => toolNames.find((tool) => tool === one))
      : [undefined];
    const known = named.filter((tool) => tool !== undefined);
    return known.length === named.length ? known : undefined;
  });
  const logbook = {
    demo: demo ?? false,
    ...(home === undefined ? {} : { homeAltitude: length(home) }),
    ...(units === undefined ? {} : { units }),
    ...(tools === undefined ? {} : { tools }),
  };
  return { logbook, problems };
};

/** The text of one engine's files, by what they hold, each with the name to print in a message. */
export interface EngineFiles {
  readonly id: string;
  readonly engine: NamedText;
  readonly tests?: NamedText;
  readonly services?: NamedText;
  readonly notes?: NamedText;
  readonly measurements?: NamedText;
}
/** A text and the name of the file it came from, for messages. */
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
  const tests =
    files.tests === undefined
      ? { tests: [], problems: [], placeOfMeter: () => undefined }
      : readTests(files.tests.text, files.tests.file, engine, gauges, home);
  const services =
    files.services === undefined
      ? { services: [], problems: [] }
      : readServices(files.services.text, files.services.file, engine);
  const notes =
    files.notes === undefined
      ? { notes: [], problems: [] }
      : readNotes(files.notes.text, files.notes.file, engine);
  const measurements =
    files.measurements === undefined
      ? { measurements: [], problems: [] }
      : readMeasurements(files.measurements.text, files.measurements.file, engine);
  const meter = meterFaults(tests, services.services);
  const from = engine.homeAltitude === undefined ? "logbook" : "engine";
  const withHome = tests.tests.map((test): Test =>
    home === undefined || test.conditions.altitude !== undefined
      ? test
      : { ...test, conditions: { ...test.conditions, altitude: home, altitudeFrom: from } },
  );
  return {
    record: {
      engine,
      gauges,
      tests: withHome,
      services: services.services,
      notes: notes.notes,
      measurements: measurements.measurements,
      ...(logbook.tools === undefined ? {} : { tools: logbook.tools }),
    },
    problems: [
      ...engineProblems,
      ...tests.problems,
      ...services.problems,
      ...notes.problems,
      ...measurements.problems,
      ...meter,
    ].sort(byPlace),
  };
};

/** A meter that runs backwards without a service that replaced it between the two tests. */
export const meterFaults = (
  { tests, placeOfMeter }: Pick<TestTable, "tests" | "placeOfMeter">,
  services: readonly Service[],
): Problem[] => {
  const replaced = services.filter(({ what }) => what === "meter replaced").map(({ date }) => date);
  const faults: Problem[] = [];
  let last: { readonly date: string; readonly meter: number } | undefined;
  for (const { id, date, meter } of tests) {
    if (meter === undefined) continue;
    const before = last;
    last = { date, meter };
    if (before === undefined || meter >= before.meter) continue;
    if (replaced.some((day) => day >= before.date && day <= date)) continue;
    const facts = { here: String(meter), there: String(before.meter), date: before.date };
    faults.push(problem("meter-backwards", facts, placeOfMeter(id)));
  }
  return faults;
};
