// The whole import in one write: every engine and every row, or nothing; one undo takes it back.

import { dialectOf, engineHeaders, readTests } from "@sealtrend/core/parts";
import type { Logbook } from "../../logbook/open-logbook.ts";
import { type Change, type Written, write } from "../../logbook/write.ts";
import { filled, rowIn, stopOnMissing } from "../new-row.ts";
import type { EnginePlan } from "./engine-plans.ts";
import { type EngineScene, type Placed, type PlacedRows, placeTests } from "./place-tests.ts";

export interface SavedImport {
  readonly written: Written;
  /** The plans as they came to be done: another command may have written meanwhile. */
  readonly plans: readonly EnginePlan[];
}

/** @param command - the command line, shown by undo  @throws Stop 3 where something cannot be written; nothing is changed then */
export const saveImport = async (
  logbook: Logbook,
  plans: readonly EnginePlan[],
  command: string,
): Promise<SavedImport> => {
  const done = new Map(plans.map((plan) => [plan.id, plan.placed] as const));
  const changes = plans.flatMap((plan): readonly Change[] => {
    if (plan.state === "new") return plan.changes;
    const { scene, id } = plan;
    return scene === undefined || plan.placed.added.length === 0
      ? []
      : [appended(plan, scene, (placed) => done.set(id, placed))];
  });
  const written = await write(logbook.world, { root: logbook.root, command, changes: once(changes) });
  return {
    written,
    plans: plans.map((plan) => ({ ...plan, placed: done.get(plan.id) ?? plan.placed })),
  };
};

const appended = (
  { id, tests, placed: planned }: EnginePlan,
  scene: EngineScene,
  note: (placed: Placed) => void,
): Change => {
  const header = engineHeaders(scene.engine.cylinders)["tests.csv"] ?? "";
  const misfits = planned.keptOut.filter(({ test }) => !tests.includes(test));
  let last: PlacedRows | undefined;
  const placedIn = (text: string): PlacedRows => {
    last = placeTests(text, tests, scene);
    note({ ...last.placed, keptOut: [...misfits, ...last.placed.keptOut] });
    return last;
  };
  return {
    kind: "append",
    path: `${id}/tests.csv`,
    header,
    needs: (text) => {
      stopOnMissing(readTests(text, scene.file, scene.engine, scene.gauges).problems);
      return [...new Set(placedIn(text).values.flatMap(filled))];
    },
    rows: (current) => {
      const { values } = last ?? placedIn(current?.text ?? "");
      const isBlank = (current?.text ?? "").trim() === "";
      const dialect = dialectOf(isBlank ? `${header}\n` : (current?.text ?? ""), scene.file);
      const lines = values.map((row) => rowIn(dialect, scene.file, row));
      return isBlank && current !== undefined && current.text !== "" ? [header, ...lines] : lines;
    },
  };
};

/** Each path once: every new engine brings the logbook's own files where it has none yet. */
const once = (changes: readonly Change[]): readonly Change[] => [
  ...new Map(changes.map((change) => [change.path, change] as const)).values(),
];
