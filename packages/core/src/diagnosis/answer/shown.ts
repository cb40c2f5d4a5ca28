// How a chance is shown: capped, in a word, and with odds that may be out.

import type { Faults } from "../faults/faults.ts";

export interface Shown {
  readonly shown: number;
  readonly low: number;
  readonly high: number;
  readonly word: string;
}

/** @param cap - the most that is shown, 0 … 1
 *  @returns what is shown; the chances at odds a band's part and a band's times as high, p/(p + b(1−p)) and
 *  bp/(bp + 1−p); the word of what is shown @source handbook/diagnosis.md 5.2, 5.3 */
export const shownAs = (probability: number, cap: number, faults: Faults): Shown => {
  const { oddsBand: b } = faults.settings;
  const shown = Math.min(probability, cap);
  const rest = 1 - shown;
  return {
    shown,
    low: shown / (shown + b * rest),
    high: (b * shown) / (b * shown + rest),
    word: faults.words.find(({ least }) => shown >= least)?.word ?? "",
  };
};
