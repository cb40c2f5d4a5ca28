// How many mains and pins a crank has by its layout. Most layouts have exceptions: what the owner counted always wins.

export type Layout = "inline" | "v" | "v-own-pins" | "flat" | "radial";

export interface Journals {
  readonly mains: number;
  readonly pins: number;
}

/** Inline n+1 mains and n pins; V with rods in pairs n/2+1 and n/2, with own or split pins n/2+1 and n; flat with own pins
 *  n+1 and n; radial a main more than rows, and a pin a row.
 *  @param rows - of a radial; 1 of any other
 *  @source an encyclopedia's list of main bearings for inline six 7, inline five 6, V8 5; the rest common practice, no source
 *  @checked data/reference/teardown-published.csv P22 */
export const usualJournals = (layout: Layout, cylinders: number, rows = 1): Journals => {
  const half = Math.ceil(cylinders / 2);
  switch (layout) {
    case "inline":
    case "flat":
      return { mains: cylinders + 1, pins: cylinders };
    case "v":
      return { mains: half + 1, pins: half };
    case "v-own-pins":
      return { mains: half + 1, pins: cylinders };
    case "radial":
      return { mains: rows + 1, pins: rows };
  }
};
