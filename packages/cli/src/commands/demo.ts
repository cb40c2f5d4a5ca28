// demo: lays out the demo logbook and shows the main job on it.

import { join, resolve } from "node:path";
import { type TestAssessment, assessTest } from "@sealtrend/core";
import { type Command, Stop } from "../command.ts";
import { demoDocument } from "../documents/demo-document.ts";
import type { Io } from "../io.ts";
import { demoFiles } from "../logbook/demo-files.ts";
import { findLogbook } from "../logbook/find-logbook.ts";
import { isFolder, isThere } from "../logbook/inside.ts";
import { openLogbook, readRecord } from "../logbook/open-logbook.ts";
import { settle } from "../logbook/settle.ts";
import { shown } from "../logbook/words.ts";
import { type World, nodeWorld } from "../logbook/world.ts";
import { write } from "../logbook/write.ts";
import { isLitter } from "../logbook/write-bytes.ts";
import { typedLine } from "../options/quote.ts";
import { type FlaggedSince, demoScreen } from "../render/demo.ts";
import { pressureUnit, unitRead } from "../render/units.ts";
import { pickTest } from "./pick.ts";
import { usage } from "./usage.ts";

export const demo: Command = {
  name: "demo",
  summary: "lay out invented engines to look at, and see what is told of them",
  examples: ["sealtrend demo", "sealtrend demo /tmp/engines"],
  positionals: [
    { name: "DIR", help: "where to (default ./sealtrend-demo); nothing is written over", need: "may" },
  ],
  options: [],
  run: async (args, io) => {
    const world = nodeWorld(io);
    const folder = resolve(io.cwd, args.positionals[0] ?? args.text("logbook") ?? "sealtrend-demo");
    const state = await layOut(world, folder);
    const logbook = await openLogbook(world, "read", folder);
    const engines = logbook.ids
      .map((id) => readRecord(logbook, id))
      .filter(({ tests }) => tests.length > 0)
      .map((record) => assessTest(record, pickTest(record, undefined)));
    const star = starOf(engines);
    const where = shown(io.cwd, folder);
    const next = nextLines(world, io, folder, star);
    const unit = pressureUnit(
      args.text("units"),
      logbook.facts,
      star === undefined ? undefined : unitRead(star),
    );
    const since = star === undefined ? undefined : flaggedSince(star);
    const lines = demoScreen({ where, state, engines, star, since, next }, { unit, width: io.width });
    return {
      exit: 0,
      text: `${lines.join("\n")}\n`,
      json: demoDocument({ folder, state, engines, star, next }),
    };
  },
};

/** Never over anything: a demo that is there is left as it stands. @throws Stop 2 where something else is there */
const layOut = async (world: World, folder: string): Promise<"new" | "there"> => {
  const file = shown(world.cwd, folder);
  if (isFolder(world, folder)) await settle(world, folder, "write"); // one that was killed half way
  const names = namesIn(world, folder);
  const isAtWork = names.some((name) => name.endsWith(".pending"));
  if (names.length > 0 && !isAtWork) {
    if (await isDemo(world, folder)) return "there";
    throw usage(
      "demo-place-taken",
      `something else is in ${file}`,
      "a free place: the demo is written over nothing",
      typedLine(["demo", `${file}-demo`]),
    );
  }
  const changes = demoFiles(world).map(({ path, text }) => ({ kind: "create", path, text }) as const);
  try {
    await write(world, { root: folder, command: typedLine(["demo", file]), changes });
  } catch (error) {
    // Another one laid it out meanwhile: the write waited for it.
    const isTaken = error instanceof Stop && error.faults.every(({ code }) => code === "file-exists");
    if (isTaken && (await isDemo(world, folder))) return "there";
    throw error;
  }
  return "new";
};

const isDemo = async (world: World, folder: string): Promise<boolean> =>
  isFolder(world, folder) &&
  isThere(world, join(folder, "logbook.json")) &&
  (await openLogbook(world, "read", folder)).facts.demo;

/** What is in a folder that may be missing, but for what is swept; a file counts as something in it. */
const namesIn = (world: World, folder: string): readonly string[] => {
  if (!isFolder(world, folder)) return isThere(world, folder) ? [folder] : [];
  return world.fs.readdirSync(folder).filter((name) => !isLitter(name) && !name.endsWith(".lock"));
};

/** The tractor; in a demo without it the engine that lags most. */
const starOf = (engines: readonly TestAssessment[]): TestAssessment | undefined => {
  const worst = ({ cylinders }: TestAssessment): number =>
    Math.max(...cylinders.map(({ belowOthers = 0 }) => belowOthers));
  return (
    engines.find(({ record }) => record.engine.id === "tractor") ??
    engines.toSorted((a, b) => worst(b) - worst(a))[0]
  );
};

/** In how many tests running, up to this one, the lagging cylinder stood out. */
const flaggedSince = ({ record, test, cylinders }: TestAssessment): FlaggedSince | undefined => {
  const label = cylinders.find(({ standing }) => standing === "lagging")?.label;
  if (label === undefined) return undefined;
  const earlier = record.tests
    .slice(0, record.tests.indexOf(test) + 1)
    .filter(({ setAside }) => setAside === undefined);
  let tests = 0;
  let date = test.date;
  for (const one of earlier.toReversed()) {
    const { dryStanding } =
      assessTest(record, one, { causes: "left-out" }).cylinders.find(
        (cylinder) => cylinder.label === label,
      ) ?? {};
    if (dryStanding === "even") break;
    if (dryStanding === undefined) continue;
    tests += 1;
    date = one.date;
  }
  return { label, tests, date };
};

/** What to type next, as this was typed; with the folder where the demo is not what a command finds by itself. */
const nextLines = (
  world: World,
  io: Io,
  folder: string,
  star: TestAssessment | undefined,
): readonly string[] => {
  if (star === undefined) return [];
  const { id } = star.record.engine;
  const program = io.env.npm_lifecycle_event === "start" ? "npm start --" : "sealtrend";
  const there = foundByItself(world) === folder ? [] : ["--logbook", shown(io.cwd, folder)];
  return [
    ["show", id, "--why"],
    ["history", id],
    ["how", "leak-down", id],
  ].map((words) => typedLine([...words, ...there]).replace(/^sealtrend/, program));
};

/** The logbook that is read where none is named; undefined where there is none. */
const foundByItself = (world: World): string | undefined => {
  try {
    return findLogbook(world, "read").root;
  } catch (error) {
    if (error instanceof Stop) return undefined;
    throw error;
  }
};
