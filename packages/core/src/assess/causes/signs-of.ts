// Signs of the whole engine from its notes: there, not there, or nothing that can be said.

import type { Evidence, SignName } from "../../diagnosis/index.ts";
import { readNumber } from "../../quantity/index.ts";
import { type Note, burnsOil } from "../../record/index.ts";
import type { Assessed } from "./assessed.ts";
import { newestNote } from "./notes-around.ts";

type Found = "present" | "absent" | undefined;

/** A colour of smoke stands for what it is a sign of (handbook/trade.md C3); neither it nor oil used is one where oil is burnt by
 *  design. */
export const signsOf = (assessed: Assessed): Evidence["signs"] => {
  const smoke = newestNote(assessed, "smoke")?.value;
  const oil = smoke === "blue" ? "present" : amountOf(assessed, "oil use");
  const found: Readonly<Record<SignName, Found>> = {
    "oil use": burnsOil(assessed.record.engine) ? undefined : oil,
    "coolant loss": amountOf(assessed, "coolant loss"),
    miss: amountOf(assessed, "miss"),
    "blow-by": amountOf(assessed, "blow-by"),
  };
  return Object.fromEntries(Object.entries(found).filter(([, word]) => word !== undefined));
};

/** Combustion gas in the coolant; a figure in ppm says nothing, for no published limit of it was found. */
export const gasOf = (assessed: Assessed): Evidence["gas"] => {
  const found = wordOf(newestNote(assessed, "combustion gas in coolant"));
  return found === undefined ? undefined : found === "present" ? "positive" : "negative";
};

const amountOf = (assessed: Assessed, what: SignName): Found => {
  const note = newestNote(assessed, what);
  return wordOf(note) ?? (note === undefined ? undefined : numberOf(assessed, note));
};

const wordOf = (note: Note | undefined): Found => {
  if (note?.unit !== undefined) return undefined;
  if (note?.value === "none") return "absent";
  return note?.value === "some" || note?.value === "heavy" ? "present" : undefined;
};

/** What one maker calls excessive and another accepts: 0.9 L in 3200 km, and 1 qt in 1000 miles. Between the two nothing is
 *  said. In L/1000km. @source handbook/trade.md F1 (Saturn VUE 2003; an oil maker's bulletin) */
const oilByDistance = { absent: 0.9 / 3.2, present: 0.946353 / 1.609344 } as const;
/** Of its own earlier figure in the same unit: three times that is published for oil (Cat 3412C) and for blow-by
 *  (+200 %, Caterpillar G3500); half as much again is judgement. @source handbook/trade.md F1 */
const ofItsOwn = { absent: 1.5, present: 3 } as const;

const numberOf = (assessed: Assessed, note: Note): Found => {
  const value = valueOf(note);
  if (value === undefined) return undefined;
  if (value === 0) return "absent";
  const perDistance = distances[note.unit ?? ""];
  if (note.what === "oil use" && perDistance !== undefined)
    return between(value * perDistance, oilByDistance);
  if (note.what !== "oil use" && note.what !== "blow-by") return undefined;
  const before = firstFigure(assessed, note);
  return before === undefined ? undefined : between(value / before, ofItsOwn);
};

/** A figure at a limit is at it, whatever the last digit of the arithmetic says. */
const atLeast = 1 - 1e-9;

const between = (
  value: number,
  { absent, present }: { readonly absent: number; readonly present: number },
): Found => (value < absent * atLeast ? "absent" : value >= present * atLeast ? "present" : undefined);

/** In L/1000km. */
const distances: Readonly<Partial<Record<string, number>>> = {
  "L/1000km": 1,
  "qt/1000mi": 0.946353 / 1.609344,
};

const valueOf = ({ value = "" }: Note): number | undefined => {
  const read = readNumber(value);
  return read.ok ? read.value : undefined;
};

/** The first of its kind and unit since rings or bores were done. */
const firstFigure = ({ record: { notes, services } }: Assessed, note: Note): number | undefined => {
  const since = services.findLast(
    ({ date, what }) => date <= note.date && ["re-ring", "rebore", "rebuild"].includes(what),
  );
  const first = notes.find(
    ({ date, what, unit }) => what === note.what && unit === note.unit && date > (since?.date ?? ""),
  );
  const value = first === undefined || first === note ? undefined : valueOf(first);
  return value === undefined || value <= 0 ? undefined : value;
};
