// Where the leak-down tester changed in a history: what became of the readings, and what the leaks say as holes.

import type { KindHistory } from "@sealtrend/core";
import { count, fixed, joined } from "../words.ts";

type Change = KindHistory["testerChanges"][number];

/** @param shown - labels of the cylinders that the screen is about */
export const testerSentences = (
  { testerChanges, counted }: KindHistory,
  shown: readonly string[],
): readonly string[] =>
  testerChanges.flatMap((change) => {
    const since = counted.find(({ test }) => test.id === change.toTest)?.test.date.slice(0, 7) ?? "";
    const by =
      change.what === "tester" ? `by another tester${namesText(change)}` : "at another supply pressure";
    const restated =
      change.carried === "restated"
        ? [
            `From ${since} on ${by}: ${change.what === "tester" ? "its readings" : "the readings"} are restated, the history goes on.`,
          ]
        : refusedText(change);
    return [...restated, ...holesText(change, shown)];
  });

/** A leak that is a larger hole on the other side of a change that begins a new history: for the first sentences. */
export const grownAcross = ({ testerChanges, counted }: KindHistory): readonly string[] =>
  testerChanges
    .filter(({ carried }) => carried === "new-history")
    .flatMap(({ holes, toTest, what }) => {
      const since = counted.find(({ test }) => test.id === toTest)?.test.date.slice(0, 7) ?? "";
      const grown = holes.filter(({ shown, lnRatio }) => shown === "yes" && lnRatio > 0);
      const each = grown.map(
        ({ label, before, after }) => `cylinder ${label} from ${mm(before.hole)} to ${mm(after.hole)} mm`,
      );
      return grown.length === 0
        ? []
        : [
            `Across the change of ${what === "tester" ? "tester" : "supply"} in ${since} a leak grew, told as a hole: ${joined(each)}.`,
          ];
    });

type Reason = NonNullable<Change["refused"]>["reason"];

const reasons: Readonly<Record<Reason, (label: string) => string>> = {
  "no-size": () => "one of the two testers tells no size of a leak",
  "restrictor-unknown": () => "the bore of a restrictor is not known",
  "supply-unknown": () => "a supply pressure is not known",
  "gauges-disagree": (label) => `in ${label} the dials disagree`,
  "too-tight": (label) => `${label} is tighter than the dials can show`,
  "no-seal": (label) => `${label} holds nothing`,
  "makes-differ": () => "the restrictors are made differently, and how much air each passes is not known",
  "band-wide": (label) => `how the leak of ${label} flows, as a hole or a thin gap, decides too much`,
  "dials-coarse": (label) => `the dials leave the leak of ${label} too uncertain`,
};

/** One day with both testers joins them. */
const joins: readonly Reason[] = ["no-size", "restrictor-unknown", "makes-differ"];

const refusedText = ({ refused, what }: Change): readonly string[] => {
  if (refused === undefined) return [];
  const mend =
    what === "tester" && joins.includes(refused.reason)
      ? "; both on this engine on one day would join them (sealtrend gauge compare)"
      : "";
  return [
    `Not restated, because ${reasons[refused.reason](`cylinder ${refused.label ?? ""}`.trim())}${mend}.`,
  ];
};

const namesText = ({ fromGauge, toGauge }: Change): string =>
  fromGauge === undefined || toGauge === undefined ? "" : ` (${toGauge}, before ${fromGauge})`;

const mm = (metres: number): string => fixed(metres * 1e3, 2);

const noneIn = (rest: readonly string[], of: number): string => {
  if (rest.length === of) return of === 1 ? "" : " in any";
  return ` in ${rest.length > 4 ? `the other ${count(rest.length)}` : joined(rest)}`;
};

/** Holes that changed beyond the dials and the day stand by name, the others in one clause. */
const holesText = ({ holes }: Change, labels: readonly string[]): readonly string[] => {
  const own = holes.filter(({ label }) => labels.includes(label));
  const moved = own.filter(({ shown }) => shown === "yes");
  const [first] = own;
  if (first === undefined) return [];
  const each = (moved.length > 0 ? moved : own.slice(0, 1)).map(
    ({ label, before, after }) =>
      `cylinder ${label}: ${mm(before.hole)} ± ${mm(before.uHole)}, then ${mm(after.hole)} ± ${mm(after.uHole)} mm`,
  );
  const rest = own.filter(({ shown }) => shown === "no").map(({ label }) => label);
  const among = own.length > 1 && moved.length === 0 ? "such as " : "";
  const none = rest.length === 0 ? "" : `; no change shown${noneIn(rest, own.length)}`;
  return [`As holes across that change: ${among}${each.join("; ")}${none}.`];
};
