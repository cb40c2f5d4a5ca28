// Where the air was heard, as shares of the classes of the table.

import type { HeardPlace } from "../../record/index.ts";

/** Outside counts as the plug; a faint hiss counts only where nothing loud was heard; the crankcase is dropped where
 *  another place is named with it, for a little always goes there. Several places: the mean of their columns. Nothing
 *  heard is a finding too. @returns shares, aligned with the classes, adding up to 1 @source handbook/diagnosis.md 3 */
export const pathClasses = (
  heard: readonly { readonly place: HeardPlace; readonly faint: boolean }[],
  classes: readonly string[],
): readonly number[] => {
  const loud = heard.filter(({ faint, place }) => !faint && place !== "none");
  const counted = loud.length > 0 ? loud : heard;
  const places = new Set(counted.map(({ place }) => (place === "outside" ? "plug" : place)));
  for (const quiet of ["none", "crankcase"] as const) if (places.size > 1) places.delete(quiet);
  if (places.size === 0) places.add("none");
  return classes.map((name) => ([...places].some((place) => place === name) ? 1 / places.size : 0));
};
