// The logbook of the decision's cases, and what `decide` says of them on one day.

import { fileURLToPath } from "node:url";
import { newDesk } from "./desk.ts";

export const cases = fileURLToPath(new URL("../decide-cases/logbook", import.meta.url));

/** The readings of the cases end in the week before. */
const day: readonly string[] = ["--as-of", "2026-11-25"];

export interface Decided {
  readonly decision: { readonly code: string; readonly text: string; readonly why: string };
  readonly basis: string;
  readonly margin?: string;
  readonly urgency?: string;
  readonly probability?: number;
  readonly breakEven?: { readonly probability?: number; readonly K: number; readonly G: number };
  readonly flipRatio?: number;
  readonly scores: Readonly<Record<string, number>>;
  readonly evidence: readonly { readonly row: string; readonly use: string; readonly source?: string }[];
  readonly guards: readonly { readonly code: string }[];
  readonly flips: readonly {
    readonly input: string;
    readonly at: number;
    readonly where?: string;
    readonly to?: string;
  }[];
  readonly options: readonly { readonly code: string; readonly expectedCost?: number }[];
  readonly comparison?: { readonly difference: number; readonly price: number };
  readonly testWorth?: { readonly change: number; readonly evsi?: number; readonly asked: string };
  readonly planBy?: number;
  readonly horizon_years: number;
  readonly horizon: { readonly kind: string; readonly from: string };
  readonly next: { readonly by: string; readonly step: string };
  readonly licensed: boolean;
  readonly said: readonly string[];
  readonly prices: { readonly known: string; readonly missing: readonly string[] };
}

/** Words are split at blanks: `healthy --opened pistons-in`. */
export const decided = async (line: string): Promise<Decided> => {
  const said = await newDesk().type(["decide", ...line.split(" "), ...day, "--logbook", cases, "--json"]);
  if (said.exit !== 0) throw new Error(said.out);
  return JSON.parse(said.out) as Decided;
};

export const screen = async (line: string, width = 80): Promise<string> =>
  (await newDesk().type(["decide", ...line.split(" "), ...day, "--logbook", cases], { width })).out;

const open = "--opened pistons-in --engine-out";

/** Every case as it is typed in the tests. */
export const lines: readonly string[] = [
  `healthy ${open}`,
  `healthy ${open} --own for-good`,
  "healthy --opened pistons-out",
  "healthy",
  `falling ${open}`,
  "valve",
  "thirsty --opened head-off",
  "knocking",
  "short --engine-out",
  "station",
  `unpriced ${open}`,
  "aero",
  "once",
  "untested",
  "torn",
  "alllow",
  "stored",
];

/** Numbers of ours that are no results: examples to type, the hours of a published rule, and where a chance is not told finer. */
export const ours =
  /'\[\{[\s\S]*?\}\]'|--own 11y|ownership 11y|--renewed 2004|renewed 2004|74\/80|--price work\.reRing=620|prices\.work\.reRing 620|50 h or more|TM 10\S+|4 from two|more than 99 in 100|less than 1 in 100|\(4\)/g;
