// causes.csv and states.csv: what can be wrong, and how likely it is before anything is measured.

import { type Problem, problem } from "../../problem/index.ts";
import type { RowView } from "../../record/index.ts";
import { bankCauses, pairCause, soundCause, wearCause } from "../model/known-causes.ts";
import { type Cause, type EngineState, causeGroups } from "./faults.ts";
import {
  type Sheet,
  type SheetTexts,
  isEmpty,
  needNames,
  neededNumber,
  neededText,
  openSheet,
  partOf,
  readOrigin,
  rowsByName,
} from "./sheet.ts";

/** The causes that the way of reckoning itself speaks of. */
const always = [soundCause, pairCause, bankCauses.retarded, bankCauses.bent, wearCause];

/** No fault keeps the rest. @source judgement of the handbook, handbook/diagnosis.md 1 */
const most = { causes: 0.6, states: 0.9 } as const;

export interface CausesRead {
  readonly causes: readonly Cause[];
  /** Of every row, faulty ones too, so that other sheets are checked against them. */
  readonly codes: readonly string[];
  /** Those with a chance of their own, which can be shifted; so can that of a pair of neighbours. */
  readonly shiftable: readonly string[];
}

/** The causes, no fault first. */
export const readCauses = (texts: SheetTexts, problems: Problem[]): CausesRead | undefined => {
  const columns = ["code", "name", "group", "prior", "status", "source"];
  const sheet = openSheet(texts, "causes.csv", columns, problems);
  if (sheet === undefined) return undefined;
  const { rows, names } = rowsByName(
    sheet,
    "code",
    (row) => neededText(row, "code", "tight-lash")?.toLowerCase(),
    readCause,
  );
  needNames(sheet, "code", always, names);
  const causes = [...rows.values()];
  notePriors(sheet, causes, most.causes);
  const isSound = ({ code }: Cause): boolean => code === soundCause;
  const soundFirst = [...causes.filter(isSound), ...causes.filter((cause) => !isSound(cause))];
  const hasChance = (code: string): boolean => {
    const row = rows.get(code);
    return row === undefined || row.prior !== undefined || code === pairCause;
  };
  return {
    causes: soundFirst,
    codes: [soundCause, ...names.filter((name) => name !== soundCause)],
    shiftable: names.filter(hasChance),
  };
};

const readCause = (row: RowView, code: string): Cause | undefined => {
  const name = neededText(row, "name", "valve lash too tight");
  const group = row.neededWord("group", causeGroups);
  const origin = readOrigin(row);
  const prior = row.number("prior", partOf("the prior", 0, most.causes));
  if (code === soundCause) isEmpty(row, "prior", "beside no-fault, which has what the others leave");
  const isWhole = prior !== undefined || row.text("prior") === "";
  if (name === undefined || group === undefined || origin === undefined || !isWhole) return undefined;
  return { code, name, group, ...(prior === undefined ? {} : { prior }), ...origin };
};

const notePriors = (
  { header, problems }: Sheet,
  entries: readonly { readonly prior?: number }[],
  limit: number,
): void => {
  const sum = entries.reduce((total, { prior = 0 }) => total + prior, 0);
  if (sum > limit) problems.push(problem("priors-sum", { sum, most: limit }, header));
};

export interface StatesRead {
  readonly states: readonly EngineState[];
  /** `all CODE` or `some CODE`, of faulty rows too. */
  readonly names: readonly string[];
}

export const readStates = (
  texts: SheetTexts,
  codes: readonly string[],
  problems: Problem[],
): StatesRead | undefined => {
  const columns = ["reach", "cause", "prior", "scatter", "share", "status", "source"];
  const sheet = openSheet(texts, "states.csv", columns, problems);
  if (sheet === undefined) return undefined;
  const nameOf = (row: RowView): string | undefined => {
    const reach = row.neededWord("reach", ["all", "some"]);
    const cause = row.neededWord(
      "cause",
      codes.filter((code) => code !== soundCause),
    );
    return reach === undefined || cause === undefined ? undefined : `${reach} ${cause}`;
  };
  const { rows, names } = rowsByName(sheet, "cause", nameOf, readState);
  const states = [...rows.values()];
  notePriors(sheet, states, most.states);
  return { states, names };
};

const readState = (row: RowView): EngineState | undefined => {
  const cause = row.text("cause").toLowerCase();
  const prior = neededNumber(row, "prior", partOf("the prior", 0, most.states));
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
