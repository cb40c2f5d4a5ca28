// Figures that nothing follows from, because a later state of the part or another reading took their place: never in silence.

import type { Measurement, TeardownAssessment, TeardownItem } from "@sealtrend/core";
import { counted } from "../words.ts";
import { lengthNumber, lengthText, writtenIn } from "./teardown-length.ts";
import { placeText } from "./teardown-words.ts";

type Replaced = TeardownItem & Required<Pick<TeardownItem, "supersededBy">>;

const replaced = ({ items }: Pick<TeardownAssessment, "items">): readonly Replaced[] =>
  items.flatMap((item) => {
    const { supersededBy } = item;
    const isAlike = supersededBy?.by === "instead" && supersededBy.value === item.value;
    return supersededBy === undefined || isAlike ? [] : [{ ...item, supersededBy }];
  });

/** More figures of one kind are counted. */
const most = 2;

/** For the screen: `left out: pin 2 as found 57.05 mm: cleaned 57.11 counts`; empty where nothing is. */
export const leftOutText = (assessment: Pick<TeardownAssessment, "items">): string => {
  const all = replaced(assessment);
  const kinds = [...new Set(all.map(kindOf))];
  const texts = kinds.flatMap((kind) => {
    const own = all.filter((one) => kindOf(one) === kind);
    const [first] = own;
    if (first === undefined) return [];
    if (own.length <= most) return own.map((one) => `${nameOf(one)}: ${reasonOf(one)}`);
    const { by, state } = first.supersededBy;
    const why = by === "instead" ? "others stand instead" : `those ${state} count`;
    return [`${counted(own.length, "figure")} ${first.state}: ${why}`];
  });
  return texts.length === 0 ? "" : `left out: ${texts.join("; ")}`;
};

/** For the line that was just typed: what of it counts for nothing, for a later state is there already. */
export const leftOutOf = (
  assessment: Pick<TeardownAssessment, "items">,
  typed: readonly Pick<Measurement, "part" | "label" | "at" | "quantity" | "state">[],
): readonly string[] =>
  replaced(assessment)
    .filter(({ supersededBy }) => supersededBy.by === "state")
    .filter((item) =>
      typed.some(
        ({ part, label, at, quantity, state }) =>
          part === item.part &&
          label === item.label &&
          at === item.at &&
          quantity === item.quantity &&
          state === item.state,
      ),
    )
    .map((item) => `${nameOf(item)} is left out: ${reasonOf(item)}`);

const kindOf = ({ part, state, supersededBy }: Replaced): string =>
  [part, state, supersededBy.by, supersededBy.state].join("|");

/** `pin 2 front/0 as found 57.05 mm`. */
const nameOf = (item: Replaced): string => {
  const state = item.supersededBy.by === "state" ? ` ${item.state}` : "";
  return `${placeText(item)}${state} ${lengthText(item.value, writtenOf(item))}`;
};

const reasonOf = (item: Replaced): string => {
  const { by, state, value } = item.supersededBy;
  if (value === undefined)
    return by === "state" ? `the part was measured ${state} since` : "another stands instead";
  const number = lengthNumber(value, writtenOf(item));
  return by === "state" ? `${state} ${number} counts` : `${number} stands instead`;
};

const writtenOf = ({ unit, value, supersededBy }: Replaced) =>
  writtenIn(unit, [value, ...(supersededBy.value === undefined ? [] : [supersededBy.value])]);
