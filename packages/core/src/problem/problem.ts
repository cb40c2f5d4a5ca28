// A fault in somebody's data: what was found, where, what was expected, and one thing to do about it.

import { byText } from "./by-text.ts";
import { catalogue } from "./catalogue.ts";

/** An `error` keeps the row or the file out; a `caution` is said and the data is used. */
export type Severity = "error" | "caution";

/** Where in a file; line and column count from 1. */
export interface Place {
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
  /** The line as it stands in the file, and the first and last column of the fault in it. */
  readonly excerpt?: { readonly text: string; readonly from: number; readonly to: number };
}

/** The three sentences of a problem. */
export interface Words {
  /** What was found, quoted where it is the user's own text. */
  readonly found: string;
  readonly expected: string;
  /** One thing the reader can do now, ready to type. */
  readonly mend: string;
}

/** The codes of the catalogue. */
export type ProblemCode = keyof typeof catalogue;
/** What the sentences of a code need to know. */
export type Facts<C extends ProblemCode> = Parameters<(typeof catalogue)[C]>[0];

/** A fault in somebody's data: where it stands, what was found and expected, and one thing to do about it. */
export interface Problem extends Place, Words {
  readonly code: ProblemCode;
  readonly severity: Severity;
}

/** Makes a problem from its code, the facts its sentence needs, and its place. */
export const problem = <C extends ProblemCode>(
  code: C,
  facts: Facts<C>,
  place: Place = {},
  severity: Severity = "error",
): Problem => {
  const words = (catalogue[code] as (facts: Facts<C>) => Words)(facts);
  return { code, severity, ...place, ...words };
};

/** The order in which problems are shown: by file, line, column. */
export const byPlace = (a: Problem, b: Problem): number =>
  byText(a.file ?? "", b.file ?? "") || (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0);
