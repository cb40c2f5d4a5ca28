// All figures of a teardown, held against their limits: which of them wait, and which decide.

import type { Engine } from "../../record/index.ts";
import { waitsFor } from "../consistency/conflicts.ts";
import type { TeardownConflict, TeardownItem } from "../teardown.ts";
import { withoutIdleSettlements } from "../works/known.ts";
import { type Face, withDiagonals } from "./faces.ts";
import { judged, standingOf, waitsForLimit } from "./limits.ts";
import { type Made, asMade } from "./made.ts";
import type { Reading } from "./reading.ts";
import type { sizesOf } from "./sizes.ts";
import { decidingFigures } from "./which-decide.ts";

export interface ToJudge {
  readonly readings: readonly Reading[];
  /** Those that none stands instead of. */
  readonly current: readonly Reading[];
  /** What was worked out from them. */
  readonly made: readonly Made[];
  readonly faces: readonly Face[];
  readonly conflicts: readonly TeardownConflict[];
  readonly engine: Engine;
  readonly sizeOf: ReturnType<typeof sizesOf>;
}

/** Read and worked out, each with its verdicts, its standing and what it waits for; and the figures that decide. */
export const judgedItems = ({ readings, current, made, faces, conflicts, engine, sizeOf }: ToJudge) => {
  const open = current.map(({ item }) => item).filter((item) => waitsFor(item, conflicts));
  const finished = (one: Made): TeardownItem => {
    const isOpen = open.some((item) => one.item.from !== undefined && one.sources.some(isOfPart(item)));
    const waits = isOpen || [one.item, ...one.sources].some((source) => waitsFor(source, conflicts));
    return standing(
      withDiagonals(judged(one, engine, sizeOf(one.item)), faces),
      waits ? "figures" : undefined,
    );
  };
  const deciding = (all: readonly TeardownItem[]): readonly TeardownItem[] =>
    decidingFigures(
      all.filter((item) => item.from !== undefined || current.some(({ item: now }) => isSame(now, item))),
      engine,
    );
  const [read, workedOut] = [readings.map(asMade).map(finished), made.map(finished)];
  const all = deciding([...read, ...workedOut]);
  const settling = (item: TeardownItem): TeardownItem => withoutIdleSettlements(item, all);
  const [items, derived] = [read.map(settling), workedOut.map(settling)];
  return { items, derived, figures: deciding([...items, ...derived]) };
};

/** With what it waits for, and its word. */
const standing = (item: TeardownItem, figures: "figures" | undefined): TeardownItem => {
  const waitsFor = figures ?? (waitsForLimit(item) ? ("limit" as const) : undefined);
  const told: TeardownItem =
    waitsFor === undefined || item.superseded === true ? item : { ...item, waits: true, waitsFor };
  const where = standingOf(told);
  return where === undefined ? told : { ...told, standing: where };
};

/** Another place of the same part may hold more, as long as one of them waits. */
const isOfPart =
  (one: TeardownItem) =>
  (other: TeardownItem): boolean =>
    one.part === other.part && one.label === other.label && one.quantity === other.quantity;

const isSame = (one: TeardownItem, other: TeardownItem): boolean =>
  one.part === other.part &&
  one.label === other.label &&
  one.at === other.at &&
  one.quantity === other.quantity &&
  one.state === other.state &&
  one.value === other.value;
