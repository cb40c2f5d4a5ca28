// Where on a part something was measured, as `top/thrust`, `front/90`, `diagonal1/240`: words, degrees and distances between strokes.

import { nearest } from "../problem/index.ts";

/** What stands between two strokes. */
export type PlacePart =
  | { readonly kind: "words"; readonly words: readonly string[] }
  /** The lines of a face: words, or `between 1-2` for the land between two cylinders. */
  | { readonly kind: "line"; readonly words: readonly string[]; readonly between: string }
  | { readonly kind: "degrees" }
  /** Along the part [mm]. */
  | { readonly kind: "distance" }
  | { readonly kind: "free" };

export const wordsAt = (...words: string[]): PlacePart => ({ kind: "words", words });
export const lineOf = (words: readonly string[], between: string): PlacePart => ({
  kind: "line",
  words,
  between,
});

interface Places {
  readonly places: readonly (readonly PlacePart[])[];
  readonly placeNeeded: boolean;
}

/** The place in its own spelling (lower case, no blanks at the strokes, a decimal point); undefined where the quantity takes no
 *  such place. An empty text is "" where a place may be left out. */
export const readPlace = ({ places, placeNeeded }: Places, text: string): string | undefined => {
  const typed = text.trim().toLowerCase().replace(/\s+/g, " ");
  if (typed === "") return placeNeeded ? undefined : "";
  const free = places.some(([part]) => part?.kind === "free");
  if (free) return typed;
  const parts = typed.split("/").map((part) => part.trim());
  const found = places
    .filter((place) => place.length === parts.length)
    .map((place) => place.map((part, i) => spelled(part, parts[i] ?? "")))
    .find((place) => place.every((part) => part !== undefined));
  return found?.join("/");
};

/** Whether a text is such a place, or how one begins, in its own spelling: `1` of `1/top`. */
export const beginsPlace = ({ places }: Pick<Places, "places">, text: string): boolean => {
  const parts = text.split("/");
  return places.some(
    (place) =>
      parts.length <= place.length &&
      place.slice(0, parts.length).every((part, i) => spelled(part, parts[i] ?? "") === parts[i]),
  );
};

const spelled = (part: PlacePart, text: string): string | undefined => {
  switch (part.kind) {
    case "words":
      return part.words.find((word) => word === text);
    case "line":
      return part.words.find((word) => word === text) ?? betweenIn(text);
    case "degrees":
      return within(text.replace(/\s*(?:°|deg)$/, ""), 360);
    case "distance":
      return within(text.replace(/\s*mm$/, ""), 100_000);
    case "free":
      return text;
  }
};

const betweenIn = (text: string): string | undefined => {
  const [, first, second] = /^between ([a-z0-9]{1,4}) ?- ?([a-z0-9]{1,4})$/.exec(text) ?? [];
  return first === undefined || second === undefined ? undefined : `between ${first}-${second}`;
};

const within = (text: string, below: number): string | undefined => {
  if (!/^\d{1,6}(?:[.,]\d{1,3})?$/.test(text)) return undefined;
  const value = Number(text.replace(",", "."));
  return value < below ? String(value) : undefined;
};

/** What a quantity takes as place, in words. */
export const placesExpected = ({ places, placeNeeded }: Places): string => {
  if (places.length === 0) return "no place: the cell stays empty";
  const ways = places.map((place) => place.map(partExpected).join("/"));
  return `${ways.join(", or ")}${placeNeeded ? "" : ", or nothing"}`;
};

const partExpected = (part: PlacePart): string => {
  switch (part.kind) {
    case "words":
      return part.words.join("|");
    case "line":
      return [...part.words, part.between].join("|");
    case "degrees":
      return "degrees";
    case "distance":
      return "mm";
    case "free":
      return "the place in words";
  }
};

/** The place that a mistyped one may have meant, part by part; undefined where nothing is near. */
export const placeNear = ({ places }: Pick<Places, "places">, text: string): string | undefined => {
  const parts = text
    .trim()
    .toLowerCase()
    .split("/")
    .map((part) => part.trim());
  const near = (part: PlacePart, typed: string): string | undefined =>
    spelled(part, typed) ?? ("words" in part ? nearest(typed, part.words)[0] : undefined);
  return places
    .filter((place) => place.length === parts.length)
    .map((place) => place.map((part, i) => near(part, parts[i] ?? "")))
    .find((place) => place.every((part) => part !== undefined))
    ?.join("/");
};

/** A place as somebody would write it. */
export const placeExample = ({ places }: Pick<Places, "places">): string =>
  (places[0] ?? []).map(partExample).join("/");

const partExample = (part: PlacePart): string => {
  switch (part.kind) {
    case "words":
    case "line":
      return part.words[0] ?? "";
    case "degrees":
      return "90";
    case "distance":
      return "40";
    case "free":
      return "between 2 and 3";
  }
};
