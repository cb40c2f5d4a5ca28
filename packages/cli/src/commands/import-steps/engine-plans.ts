// What an import would do to each engine: one that is there, or one that is to be made.

import {
  type Engine,
  type ImportMap,
  type ImportedTest,
  type JsonObject,
  byKey,
  byText,
  readEngineRecord,
} from "@sealtrend/core/parts";
import { type Fault, Stop } from "../../command.ts";
import { type Logbook, engineFiles, textOf } from "../../logbook/open-logbook.ts";
import { shown } from "../../logbook/words.ts";
import type { Change } from "../../logbook/write.ts";
import { newEngine } from "../new-engine.ts";
import { cylindersFault, newEngineRefused, unreadableFault } from "./kept-out.ts";
import { type EngineScene, type Placed, placeTests } from "./place-tests.ts";
import type { KeptOut } from "./wanted-tests.ts";

export interface EnginePlan {
  readonly id: string;
  readonly state: "new" | "there";
  /** What the sheet calls it. */
  readonly sheetNames: readonly string[];
  readonly cylinders: readonly string[];
  /** Of a new one. */
  readonly ignition?: string;
  readonly placed: Placed;
  /** That a recorded one fires otherwise than was said. */
  readonly fired?: readonly Fault[];
  /** What is needed to work it out again under the lock; absent where the engine cannot take anything. */
  readonly scene?: EngineScene;
  readonly tests: readonly ImportedTest[];
  /** The files of a new engine. */
  readonly changes: readonly Change[];
}

export interface PlanRequest {
  readonly logbook: Logbook;
  readonly map: ImportMap;
  readonly tests: readonly ImportedTest[];
  readonly ignition: string | undefined;
  readonly differing: EngineScene["differing"];
}

/** One plan an engine, by name. */
export const enginePlans = (request: PlanRequest): readonly EnginePlan[] => {
  const byEngine = byKey(request.tests, ({ engine }) => engine);
  return [...byEngine]
    .sort(([a], [b]) => byText(a, b))
    .map(([id, tests]) =>
      request.logbook.ids.includes(id) ? planFor(id, tests, request) : planForNew(id, tests, request),
    );
};

const nothing = (keptOut: readonly KeptOut[]): Placed => ({
  added: [],
  recorded: [],
  keptOut,
  toMend: [],
  slips: [],
  moved: [],
  told: [],
  filling: 0,
});

const namesOf = ({ map }: PlanRequest, id: string): readonly string[] => [
  ...new Set(map.engines.flatMap(({ engine, sheet }) => (engine === id ? [sheet] : []))),
];

const planFor = (id: string, tests: readonly ImportedTest[], request: PlanRequest): EnginePlan => {
  const { logbook, differing } = request;
  const files = engineFiles(logbook, id);
  const { record, problems } = readEngineRecord(files, logbook.gauges, logbook.facts);
  // A meter that runs backwards hides no test; anything else may.
  const faulty = problems.find(
    ({ severity, file, code }) =>
      severity === "error" &&
      code !== "meter-backwards" &&
      (file === files.engine.file || file === files.tests?.file),
  );
  const whole = { id, state: "there", sheetNames: namesOf(request, id), tests, changes: [] } as const;
  if (record === undefined || faulty !== undefined) {
    const file = faulty?.file ?? files.engine.file;
    const keptOut = tests.map((test) => ({ test, fault: unreadableFault(test, file) }));
    return { ...whole, cylinders: record?.engine.cylinders ?? [], placed: nothing(keptOut) };
  }
  const { engine } = record;
  const fits = ({ cylinders }: ImportedTest): boolean =>
    cylinders.every((label) => engine.cylinders.includes(label));
  const misfits = tests
    .filter((test) => !fits(test))
    .map((test) => ({ test, fault: cylindersFault(test, engine.cylinders) }));
  const scene = {
    engine,
    files,
    file: shown(logbook.world.cwd, `${logbook.root}/${id}/tests.csv`),
    amendments: textOf(logbook.world, `${logbook.root}/${id}/amendments.csv`, [])?.text ?? "",
    gauges: logbook.gauges,
    facts: logbook.facts,
    differing,
  };
  const fitting = tests.filter(fits);
  const { placed } = placeTests(files.tests?.text ?? "", fitting, scene);
  return {
    ...whole,
    tests: fitting,
    cylinders: engine.cylinders,
    placed: { ...placed, keptOut: [...misfits, ...placed.keptOut] },
    fired: firedOtherwise(engine, request),
    scene,
  };
};

