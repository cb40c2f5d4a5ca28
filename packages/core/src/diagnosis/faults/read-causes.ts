// causes.csv: what can be wrong with one cylinder, and how likely it is before anything is measured.

import { type Problem, problem } from "../../problem/index.ts";
import type { RowView } from "../../record/index.ts";
import { bankCauses, pairCause, soundCause, wearCause } from "../model/known-causes.ts";
import type { CauseNames } from "./cause-rows.ts";
import { isEmpty, neededCode, neededNumber, neededText, partOf, readOrigin } from "./cells.ts";
import { type Cause, causeGroups } from "./faults.ts";
import { missingNames, needNames, rowsByName } from "./rows.ts";
import { type Sheet, type SheetTexts, openSheet } from "./sheet.ts";
import type { ShippedNames } from "./shipped-names.ts";

/** The causes that the way of reckoning itself speaks of. */
const always = [soundCause, pairCause, bankCauses.retarded, bankCauses.bent, wearCause];

/** No fault keeps the rest. @source judgement of the handbook, handbook/diagnosis.md 1 */
const most = 0.6;

export interface CausesRead {
  readonly causes: readonly Cause[];
  readonly names: CauseNames;
  /** Those with a chance of their own, which can be shifted; so can that of a pair of neighbours. */
  readonly shiftable: readonly string[];
}

/** The causes, no fault first. */
export const readCauses = (
  texts: SheetTexts,
  shipped: ShippedNames,
  problems: Problem[],
): CausesRead | undefined => {
  const columns = ["code", "name", "group", "prior", "status", "source"];
  const sheet = openSheet(texts, "causes.csv", columns, problems);
  if (sheet === undefined) return undefined;
  const named = rowsByName(
    sheet,
    "code",
    (row) => neededCode(row, "code", "tight-lash"),
    (row, code) => readCause(row, code, shipped),
  );
  needNames(sheet, "code", always, named);
  const causes = [...named.rows.values()];
  notePriors(sheet, causes, most);
  const isSound = ({ code }: Cause): boolean => code === soundCause;
  const codes = [...named.views.keys()];
  const known = shipped.causes.map(({ code }) => code);
  const hasChance = (code: string): boolean => {
    const row = named.rows.get(code);
    return row === undefined || row.prior !== undefined || code === pairCause;
  };
  return {
    causes: [...causes.filter(isSound), ...causes.filter((cause) => !isSound(cause))],
    names: {
      sheet,
      codes: [soundCause, ...codes.filter((code) => code !== soundCause)],
      own: codes.filter((code) => !known.includes(code) && !always.includes(code)),
      leftOut: [...new Set([...always, ...known])].filter((code) => !named.views.has(code)),
      cautioned: missingNames(known, named).filter((code) => !always.includes(code)),
      views: named.views,
      unlisted: [],
      lacking: [],
    },
    shiftable: codes.filter(hasChance),
  };
};

const readCause = (row: RowView, code: string, shipped: ShippedNames): Cause | undefined => {
  const name = neededText(row, "name", "valve lash too tight");
  const group = row.neededWord("group", causeGroups);
  const origin = readOrigin(row);
  const prior = readPrior(row, code, shipped);
  if (name === undefined || group === undefined || origin === undefined || prior === undefined)
    return undefined;
  return { code, name, group, ...prior, ...origin };
};

/** A cause that has a chance of its own in the shipped sheets needs one; elsewhere it may be left empty. */
const readPrior = (row: RowView, code: string, shipped: ShippedNames): Pick<Cause, "prior"> | undefined => {
  const text = row.text("prior");
  if (code === soundCause)
    return isEmpty(row, "prior", "beside no-fault, which has what the others leave") ? {} : undefined;
  const isNeeded = shipped.causes.some((cause) => cause.code === code && cause.prior !== undefined);
  if (text === "" && !isNeeded) return {};
  const prior = neededNumber(row, "prior", partOf("the prior", 0, most));
  return prior === undefined ? undefined : { prior };
};

/** Notes causes of the user's own that can never be: with no chance in one cylinder, and none in the engine.
 *  @param ofEngine - causes that a state of the engine has */
export const notePriorless = ({ causes, names }: CausesRead, ofEngine: readonly string[]): void => {
  for (const { code, prior } of causes) {
    const isTold = names.lacking.some((one) => one.code === code);
    if (!names.own.includes(code) || prior !== undefined || ofEngine.includes(code) || isTold) continue;
    const wanted = `a number from 0 to ${String(most)}, for states.csv has no such cause`;
    names.views.get(code)?.fault("prior", "sheet-cell-empty", { column: "prior", wanted });
  }
};

/** Notes chances that leave no fault too little. */
export const notePriors = (
  { header, problems }: Sheet,
  entries: readonly { readonly prior?: number }[],
  limit: number,
): void => {
  const sum = entries.reduce((total, { prior = 0 }) => total + prior, 0);
  if (sum > limit) problems.push(problem("priors-sum", { sum, most: limit }, header));
};
