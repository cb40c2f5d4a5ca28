// What each work did, as sentences: by three tests a side, and for a cylinder that had just come down by the two beside it.

import {
  type KindHistory,
  type PressureUnit,
  type ServiceResult,
  writeQuantity,
} from "@sealtrend/core/parts";
import { dateOf, heldAt, othersOf } from "./history-sentences.ts";
import { count, cylinders as named, percent, sentence } from "../words.ts";

interface Shown {
  /** Labels of the cylinders that the screen is about. */
  readonly shown: readonly string[];
  readonly unit: PressureUnit;
}

export const serviceSentences = (
  service: ServiceResult,
  kind: KindHistory,
  { shown, unit }: Shown,
): readonly string[] => {
  const { why, against, before, steps, adjoining = [] } = service;
  if (against === "nothing")
    return [
      `${sentence(why)} from ${dateOf(kind, before)} on: it reads otherwise, so the leak-down begins anew there and nothing is compared across.`,
    ];
  const groups = grouped(steps.filter(({ labels }) => labels.some((label) => shown.includes(label))));
  const rises = adjoining.filter(({ label }) => shown.includes(label));
  const said = groups.map((step) => {
    const isBeside = rises.some(({ label }) => step.labels.includes(label));
    return sentence(`${why}: ${stepText(step, kind)}${isBeside ? middlesText(step) : ""}.`);
  });
  return [...said, ...rises.map((rise) => riseSentence(rise, kind, unit))];
};

type Step = ServiceResult["steps"][number];

/** Those of which the same is said stand together. */
const grouped = (steps: readonly Step[]): readonly Step[] => {
  const isQuiet = ({ verdict }: Step): boolean => verdict === "no-change-shown" || verdict === "cannot-tell";
  const said = (one: Step): string => [one.verdict, leastText(one), sideText(one)].join();
  return steps.flatMap((step, i) => {
    const alike = (other: Step): boolean => isQuiet(step) && said(other) === said(step);
    if (steps.findIndex(alike) < i && isQuiet(step)) return [];
    const labels = isQuiet(step) ? steps.filter(alike).flatMap((one) => one.labels) : step.labels;
    return [{ ...step, labels }];
  });
};

const stepText = (one: Step, kind: KindHistory): string => {
  const { labels, step = 0, verdict, before, after } = one;
  const isAll = labels.length === kind.result.cylinders.length && labels.length > 2;
  const who = isAll ? `all ${count(labels.length)} cylinders` : named(labels).toLowerCase();
  const size = percent(Math.abs(Math.expm1(step)));
  switch (verdict) {
    case "rose":
      return `${who} rose ${size}`;
    // the tests of each side lie years apart, so a slow fall is in the difference too
    case "fell":
      return `${who} fell ${size} from the ${testsText(before, "before")} to the ${testsText(after, "after")}; wear of those years is in it`;
    case "cannot-tell":
      return `no test ${sideText(one)} it to compare ${who} with`;
    case "no-change-shown":
      return `no change shown in ${isAll ? "the engine as a whole" : who}${leastText(one)}`;
  }
};

/** Where the two tests beside the work are told as well: what the size counts from. */
const middlesText = ({ verdict, before, after }: Step): string =>
  verdict === "rose" ? `, from ${middleText(before, "before")} to ${middleText(after, "after")}` : "";

const middleText = (n: number, side: "before" | "after"): string =>
  `${n > 1 ? "the middle of " : ""}the ${testsText(n, side)}`;

const sideText = ({ before }: Step): string => (before === 0 ? "before" : "after");

const testsText = (n: number, side: "before" | "after"): string =>
  n === 1 ? `test ${side}` : `${count(n)} tests ${side}`;

const leastText = ({ shownFrom }: Step): string =>
  shownFrom === undefined ? "" : `; a change under ${percent(Math.expm1(shownFrom))} would not have shown`;

/** `Cylinder 4 read 95 psi in the test before it and 164 psi after.` Of a leak-down, which reads otherwise, how far it was under
 *  the others. That a reading was low is why it is told, so the doubt stands with it. */
const riseSentence = (
  { label, from, to, lowIn }: NonNullable<ServiceResult["adjoining"]>[number],
  kind: KindHistory,
  unit: PressureUnit,
): string => {
  const own = kind.result.cylinders.find((cylinder) => cylinder.label === label);
  const [before, after] = [from, to].map((place) =>
    kind.kind === "dry"
      ? `${writeQuantity(Math.exp(own?.levels[place] ?? 0), unit)}${heldAt(kind, place)}`
      : standText(own?.ratios[place] ?? 0),
  );
  const verb = kind.kind === "dry" ? "read" : `against ${othersOf(kind)} held`;
  const doubt =
    lowIn === "several"
      ? "it had been low in the test before that too"
      : "low in that one test, which a bad reading would be too";
  return `Cylinder ${label} ${verb} ${before ?? ""} in the test before it and ${after ?? ""} after: ${doubt}.`;
};

/** `12 % less`, as much. */
const standText = (ratio: number): string => {
  const size = percent(Math.abs(Math.expm1(ratio)));
  return size === "0 %" ? "as much" : `${size} ${ratio < 0 ? "less" : "more"}`;
};