/** A caution where the map or the option says that a recorded engine fires otherwise: the record stays. */
const firedOtherwise = (
  { id, ignition }: Engine,
  { map, ignition: typed }: PlanRequest,
): readonly Fault[] => {
  const own = map.engines.flatMap((one) => (one.engine === id ? [one.ignition ?? "unknown"] : []));
  const said = own.find((one) => one !== "unknown");
  const meant = said ?? typed ?? "unknown";
  if (meant === "unknown" || meant === ignition) return [];
  return [
    {
      code: "import-otherwise",
      severity: "caution",
      found: `${id} is recorded with ignition ${ignition}; ${said === undefined ? "--ignition" : "the map"} says ${meant}`,
      expected: "the same in the record and for the import",
      mend: `if ${meant} is right: sealtrend engine set ${id} ignition ${meant}`,
    },
  ];
};

/** A caution where the sheet says of a new engine that it fires otherwise than was typed of all: the sheet's word stands. */
const saidOtherwise = (
  id: string,
  said: NonNullable<ImportMap["engines"][number]["ignition"]>,
  { ignition: typed = "unknown" }: PlanRequest,
): readonly Fault[] =>
  said === "unknown" || typed === "unknown" || typed === said
    ? []
    : [
        {
          code: "import-otherwise",
          severity: "caution",
          found: `--ignition says ${typed}, and the sheet says ${said} of ${id}: ${said} is taken`,
          expected: "the same of both",
          mend: `if ${typed} is right: sealtrend engine set ${id} ignition ${typed}, once it is imported`,
        },
      ];

const planForNew = (id: string, tests: readonly ImportedTest[], request: PlanRequest): EnginePlan => {
  const { logbook, map, differing } = request;
  const sheetNames = namesOf(request, id);
  const entry = map.engines.find(({ engine }) => engine === id);
  const cylinders = tests[0]?.cylinders ?? entry?.cylinders ?? [];
  const said = entry?.ignition ?? "unknown";
  const ignition = said === "unknown" ? (request.ignition ?? said) : said;
  const whole = { id, state: "new", sheetNames, cylinders, ignition, tests } as const;
  const made = startEngine(logbook, id, {
    ...(sheetNames[0] === undefined ? {} : { name: sheetNames[0] }),
    cylinders,
    ignition,
  });
  if ("fault" in made) {
    const keptOut = tests.map((test) => ({ test, fault: newEngineRefused(test, made.fault) }));
    return { ...whole, placed: nothing(keptOut), changes: [] };
  }
  const path = `${id}/tests.csv`;
  const scene = {
    engine: made.engine,
    files: { id, engine: { file: `${id}/engine.json`, text: made.text } },
    file: shown(logbook.world.cwd, `${logbook.root}/${path}`),
    amendments: "",
    gauges: logbook.gauges,
    facts: logbook.facts,
    differing,
  };
  const { placed, text } = placeTests("", tests, scene);
  const fired = saidOtherwise(id, said, request);
  const changes = made.changes.map((change) =>
    change.path === path && change.kind === "create" ? { ...change, text } : change,
  );
  return { ...whole, placed, scene, fired, changes: placed.added.length === 0 ? [] : changes };
};

interface Started {
  readonly engine: Engine;
  /** Of engine.json. */
  readonly text: string;
  readonly changes: readonly Change[];
}

const startEngine = (
  { world, root }: Logbook,
  id: string,
  fields: JsonObject,
): Started | { readonly fault: Fault } => {
  try {
    const { engine, changes } = newEngine(world, root, id, fields);
    const text = changes.flatMap((change) =>
      change.kind === "create" && change.path === `${id}/engine.json` ? [change.text] : [],
    );
    return { engine, changes, text: text.join("") };
  } catch (error) {
    const [fault] = error instanceof Stop ? error.faults : [];
    if (fault === undefined) throw error;
    return { fault };
  }
};
