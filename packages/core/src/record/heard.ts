// Where air was heard: `exhaust`, `crankcase:faint`, `neighbour:4`, several joined by `+`.

import type { RowView } from "./row-view.ts";
import type { Heard, HeardPlace } from "./types.ts";

export const heardPlaces: readonly HeardPlace[] = [
  "intake",
  "exhaust",
  "crankcase",
  "coolant",
  "neighbour",
  "plug",
  "outside",
  "none",
];

const aliases: Readonly<Record<string, HeardPlace>> = {
  inlet: "intake",
  carburettor: "intake",
  carburetor: "intake",
  "air filter": "intake",
  throttle: "intake",
  tailpipe: "exhaust",
  "exhaust pipe": "exhaust",
  breather: "crankcase",
  "oil filler": "crankcase",
  dipstick: "crankcase",
  radiator: "coolant",
  neighbor: "neighbour",
  adjacent: "neighbour",
  "plug hole": "plug",
  joint: "outside",
  nothing: "none",
  no: "none",
};

/** Reads one cell of a `heard` row; undefined where nothing was written, or after a fault.
 *  @param labels - of the engine's cylinders, for `neighbour:4` */
export const heardIn = (
  row: RowView,
  column: string,
  labels: readonly string[],
): readonly Heard[] | undefined => {
  const text = row.text(column);
  if (text === "" || text.toLowerCase() === "x") return undefined;
  const parts = text.split("+").map((part) => part.trim());
  const heard: Heard[] = [];
  for (const part of parts) {
    const one = onePlace(part, labels);
    if (one === undefined || (one.place === "none" && parts.length > 1))
      return row.fault(column, "heard-unknown", {
        text: one === undefined ? part : text,
        places: heardPlaces,
        neighbour: one === undefined ? strangeNeighbour(part) : undefined,
        labels,
      });
    heard.push(one);
  }
  return heard;
};

/** The mark after `neighbour:` that is neither a strength nor, as the caller knows, a cylinder. */
const strangeNeighbour = (part: string): string | undefined => {
  const [name = "", ...marks] = part.split(":").map((piece) => piece.trim());
  const isNeighbour = name.toLowerCase() === "neighbour" || aliases[name.toLowerCase()] === "neighbour";
  return isNeighbour ? marks.find((mark) => !/^(faint|loud)$/i.test(mark)) : undefined;
};

const onePlace = (part: string, labels: readonly string[]): Heard | undefined => {
  const [name = "", ...marks] = part.split(":").map((piece) => piece.trim());
  const lower = name.toLowerCase();
  const place =
    heardPlaces.find((known) => known === lower) ??
    (Object.hasOwn(aliases, lower) ? aliases[lower] : undefined);
  const neighbour = marks.find((mark) => labels.includes(mark));
  const strength = marks.filter((mark) => mark !== neighbour).map((mark) => mark.toLowerCase());
  const known = strength.every((mark) => mark === "faint" || mark === "loud");
  if (place === undefined || !known || (neighbour !== undefined && place !== "neighbour")) return undefined;
  return { place, faint: strength.includes("faint"), ...(neighbour === undefined ? {} : { neighbour }) };
};
