// The contrasts of a history alone, without a judgement: what a screen about one test needs of the years, at little cost.

import { at } from "./at.ts";
import { checkInput } from "./check-input.ts";
import type { HistoryInput } from "./input.ts";
import { layOut } from "./layout.ts";
import { relativeChannel } from "./relative-channel.ts";
import { shownContrasts } from "./shown-contrasts.ts";

export interface Contrasts {
  /** The names of the tests, those of one day together; in order. */
  readonly tests: readonly (readonly string[])[];
  /** In the order of the labels. */
  readonly cylinders: readonly {
    /** First test of the current epoch, by place in `tests`; the number of tests where none was made in it. */
    readonly since: number;
    /** Aligned with `tests`, ln units; undefined where there is none. */
    readonly contrasts: readonly (number | undefined)[];
  }[];
}

/** The same contrasts as `analyseHistory` gives. @throws RangeError on input that no caller should make */
export const contrastsOf = (input: HistoryInput): Contrasts => {
  checkInput(input);
  const layout = layOut(input);
  const { polish } = relativeChannel(layout.tests, layout.rows, layout.columns);
  const { contrasts } = shownContrasts(layout, polish.levels);
  return {
    tests: layout.tests.map(({ ids }) => ids),
    cylinders: layout.labels.map((_, i) => ({
      since: at(layout.columns, at(layout.current, i)).from,
      contrasts: at(contrasts, i),
    })),
  };
};
