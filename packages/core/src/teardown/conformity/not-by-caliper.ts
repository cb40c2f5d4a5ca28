// A caliper on a bore or a journal: it has no feel there, and its jaws are no gauge of a round.

import type { MeasuredPart } from "../../record/index.ts";
import type { InstrumentCode } from "./instruments.ts";

export interface NotByCaliper {
  readonly never: string;
  /** What to take instead. */
  readonly use: string;
}

const never = (parts: string, instrument: string): NotByCaliper => ({
  never: `a caliper is never for ${parts}`,
  use: `use a ${instrument}`,
});
const bearings = never("bearings", "bore gauge");
const journals = never("journals", "micrometer");

/** @source handbook/teardown.md 3.3 ("never for bores or journals") */
const wrong: Readonly<Partial<Record<MeasuredPart, NotByCaliper>>> = {
  bore: never("bores", "bore gauge"),
  "main bearing": bearings,
  "rod bearing": bearings,
  housing: bearings,
  main: journals,
  pin: journals,
};

/** Depths, which its tail is for. */
const depths: readonly string[] = ["ridge", "score depth"];

/** Undefined where the instrument does. */
export const notByCaliper = (
  { part, quantity }: { readonly part: MeasuredPart; readonly quantity: string },
  by: InstrumentCode | undefined,
): NotByCaliper | undefined => (by === "caliper" && !depths.includes(quantity) ? wrong[part] : undefined);
