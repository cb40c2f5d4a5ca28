// One line of a procedure: what to say, where it comes from, and for which engines it is said.

import type { Volume } from "../quantity/index.ts";
import type { Engine } from "../record/index.ts";

/** What the choice and the words of a line may depend on. */
export interface Situation {
  readonly engine: Engine;
  /** Chamber volume with the piston at the top [m3]; absent = not known. */
  readonly chamber?: Volume;
  /** Oil for each cylinder of a wet test [m3]. */
  readonly oil: Volume;
}

export interface Line {
  /** At most 72 characters (61 where `only` is given), so that a margin of 8 fits 80 columns. */
  readonly text: string | ((situation: Situation) => string);
  /** The published source that says so, or "common practice", or "judgement of this project". */
  readonly source: string;
  /** For one kind of ignition; where the ignition is not known the line begins with "If spark:" or "If diesel:". */
  readonly only?: "spark" | "diesel";
  readonly when?: (situation: Situation) => boolean;
}

/** A procedure as data: its lines by part, each with its condition and source. */
export interface Sheet {
  readonly name: string;
  readonly before: readonly Line[];
  readonly steps: readonly Line[];
  readonly cautions: readonly Line[];
  readonly voids: readonly Line[];
}

export const commonPractice = "common practice";
export const judgement = "judgement of this project";

type When = (situation: Situation) => boolean;
export const liquidCooled: When = ({ engine }) => engine.cooling === "liquid";
export const twoStroke: When = ({ engine }) => engine.cycle === "two-stroke";
export const withValves: When = ({ engine }) => engine.porting === "valves";
export const portsOnly: When = ({ engine }) => engine.porting === "ports";
export const aircraft: When = ({ engine }) => engine.use === "aircraft";
export const boat: When = ({ engine }) => engine.use === "boat";
export const onWheels: When = ({ engine }) => ["road", "farm", "motorcycle"].includes(engine.use);
export const single: When = ({ engine }) => engine.cylinders.length === 1;
export const several: When = ({ engine }) => engine.cylinders.length > 1;
export const releaseFitted: When = ({ engine }) =>
  ["automatic", "manual"].includes(engine.compressionRelease);
