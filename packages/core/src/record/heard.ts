// Where air was heard: `exhaust`, `crankcase:faint`, `neighbour:4`, several joined by `+`.

import { heardPlaces, placeIn, strangeNeighbour } from "./heard-places.ts";
import type { RowView } from "./row-view.ts";
import type { Heard } from "./types.ts";

/** Reads one cell of a `heard` row; undefined where nothing was written, or after a fault.
 *  @param labels - of the engine's cylinders, for `neighbour:4` */
export const heardIn = (
  row: RowView,
  { column, label }: { readonly column: string; readonly label: string },
  labels: readonly string[],
): readonly Heard[] | undefined => {
  const text = row.text(column);
  if (text === "" || text.toLowerCase() === "x") return undefined;
  const parts = partsOf(text);
  const heard: Heard[] = [];
  for (const part of parts) {
    const one = placeIn(part, labels);
    if (one === undefined || (one.place === "none" && parts.length > 1))
      return row.fault(column, "heard-unknown", {
        text: one === undefined ? part : text,
        places: heardPlaces,
        neighbour: one === undefined ? strangeNeighbour(part, labels) : undefined,
        labels,
      });
    if (one.neighbour === label)
      return row.fault(column, "heard-unknown", { text: part, places: heardPlaces, labels, own: label });
    heard.push(one);
  }
  return heard;
};

const partsOf = (text: string): readonly string[] => text.split("+").map((part) => part.trim());

/** A cell in the words of the file: `Oil filler, faint` is `crankcase:faint`. What is no place stays as it was typed. */
export const plainHeard = (text: string, labels: readonly string[]): string =>
  partsOf(text)
    .map((part) => {
      const one = placeIn(part, labels);
      if (one === undefined) return part;
      const { place, faint, neighbour } = one;
      return `${place}${neighbour === undefined ? "" : `:${neighbour}`}${faint ? ":faint" : ""}`;
    })
    .join("+");
