// What somebody saw or measured on one cylinder, as one word of the tables.

import type { CylinderEvidence } from "../../diagnosis/index.ts";
import { median } from "../../statistics/index.ts";
import type { Note } from "../../record/index.ts";
import type { Assessed } from "./assessed.ts";
import { notesAround } from "./notes-around.ts";

type Seen = NonNullable<CylinderEvidence["seen"]>;

/** In the engine's order. */
export const seenOf = (assessed: Assessed): readonly Seen[] => {
  const lowest = lowestOnTwoGauges(assessed);
  return assessed.cylinders.map(({ label }): Seen => {
    const lash = lashOf(assessed, label);
    const looked = borescopeOf(assessed, label);
    return {
      ...(lash === undefined ? {} : { lash }),
      ...(looked === undefined ? {} : { borescope: looked }),
      ...(lowest?.label === label ? { "second-gauge": lowest.word } : {}),
    };
  });
};

/** A fault is that of the cylinders that were named; all well, where none is named, holds for all. */
const newestOn = (
  assessed: Assessed,
  what: Note["what"],
  { label, well }: { readonly label: string; readonly well: readonly string[] },
): Note | undefined =>
  notesAround(assessed, what).findLast(
    ({ cylinders, value = "" }) =>
      cylinders.includes(label) ||
      (cylinders.length === 0 && (well.includes(value) || assessed.cylinders.length === 1)),
  );

/** A figure without the maker's says nothing. */
const lashOf = (assessed: Assessed, label: string): string | undefined => {
  const note = newestOn(assessed, "lash", { label, well: ["right"] });
  return note?.unit === undefined ? note?.value : undefined;
};

/** What of a look is a class of the table; a crown that was washed may be oil or coolant and says neither. */
const looks: readonly {
  readonly what: Note["what"];
  readonly well: readonly string[];
  readonly found: Readonly<Partial<Record<string, string>>>;
}[] = [
  {
    what: "valve seen",
    well: ["good"],
    found: { burnt: "valve", bent: "valve", pitted: "valve", sticking: "valve" },
  },
  { what: "crown seen", well: ["good"], found: { eroded: "piston", cracked: "piston" } },
  { what: "score", well: ["none"], found: { some: "bore", heavy: "bore" } },
  { what: "crosshatch", well: ["full"], found: { gone: "bore" } },
];

/** The newest fault seen; nothing, where valves and walls or crown were both found well. */
const borescopeOf = (assessed: Assessed, label: string): string | undefined => {
  const notes = looks.flatMap(({ what, well, found }) => {
    const note = newestOn(assessed, what, { label, well });
    return note === undefined
      ? []
      : [{ what, note, isWell: well.includes(note.value ?? ""), fault: found[note.value ?? ""] }];
  });
  const fault = notes
    .filter((one) => one.fault !== undefined)
    .toSorted((a, b) => (a.note.date < b.note.date ? 1 : a.note.date > b.note.date ? -1 : 0))[0]?.fault;
  if (fault !== undefined) return fault;
  const isWell = (which: (what: Note["what"]) => boolean): boolean =>
    notes.some(({ what, isWell: well }) => which(what) && well);
  const all = notes.every((one) => one.isWell);
  return all && isWell((what) => what === "valve seen") && isWell((what) => what !== "valve seen")
    ? "nothing"
    : undefined;
};

/** Two gauges agree within this, and one that reads so much more shows that the other was wrong; judgement. Of the lowest
 *  cylinder alone: the gauges are the same for all of them, so that more would count one finding several times. */
const gauges = { same: 1.07, normal: 1.15 } as const;

const lowestOnTwoGauges = ({
  cylinders,
  comparisons,
}: Assessed): { readonly label: string; readonly word: string } | undefined => {
  const cells = comparisons.find(({ what }) => what === "dry")?.cells ?? [];
  const both = cylinders.flatMap(({ label, pressures: { dry } }, i) => {
    const [own, other] = [dry, cells[i]];
    return own === undefined || other === undefined || own.value <= 0 || own.pegged || other.pegged
      ? []
      : [{ label, own: own.value, ratio: other.value / own.value }];
  });
  const [lowest] = both.toSorted((a, b) => a.own - b.own);
  if (lowest === undefined) return undefined;
  const { label, ratio } = lowest;
  const middle = median(both.map((one) => one.ratio));
  const far = Math.max(ratio, 1 / ratio);
  if (far < gauges.same && Math.max(middle, 1 / middle) < gauges.same) return { label, word: "same" };
  return ratio > gauges.normal ? { label, word: "normal now" } : undefined;
};
