// The names that a logbook knows, for a key pressed for help: read as they stand, nothing put in order and no fault told, so that
// a slip in one file hides no name in another.

import { join } from "node:path";
import { engineFields, readEngineRecord, readGauges } from "@sealtrend/core/parts";
import { Stop } from "../command.ts";
import type { NamesOf } from "../options/candidates.ts";
import { clean } from "../render/clean.ts";
import { engineIds } from "./engine-id.ts";
import { findLogbook } from "./find-logbook.ts";
import { engineFiles, textOf } from "./open-logbook.ts";
import { codeOf, type World } from "./world.ts";

/** @param option - the value of --logbook */
export const knownNames = (world: World, option: string | undefined): NamesOf => {
  const root = quietly(() => findLogbook(world, "read", option).root);
  return (kind, engine) => {
    if (kind === "fields") return Object.keys(engineFields).filter((path) => path !== "schema");
    const names = root === undefined ? [] : (quietly(() => namesIn({ world, root }, kind, engine)) ?? []);
    return names.filter((name) => clean(name) === name);
  };
};

const namesIn = (
  logbook: { readonly world: World; readonly root: string },
  kind: Exclude<Parameters<NamesOf>[0], "fields">,
  engine: string | undefined,
): readonly string[] => {
  const { world, root } = logbook;
  if (kind === "gauges") return gaugesIn(world, root);
  const ids = engineIds(world, root);
  if (kind === "engines") return ids;
  const id = engine ?? (ids.length === 1 ? ids[0] : undefined);
  if (id === undefined || !ids.includes(id)) return [];
  const { record } = readEngineRecord(engineFiles(logbook, id), [], { demo: false });
  if (record === undefined) return [];
  return kind === "cylinders"
    ? record.engine.cylinders
    : ["latest", ...record.tests.map((test) => test.id).reverse()];
};

const gaugesIn = (world: World, root: string): readonly string[] => {
  const file = textOf(world, join(root, "gauges.csv"), []);
  return file === undefined ? [] : readGauges(file.text, file.file).gauges.map(({ id }) => id);
};

/** Undefined where a file cannot be read. */
const quietly = <T>(read: () => T): T | undefined => {
  try {
    return read();
  } catch (error) {
    if (error instanceof Stop || codeOf(error) !== undefined) return undefined;
    throw error;
  }
};
