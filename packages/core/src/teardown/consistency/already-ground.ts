// Journals of an undersize, as they were found: judged by its limits, and said so, for a crank that is worn as evenly may be meant.

import type { GroundBefore } from "../judging/ground-before.ts";
import { lengthText } from "../length-text.ts";
import type { TeardownConflict } from "../teardown.ts";

export const alreadyGround = ({ part, size, unit, readings }: GroundBefore): TeardownConflict => ({
  code: "ground-before",
  part,
  quantity: "diameter",
  text: `${part}s look like -${lengthText(Math.abs(size), unit)} already: ${
    readings === 1
      ? "the one figure lies in its range and is"
      : `${String(readings)} figures lie in its range and are`
  } held against it`,
  mend: "see the mark on the crank or on the back of the shells",
  weight: "doubtful",
});
