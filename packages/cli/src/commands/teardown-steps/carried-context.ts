// What a second sitting goes on with: the state and the unit of the last row of the same teardown. The instrument is not taken
// over: another day has another one in the hand as often as not.

import { type Measurement, type TypingContext, isLengthUnit } from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";

export interface Carried {
  readonly context: Pick<TypingContext, "length"> & Partial<Pick<TypingContext, "state">>;
  /** Said before the first line; none where nothing is taken over. */
  readonly said: readonly string[];
}

/** @param recorded - all that is recorded; what an option says is not taken from it */
export const carriedContext = (args: Args, recorded: readonly Measurement[], teardown: number): Carried => {
  const own = recorded.filter((one) => one.teardown === teardown).toSorted((a, b) => b.line - a.line);
  const unit = own.map((one) => one.unit).find((one) => one !== undefined && isLengthUnit(one));
  const length =
    args.text("unit") !== undefined || unit === undefined || !isLengthUnit(unit) ? undefined : unit;
  const state = args.text("state") === undefined ? own[0]?.state : undefined;
  const words = [
    ...(state === undefined ? [] : [`state ${state}`]),
    ...(length === undefined ? [] : [`figures without a unit in\u00a0${unitWords[length] ?? length}`]),
  ];
  return {
    context: { ...(state === undefined ? {} : { state }), ...(length === undefined ? {} : { length }) },
    said:
      words.length === 0
        ? []
        : [`goes on as the last row of teardown ${String(teardown)}: ${words.join(", ")}`],
  };
};

const unitWords: Readonly<Record<string, string>> = { in: "inches", thou: "th (0.001 in)" };
