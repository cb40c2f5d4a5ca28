// Causes named in many sheets: what one of them lacks or has too much is told once, in causes.csv, not in every sheet.

import { nearest, problem } from "../../problem/index.ts";
import type { RowView } from "../../record/index.ts";
import { missingNames, modelRow, needNames, noteLeftOut, rowsByName } from "./rows.ts";
import type { Sheet } from "./sheet.ts";

/** The causes as the other sheets see them. */
export interface CauseNames {
  readonly sheet: Sheet;
  /** With a row in causes.csv, no fault first; faulty rows too. */
  readonly codes: readonly string[];
  /** Those of them that the shipped sheets do not know. */
  readonly own: readonly string[];
  /** Of the shipped sheets, without a row in causes.csv: what other sheets say of them is passed over. */
  readonly leftOut: readonly string[];
  /** Those of them worth a caution: the others are told as a fault already. */
  readonly cautioned: readonly string[];
  readonly views: ReadonlyMap<string, RowView>;
  /** Filled while the other sheets are read. */
  readonly unlisted: Unlisted[];
  readonly lacking: Lacking[];
}

/** A code that causes.csv does not have, in another sheet. */
interface Unlisted {
  readonly code: string;
  readonly file: string;
  /** Says so at its row. */
  readonly tell: () => void;
}

/** A cause of the user's own without a row in a sheet, and a row that would do. */
interface Lacking {
  readonly code: string;
  readonly file: string;
  readonly example: string;
}

/** The cause of a row; undefined, with the fault noted now or by `noteCauses`, where causes.csv has none of that code.
 *  @param words - what can stand there */
export const causeOf = (
  row: RowView,
  file: string,
  causes: CauseNames,
  words: readonly string[] = causes.codes,
): string | undefined => {
  const code = row.text("cause").toLowerCase();
  if (causes.codes.includes(code) || causes.leftOut.includes(code)) return code;
  const tell = (): void => {
    row.neededWord("cause", words);
  };
  if (code === "") tell();
  else causes.unlisted.push({ code, file, tell });
  return undefined;
};

/** A row for each cause, in any order; undefined where one is missing or faulty, with the fault noted now or later. */
export const rowForEachCause = <T>(
  sheet: Sheet,
  causes: CauseNames,
  read: (row: RowView, code: string) => T | undefined,
): ReadonlyMap<string, T> | undefined => {
  const { file } = sheet.header;
  const { codes, own } = causes;
  const named = rowsByName(
    sheet,
    "cause",
    (row) => causeOf(row, file, causes),
    (row, code) => (codes.includes(code) ? read(row, code) : undefined),
  );
  const shipped = codes.filter((code) => !own.includes(code));
  needNames(sheet, "cause", shipped, named);
  const model = named.views.get("none-of-these") ?? sheet.rows.at(-1);
  const typed = { status: "judgement", link: "judgement", source: "own", note: "" };
  for (const code of missingNames(own, named))
    causes.lacking.push({ code, file, example: modelRow(sheet, model, { ...typed, cause: code }) });
  return codes.every((code) => named.rows.has(code)) ? named.rows : undefined;
};

/** What the other sheets showed to be wrong with causes.csv: one fault a cause. */
export const noteCauses = (causes: CauseNames): void => {
  const { sheet, cautioned } = causes;
  const meant = causes.own.flatMap((code) => noteLacking(code, causes) ?? []);
  noteUnlisted(causes);
  noteLeftOut(sheet, "code", {
    names: cautioned.filter((code) => !meant.includes(code)),
    without: "a cause without one is never considered",
  });
};

/** @returns the shipped cause that was meant, where that is likely */
const noteLacking = (code: string, { lacking, leftOut, views }: CauseNames): string | undefined => {
  const lacks = lacking.filter((one) => one.code === code);
  const [first] = lacks;
  if (first === undefined) return undefined;
  const isAlone = leftOut.length === 1 && lacking.every((one) => one.code === code);
  const meant = nearest(code, leftOut)[0] ?? (isAlone ? leftOut[0] : undefined);
  const example = { sheet: first.file, row: first.example };
  const sheets = lacks.map(({ file }) => file);
  views.get(code)?.fault("code", "cause-rows-missing", {
    code,
    sheets,
    example,
    ...(meant === undefined ? {} : { meant }),
  });
  return meant;
};

/** A code in several sheets was left out in causes.csv; in one sheet, or like another one in a few, it is misspelt there. */
const noteUnlisted = ({ sheet, unlisted, codes: known }: CauseNames): void => {
  const codes = new Set(unlisted.map(({ code }) => code));
  for (const code of codes) {
    const rows = unlisted.filter((one) => one.code === code);
    const files = [...new Set(rows.map(({ file }) => file))];
    if (files.length <= (nearest(code, known).length > 0 ? 3 : 1)) {
      for (const { tell } of rows) tell();
      continue;
    }
    const origin = { group: "top", prior: "0.001", status: "judgement", source: "own" };
    const row = modelRow(sheet, undefined, { ...origin, code, name: code.replaceAll("-", " ") });
    sheet.problems.push(problem("cause-unlisted", { code, sheets: files, row }, sheet.header));
  }
};
