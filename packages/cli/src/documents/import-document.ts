// The JSON of `import`, sealtrend/import@1. What is undefined is left out when the document is written.

import type { OpenQuestion } from "@sealtrend/core/parts";
import type { EnginePlan } from "../commands/import-steps/engine-plans.ts";
import {
  type ImportResult,
  daysOf,
  faultsToMend,
  keptOutCount,
  slipsOf,
} from "../commands/import-steps/import-result.ts";
import { readingsIn } from "../commands/import-steps/readings-in.ts";
import type { Written } from "../logbook/write.ts";
import { shown } from "../logbook/words.ts";
import { headline } from "../render/import/import-headline.ts";
import { faultEntries } from "../render/faults.ts";
import { mostTold, restOf } from "../render/rest-of-faults.ts";

/** @param written - what was written  @param cwd - the working folder, below which paths are shown short */
export const importDocument = (result: ImportResult, written: Written | undefined, cwd: string) => {
  const { file, state, plans, open, map, mapFile, why, counts, unread, remarks } = result;
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
    ownUnits: counts?.ownUnits,
    ownSupplies: counts?.ownSupplies,
    ...daysOf(added),
    recorded: { tests: recorded.length, readings: readingsIn(recorded) },
    filling: plans.reduce((sum, { placed }) => sum + placed.filling, 0),
    engines: plans.map(engineEntry),
    questions: open.map(questionEntry),
    ...leftOut(result),
    faults: keptOutCount(result).places,
    toMend: faultEntries(faultsToMend(result).slice(0, mostTold)),
    moreToMend: restOf(faultsToMend(result).slice(mostTold)),
    worthALook: faultEntries(slipsOf(result).slice(0, mostTold)),
    moreWorthALook: restOf(slipsOf(result).slice(mostTold)),
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

/** What stays out: the first of each kind with its place, of the others how many. */
const leftOut = ({ shape, left, moreLeft, plans }: ImportResult) => {
  const entries = [
    ...shape.map((fault) => ({ why: "fault", readings: 0, fault })),
    ...left.map(({ problem, ...entry }) => ({ ...entry, fault: problem })),
    ...plans.flatMap(({ placed }) =>
      placed.keptOut.map(({ test, fault }) => ({ why: "logbook", readings: readingsIn([test]), fault })),
    ),
  ];
  const rest = entries.slice(mostTold);
  const counted = new Map<string, number>();
  for (const { code, places } of moreLeft) counted.set(code, (counted.get(code) ?? 0) + places);
  const more = restOf(
    rest.map(({ fault }) => fault),
    counted,
  );
  return {
    leftOut: entries
      .slice(0, mostTold)
      .map(({ fault, ...entry }) => ({ ...entry, problem: faultEntries([fault])[0] })),
    moreLeftOut:
      more === undefined
        ? undefined
        : { ...more, readings: [...rest, ...moreLeft].reduce((sum, { readings }) => sum + readings, 0) },
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
