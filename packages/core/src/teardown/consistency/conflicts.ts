// All that contradicts itself on one engine taken apart. Nothing is corrected: each conflict is told with what would mend it.

import { type Engine, isLimitFor } from "../../record/index.ts";
import type { EnteredTwice } from "../judging/entered-twice.ts";
import type { GroundBefore } from "../judging/ground-before.ts";
import type { Reading } from "../judging/reading.ts";
import { isSamePlace, partNamed } from "../places.ts";
import type { PartCount, TeardownConflict, TeardownItem } from "../teardown.ts";
import { alreadyGround } from "./already-ground.ts";
import { impossible, impossibleDerived, tooFarApart } from "./cannot-be.ts";
import { gapConflicts } from "./gap-and-bore.ts";
import { misprintConflicts } from "./limit-misprint.ts";
import { middleFor } from "./middle.ts";
import { countConflicts } from "./part-counts.ts";
import { repeatsApart } from "./repeats-apart.ts";
import { apartFromSiblings, swappedDigits, wholeTurn } from "./siblings.ts";
import { threadRange } from "./thread-range.ts";
import { twoWayConflicts } from "./two-ways.ts";
import { wrongInstruments } from "./wrong-instrument.ts";

interface Found {
  /** Of parts as they are now, at each place the one that is known best. */
  readonly items: readonly TeardownItem[];
  /** Of parts as they are now, by whatever instrument. */
  readonly readings: readonly Reading[];
  /** Of an earlier state, which nothing follows from. */
  readonly before: readonly TeardownItem[];
  /** Each with what it was made of. */
  readonly derived: readonly { readonly item: TeardownItem; readonly sources: readonly TeardownItem[] }[];
  readonly counts: readonly PartCount[];
  readonly twice: EnteredTwice["sets"];
  readonly ground: readonly GroundBefore[];
}

/** A figure is told of once: what cannot be at all before what is only off the others. */
export const conflictsOf = (
  { items, readings, before, derived, counts, twice, ground }: Found,
  engine: Engine,
): readonly TeardownConflict[] => {
  const apart = repeatsApart(readings, engine);
  const single = items.filter((item) => !apart.some((conflict) => isSamePlace(placeOf(conflict), item)));
  const each = slipsOf(single, engine);
  const sound = single.filter((_, i) => each[i] === undefined);
  // what is made of a figure that cannot be tells nothing more
  const clear = single.filter((_, i) => each[i]?.weight !== "conflict");
  const made = derived.filter(({ sources }) => sources.every((source) => clear.includes(source)));
  return [
    ...apart,
    ...toldOnce(each.filter((conflict) => conflict !== undefined)),
    ...slipsOf(before, engine).flatMap((conflict) =>
      conflict === undefined ? [] : [{ ...conflict, weight: "doubtful" as const }],
    ),
    ...apartFromSiblings(sound),
    ...made.flatMap(({ item, sources: [first] }) => impossibleDerived(item, first?.value) ?? []),
    ...twoWayConflicts(
      clear.filter(({ quantity }) => quantity === "thread clearance"),
      made.flatMap(({ item }) => (item.quantity === "clearance" ? [item] : [])),
    ),
    ...gapConflicts(clear),
    ...twice.map(enteredTwice),
    ...ground.map(alreadyGround),
    ...wrongInstruments(items),
    ...misprintConflicts(engine.clearances),
    ...countConflicts(counts, engine),
  ];
};

/** What is said of a whole part is said of the first of its figures. */
const toldOnce = (conflicts: readonly TeardownConflict[]): readonly TeardownConflict[] => {
  const isOf = (one: TeardownConflict, other: TeardownConflict): boolean =>
    other.at === undefined && other.code === one.code && isSamePlace(placeOf(other), placeOf(one));
  return conflicts.filter(
    (one, i) => conflicts.findIndex((other) => isOf(one, other)) === i || one.at !== undefined,
  );
};

const placeOf = ({ quantity = "", ...place }: TeardownConflict) => ({ ...place, quantity });

/** Of each figure what cannot be, or what looks like a slip; figures that cannot be are no measure of the others. */
const slipsOf = (
  items: readonly TeardownItem[],
  engine: Engine,
): readonly (TeardownConflict | undefined)[] => {
  const alone = items.filter((item) => impossible(item, engine) === undefined);
  const possible = alone.filter((item) => impossible(item, engine, { others: alone }) === undefined);
  return items.map(
    (item) =>
      impossible(item, engine, { middle: middleFor(item, possible, engine), others: possible }) ??
      tooFarApart(item, possible) ??
      threadRange(item) ??
      wholeTurn(item, possible, engine) ??
      swappedDigits(item, possible, engine),
  );
};

const enteredTwice = ({ first, figures }: EnteredTwice["sets"][number]): TeardownConflict => {
  const { part, label, quantity } = first;
  const place = { part, ...(label === undefined ? {} : { label }) };
  return {
    code: "entered-twice",
    ...place,
    quantity,
    text: `${partNamed(place)} ${quantity}: ${String(figures)} figures stand twice, digit for digit: counted once`,
    mend: "measured twice indeed? Then say so in the note of the second, `measured again`",
    weight: "doubtful",
  };
};

/** Whether the verdicts of a figure wait until a conflict about it is cleared; a misprint stops its own limit alone. */
export const waitsFor = (
  item: Pick<TeardownItem, "part" | "label" | "at" | "quantity">,
  conflicts: readonly TeardownConflict[],
): boolean =>
  conflicts.some(
    ({ code, weight, part, label, at, quantity }) =>
      weight === "conflict" &&
      code !== "limit-misprint" &&
      part === item.part &&
      (label === undefined || label === item.label) &&
      (at === undefined || item.at === undefined || at === item.at) &&
      (quantity === undefined ||
        quantity === item.quantity ||
        isLimitFor({ part, quantity }, { part, quantity: item.quantity })),
  );
