// What size cleans up: the oversize of the bores, the undersize of the crank.

import type { Length, Oversize, OversizeAnswer, TeardownAssessment, Undersize } from "@sealtrend/core/parts";
import { type Written, lengthNumber, lengthText, lengthUnit, writtenIn } from "./teardown-length.ts";

/** A sentence for the bores and one for each kind of journal. @param units - the value of --units */
export const sizeTexts = (
  { oversize, undersizes }: TeardownAssessment,
  units: string | undefined,
): readonly string[] => [
  ...(oversize === undefined ? [] : [oversizeText(oversize, units)]),
  ...undersizes.map((undersize) => undersizeText(undersize, units)),
];

/** The sizes alone: `bores +1.00 or +0.50 mm, mains -0.25 mm`; empty where none that is offered cleans up. */
export const sizesInShort = (
  { oversize, undersizes }: TeardownAssessment,
  units: string | undefined,
): string => {
  const bores = [...new Set((oversize?.answers ?? []).flatMap(({ size }) => size ?? []))];
  const over = writtenIn(lengthUnit(units, oversize === undefined ? [] : [oversize.unit]), bores);
  const under = undersizes.flatMap(({ part, size, unit }) => {
    if (size === undefined) return [];
    return [`${part}s -${lengthText(size, writtenIn(lengthUnit(units, [unit]), [size]))}`];
  });
  const bored = bores.map((size) => `+${lengthNumber(size, over)}`).join(" or ");
  return [...(bored === "" ? [] : [`bores ${bored}\u00a0${over.unit}`]), ...under].join(", ");
};

/** Each answer apart where the bar's place matters. */
const oversizeText = (oversize: Oversize, units: string | undefined): string => {
  const written = writtenIn(lengthUnit(units, [oversize.unit]), [oversize.honeStock]);
  const answers = oversize.answers.map((answer) => answerText(answer, written, oversize));
  const same = new Set(oversize.answers.map(({ size }) => size)).size === 1;
  const before =
    oversize.alreadyBored === undefined
      ? ""
      : ` It looks bored already: +${lengthText(oversize.alreadyBored, written)}.`;
  return `bores: ${same ? (answers[0] ?? "") : answers.join("; ")}.${before}`;
};

const answerText = (answer: OversizeAnswer, written: Written, { answers }: Oversize): string => {
  const { size, finished, boreTo, offset } = answer;
  const when = answers.length === 1 ? "" : ` if ${offsets[offset]}`;
  if (size === undefined || finished === undefined) return `no size that is offered cleans up${when}`;
  const to = boreTo === undefined ? "" : `, bored to ${lengthNumber(boreTo, written)} and honed`;
  return `+${lengthText(size, written)} cleans up all${when}: finished ${lengthText(finished, written)}${to}`;
};

const offsets: Readonly<Record<OversizeAnswer["offset"], string>> = {
  worst: "all wear is on one wall",
  none: "the bar is centred in the worn bore",
  known: "the bar stands where the shop says",
};

const undersizeText = (
  { part, needed, decidedBy, size, low, high, unit }: Undersize,
  units: string | undefined,
): string => {
  const written = writtenIn(
    lengthUnit(units, [unit]),
    [low, high].filter((one) => one !== undefined),
  );
  const asked = (value: Length): string => lengthText(value, written);
  if (size === undefined)
    return `${part}s: ${asked(needed)} has to come off, decided by ${decidedBy}: no undersize that is offered cleans up.`;
  const range =
    low === undefined || high === undefined
      ? ""
      : `: ground to ${lengthNumber(low, written)} to ${asked(high)}`;
  return `${part}s: ${asked(size)} under cleans up all${range} (${asked(needed)} needed, ${decidedBy}).`;
};
