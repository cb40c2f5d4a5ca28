// What was seen, not measured: scores, crosshatch, shells, cracks.

import type { TeardownAssessment, TeardownFinding } from "@sealtrend/core";
import { clean } from "../clean.ts";
import { atText, partNamed } from "./teardown-words.ts";

/** Words for what is as it should be: they are told after the others. */
const sound: readonly string[] = ["full", "none", "normal"];

/** `bore 3 score: nail catches`; what is not as it should be first, sound ones of a kind together. */
export const findingTexts = ({ findings }: Pick<TeardownAssessment, "findings">): readonly string[] => {
  const odd = findings.filter(({ word }) => !sound.includes(word));
  const fine = findings.filter(({ word }) => sound.includes(word));
  const kinds = [...new Set(fine.map(kindOf))];
  const together = kinds.map((kind) => {
    const own = fine.filter((one) => kindOf(one) === kind);
    const [first] = own;
    if (first === undefined) return "";
    const labels = [...new Set(own.flatMap(({ label }) => label ?? []))];
    return `${partNamed(first.part, labels)} ${first.quantity}: ${first.word}`;
  });
  return [...odd.map(findingText), ...together];
};

const kindOf = ({ part, quantity, word }: TeardownFinding): string => `${part}|${quantity}|${word}`;

export const findingText = ({ part, label, at, quantity, word, note }: TeardownFinding): string => {
  const place = at === undefined ? "" : ` ${atText({ part, at })}`;
  const beside = note === undefined ? "" : ` (${clean(note)})`;
  return `${partNamed(part, label === undefined ? [] : [label])}${place} ${quantity}: ${clean(word)}${beside}`;
};
