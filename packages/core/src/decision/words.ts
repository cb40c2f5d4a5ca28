// The words that the whole domain shares.

/** Where an engine wears: top = valves, gasket, head; rings = rings, bores inside limits; bore = bore or piston beyond
 *  what rings and a hone cure; bottom = crank, bearings. */
export const wornPlaces = ["top", "rings", "bore", "bottom"] as const;
/** Where an engine is worn: each place is mended by another job. */
export type WornPlace = (typeof wornPlaces)[number];

/** Where a need for work can arise; each place is cured by one repair. */
export const curePlaces = ["top", "rings", "bottom"] as const;
export type CurePlace = (typeof curePlaces)[number];

/** Getting in; each is opening and closing with gaskets and fluids. */
export const jobs = ["headOff", "bottomOpen", "engineOut"] as const;
/** A step of the way in that may be done already and is then not paid again. */
export type Job = (typeof jobs)[number];

/** The work inside, as prices name it. */
export const repairs = ["topEnd", "reRing", "rebuild"] as const;
/** The works that a decision weighs: top end, rings, rebuild. */
export type Repair = (typeof repairs)[number];

/** What can be done now. */
export type Act = "leave" | "watch" | Repair;

/** The word of a decision. */
export type Verdict = "leave-it" | "test-again" | "watch-it" | "open-the-top-end" | "re-ring" | "rebuild";

export const verdictOf: Readonly<Record<Act, Verdict>> = {
  leave: "leave-it",
  watch: "watch-it",
  topEnd: "open-the-top-end",
  reRing: "re-ring",
  rebuild: "rebuild",
};

/** The repair that cures a place. */
export const repairOf: Readonly<Record<CurePlace, Repair>> = {
  top: "topEnd",
  rings: "reRing",
  bottom: "rebuild",
};

/** How far what tips the verdict lies: `close` = level, `holds` = an input tips it within its range, `clear` = none. */
export type Margin = "clear" | "holds" | "close";
