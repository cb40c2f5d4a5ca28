// Asks about readings that look mistyped, before they are saved.

import { cylinderColumn, gaugeUnits, plainNumber, splitReadings } from "@sealtrend/core/parts";
import type { Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import { clean } from "../../render/clean.ts";
import { prose } from "../../render/prose.ts";
import { askPerson } from "../kept/ask-person.ts";
import type { RowValues } from "./entry-context.ts";
import type { Slipped } from "./entry-slips.ts";
import { slipDoubt, unitDoubt } from "./slip-words.ts";

interface Questioned {
  readonly slips: readonly Slipped[];
  readonly say: (lines: readonly string[]) => void;
  readonly leave: (expected: string) => Stop;
}

/** Asks about each: typed again, a reading is taken as it is; Enter alone is no answer, but the unit of a row stands with it.
 *  @returns the rows as they were meant  @throws Stop 2 when the person leaves */
export const askSlips = async (
  io: Io,
  rows: readonly RowValues[],
  questioned: Questioned,
): Promise<readonly RowValues[]> => {
  const meant = [...rows];
  for (const slip of questioned.slips) {
    const { row, label } = slip;
    const answer = await askSlip(io, slip, questioned);
    meant[row] = { ...meant[row], [label === undefined ? "unit" : cylinderColumn(label)]: answer };
  }
  return meant;
};

const question = (slip: Slipped): string =>
  slip.label === undefined
    ? `${unitDoubt(slip)} (Enter = ${slip.text}, or the unit): `
    : `${slipDoubt(slip)}: `;

const askSlip = async (io: Io, slip: Slipped, { say, leave }: Questioned): Promise<string> => {
  for (;;) {
    const answer = await askPerson(io, question(slip), { takes: "typed now" });
    if (answer === undefined || answer === "q") throw leave("an answer to the question");
    const taken = slip.label === undefined ? unitAnswer(answer, slip) : readingAnswer(answer, slip);
    if (taken.ok) return taken.text;
    say(prose(taken.fault, io.width, "  "));
  }
};

type Answered = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly fault: string };

const unitAnswer = (answer: string, { text }: Slipped): Answered => {
  const unit = gaugeUnits.find((name) => name.toLowerCase() === answer.toLowerCase());
  if (answer === "" || unit !== undefined) return { ok: true, text: unit ?? text };
  return { ok: false, fault: `one of ${gaugeUnits.join(", ")}` };
};

const readingAnswer = (answer: string, { text, meant }: Slipped): Answered => {
  if (/^y(es)?$/i.test(answer) && meant !== undefined) return { ok: true, text: meant };
  if (answer === "")
    return { ok: false, fault: `type the reading: ${meant ?? "whole"}, or ${clean(text)} again` };
  const split = splitReadings(answer, 1);
  return split.ok
    ? { ok: true, text: plainNumber(split.cells[0] ?? "x") }
    : { ok: false, fault: `${clean(split.found)}: ${split.mend}` };
};
