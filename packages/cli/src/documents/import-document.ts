// The JSON of `import`, sealtrend/import@1. What is undefined is left out when the document is written.

import type { LeftOut, OpenQuestion } from "@sealtrend/core/parts";
import type { EnginePlan } from "../commands/import-steps/engine-plans.ts";
import {
  type ImportResult,
  daysOf,
  faultsToMend,
  keptOutFaults,
  slipsOf,
} from "../commands/import-steps/import-result.ts";
import { readingsIn } from "../commands/import-steps/readings-in.ts";
import type { Written } from "../logbook/write.ts";
import { shown } from "../logbook/words.ts";
import { headline } from "../render/import/import-headline.ts";
import { faultEntries } from "../render/faults.ts";

/** @param written - what was written  @param cwd - the working folder, below which paths are shown short */
export const importDocument = (result: ImportResult, written: Written | undefined, cwd: string) => {
  const { file, state, plans, open, left, shape, map, mapFile, why, counts, unread, remarks } = result;
  const added = plans.flatMap(({ placed }) => placed.added);
  const recorded = plans.flatMap(({ placed }) => placed.recorded);
  return {
    schema: "sealtrend/import@1",
    file,
    state: state.replaceAll(" ", "-"),
    text: headline(result),
    tests: added.length,
    readings: readingsIn(added),
    notTaken: counts?.notTaken,
    ...daysOf(added),
    recorded: { tests: recorded.length, readings: readingsIn(recorded) },
    filling: plans.reduce((sum, { placed }) => sum + placed.filling, 0),
    engines: plans.map(engineEntry),
    questions: open.map(questionEntry),
    leftOut: [
      ...faultEntries(shape).map((problem) => ({ why: "fault", readings: 0, problem })),
      ...left.map(leftEntry),
      ...plans.flatMap(({ placed }) =>
        placed.keptOut.map(({ test, fault }) => ({
          why: "logbook",
          readings: readingsIn([test]),
          problem: faultEntries([fault])[0],
        })),
      ),
    ],
    faults: keptOutFaults(result).length,
    toMend: faultEntries(faultsToMend(result)),
    worthALook: faultEntries(slipsOf(result)),
    unread,
    remarks,
    map,
    mapFile,
    because: why.map(({ entry, text }) => ({ entry, text })),
    written: written?.files.map(({ path, kind, rows }) => ({
      file: shown(cwd, path),
      kind,
      rows: rows.length,
    })),
  };
};

const engineEntry = ({ id, state, sheetNames, cylinders, ignition, placed }: EnginePlan) => ({
  id,
  state,
  sheetNames,
  cylinders,
  ignition,
  tests: placed.added.length,
  readings: readingsIn(placed.added),
  ...daysOf(placed.added),
  recorded: { tests: placed.recorded.length, readings: readingsIn(placed.recorded) },
});

const questionEntry = ({ code, text, readings, place = {}, entry, option }: OpenQuestion) => ({
  code,
  text,
  file: place.file,
  line: place.line,
  column: place.column,
  readings,
  entry,
  option,
});

const leftEntry = ({ why, row, column, cell, readings, problem }: LeftOut) => ({
  why,
  row,
  column,
  cell,
  readings,
  problem: faultEntries([problem])[0],
});
