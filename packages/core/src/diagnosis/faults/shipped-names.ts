// What the shipped sheets name: a slip in a sheet of one's own is told by what they hold.

import type { Faults } from "./faults.ts";

export type ShippedNames = Pick<Faults, "causes" | "states" | "shifts" | "tests">;

export const stateName = ({ reach, cause }: Pick<Faults["states"][number], "reach" | "cause">): string =>
  `${reach} ${cause}`;

export const shiftName = ({ when, entry }: Pick<Faults["shifts"][number], "when" | "entry">): string =>
  `${when}: ${entry}`;
