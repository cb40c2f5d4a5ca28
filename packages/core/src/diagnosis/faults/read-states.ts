// states.csv: what can be wrong with the engine as a whole.

import type { Problem } from "../../problem/index.ts";
import type { RowView } from "../../record/index.ts";
import { soundCause } from "../model/known-causes.ts";
import { type CauseNames, causeOf } from "./cause-rows.ts";
import { isEmpty, neededNumber, partOf, readOrigin } from "./cells.ts";
import type { EngineState } from "./faults.ts";
import { notePriors } from "./read-causes.ts";
import { missingNames, noteLeftOut, rowsByName } from "./rows.ts";
import { type SheetTexts, openSheet } from "./sheet.ts";
import { type ShippedNames, stateName } from "./shipped-names.ts";

/** No fault keeps the rest. @source judgement of the handbook, handbook/diagnosis.md 1 */
const most = 0.9;

export interface StatesRead {
  readonly states: readonly EngineState[];
  /** `all CODE` or `some CODE`: of every row, and of the shipped ones that were left out. */
  readonly names: readonly string[];
  /** Causes of a row, faulty or not. */
  readonly causes: readonly string[];
}

/** The states; those of a cause that causes.csv leaves out are passed over. */
export const readStates = (
  texts: SheetTexts,
  { causes, shipped }: { readonly causes: CauseNames; readonly shipped: ShippedNames },
  problems: Problem[],
): StatesRead | undefined => {
  const columns = ["reach", "cause", "prior", "scatter", "share", "status", "source"];
  const sheet = openSheet(texts, "states.csv", columns, problems);
  if (sheet === undefined) return undefined;
  const faulty = causes.codes.filter((code) => code !== soundCause);
  const nameOf = (row: RowView): string | undefined => {
    const reach = row.neededWord("reach", ["all", "some"]);
    const cause =
      row.text("cause").toLowerCase() === soundCause
        ? row.neededWord("cause", faulty)
        : causeOf(row, "states.csv", causes, faulty);
    return reach === undefined || cause === undefined ? undefined : stateName({ reach, cause });
  };
  const named = rowsByName(sheet, "cause", nameOf, (row) =>
    causes.codes.includes(row.text("cause").toLowerCase()) ? readState(row) : undefined,
  );
  const states = [...named.rows.values()];
  notePriors(sheet, states, most);
  const known = shipped.states.map(stateName);
  noteLeftOut(sheet, "cause", {
    names: missingNames(known, named),
    without: "a state of the engine without one is never considered",
  });
  return {
    states,
    names: [...new Set([...named.views.keys(), ...known])],
    causes: sheet.rows.map((row) => row.text("cause").toLowerCase()),
  };
};

const readState = (row: RowView): EngineState | undefined => {
  const cause = row.text("cause").toLowerCase();
  const prior = neededNumber(row, "prior", partOf("the prior", 0, most));
  const origin = readOrigin(row);
  const reach = row.text("reach").toLowerCase();
  if (reach === "all") {
    const scatter = neededNumber(row, "scatter", partOf("the scatter", 0, 0.3));
    const isAlone = isEmpty(row, "share", "in a row that meets all");
    if (prior === undefined || scatter === undefined || origin === undefined || !isAlone) return undefined;
    return { reach, cause, prior, scatter, ...origin };
  }
  const share = neededNumber(row, "share", partOf("the share", 0.01, 1));
  const isAlone = isEmpty(row, "scatter", "in a row that meets some");
  if (prior === undefined || share === undefined || origin === undefined || !isAlone) return undefined;
  return { reach: "some", cause, prior, share, ...origin };
};
